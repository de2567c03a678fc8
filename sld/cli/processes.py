"""Processes of this machine that share the specs of a run, and what is done where one of them is killed."""

from __future__ import annotations

import faulthandler
import gc
import multiprocessing
import os
import signal
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool

from sld.cli import COLLECT_FROM_COUNT, INTERRUPTED
from sld.cli.crew import Done, Waiting, killed
from sld.cli.given import Given

__all__ = ["Processes"]

_work: Callable[[Given], Done] | None = None
"""In a process of a pool: what is to be done there for each spec."""

_last_resort_s = 0.0


class Processes:
    """So many processes. last_resort_s: one that is busy with a spec for longer is ended; 0 for none."""

    lost: type[Exception] = BrokenProcessPool

    def __init__(self, work: Callable[[Given], Done], count: int, last_resort_s: float) -> None:
        self.width = count
        self._asked = (work, last_resort_s)
        self._pool = self._opened(count)

    def submit(self, given: Given) -> Future[Done]:
        """Hand out a spec; where a process was killed it fails at once."""
        return _submitted(self._pool, given)

    def again(self, waiting: Waiting) -> Iterator[Done]:
        """Deal with what was handed out when a process was killed, which takes all others with it.

        Each is tried again in a process of its own, so that the one that kills it is known; then there are new ones.
        """
        self._pool.shutdown()
        while waiting:
            given, future = waiting.popleft()
            yield self._alone(given) if future.exception() else future.result()
        self._pool = self._opened(self.width)

    def close(self) -> None:
        """End; what is begun is finished."""
        self._pool.shutdown(cancel_futures=True)

    def _alone(self, given: Given) -> Done:
        with self._opened(1) as pool:
            future = _submitted(pool, given)
            if not isinstance(future.exception(), BrokenProcessPool):
                return future.result()
        return killed(given)

    def _opened(self, count: int) -> ProcessPoolExecutor:
        """Return processes that know the work. Copies of this one, where the system can make them, need no start."""
        method = "fork" if "fork" in multiprocessing.get_all_start_methods() and os.name == "posix" else None
        context = multiprocessing.get_context(method)
        return ProcessPoolExecutor(count, mp_context=context, initializer=_begin, initargs=self._asked)


def _submitted(pool: ProcessPoolExecutor, given: Given) -> Future[Done]:
    try:
        return pool.submit(_done, given)
    except BrokenProcessPool as broken:
        failed: Future[Done] = Future()
        failed.set_exception(broken)
        return failed


def _begin(work: Callable[[Given], Done], last_resort_s: float) -> None:
    """Prepare a process of a pool: an interrupt of the keyboard lets it finish its spec, a second one ends it."""
    global _work, _last_resort_s
    _work, _last_resort_s = work, last_resort_s
    gc.set_threshold(COLLECT_FROM_COUNT)

    def end(*_: object) -> None:
        os._exit(INTERRUPTED)

    def finish(*_: object) -> None:
        signal.signal(signal.SIGINT, end)

    signal.signal(signal.SIGINT, finish)


def _done(given: Given) -> Done:
    """Deal with a spec in a process of a pool."""
    assert _work is not None
    if not _last_resort_s:
        return _work(given)
    with open(os.devnull, "wb") as nowhere:
        faulthandler.dump_traceback_later(_last_resort_s, exit=True, file=nowhere)
        try:
            return _work(given)
        finally:
            faulthandler.cancel_dump_traceback_later()
