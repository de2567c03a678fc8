"""AC cables: the current they must carry, what they can carry as laid, their section, and the voltage rise."""

from __future__ import annotations

from contextlib import suppress

from sld.citation import from_memory
from sld.frozen import dataclass, replace
from sld.model.conductors import phases, voltage_v
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import ac_cable, board, breaker, conductor, protective_conductor, voltage_change
from sld.ratings.cable_section import CableDesign, smallest_section, temperature_at
from sld.ratings.passed_over import outgrown
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.cable_conditions import correction_factors
from sld.steps.cable_conductors import is_combined
from sld.steps.cable_design import conductor_material, design, hot_c, insulation, with_nearest
from sld.steps.ledger import Ledger
from sld.steps.protection import load_is_unknown, overcurrent_device, protective_family
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.tables.profiles import profile
from sld.tables.table import NoRow
from sld.words import Phrase, amount, phrase

__all__ = [
    "ExportFlow",
    "ac_cables",
    "as_laid",
    "export_flow",
    "governed_by",
    "incoming_device",
    "leakage_section",
    "power_factors",
    "rise_limit_percent",
    "rise_with",
    "takes_power",
    "voltage_rises",
]

_I2_SHARE = 1.45
_OVERLOAD = from_memory("IEC 60364-4-43:2008 433.1")


def rise_limit_percent(system: System) -> float | None:
    """Return the limit of the voltage rise from the supply point to an inverter, None where there is none. [%]"""
    if system.supply.voltage_rise_limit_percent is not None:
        return system.supply.voltage_rise_limit_percent
    limit = profile(system.profile).ac_rise_limit_percent
    return limit.value if limit.is_set else None


def ac_cables(system: System, ledger: Ledger) -> None:
    """Rate every AC cable: demand, section, capacity, rise."""
    for cable, given in system.ac_cables():
        _cable(system, ledger, cable, given)


def voltage_rises(system: System, ledger: Ledger) -> None:
    """Rate the whole voltage rise of every inverter and every battery with a converter."""
    for unit in system.of(Device):
        if unit.dc or not isinstance(unit, InverterUnit | BatteryUnit):
            continue
        rises = [
            rating
            for device in system.upstream(unit.key)
            if isinstance(device, Cable) and (rating := ledger.get(device.key, Symbol.DU_RISE)) is not None
        ]
        if rises:
            total = voltage_change.voltage_rise_sum(list(reversed(rises)))
            ledger.add(unit.key, total, symbol=Symbol.DU_AC)
            if system.supply.voltage_max_v is not None:
                ledger.add(unit.key, voltage_change.voltage_at_inverter(system.supply.voltage_max_v, total.value))
    for cable, given in () if system.follows_nec else system.ac_cables():
        _longest(system, ledger, cable, given)


def _longest(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    """Keep the length of a cable at which the worst way through it meets the limit, the other cables as they are."""
    limit, flow = rise_limit_percent(system), export_flow(system, ledger, cable)
    own, section = ledger.get(cable.key, Symbol.DU_RISE), ledger.get(cable.key, Symbol.S)
    totals = [ledger.value(device.key, Symbol.DU_AC) or 0.0 for device in system.downstream(cable.key)]
    if limit is None or flow is None or own is None or section is None or not given.length_m:
        return
    left_percent = limit - max(totals, default=own.value) + own.value
    if left_percent > 0:
        r_ohm_per_km = _resistance_at_load(system, ledger, cable, given, section.value)
        for_one_metre = _rise(system, cable, 1.0, given, flow, r_ohm_per_km)
        ledger.add(cable.key, voltage_change.longest_length(left_percent, flow.base_v, for_one_metre))


def _cable(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    key = cable.key
    needed = _demand(system, ledger, cable)
    factors, _ = correction_factors(system, ledger, cable, given)
    if given.section_mm2 is not None:
        ledger.add(key, specified(Symbol.S, given.section_mm2, "mm²"))
    elif needed is not None and factors is not None:
        _choose(system, ledger, cable, given, design(system, cable, given, factors), needed)
        ledger.add(key, ac_cable.tabulated_capacity_needed(needed.value, factors, given.parallel))
    else:
        silent = WITHOUT_FUSE if load_is_unknown(system, ledger, cable) else UNKNOWN_CURRENT
        ledger.unanswered(key, Symbol.S, silent if needed is None else phrase("its capacity as laid is not known"))
    as_laid(system, ledger, cable, given)


def as_laid(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    """Rate what follows from the section of a cable: its capacity, resistance and voltage rise."""
    section = ledger.get(cable.key, Symbol.S)
    if section is None:
        return
    factors, assumed = correction_factors(system, ledger, cable, given)
    plan = design(system, cable, given, factors or ())
    if factors is not None:
        ledger.attempt(
            cable.key,
            Symbol.IZ,
            lambda: ac_cable.corrected_capacity(
                ac_cable.tabulated_capacity(
                    plan.material, plan.insulation, plan.loaded_conductors_count, plan.method, section.value
                ),
                factors,
                given.parallel,
            ).assuming(*assumed),
            with_nearest(
                phrase(
                    "no capacity is tabulated for {section} {material}, {insulation}, method {method}",
                    section=section,
                    material=plan.material,
                    insulation=plan.insulation,
                    method=given.method,
                ),
                section.value,
            ),
        )
    _largest_device(system, ledger, cable)
    resistance = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: conductor.resistance(plan.material, section.value, hot_c(cable), plan.conductor_class),
        phrase("no resistance is tabulated for {section} {material}", section=section, material=plan.material),
    )
    flow = export_flow(system, ledger, cable)
    if resistance is not None and flow is not None:
        resistance = _at_its_load(ledger, cable, plan, resistance)
        ledger.add(cable.key, _rise_percent(system, ledger, cable, given, flow, resistance.value))


def _largest_device(system: System, ledger: Ledger, cable: Cable) -> None:
    """Keep the largest device that protects a cable, where its own one is too large for it."""
    capacity, needed = ledger.get(cable.key, Symbol.IZ), ledger.get(cable.key, Symbol.IZ_MIN)
    device = overcurrent_device(system, cable.key)
    if capacity is not None and needed is not None and device is not None and capacity.value < needed.value:
        ledger.add(cable.key, breaker.largest_rated_current(protective_family(device), capacity.value))


def leakage_section(system: System, cable: Cable) -> Rating | None:
    """Return the least protective conductor for the leakage of the inverter that a cable serves, or None."""
    served = system.devices.get(cable.owner)
    if not isinstance(served, InverterUnit) or served.type.leakage_current_ma is None:
        return None
    return protective_conductor.high_leakage_minimum(served.type.leakage_current_ma, conductor_material(cable))


def _choose(system: System, ledger: Ledger, cable: Cable, given: AcCable, plan: CableDesign, needed: Rating) -> None:
    """Keep the smallest section that carries the current; what the voltage rise asks for comes after all cables.

    Without a protective conductor of its own size in the spec the cores are as large as the leakage asks of that one.
    """
    least_mm2 = 16.0 if plan.material == "Al" else 1.5
    combined = protective_conductor.combined_conductor_minimum(plan.material) if is_combined(system, cable) else None
    leakage = None if given.protective_is_no_core else leakage_section(system, cable)

    def smallest() -> Rating | None:
        by_current = smallest_section(plan, needed.value, None, least_mm2)
        for cause, least in ((phrase("leakage"), leakage), (phrase("PEN conductor"), combined)):
            if by_current is not None and least is not None and least.value > by_current.value:
                raised = smallest_section(plan, needed.value, None, least.value)
                if raised is None:
                    return None
                return governed_by(replace(raised, passed_over=(outgrown(by_current.value, cause),)), cause, least)
        return None if by_current is None else governed_by(by_current, phrase("current"))

    chosen = ledger.attempt(
        cable.key, Symbol.S, smallest, phrase("no standard section carries {needed}", needed=needed)
    )
    ledger.add(cable.key, chosen, symbol=Symbol.S_CARRIES)


def governed_by(section: Rating, demand: Phrase, least: Rating | None = None) -> Rating:
    """Return a chosen section with the demand that decided it, and the least section of that demand."""
    given = [*section.given, Given(phrase("governed by"), demand)]
    if least is not None:
        given.append(least.as_input(least.clause))
    return replace(section, given=tuple(given))


def _demand(system: System, ledger: Ledger, cable: Cable) -> Rating | None:
    """Keep the least Iz: the rated current of the protective device, more where it trips late, and the design current.

    I2 must not exceed 1.45 Iz: a circuit-breaker meets that with Iz = In, a gG fuse (I2 1.6 In, more below 16 A) needs
    a larger cable.
    """
    design = ledger.get(cable.key, Symbol.IB)
    device = overcurrent_device(system, cable.key) or incoming_device(system, cable)
    rated = ledger.get(device.key, Symbol.IN) if device else None
    if rated is not None and device is not None:
        tripping = ledger.get(device.key, Symbol.I2)
        by_tripping_a = tripping.value / _I2_SHARE if tripping is not None else rated.value
        candidates = [("In", rated.value), ("I2/1.45", by_tripping_a if by_tripping_a > rated.value * 1.0001 else 0.0)]
        candidates.append(("Ib", design.value if design is not None else 0.0))
        formula, value = max(candidates, key=lambda candidate: candidate[1])
        given = [Given(f"In({device.designation})", rated.value, "A")]
        given += [Given("I2", tripping.value, "A")] if tripping is not None else []
        given += [Given("Ib", design.value, "A")] if design is not None else []
        needed = Rating(Symbol.IZ_MIN, value, "A", formula, tuple(given), _OVERLOAD)
        both = _both(system, ledger, cable, rated.value)
        if both is not None:
            ledger.add(cable.key, both)
            if both.value > value:
                needed = replace(both, symbol=Symbol.IZ_MIN)
    elif load_is_unknown(system, ledger, cable):
        return None
    elif design is not None:
        needed = Rating(Symbol.IZ_MIN, design.value, "A", "Ib", design.given, design.clause)
    else:
        return None
    ledger.add(cable.key, needed)
    return needed


def _both(system: System, ledger: Ledger, cable: Cable, rated_a: float) -> Rating | None:
    """Return what a trunk cable with loads and generation along it may carry, None for any other cable.

    Its protective device sees only what comes from the network; a load takes that and the generation.
    """
    trunk = system.devices.get(cable.owner)
    if not isinstance(trunk, Busbar) or not trunk.given.trunk or _follows(system, cable, trunk):
        return None
    exported_a = ledger.value(trunk.key, Symbol.IEXPORT)
    if not exported_a or not takes_power(system, trunk):
        return None
    return board.both_ways_load(rated_a, exported_a)


def _follows(system: System, cable: Cable, trunk: Busbar) -> bool:
    """Return whether another cable follows before the trunk, so that this one only leads to it."""
    between = [each.key for each in system.upstream(trunk.key)]
    return any(isinstance(system.devices[key], Cable) for key in between[: between.index(cable.key)])


def takes_power(system: System, busbar: Busbar) -> bool:
    """Return whether a load, or anything that charges, is behind a busbar."""
    return any(isinstance(each, Consumer | BatteryUnit) for each in system.downstream(busbar.key))


def incoming_device(system: System, cable: Device) -> Apparatus | None:
    """Return the overcurrent device behind a cable or meter from the network: it limits what that carries for long.

    Source: IEC 60364-4-43:2008 433.2.2 (from memory), overload protection anywhere along the cable.
    """
    if cable.owner != system.main_board().key:
        return None
    for device in system.downstream(cable.key):
        if isinstance(device, Busbar):
            return None
        if isinstance(device, Apparatus) and protective_family(device):
            return device
    return None


@dataclass(frozen=True, slots=True)
class ExportFlow:
    """What the rise of a cable is worked out with: single-phase of a base voltage to neutral, or three-phase."""

    phase_count: int
    current_a: float
    base_v: float


def export_flow(system: System, ledger: Ledger, cable: Cable) -> ExportFlow | None:
    """Return the export through a cable, None where nothing feeds through it.

    Single-phase inverters that load the lines of a three-phase cable unequally send the difference through the neutral;
    the rise of the most loaded line is then that of a single-phase circuit (see `sld.steps.currents`).
    """
    export = ledger.get(cable.key, Symbol.IEXPORT)
    if export is None:
        return None
    if phases(system, cable.owner) == 1:
        return ExportFlow(1, export.value, voltage_v(system, cable.owner))
    across = ledger.get(cable.key, Symbol.IRISE_LINES)
    if across is not None:
        return ExportFlow(3, across.value, system.voltage_v)
    unbalanced = ledger.get(cable.key, Symbol.IRISE)
    if unbalanced is not None:
        return ExportFlow(1, unbalanced.value, system.voltage_to_earth_v)
    return ExportFlow(3, export.value, system.voltage_v)


def power_factors(system: System, key: str) -> list[tuple[float, str]]:
    """Return the power factors that the inverters behind a cable are set to, with the way of their reactive power.

    Where the spec does not say it, it is supplied, which lifts the voltage further. 1 where there is no inverter.
    """
    given = {
        (unit.given.power_factor, unit.given.reactive_power or "supplied") for unit in system.inverters_behind(key)
    }
    return sorted(given) or [(1.0, "supplied")]


def _at_its_load(ledger: Ledger, cable: Cable, plan: CableDesign, hot: Rating) -> Rating:
    """Keep the temperature of a conductor at full export and return its resistance then; hot where it is not known."""
    load_a, section = ledger.value(cable.key, Symbol.IEXPORT), ledger.get(cable.key, Symbol.S)
    if load_a is None or section is None or ledger.get(cable.key, Symbol.IZ) is None:
        return hot
    warm = temperature_at(plan, section.value, hot_c(cable), load_a)
    ledger.add(cable.key, warm)
    return conductor.resistance(plan.material, section.value, warm.value, plan.conductor_class)


def rise_with(system: System, ledger: Ledger, cable: Cable, given: AcCable, section_mm2: float) -> float | None:
    """Return the rise that a cable would have at full export with a section, None without export. [%] Raises NoRow."""
    flow = export_flow(system, ledger, cable)
    if flow is None:
        return None
    r = _resistance_at_load(system, ledger, cable, given, section_mm2)
    rise = _rise(system, cable, given.length_m, given, flow, r)
    return voltage_change.change_percent(rise, flow.base_v).value


def _resistance_at_load(system: System, ledger: Ledger, cable: Cable, given: AcCable, section_mm2: float) -> float:
    """Return the resistance of a conductor of a section at full export, hot where its load is not known. [Ω/km]"""
    factors, _ = correction_factors(system, ledger, cable, given)
    plan, temperature_c = design(system, cable, given, factors or ()), hot_c(cable)
    load_a = ledger.value(cable.key, Symbol.IEXPORT)
    if load_a is not None and factors is not None:
        with suppress(NoRow):
            temperature_c = temperature_at(plan, section_mm2, temperature_c, load_a).value
    return conductor.resistance(plan.material, section_mm2, temperature_c, plan.conductor_class).value


def _rise_percent(
    system: System, ledger: Ledger, cable: Cable, given: AcCable, flow: ExportFlow, r_ohm_per_km: float
) -> Rating:
    """Return the voltage rise of a cable at full export, the greatest over the power factors behind it. [%]"""
    warm_c = ledger.value(cable.key, Symbol.THETA_LOAD) or hot_c(cable)
    said = [phrase("{insulation} conductor at {hot_c}", insulation=insulation(cable), hot_c=amount(warm_c, "°C"))]
    units = system.inverters_behind(cable.key)
    if any(unit.given.power_factor < 1 and unit.given.reactive_power is None for unit in units):
        said.append(phrase("inverters supply reactive power"))
    greatest = _rise(system, cable, given.length_m, given, flow, r_ohm_per_km)
    return voltage_change.change_percent(greatest, flow.base_v).assuming(*said)


def _rise(
    system: System, cable: Cable, length_m: float, given: AcCable, flow: ExportFlow, r_ohm_per_km: float
) -> Rating:
    """Return the greatest voltage rise over the power factors behind a cable, for a length of it. [V]"""
    rises = [
        voltage_change.voltage_rise(
            flow.phase_count,
            flow.current_a,
            length_m,
            r_ohm_per_km / given.parallel,
            conductor.reactance().value / given.parallel,
            power_factor,
            reactive,
        )
        for power_factor, reactive in power_factors(system, cable.key)
    ]
    return max(rises, key=lambda rise: rise.value)
