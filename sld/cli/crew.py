"""What shares the specs of a run: processes of this machine, or of a cluster, by one interface.

A crew hands out specs to an executor of `concurrent.futures`; the schedule is the executor's.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures import Future
from itertools import islice
from typing import Protocol

from sld.cli.given import Given
from sld.cli.outcome import OUR_FAULT, Outcome, State
from sld.cli.terminal import Told, held, say, tell_again

__all__ = ["Crew", "Done", "Waiting", "killed", "shared"]

Done = tuple[Outcome, list[Told]]
"""What came of a spec, and the lines that were told of it."""

Waiting = deque[tuple[Given, "Future[Done]"]]
"""Specs that were handed out and not yet told, the first one first."""

_AHEAD_COUNT = 8
"""Specs for each process that may wait or be done while an earlier one still takes its time."""


class Crew(Protocol):
    """Several processes. width: how many. lost: what a spec fails with whose process was killed."""

    width: int
    lost: type[Exception]

    def submit(self, given: Given) -> Future[Done]:
        """Hand out a spec."""

    def again(self, waiting: Waiting) -> Iterator[Done]:
        """Take from the first specs that wait, whose process was killed, and yield what came of them in the end."""

    def close(self) -> None:
        """End; what is begun is finished, and the rest is not."""


def shared(crew: Crew, specs: Iterable[Given]) -> Iterator[Outcome]:
    """Yield what came of each spec, in their order, and tell what it told."""
    rest = iter(specs)
    waiting: Waiting = deque()
    try:
        while True:
            ahead = crew.width * _AHEAD_COUNT - len(waiting)
            waiting.extend((each, crew.submit(each)) for each in islice(rest, ahead))
            if not waiting:
                return
            _, future = waiting[0]
            if not isinstance(future.exception(), crew.lost):
                waiting.popleft()
                yield _told(future.result())
                continue
            for done in crew.again(waiting):
                yield _told(done)
    except KeyboardInterrupt:
        crew.close()
        for _, future in waiting:
            if not future.cancelled() and not future.exception():
                yield _told(future.result())
        raise
    finally:
        crew.close()


def killed(given: Given) -> Done:
    """Return what is said of a spec that ends its process each time."""
    failure = f"{given.path}: its process was killed; memory that ran out is the usual reason"
    with held() as told:
        say(failure)
    return Outcome(given.path, State.KILLED, OUR_FAULT, failure=failure), told


def _told(done: Done) -> Outcome:
    outcome, told = done
    tell_again(told)
    return outcome
