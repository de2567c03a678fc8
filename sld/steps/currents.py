"""The design current of every AC device: what the inverters, batteries and loads behind it come to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import sqrt

from sld.citation import cited
from sld.model.conductors import line_named, phases, voltage_v
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    Device,
    GeneratorUnit,
    InverterUnit,
)
from sld.model.kinds.ac import METER, SERVICE_FUSE
from sld.model.planned import feeding, without_planned
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import inverter, line_currents
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.line_sums import by_line, highest_amperes, lines_fed, phasors, together, works_between_lines
from sld.words import NOTHING, Phrase, amount, phrase

__all__ = ["charging_limits", "currents", "takers"]

_CLAUSE = cited(phrase("common practice: no diversity between sources"), phrase("loads at their highest current"))


def currents(system: System, ledger: Ledger) -> None:
    """Rate the units first, then every device between them and the network.

    Devices are rated for what is planned behind them too; the export of the whole system leaves it out.
    """
    for unit in system.of(InverterUnit):
        design = _inverter(system, unit)
        ledger.add(unit.key, design)
        if unit.type.current_max_a is None:
            ledger.add(unit.key, inverter.current_at_low_voltage(design.value))
    for battery in system.of(BatteryUnit):
        if not battery.dc:
            ledger.add(battery.key, _battery(system, battery))
    for generator in system.of(GeneratorUnit):
        ledger.add(generator.key, _generator(system, generator))
    for load in system.of(Consumer):
        ledger.add(load.key, _load(system, load))
    known: dict[tuple[str, bool], tuple[Rating, ...]] = {}
    for device in system.of(Device):
        if not device.dc and isinstance(device, Apparatus | Cable | Busbar):
            if isinstance(served := system.devices.get(device.owner), GeneratorUnit):
                # which feeds this circuit alone, and never together with what else is here
                ledger.add(device.key, ledger.get(served.key, Symbol.IB))
            else:
                row = _end_of_row(system, device), phases(system, device.owner) == 3
                if row not in known:
                    known[row] = tuple(_between(system, ledger, *row))
                ledger.add(device.key, *known[row])
            if device.kind is SERVICE_FUSE:
                ledger.add(device.key, _limited(system, ledger, device))
    ledger.add("", _sum(system, ledger, without_planned(system, feeding(system)), Symbol.IEXPORT))


def _limited(system: System, ledger: Ledger, device: Device) -> Rating | None:
    """Return the export through the service fuse at the feed-in limit that a meter measures for, else None. [A]"""
    limit_w, export = system.supply.export_limit_w, ledger.get(device.key, Symbol.IEXPORT)
    if limit_w is None or export is None or all(each.purpose != "feed_in_limit" for _, each in system.given_as(METER)):
        return None
    power_va = sum(unit.apparent_power_va for unit in system.every(InverterUnit))
    power_va += sum(each.given.converter_power_va or 0.0 for each in system.of(BatteryUnit) if not each.dc)
    if limit_w >= power_va:
        return None
    given = (export.as_input(), Given("PAV,E", limit_w, "W"), Given("Σ S", power_va, "VA"))
    value, clause = (
        export.value * limit_w / power_va,
        cited(phrase("common practice: the limit holds for all lines alike")),
    )
    return Rating(Symbol.IEXPORT_LIMIT, value, "A", "Iexport · PAV,E / Σ S", given, clause)


def _inverter(system: System, unit: InverterUnit) -> Rating:
    type_ = unit.type
    return inverter.design_current(
        phases(system, unit.key),
        type_.rated_voltage_v or voltage_v(system, unit.key),
        unit.apparent_power_va,
        type_.current_max_a,
    )


def _battery(system: System, battery: BatteryUnit) -> Rating | None:
    given = battery.given
    if given.converter_current_max_a is None and given.converter_power_va is None:
        return None
    return inverter.design_current(
        phases(system, battery.key),
        voltage_v(system, battery.key),
        given.converter_power_va,
        given.converter_current_max_a,
    )


def _generator(system: System, generator: GeneratorUnit) -> Rating:
    given = generator.given
    return inverter.design_current(
        phases(system, generator.key), voltage_v(system, generator.key), given.power_va, given.current_max_a
    )


def _load(system: System, load: Consumer) -> Rating | None:
    given = load.given
    if given.current_a is not None:
        return specified(Symbol.IB, given.current_a, "A")
    if given.power_w is None:
        return None
    phase_count, across_v = phases(system, load.key), voltage_v(system, load.key)
    value = given.power_w / (across_v * (3**0.5 if phase_count == 3 else 1))
    formula = "P / (√3 · U)" if phase_count == 3 else "P / U"
    given_values = (Given("P", given.power_w, "W"), Given("U", across_v, "V"))
    unsaid = system.supply.split_phase and line_named(system, load.key) is None
    said = (
        phrase("loads at power factor 1"),
        *((phrase("loads work between the two lines"),) if unsaid else ()),
    )
    return Rating(Symbol.IB, value, "A", formula, given_values, _CLAUSE, assumptions=said)


def _end_of_row(system: System, device: Device) -> str:
    """Return the key of the last of the devices in a row from one on, which all carry the same current."""
    key = device.key
    while len(children := system.children.get(key, ())) == 1:
        if not isinstance(system.devices[children[0]], Apparatus | Cable | Busbar):
            break
        key = children[0]
    return key


def _between(system: System, ledger: Ledger, key: str, three_phase: bool) -> Iterator[Rating]:
    """Yield the export and the import current through a device; the larger is its design current."""
    behind = list(system.downstream(key))
    sources = [d for d in behind if isinstance(d, InverterUnit | BatteryUnit) and not d.dc]
    exported = _sum(system, ledger, sources, Symbol.IEXPORT)
    imported = _sum(system, ledger, takers(system, behind), Symbol.IIMPORT)
    both = [rating for rating in (exported, imported) if rating is not None]
    if not both:
        return
    yield from both
    if system.supply.phases == 3 and three_phase:
        amperes = highest_amperes(ledger, sources)
        if any(works_between_lines(system, unit) for unit in sources):
            neutral, rise = line_currents.between_lines(phasors(system, sources, amperes))
            yield from (neutral, rise) if system.supply.has_neutral else (rise,)
        else:
            yield from _unbalance(by_line(system, sources, amperes))
    larger = max(both, key=lambda rating: rating.value)
    single = len(larger.given) == 1
    formula = (
        larger.given[0].symbol if single else phrase("larger of export and import: {symbol}", symbol=larger.symbol)
    )
    yield Rating(Symbol.IB, larger.value, "A", formula, larger.given, larger.clause, NOTHING, larger.assumptions)


def takers(system: System, behind: list[Device]) -> list[Device]:
    """Return what takes power from the network: loads, batteries, and inverters that charge a battery."""
    charging = {device.owner for device in behind if isinstance(device, BatteryUnit) and device.dc}
    return [
        device
        for device in behind
        if isinstance(device, Consumer)
        or (isinstance(device, BatteryUnit) and not device.dc)
        or (isinstance(device, InverterUnit) and device.key in charging and device.given.charging_current_max_a != 0)
    ]


def _sum(system: System, ledger: Ledger, units: Sequence[Device], symbol: Symbol) -> Rating | None:
    """Add the currents of units line by line and return the most loaded line's."""
    known = [unit for unit in units if ledger.get(unit.key, Symbol.IB) is not None]
    if not known:
        return None
    highest, limited = highest_amperes(ledger, known), dict[str, Phrase]()
    if symbol is Symbol.IIMPORT:
        limited = charging_limits(known, highest)
    amperes, why = together(system, known, highest)
    why = {**limited, **why}
    given = tuple(
        Given(f"Ib({unit.designation})", amperes[unit.key], "A", why.get(unit.key, NOTHING)) for unit in known
    )
    unplaced = any(lines_fed(system, unit) is None for unit in known)
    assumed = (phrase("single-phase units without a given line all on one"),) if unplaced and len(known) > 1 else ()
    factors = [unit.given.diversity_factor for unit in known if isinstance(unit, Consumer)]
    if len(factors) > 1 and None in factors:
        assumed = (*assumed, phrase("loads without a diversity factor at 1"))
    value = max(by_line(system, known, amperes).values())
    return Rating(symbol, value, "A", phrase("Σ Ib of the most loaded line"), given, _CLAUSE, NOTHING, assumed)


def charging_limits(units: Sequence[Device], highest: dict[str, float]) -> dict[str, Phrase]:
    """Lower the currents of inverters to what they draw to charge, and return why, by key."""
    why: dict[str, Phrase] = {}
    for unit in units:
        most_a = unit.given.charging_current_max_a if isinstance(unit, InverterUnit) else None
        if most_a is not None and most_a < highest[unit.key]:
            highest[unit.key] = most_a
            why[unit.key] = phrase("charging current {limit}", limit=amount(most_a, "A"))
    return why


def _unbalance(lines: dict[str, float]) -> tuple[Rating, ...]:
    """Return the neutral current at full export and the current that stands for it in the rise; none where balanced.

    With currents in phase with their voltages the rise of line 1 against the neutral is R·L·[I1 + (I1 − (I2 + I3)/2)],
    line and neutral: the same as a single-phase circuit with I1 − (I2 + I3)/4.
    """
    first, *others = sorted(lines.values(), reverse=True)
    if first == others[-1]:
        return ()
    given = tuple(Given(f"I{place}", value, "A") for place, value in enumerate((first, *others), start=1))
    second, third = others
    neutral_a = sqrt(first**2 + second**2 + third**2 - first * second - second * third - third * first)
    clause = cited(phrase("phasor sum of currents 120° apart, unity power factor"), remark=phrase("own derivation"))
    return (
        Rating(Symbol.I_NEUTRAL, neutral_a, "A", "√(I1² + I2² + I3² − I1·I2 − I2·I3 − I3·I1)", given, clause),
        Rating(Symbol.IRISE, first - (second + third) / 4, "A", "I1 − (I2 + I3)/4", given, clause),
    )
