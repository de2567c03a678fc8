"""Runs the tool on changed specs, in forked workers with bounds on time and memory, and reports by kind of fault.

    .venv/bin/python tests/fuzz/fuzz.py 1000                    # so many specs, from seed 1
    .venv/bin/python tests/fuzz/fuzz.py 20000 --seed 7 --draw 10 --workers 2 --keep /tmp/faults

One spec in `--draw` of those that can be used is drawn and its sheets are judged; all others are checked only. Of each
kind of fault the smallest spec is kept, made smaller still while the fault stays. Exit code 1 where there was a fault.
"""

from __future__ import annotations

import argparse
import copy
import gc
import json
import multiprocessing
import resource
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from multiprocessing.connection import Connection, wait
from pathlib import Path
from random import Random
from typing import Any

sys.path += [str(Path(__file__).parent), str(Path(__file__).parents[1] / "properties")]

from generated import generated
from judgement import judged
from spec_changes import changed, places, value_at
from spec_text import written

from sld.spec.source import read

__all__ = ["Bounds", "Report", "main", "run_fuzz"]

ROOT = Path(__file__).parents[2]
GENERATED = 40
TRIES = 300


@dataclass(frozen=True)
class Bounds:
    """What one spec may cost: seconds of processor time (ten times as many by the clock), and MB of address space
    on top of what the process has that is forked."""

    seconds: float = 30.0
    megabytes: int = 1500


@dataclass
class Report:
    """How far the specs came, how often each kind of fault was met, and the smallest spec of each."""

    outcomes: Counter[str] = field(default_factory=Counter)
    faults: Counter[str] = field(default_factory=Counter)
    smallest: dict[str, tuple[str, str]] = field(default_factory=dict)

    def take(self, text: str, outcome: str, faults: list[tuple[str, str]]) -> None:
        self.outcomes[outcome] += 1
        for kind, said in {kind: (kind, said) for kind, said in faults}.values():
            self.faults[kind] += 1
            if kind not in self.smallest or len(text) < len(self.smallest[kind][0]):
                self.smallest[kind] = text, said

    def __str__(self) -> str:
        lines = [f"{self.outcomes.total()} specs: " + ", ".join(f"{n} {word}" for word, n in self.outcomes.items())]
        for kind, count in self.faults.most_common():
            lines.append(f"{count:6} × {kind}: {self.smallest[kind][1]}")
        return "\n".join(lines)


@cache
def bases(seed_number: int) -> list[dict[str, Any]]:
    """Return the specs that are changed: those of the repository, and generated ones by a seed."""
    found = [dict(read(path).data) for path in sorted((ROOT / "specs").glob("*.yaml"))]
    for each in found:
        each.pop("include", None)  # what it brought is in the data
    return found + generated(GENERATED, seed_number)


def case(seed_number: int, number: int) -> tuple[str, dict[str, Any]]:
    """Return the text and the data of one changed spec."""
    random = Random(f"{seed_number}/{number}")
    data = changed(random.choice(bases(seed_number)), random)
    return written(data, random), data


def _address_space_bytes() -> int:
    """Return what this process has, 0 where the system does not tell."""
    told = Path("/proc/self/statm")
    return int(told.read_text().split()[0]) * resource.getpagesize() if told.exists() else 0


def _work(pipe: Connection, seed_number: int, numbers: list[int], draw_one_in: int, bounds: Bounds) -> None:
    """Judge specs one after the other and send what was found: first the number, then the outcome and faults."""
    gc.freeze()  # what tests before this hold would be looked through again, and copied by that
    resource.setrlimit(resource.RLIMIT_AS, (_address_space_bytes() + bounds.megabytes * 1_000_000,) * 2)
    with tempfile.TemporaryDirectory() as folder:
        for number in numbers:
            text, _ = case(seed_number, number)
            pipe.send((number, None, None))
            signal.setitimer(signal.ITIMER_PROF, bounds.seconds)  # its signal ends the worker
            pipe.send((number, *judged(text, Path(folder), drawn=number % draw_one_in == 0)))


def _judged_apart(
    seed_number: int, numbers: list[int], draw_one_in: int, bounds: Bounds, workers: int
) -> Iterator[Any]:
    """Yield (number, outcome, faults) of every spec; a worker that takes too long or dies is told and replaced."""
    fork = multiprocessing.get_context("fork")
    waiting = [numbers[start::workers] for start in range(workers)]
    running: dict[Connection, list[Any]] = {}

    def begin(left: list[int]) -> None:
        if left:
            mine, its = fork.Pipe(duplex=False)
            process = fork.Process(target=_work, args=(its, seed_number, left, draw_one_in, bounds))
            process.start()
            its.close()
            running[mine] = [process, left, time.monotonic()]

    for left in waiting:
        begin(left)
    while running:
        ready = wait(list(running), timeout=1)
        for pipe in list(running):
            process, left, since = running[pipe]
            try:
                if pipe in ready:
                    number, outcome, faults = pipe.recv()
                    running[pipe][2] = time.monotonic()
                    if outcome is not None:
                        running[pipe][1] = left[left.index(number) + 1 :]
                        yield number, outcome, faults
                elif time.monotonic() - since > 10 * bounds.seconds:
                    process.kill()
                    raise EOFError
            except EOFError:
                process.join()
                del running[pipe]
                pipe.close()
                if left:
                    slow = process.exitcode in (-signal.SIGPROF, -signal.SIGKILL)
                    kind = f"longer than {bounds.seconds:g} s" if slow else f"worker ended with {process.exitcode}"
                    yield left[0], "killed", [(kind, f"spec number {left[0]}")]
                    begin(left[1:])


def run_fuzz(count: int, seed_number: int = 1, draw_one_in: int = 10, bounds: Bounds | None = None, workers: int = 1,
             told: bool = False) -> Report:  # fmt: skip
    """Judge so many changed specs."""
    report = Report()
    bases(seed_number)
    numbers = list(range(count))
    for number, outcome, faults in _judged_apart(seed_number, numbers, draw_one_in, bounds or Bounds(), workers):
        report.take(case(seed_number, number)[0] if faults else "", outcome, faults)
        if told and report.outcomes.total() % 500 == 0:
            print(report, flush=True)
    return report


def smaller(text: str, kind: str, folder: Path) -> str:
    """Return a smaller spec with a fault of the same kind: keys and entries are left out while it stays."""
    source = folder / "smaller.yaml"
    source.write_text(text, encoding="utf-8")
    try:
        data: Any = read(source).data
    except Exception:
        return text  # the text itself is the case
    left = TRIES
    again = True
    while again and left:
        again = False
        for at, _ in sorted(places(data), key=lambda each: len(each[0])):
            trial = copy.deepcopy(data)
            try:
                del value_at(trial, at[:-1])[at[-1]]
            except (KeyError, IndexError):
                continue
            left -= 1
            shorter = json.dumps(trial)
            if any(kind == found for found, _ in judged(shorter, folder, drawn=not kind.startswith("no place"))[1]):
                data, text, again = trial, shorter, True
                break
            if not left:
                break
    return text


def main() -> int:
    """Read the command line, run, print, keep the smallest specs; return the exit code."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("count", type=int, help="how many specs")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--draw", type=int, default=10, help="one in so many is drawn")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--seconds", type=float, default=Bounds.seconds, help="bound on the time of one spec")
    parser.add_argument("--megabytes", type=int, default=Bounds.megabytes, help="bound on the memory of one worker")
    parser.add_argument("--keep", type=Path, help="folder for the smallest spec of each kind")
    asked = parser.parse_args()
    bounds = Bounds(asked.seconds, asked.megabytes)
    report = run_fuzz(asked.count, asked.seed, asked.draw, bounds, asked.workers, told=True)
    print(report)
    for number, (kind, (text, _)) in enumerate(report.smallest.items(), 1):
        with tempfile.TemporaryDirectory() as folder:
            text = text if kind.startswith(("longer", "worker")) else smaller(text, kind, Path(folder))
        if asked.keep:
            asked.keep.mkdir(parents=True, exist_ok=True)
            (asked.keep / f"{asked.seed}-{number}.yaml").write_text(f"# {kind}\n{text}\n", encoding="utf-8")
        print(f"\n{kind}\n{text[:2000]}")
    return 1 if report.faults else 0


if __name__ == "__main__":
    sys.exit(main())
