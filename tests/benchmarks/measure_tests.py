"""Processor time of the tests by room and by file: where the time of the default run goes.

    python tests/benchmarks/measure_tests.py                       # the default run: all, in one process
    python tests/benchmarks/measure_tests.py tests/house tests/cli --least 1    # each in a process of its own

Prints the seconds that a room takes, those of processes that its tests start included, and its files that take at
least so many; then the total. Ends with 1 where that is more than 240 s, or where tests fail. A room by itself takes
a second longer, in which it loads the program, and more where it draws what others draw too.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

ROOT = Path(__file__).resolve().parents[2]
MOST_S = 240.0


def spent_s() -> float:
    """Return the processor time of this process and of those that it started and that ended."""
    both = (resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(each.ru_utime + each.ru_stime for each in both)


class Meter:
    """The plugin that adds up the seconds of the tests of each file."""

    def __init__(self) -> None:
        self.by_file: dict[str, float] = {}

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        begun = spent_s()
        yield
        file = item.nodeid.partition("::")[0]
        self.by_file[file] = self.by_file.get(file, 0.0) + spent_s() - begun


def _measure(room: str, told: Path) -> int:
    """Run the tests of a room in this process and write what its files and the whole process took."""
    meter = Meter()
    code = pytest.main(["-q", "-p", "no:cacheprovider", room], [meter])
    told.write_text(json.dumps({"total": spent_s(), "files": meter.by_file}), encoding="utf-8")
    return int(code)


def main() -> int:
    """Measure the rooms that are asked for, print a table and return the exit code."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("rooms", nargs="*", help="folders or files of tests, by default all")
    parser.add_argument(
        "--least", type=float, default=2.0, metavar="S", help="files that take so many seconds are named"
    )
    parser.add_argument("--told", type=Path, help=argparse.SUPPRESS)
    asked = parser.parse_args()
    if asked.told:
        return _measure(asked.rooms[0], asked.told)
    total, wrong = 0.0, 0
    for room in asked.rooms or ["tests"]:
        with TemporaryDirectory() as folder:
            told = Path(folder) / "told"
            words = [sys.executable, __file__, room, "--told", str(told)]
            run = subprocess.run(words, cwd=ROOT, env=os.environ, capture_output=True, text=True, check=False)
            spent = json.loads(told.read_text(encoding="utf-8"))
        total += spent["total"]
        print(f"{spent['total']:8.1f} s  {room}", flush=True)
        rooms: Counter[str] = Counter()
        for file, taken_s in spent["files"].items():
            rooms["/".join(file.split("/")[:2])] += taken_s
        for each, taken_s in rooms.most_common() if len(rooms) > 1 else ():
            print(f"{taken_s:12.1f} s  {each}")
        for file, taken_s in sorted(spent["files"].items(), key=lambda each: -each[1]):
            if taken_s >= asked.least:
                print(f"{taken_s:16.1f} s  {file}")
        if run.returncode:
            wrong = 1
            print(run.stdout[-2000:])
    print(f"{total:8.1f} s  in all, at most {MOST_S:g} s")
    return 1 if wrong or total > MOST_S else 0


if __name__ == "__main__":
    raise SystemExit(main())
