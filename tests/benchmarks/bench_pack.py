"""Processor time of `sld pack` beside that of `sld draw` to PDF: `python tests/benchmarks/bench_pack.py [NAME...]`.

A pack is to take at most three times as much. Each is run three times in a process of its own, into an empty folder;
the least counts.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
from pathlib import Path

SPECS = Path(__file__).resolve().parents[2] / "specs"
MOST = 3.0


def seconds(*words: str) -> float:
    """Return the least processor time of a command, its start included."""
    taken = []
    for _ in range(3):
        with tempfile.TemporaryDirectory() as out:
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            subprocess.run([sys.executable, "-m", "sld", *words, "-o", out], capture_output=True, check=False)
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
        taken.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return min(taken)


def main() -> int:
    """Print the times of some specs, by name, or of all; end with 1 where a pack takes too long."""
    worst = 0.0
    for name in sys.argv[1:] or sorted(path.stem for path in SPECS.glob("*.yaml")):
        path = str(SPECS / f"{name}.yaml")
        drawn, packed = seconds("draw", path, "--to", "pdf"), seconds("pack", path, "--for", "handover")
        worst = max(worst, packed / drawn)
        print(f"{name:20} draw {drawn:5.2f} s  pack {packed:5.2f} s  {packed / drawn:4.2f} times", flush=True)
    return 1 if worst > MOST else 0


if __name__ == "__main__":
    sys.exit(main())
