"""The specs of a run, one after the other or over several processes: the same files, and the same lines in one order.

What a spec leaves behind is its `Outcome` and, from another process, the lines that it told; no more is kept of it.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Generator
from contextlib import closing
from dataclasses import dataclass, replace

from sld.cli.bounds import Bounds, TooLong, within
from sld.cli.crew import Done, shared
from sld.cli.faults import describe, report
from sld.cli.given import Given
from sld.cli.options import Run
from sld.cli.outcome import OUR_FAULT, UNUSABLE, Outcome, State, Totals
from sld.cli.processes import Processes
from sld.cli.summary import Summary
from sld.cli.terminal import OutputLost, held, progress, say

__all__ = ["Work", "deal"]

Work = Callable[[Given], Outcome]
"""What a command does for one spec."""

_LAST_RESORT = 1.5
"""A process that does not stop at its bound, because it is in a library, is ended after so many times the seconds."""


@dataclass(frozen=True, slots=True)
class _Bounded:
    """A work within its bounds, in this process or, called as `apart`, in another one that has no terminal."""

    work: Work
    bounds: Bounds

    def __call__(self, given: Given) -> Outcome:
        """Return what came of a spec; a fault of the program is told and counted, and the next spec has its turn."""
        start_s = time.perf_counter()
        try:
            with within(self.bounds):
                outcome = self.work(given)
        except (BrokenPipeError, OutputLost):
            raise
        except TooLong:
            outcome = _stopped(given, f"longer than {self.bounds.time_s:g} s; --seconds sets how long a spec may take")
        except MemoryError:
            most = f"{self.bounds.memory_mb} MB of memory" if self.bounds.memory_mb else "the memory that there is"
            outcome = _stopped(given, f"more than {most}; --megabytes sets how much a spec may take")
        except Exception as fault:  # whatever it is, the other specs are dealt with
            report(fault, given.path)
            outcome = Outcome(given.path, State.FAILED, OUR_FAULT, failure=f"{given.path}: {describe(fault)}")
        return replace(outcome, taken_s=time.perf_counter() - start_s)

    def apart(self, given: Given) -> Done:
        """Return what came of a spec and what was told."""
        with held() as told:
            outcome = self(given)
        return outcome, told


def deal(
    work: Work, specs: list[Given], totals: Totals, run: Run, each: Callable[[Outcome], None] = lambda _: None
) -> int:
    """Deal with all specs and close the run; return its exit code, that of the worst spec.

    each: called with what came of each spec.
    """
    lines = Summary()
    with progress(len(specs)) as step, closing(_outcomes(_Bounded(work, run.bounds), specs, run)) as outcomes:
        for outcome in outcomes:
            totals.add(outcome)
            lines.add(outcome)
            each(outcome)
            step()
    for text in totals.closing():
        say(text)
    if run.summary and (problem := lines.written(run.summary)):
        say(problem)
        return max(totals.code, UNUSABLE)
    return totals.code


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _outcomes(work: _Bounded, specs: list[Given], run: Run) -> Generator[Outcome, None, None]:
    """Yield what came of each spec, in their order."""
    done = 0
    jobs = min(run.jobs or _cores(), len(specs))
    try:
        over = shared(Processes(work.apart, jobs, _LAST_RESORT * run.bounds.time_s), specs) if jobs > 1 else None
        for outcome in over or map(work, specs):
            done += 1
            yield outcome
    except KeyboardInterrupt:
        if len(specs) > 1:
            left = f"; the first of the others is {specs[done].path}" if done < len(specs) else ""
            say(f"interrupted: {done} of {len(specs)} specs are done{left}")
        raise


def _stopped(given: Given, why: str) -> Outcome:
    failure = f"{given.path}: stopped, it took {why}"
    say(failure)
    return Outcome(given.path, State.STOPPED, OUR_FAULT, failure=failure)
