"""What a pointer resting on a device says, and the drawing in a few sentences for readers who cannot see it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain

from sld.documents.drawing.findings import told
from sld.layout.diagram.flags import Flag
from sld.model.device import Apparatus, InverterUnit, StringGroup
from sld.model.planned import without_planned
from sld.model.system import System
from sld.model.wording import device_counts, device_word
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Sayable, Value, amount, counted, phrase, sequence

__all__ = ["description", "hover_texts"]


_TOLD_COUNT = 5
"""So many ratings of a device are told; with its name, the count of the others and of equal devices they are eight
lines."""

_FIRST = (
    Symbol.UOC_MAX, Symbol.ISC_MAX, Symbol.IB, Symbol.IN, Symbol.IZ, Symbol.S, Symbol.IK_MAX, Symbol.ICN, Symbol.DU_AC,
    Symbol.DU_DC,
)  # fmt: skip
"""What is asked for first; the others follow in the order of their computation."""


def hover_texts(system: System, ratings: Ratings, flags: Sequence[Flag]) -> Mapping[str, Sayable]:
    """Return for each device its designation and the traces of its first ratings, one a line; for each flag its
    finding."""
    return _Told(system, ratings, flags)


class _Told(Mapping[str, Sayable]):
    """What is told of devices and flags by their keys, of a device when it is asked for: most are drawn with others."""

    def __init__(self, system: System, ratings: Ratings, flags: Sequence[Flag]) -> None:
        self._system, self._ratings = system, ratings
        self._flags = _of_flags(flags)
        self._traces: dict[Rating, Sayable] = {}
        self._more: dict[int, Sayable] = {}

    def __getitem__(self, key: str) -> Sayable:
        if key in self._flags:
            return self._flags[key]
        device = self._system.devices[key]
        head = sequence([device.designation, device_word(device), device.name, device.make, device.model], " ")
        return sequence([head, *self._traced(self._ratings.of(key))], "\n")

    def _traced(self, ratings: Sequence[Rating]) -> Iterator[Sayable]:
        """Yield the traces of the ratings that matter most, one for equal ones, and how many more the calculation
        has."""
        ordered = sorted(ratings, key=lambda each: _FIRST.index(each.symbol) if each.symbol in _FIRST else len(_FIRST))
        for rating in ordered[:_TOLD_COUNT]:
            if (trace := self._traces.get(rating)) is None:
                trace = self._traces[rating] = rating.trace()
            yield trace
        more = len(ordered) - _TOLD_COUNT
        if more > 0 and more not in self._more:
            self._more[more] = counted(
                "{count} more rating in the calculation", "{count} more ratings in the calculation", more
            )
        if more > 0:
            yield self._more[more]

    def __contains__(self, key: object) -> bool:
        return key in self._system.devices or key in self._flags

    def __iter__(self) -> Iterator[str]:
        return chain(self._system.devices, self._flags)

    def __len__(self) -> int:
        return len(self._system.devices) + len(self._flags)


def _of_flags(flags: Sequence[Flag]) -> dict[str, Sayable]:
    found: dict[str, Sayable] = {}
    for flag in flags:
        found[f"flag-{flag.number}"] = sequence([told(flag.findings[0], flag.message), flag.remedy], "\n")
    return found


def _counts(groups: Sequence[StringGroup], units: Sequence[InverterUnit], power: Value | None = None) -> list[Value]:
    """Return the counts of modules, strings and inverters, with the power of the modules."""
    modules_count = sum(group.given.count * group.given.modules_in_series for group in groups)
    strings_count = sum(group.given.count for group in groups)
    of_strings: list[Value] = [
        counted("{count} PV module", "{count} PV modules", modules_count),
        counted("{count} string", "{count} strings", strings_count),
        *([power] if power is not None else ()),
    ]
    of_units = counted("{count} inverter", "{count} inverters", len(units))
    return [*(of_strings if groups else ()), *([of_units] if units else ())]


def description(system: System, ratings: Ratings) -> Sayable:
    """Return the topology in a few sentences: counts, powers, protection; what is only planned apart."""
    all_groups, all_units = list(system.of(StringGroup)), list(system.of(InverterUnit))
    groups, units = without_planned(system, all_groups), without_planned(system, all_units)
    power = ratings.get("", Symbol.PDC)
    array = _counts(groups, units, amount(power.value / 1000, "kWp") if power else None)
    built = {each.key for each in (*groups, *units)}
    later = _counts([g for g in all_groups if g.key not in built], [u for u in all_units if u.key not in built])
    supply = {"voltage": amount(system.voltage_v, "V"), "earthing_system": system.supply.earthing_system}
    return sequence(
        [
            phrase("Single-line diagram of {title}.", title=system.project.title),
            *([phrase("{array}.", array=sequence(array))] if array else ()),
            *([phrase("Planned besides: {array}.", array=sequence(later))] if later else ()),
            phrase("Three-phase supply of {voltage}, earthing system {earthing_system}.", **supply)
            if system.supply.phases == 3
            else phrase("Single-phase supply of {voltage}, earthing system {earthing_system}.", **supply),
            phrase("On the way: {devices}.", devices=sequence(device_counts(system.of(Apparatus)))),
        ],
        " ",
    )
