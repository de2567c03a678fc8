"""Processor time for specs that a process has not seen: `python tests/benchmarks/bench_unseen.py [SPEC ...]`.

All libraries are loaded once and one other spec is drawn; then each spec is checked, drawn and written as SVG in a copy
of that process, so that nothing is left of the time before. `--against TREE` takes the copies in turn from another
checkout and prints the ratio: on a machine that others use too, the ratio is firm where the seconds are not.
"""

from __future__ import annotations

import argparse
import os
import statistics
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

SERVER = """
import gc, os, resource, sys
sys.path.insert(0, {root!r})
from pathlib import Path
import sld.layout, sld.sheet, sld.render, sld.rules, sld.steps, sld.model, sld.documents.registry
from sld import run
from sld.cli import COLLECT_FROM_COUNT
assert run.__file__.startswith({root!r}), run.__file__

def once(path):
    checked = run.check(path)
    made = run.draw(checked)
    run.files(made.sheets, path.stem, ("svg",))

gc.set_threshold(COLLECT_FROM_COUNT)  # as the command line does
once(Path({root!r}) / "specs" / "village-hall.yaml")
gc.collect()
gc.freeze()
for line in sys.stdin:
    reader, writer = os.pipe()
    if (child := os.fork()) == 0:
        before = resource.getrusage(resource.RUSAGE_SELF)
        once(Path(line.strip()))
        after = resource.getrusage(resource.RUSAGE_SELF)
        taken = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        os.write(writer, str(taken).encode())
        os._exit(0)
    os.close(writer)
    os.waitpid(child, 0)
    print(os.read(reader, 100).decode(), flush=True)
    os.close(reader)
"""


class Server:
    """A process with all of a checkout loaded, which draws specs in copies of itself."""

    def __init__(self, root: Path) -> None:
        code = SERVER.format(root=str(root))
        self._process = subprocess.Popen(
            [sys.executable, "-c", code], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd="/",
            env={**os.environ, "PYTHONPATH": str(root)},
        )  # fmt: skip

    def seconds(self, spec: Path) -> float:
        """Return the processor time for a spec."""
        assert self._process.stdin
        assert self._process.stdout
        print(spec, file=self._process.stdin, flush=True)
        return float(self._process.stdout.readline())

    def close(self) -> None:
        """End the process."""
        self._process.communicate()


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("specs", nargs="*", type=Path)
    parser.add_argument("--against", type=Path)
    parser.add_argument("--rounds", type=int, default=5)
    asked = parser.parse_args()
    specs = [each.resolve() for each in asked.specs or sorted((ROOT / "specs").glob("*.yaml"))]
    servers = [Server(root.resolve()) for root in (ROOT, asked.against) if root]
    total = [0.0] * len(servers)
    print(f"{'spec':<24}" + "".join(f"{each:>10}" for each in ("s", "before", "ratio")[: 2 * len(servers) - 1]))
    for spec in specs:
        rounds = [[server.seconds(spec) for server in servers] for _ in range(asked.rounds)]
        best = [min(column) for column in zip(*rounds, strict=True)]
        ratio = [statistics.median(row[0] / row[1] for row in rounds)] if asked.against else []
        total = [a + b for a, b in zip(total, best, strict=True)]
        print(f"{spec.stem:<24}" + "".join(f"{each:>10.3f}" for each in best + ratio), flush=True)
    print(f"{'mean':<24}" + "".join(f"{each / len(specs):>10.3f}" for each in total))
    for server in servers:
        server.close()


if __name__ == "__main__":
    main()
