"""Of values that are held against a limit, the one that is nearest to it: the rows that a reviewer looks at first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.citation import with_mark
from sld.documents.cell import Cell, by_ratings, given
from sld.frozen import dataclass
from sld.layout.diagram.labels import input_current
from sld.model.device import Apparatus, Cable, Device, InputTerminal
from sld.model.planned import without_planned
from sld.model.system import System
from sld.number import digits_to_tell_apart
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import Phrase, amount, phrase, sequence, unbroken

__all__ = ["QuantityRow", "dc_rows", "fault_rows", "supply_side_rows"]

QuantityRow = tuple[Cell, Cell]
"""What it is, and its value with its limit or place."""


@dataclass(frozen=True, slots=True)
class _Held:
    """A value of a device against its limit."""

    device: Device
    value: Rating
    limit: Rating


def _share(held: _Held) -> float:
    """Return how much of the limit is used, 1 at the limit."""
    return held.value.value / held.limit.value if held.limit.value else float("inf")


def _volts(held: _Held) -> float:
    return held.value.value


def highest_voltage(system: System, ratings: Ratings) -> Iterator[Cell]:
    """Yield the highest DC voltage of all inputs, and what the inverter there stands."""
    held = list(_voltages(system, ratings))
    if held:
        yield _against_limit(max(held, key=_volts), "", "")


def dc_rows(system: System, ratings: Ratings) -> Iterator[QuantityRow]:
    """Yield voltage and current of the input, and the current of the array cable, that are nearest to their limits."""
    inputs = list(without_planned(system, system.of(InputTerminal)))
    voltages = list(_voltages(system, ratings))
    if voltages and max(voltages, key=_share).value.value < max(map(_volts, voltages)):
        yield from _row(phrase("DC voltage"), "Uoc", voltages)
    currents = ((each, *input_current(each, ratings)) for each in inputs)
    yield from _row(phrase("Input current"), "Isc", _held(currents))
    cables = (each for each in without_planned(system, system.of(Cable)) if each.in_array)
    carried = ((each, ratings.get(each.key, Symbol.IZ_MIN), ratings.get(each.key, Symbol.IZ)) for each in cables)
    yield from _row(phrase("DC cable"), "", _held(carried), "Iz")


def supply_side_rows(system: System, ratings: Ratings) -> Iterator[QuantityRow]:
    """Yield the current of the AC cable, as its protective device lets it through, that is nearest to its limit."""
    cables = [each for each in without_planned(system, system.of(Cable)) if not each.dc]
    carried = ((each, _let_through(system, ratings, each), ratings.get(each.key, Symbol.IZ)) for each in cables)
    yield from _row(phrase("AC cable"), "", _held(carried), "Iz")


def fault_rows(system: System, ratings: Ratings) -> Iterator[QuantityRow]:
    """Yield the fault current that is nearest to the breaking capacity of the device that has to break it."""
    devices = [each for each in without_planned(system, system.of(Apparatus)) if not each.dc]
    broken = ((each, ratings.get(each.key, Symbol.IK_MAX), ratings.get(each.key, Symbol.ICN)) for each in devices)
    yield from _row(phrase("Fault current"), "Ik", _held(broken), "")


def _voltages(system: System, ratings: Ratings) -> Iterator[_Held]:
    """Yield the highest voltage of each input against what its inverter stands."""
    for terminal in without_planned(system, system.of(InputTerminal)):
        value = ratings.get(terminal.key, Symbol.UOC_MAX)
        limit = ratings.get(system.inverter_of(terminal).key, Symbol.UDC_MAX)
        if value and limit:
            yield _Held(terminal, value, limit)


def _let_through(system: System, ratings: Ratings, cable: Cable) -> Rating | None:
    device = overcurrent_device(system, cable.key)
    both = ratings.get(cable.key, Symbol.I_BOTH)
    rated = ratings.get(device.key, Symbol.IN) if device else None
    return both or rated or ratings.get(cable.key, Symbol.IZ_MIN)


def _held(found: Iterable[tuple[Device, Rating | None, Rating | None]]) -> Iterator[_Held]:
    return (_Held(device, value, limit) for device, value, limit in found if value and limit)


def _row(name: Phrase, symbol: str, found: Iterable[_Held], of_limit: str = "") -> Iterator[QuantityRow]:
    held = list(found)
    if held:
        worst = max(held, key=_share)
        yield given(sequence([name, worst.device.designation], " ")), _against_limit(worst, symbol, of_limit)


def _against_limit(held: _Held, symbol: str, of_limit: str) -> Cell:
    """Return the cell of a value and its limit, in such a way that one sees whether it is exceeded."""
    value, limit = held.value, held.limit
    digits = digits_to_tell_apart(value.value, limit.value)
    has, most = amount(value.value, value.unit, digits), amount(limit.value, limit.unit, digits)
    sign = ">" if value.value > limit.value else "≤"
    return by_ratings(with_mark(unbroken(symbol, has, sign, of_limit, most), value, limit), value, limit)
