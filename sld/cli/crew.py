"""What shares the specs of a run: processes of this machine, or of a cluster, by one interface.

A crew hands out specs to an executor of `concurrent.futures`; the schedule is the executor's.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, wait
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
"""Specs for each process that are handed out and not yet done."""

_HELD_COUNT = 1000
"""Specs that may be done while an earlier one still takes its time, so that lines are told in order."""


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
            _hand_out(crew, rest, waiting)
            if not waiting:
                return
            _, future = waiting[0]
            if not future.done():
                wait([each for _, each in waiting if not each.done()], return_when=FIRST_COMPLETED)
            elif not isinstance(future.exception(), crew.lost):
                waiting.popleft()
                yield _told(future.result())
            else:
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


def _hand_out(crew: Crew, rest: Iterator[Given], waiting: Waiting) -> None:
    """Hand out specs so that no process waits for one, though the first takes its time; none to a crew that is lost."""
    busy = sum(not future.done() for _, future in waiting)
    most = crew.width * _AHEAD_COUNT
    while busy < most and len(waiting) < most + _HELD_COUNT:
        given = next(rest, None)
        if given is None:
            return
        future = crew.submit(given)
        waiting.append((given, future))
        if future.done():  # at once: it may have failed
            return
        busy += 1


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
