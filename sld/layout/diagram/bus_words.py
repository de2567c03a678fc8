"""What is written beside the devices of a data chain: its designation, addresses, terminations."""

from __future__ import annotations

from collections.abc import Iterator

from sld.layout.diagram.diagram import BusChain, BusStep, Medium
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.ranges import listed
from sld.model.wording import MEDIA
from sld.words import NOTHING, Sayable, amount, phrase, sequence, verbatim

__all__ = ["MEDIUM_WORDS", "bus_lines"]

MEDIUM_WORDS: dict[Medium, Sayable] = {
    Medium.RS485: verbatim("RS-485"),
    **{Medium(key): words for key, words in MEDIA.items()},
}

_LISTED_COUNT = 6
"""So many addresses in no order are listed; more of them are left to the schedule."""

_NAMED_COUNT = 2
"""So many devices that have what others of them have not are named."""

_TERMINATION = amount(120, "Ω")


def bus_lines(bus: BusChain, *, named: bool = False) -> Iterator[tuple[str, Line]]:
    """Yield device and line in the order of the chain; its designation stands at its first device.

    named: it stands at the line instead.
    """
    for number, step in enumerate(bus.steps):
        told = [bus.said if number == 0 and not named else NOTHING, *(_settings(step) if bus.settings_told else ())]
        parts = [part for part in told if part]
        if parts:
            yield step.key, Line(Role.LINK, sequence(parts))


def _settings(step: BusStep) -> Iterator[Sayable]:
    """Yield address and termination of a device, or of equal ones that are drawn once.

    The resistor is drawn: it is told of equal devices only, of which it may be at some.
    """
    steps = step.alike or (step,)
    addressed = [each for each in steps if each.address is not None]
    terminated = [each for each in steps if each.terminated]
    if len(addressed) == len(steps):
        numbers = listed([str(each.address) for each in steps], _LISTED_COUNT)
        yield phrase("addr. {address}", address=numbers) if numbers else phrase("addr. see schedule")
    elif len(addressed) > _NAMED_COUNT:
        yield phrase("addr. see schedule")
    else:
        for each in addressed:
            yield _at(phrase("addr. {address}", address=str(each.address)), each)
    if len(terminated) == len(steps):
        return
    elif len(terminated) > _NAMED_COUNT:
        yield phrase("{what} at {count} of {total}", what=_TERMINATION, count=len(terminated), total=len(steps))
    else:
        for each in terminated:
            yield _at(_TERMINATION, each)


def _at(what: Sayable, step: BusStep) -> Sayable:
    return phrase("{what} at {device}", what=what, device=step.designation)
