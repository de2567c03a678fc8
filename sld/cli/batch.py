"""The specs of a run, one after the other or over several processes: the same files, and the same lines in one order.

What a spec leaves behind is its `Outcome` and, from another process, the lines that it told; no more is kept of it.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import time
from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import replace
from itertools import islice
from pathlib import Path

from sld.cli import COLLECT_FROM_COUNT, INTERRUPTED
from sld.cli.faults import describe, report
from sld.cli.given import Given
from sld.cli.outcome import OUR_FAULT, UNUSABLE, Outcome, State, Totals
from sld.cli.summary import Summary
from sld.cli.terminal import OutputLost, Told, held, say, tell_again

__all__ = ["Work", "deal"]

Work = Callable[[Given], Outcome]
"""What a command does for one spec."""

_AHEAD_COUNT = 8
"""Specs for each process that may wait or be done while an earlier one still takes its time."""


def deal(
    work: Work, specs: list[Given], totals: Totals, jobs: int | None, summary: Path | None,
    each: Callable[[Outcome], None] = lambda _: None,
) -> int:  # fmt: skip
    """Deal with all specs and close the run; return its exit code, that of the worst spec.

    jobs: processes, None for one a core. summary: a file for a line a spec. each: called with what came of each spec.
    """
    lines = Summary()
    for outcome in _outcomes(work, specs, min(jobs or _cores(), len(specs))):
        totals.add(outcome)
        lines.add(outcome)
        each(outcome)
    for text in totals.closing():
        say(text)
    if summary and (problem := lines.written(summary)):
        say(problem)
        return max(totals.code, UNUSABLE)
    return totals.code


def _cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _outcomes(work: Work, specs: list[Given], jobs: int) -> Iterator[Outcome]:
    """Yield what came of each spec, in their order."""
    done = 0
    try:
        for outcome in _over_processes(work, specs, jobs) if jobs > 1 else (_dealt_with(work, each) for each in specs):
            done += 1
            yield outcome
    except KeyboardInterrupt:
        if len(specs) > 1:
            left = f"; the first of the others is {specs[done].path}" if done < len(specs) else ""
            say(f"interrupted: {done} of {len(specs)} specs are done{left}")
        raise


def _dealt_with(work: Work, given: Given) -> Outcome:
    """Return what came of a spec; a fault of the program is told and counted, and the next spec has its turn."""
    start_s = time.perf_counter()
    try:
        outcome = work(given)
    except (BrokenPipeError, OutputLost):
        raise
    except Exception as fault:  # whatever it is, the other specs are dealt with
        report(fault, given.path)
        outcome = Outcome(given.path, State.FAILED, OUR_FAULT, failure=f"{given.path}: {describe(fault)}")
    return replace(outcome, taken_s=time.perf_counter() - start_s)


def _over_processes(work: Work, specs: list[Given], jobs: int) -> Iterator[Outcome]:
    """Yield what came of each spec, in their order, and tell what it told.

    Where a process is killed its pool is gone. The specs that were handed out are then tried again, each in a process
    of its own, so that the one that kills it is known; then the rest goes on in a new pool.
    """
    rest = iter(specs)
    waiting: deque[tuple[Given, Future[_Done]]] = deque()
    pool = _pool(work, jobs)
    try:
        while True:
            waiting.extend((each, _submitted(pool, each)) for each in islice(rest, jobs * _AHEAD_COUNT - len(waiting)))
            if not waiting:
                return
            given, future = waiting[0]
            if not isinstance(future.exception(), BrokenProcessPool):
                waiting.popleft()
                yield _told(future.result())
                continue
            pool.shutdown()
            while waiting:
                given, future = waiting.popleft()
                yield _told(_alone(work, given) if future.exception() else future.result())
            pool = _pool(work, jobs)
    except KeyboardInterrupt:
        pool.shutdown(cancel_futures=True)  # what is begun is finished
        for _, future in waiting:
            if not future.cancelled() and not future.exception():
                yield _told(future.result())
        raise
    finally:
        pool.shutdown(cancel_futures=True)


_Done = tuple[Outcome, list[Told]]

_work: Work | None = None
"""In a process of a pool: what is to be done there for each spec."""


def _pool(work: Work, jobs: int) -> ProcessPoolExecutor:
    """Return processes that know the work. Copies of this one, where the system can make them, need no start."""
    method = "fork" if "fork" in multiprocessing.get_all_start_methods() and os.name == "posix" else None
    context = multiprocessing.get_context(method)
    return ProcessPoolExecutor(jobs, mp_context=context, initializer=_begin, initargs=(work,))


def _begin(work: Work) -> None:
    """Prepare a process of a pool: an interrupt of the keyboard lets it finish its spec, a second one ends it."""
    global _work
    _work = work
    gc.set_threshold(COLLECT_FROM_COUNT)

    def end(*_: object) -> None:
        os._exit(INTERRUPTED)

    def finish(*_: object) -> None:
        signal.signal(signal.SIGINT, end)

    signal.signal(signal.SIGINT, finish)


def _done(given: Given) -> _Done:
    """Deal with a spec in a process of a pool."""
    assert _work is not None
    with held() as told:
        outcome = _dealt_with(_work, given)
    return outcome, told


def _submitted(pool: ProcessPoolExecutor, given: Given) -> Future[_Done]:
    """Hand a spec to a pool; one whose process was killed fails it at once."""
    try:
        return pool.submit(_done, given)
    except BrokenProcessPool as broken:
        failed: Future[_Done] = Future()
        failed.set_exception(broken)
        return failed


def _alone(work: Work, given: Given) -> _Done:
    """Deal with a spec in a process of its own."""
    with _pool(work, 1) as pool:
        future = _submitted(pool, given)
        if not isinstance(future.exception(), BrokenProcessPool):
            return future.result()
    failure = f"{given.path}: its process was killed; memory that ran out is the usual reason"
    with held() as told:
        say(failure)
    return Outcome(given.path, State.KILLED, OUR_FAULT, failure=failure), told


def _told(done: _Done) -> Outcome:
    outcome, told = done
    tell_again(told)
    return outcome
