"""Large plants: seconds of processor time, sheets and memory, beside those of another checkout.

    .venv/bin/python tests/benchmarks/bench_large.py                   # 10,000 strings by `count`, 2,000 different
    .venv/bin/python tests/benchmarks/bench_large.py --against /tmp/other --rounds 3
    .venv/bin/python tests/benchmarks/bench_large.py --different 500   # 10,000 different strings, some minutes

Each plant is checked, drawn and written as SVG in a process of its own, in both trees in turn. Of the rounds the least
seconds are told, and the median of the ratios, which is firm on a machine that others use too. Memory is the most that
the process took beyond what it had after it had drawn a small spec.
"""

from __future__ import annotations

import argparse
import json
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

from bench_draw import by_count, unfolded

ROOT = Path(__file__).parents[2]

WORK = """
import gc, json, resource, sys, time
sys.path.insert(0, {root!r})
from pathlib import Path
from sld import run
from sld.cli import COLLECT_FROM_COUNT
assert run.__file__.startswith({root!r}), run.__file__

def once(path):
    start_s = time.process_time()
    checked = run.check(path)
    checked_s = time.process_time()
    made = run.draw(checked)
    run.files(made.sheets, path.stem, ("svg",))
    return checked_s - start_s, time.process_time() - start_s, len(made.sheets)

def most_mb():
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3

gc.set_threshold(COLLECT_FROM_COUNT)  # as the command line does
once(Path({root!r}) / "specs" / "village-hall.yaml")
before_mb = most_mb()
print(json.dumps([*once(Path(sys.argv[1])), most_mb() - before_mb]))
"""


class Taken(NamedTuple):
    """What a plant took. check_s, all_s: processor time of the check, and with drawing and SVG."""

    check_s: float
    all_s: float
    sheets_count: int
    memory_mb: float


def taken(root: Path, spec: Path) -> Taken:
    """Return what a spec takes in a checkout."""
    told = subprocess.run(
        [sys.executable, "-c", WORK.format(root=str(root)), str(spec)], cwd=root, check=True, capture_output=True,
    )  # fmt: skip
    return Taken(*json.loads(told.stdout))


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--against", type=Path)
    parser.add_argument("--rounds", type=int, default=1)
    parser.add_argument("--different", type=int, default=100, help="different inverters, of 20 strings each")
    asked = parser.parse_args()
    trees = [ROOT, *([asked.against.resolve()] if asked.against else [])]
    plants = {
        "1 inverter": by_count(1),
        "500 by count": by_count(500),
        f"{asked.different} different": unfolded(asked.different),
    }
    print(f"{'20 strings each':<18}{'tree':<30}{'check s':>9}{'all s':>9}{'sheets':>8}{'MB':>8}{'ratio':>8}")
    with tempfile.TemporaryDirectory() as folder:
        for name, text in plants.items():
            spec = Path(folder) / f"{name.replace(' ', '-')}.yaml"
            spec.write_text(text, encoding="utf-8")
            rounds = [[taken(tree, spec) for tree in trees] for _ in range(asked.rounds)]
            for place, tree in enumerate(trees):
                least = min((each[place] for each in rounds), key=lambda each: each.all_s)
                ratio = statistics.median(each[place].all_s / each[0].all_s for each in rounds)
                print(
                    f"{name:<18}{str(tree)[-28:]:<30}{least.check_s:>9.2f}{least.all_s:>9.2f}"
                    f"{least.sheets_count:>8}{least.memory_mb:>8.0f}{ratio:>8.2f}",
                    flush=True,
                )


if __name__ == "__main__":
    main()
