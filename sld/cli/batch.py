"""The specs of a run, one after the other, over several processes or a cluster: the same files and lines, in one order.

What a spec leaves behind is its `Outcome` and, from another process, the lines that it told; no more is kept of it.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Generator, Iterator
from contextlib import closing
from typing import TYPE_CHECKING

import typer

from sld.cli.bounds import Bounds, TooLong, within
from sld.cli.faults import describe, report
from sld.cli.given import Given
from sld.cli.options import Run
from sld.cli.outcome import OUR_FAULT, UNUSABLE, Outcome, State, Totals
from sld.cli.reports import Reports
from sld.cli.terminal import OutputLost, held, progress, say
from sld.frozen import dataclass, replace

if TYPE_CHECKING:
    from sld.cli.crew import Crew, Done

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

    each: called with what came of each spec. Raises Exit where there is no cluster as asked for, or a file about the
    run cannot be written.
    """
    reports = Reports(run)
    try:
        with progress(len(specs)) as step, closing(_outcomes(_Bounded(work, run.bounds), specs, run)) as outcomes:
            for outcome in outcomes:
                totals.add(outcome)
                reports.add(outcome)
                each(outcome)
                step()
    except BaseException:
        reports.drop()
        raise
    for text in totals.closing():
        say(text)
    reports.finish(totals.counts())
    return max(totals.code, UNUSABLE) if reports.failed else totals.code


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _outcomes(work: _Bounded, specs: list[Given], run: Run) -> Generator[Outcome, None, None]:
    """Yield what came of each spec, in their order."""
    done = 0
    crew = _crew(work, len(specs), run)
    if run.cluster:  # whose workers have another present folder
        specs = [replace(each, path=each.path.absolute()) for each in specs]
    try:
        for outcome in _shared(crew, specs) if crew else map(work, specs):
            done += 1
            yield outcome
    except KeyboardInterrupt:
        if len(specs) > 1:
            left = f"; the first of the others is {specs[done].path}" if done < len(specs) else ""
            say(f"interrupted: {done} of {len(specs)} specs are done{left}")
        raise


def _crew(work: _Bounded, count: int, run: Run) -> Crew | None:
    """Return what shares so many specs; None where this process does them one after the other. Raises Exit.

    Loaded here, as a run of one spec needs none of it.
    """
    if run.cluster and count:
        from sld.cli.cluster import Cluster, NoCluster

        try:
            return Cluster(run.cluster, work.apart, run.out)
        except NoCluster as none:
            say(str(none))
            raise typer.Exit(UNUSABLE) from None
    jobs = min(run.jobs or _cores(), count)
    if jobs < 2:
        return None
    from sld.cli.processes import Processes

    return Processes(work.apart, jobs, _LAST_RESORT * run.bounds.time_s)


def _shared(crew: Crew, specs: list[Given]) -> Iterator[Outcome]:
    from sld.cli.crew import shared

    return shared(crew, specs)


def _stopped(given: Given, why: str) -> Outcome:
    failure = f"{given.path}: stopped, it took {why}"
    say(failure)
    return Outcome(given.path, State.STOPPED, OUR_FAULT, failure=failure)
