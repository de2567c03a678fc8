"""What is written of the conductors of a cable: how many of which size."""

from __future__ import annotations

from sld.citation import with_mark
from sld.model.conductors import cores
from sld.model.device import Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.battery import BATTERY_CABLE
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.spec.blocks.cable import AcCable
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, amount, phrase, sequence, unbroken, verbatim

__all__ = ["conductors"]


def conductors(device: Cable, system: System, ratings: Ratings) -> Sayable:
    """Return the conductors of a cable, nothing where the section is not known.

    `5 × 6 mm²`, `4 × 25 + 16 mm²` with a smaller PE, `2 × (5 × 95) mm²` in parallel, `3 × 2 × 4 mm²` for equal ones.
    """
    section, protective = ratings.get(device.key, Symbol.S), ratings.get(device.key, Symbol.SPE)
    if section is None:
        return NOTHING
    count, unit = cores(system, device), "" if section.trade_name else "mm²"
    given = device.given_as(AC_CABLE) or device.given_as(BATTERY_CABLE)
    parallel = given.parallel if given is not None else 1
    opened, closed = ("(", ")") if parallel > 1 else ("", "")
    parts: list[Sayable] = []
    ac = device.given_as(AC_CABLE)
    if ac is not None and (ac.protective_conductor or ac.neutral_section_mm2):
        parts = _unequal(ac, count, section, protective, opened, closed)
    elif protective is not None and protective.value != section.value and not device.dc and count > 2:
        parts.append(unbroken(sequence([opened, amount(count - 1, "×")], ""), _size(section)))
        parts.append(unbroken("+", sequence([_size(protective), closed], ""), unit))
    else:
        size = unbroken(sequence([_size(section), closed], ""), unit)
        parts.append(unbroken(sequence([opened, amount(count, "×")], ""), size))
    times = parallel if parallel > 1 else device.count
    said = sequence([*([amount(times, "×")] if times > 1 else []), *parts], " ")
    return with_mark(said, section)


def _unequal(
    given: AcCable, count: int, section: Rating, protective: Rating | None, opened: str, closed: str
) -> list[Sayable]:
    """Return the cores of a cable whose neutral is smaller or whose protective conductor is no core: `3 × 95 + 50 mm²`,
    `4 × 25 mm² + armour 76 mm²`, `4 × 25 mm² + 1 × 16 mm²`."""
    lines, apart = count, given.protective_conductor not in (None, "core")
    cores_of: list[Sayable] = []
    if given.neutral_section_mm2 is not None:
        lines, cores_of = lines - 1, [amount(given.neutral_section_mm2)]
    if not apart and protective is not None and count > 3:
        lines, cores_of = lines - 1, [*cores_of, _size(protective)]
    sizes = sequence([_size(section), *cores_of], " + ")
    parts: list[Sayable] = [sequence([opened, amount(lines, "×")], ""), unbroken(sizes, f"mm²{closed}")]
    if given.armour_section_mm2 is not None:
        parts.append(phrase("+ armour {size}", size=amount(given.armour_section_mm2, "mm²")))
    elif apart and protective is not None:
        parts += [verbatim("+"), amount(1, "×"), unbroken(_size(protective), "mm²")]
    return parts


def _size(section: Rating) -> Sayable:
    """Return a section: its trade name, which holds its unit, or the number alone."""
    return verbatim(section.trade_name) if section.trade_name else amount(section.value)
