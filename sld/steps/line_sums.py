"""What the currents of units come to where their circuits join: line by line, with diversity and load management."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.model.conductors import line_named, lines_count, phases
from sld.model.device import Consumer, DataNode, Device
from sld.model.system import System
from sld.ratings import line_currents
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.words import Phrase, amount, phrase

__all__ = ["by_line", "highest_amperes", "lines_counted", "lines_fed", "phasors", "together", "works_between_lines"]


def highest_amperes(ledger: Ledger, units: Sequence[Device]) -> dict[str, float]:
    """Return the highest current of each unit by its key, nothing counted as zero. [A]"""
    return {unit.key: ledger.value(unit.key, Symbol.IB) or 0.0 for unit in units}


def by_line(system: System, units: Sequence[Device], amperes: Mapping[str, float]) -> dict[str, float]:
    """Return the sum of the currents on each line conductor in A; a unit that names no line counts on L1.

    Currents on one line add as numbers, but for units between two lines, whose currents are 30° off.
    """
    if any(works_between_lines(system, unit) for unit in units):
        return {line: abs(current) for line, current in phasors(system, units, amperes).items()}
    lines = {"L1": 0.0, "L2": 0.0, "L3": 0.0}
    for unit in units:
        for line in lines_counted(system, unit):
            lines[line] += amperes[unit.key]
    return lines


def together(
    system: System, units: Sequence[Device], amperes: dict[str, float]
) -> tuple[dict[str, float], dict[str, Phrase]]:
    """Return the currents of units where their circuits join, and why some are below the highest.

    The diversity factors of loads count first, then what load management keeps a sum below; a unit that is alone
    behind a device takes its highest current there. Source: IEC 60364-1 311 (from memory).
    """
    why: dict[str, Phrase] = {}
    if len(units) < 2:
        return amperes, why
    for load in units:
        factor = load.given.diversity_factor if isinstance(load, Consumer) else None
        if factor is not None and factor < 1:
            amperes[load.key] *= factor
            why[load.key] = phrase("diversity factor {factor}", factor=amount(factor))
    for controller in system.of(DataNode):
        limit = controller.given.load_limit
        if limit is None:
            continue
        keys = {key for name in limit.loads for key in system.names[name]}
        managed = [load for load in units if load.key in keys]
        sum_a = max(by_line(system, managed, amperes).values())
        if sum_a > limit.current_a:
            held = phrase("load management {limit}", limit=amount(limit.current_a, "A"))
            amperes |= {load.key: amperes[load.key] * limit.current_a / sum_a for load in managed}
            why |= dict.fromkeys((load.key for load in managed), held)
    return amperes, why


def works_between_lines(system: System, unit: Device) -> bool:
    """Return whether a unit works between two lines of three phases."""
    return system.supply.phases == 3 and lines_count(system, unit.key) == 2


def phasors(system: System, units: Sequence[Device], amperes: Mapping[str, float]) -> dict[str, complex]:
    """Return the current of each line conductor as a phasor, all at unity power factor. [A]"""
    return line_currents.phasors((lines_counted(system, unit), amperes[unit.key]) for unit in units)


def lines_fed(system: System, unit: Device) -> tuple[str, ...] | None:
    """Return the lines that a unit feeds: all, the one it names, or None where it does not say which."""
    line = line_named(system, unit.key)
    if system.supply.phases == 1:
        if not system.supply.split_phase:
            return ("L1",)
        return (line,) if line in ("L1", "L2") else ("L1", "L2")
    if phases(system, unit.key) == 1:
        named = line is not None and (system.supply.has_neutral or "-" in line)
        return tuple(line.split("-")) if line and named else None
    return ("L1", "L2", "L3")


def lines_counted(system: System, unit: Device) -> tuple[str, ...]:
    """Return the lines that a unit counts on: those it feeds, where it does not say which L1, without a neutral L1 and
    L2, so that all such units come together on the same."""
    return lines_fed(system, unit) or (("L1",) if system.supply.has_neutral else ("L1", "L2"))
