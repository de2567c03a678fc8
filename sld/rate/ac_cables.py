"""AC cables: the current they must carry, what they can carry as laid, their section, and the voltage rise."""

from __future__ import annotations

from dataclasses import dataclass

from sld.model.conductors import phases
from sld.model.device import BatteryUnit, Cable, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ledger import Ledger, specified
from sld.rate.protection import overcurrent_device
from sld.ratings import ac_cable, conductor, voltage_change
from sld.ratings.cable_section import CableDesign, VoltageDemand, smallest_section
from sld.spec.blocks.circuit import AcCable
from sld.tables.profiles import profile
from sld.tables.table import NoRow

__all__ = ["ac_cables", "conductor_class", "conductor_material", "hot_c", "rise_limit_percent"]

_GROUPING = {
    "A1": "bunched_A_to_F",
    "A2": "bunched_A_to_F",
    "B1": "bunched_A_to_F",
    "B2": "bunched_A_to_F",
    "C": "single_layer_wall_floor_unperforated_C",
    "D1": "D1_multicore_touching",
    "D2": "D2_touching",
    "E": "single_layer_perforated_tray_E_F",
    "F": "single_layer_perforated_tray_E_F",
}
_OPERATING_C = {"PVC": 70.0, "XLPE": 90.0}
_I2_SHARE = 1.45
_OVERLOAD = "IEC 60364-4-43:2008 433.1 (from memory)"


def conductor_material(cable: Cable) -> str:
    """Return the material as the tables name it."""
    return "Cu" if cable.type.conductor == "copper" else "Al"


def insulation(cable: Cable) -> str:
    """Return the insulation as the tables name it; a solar cable used for AC counts as cross-linked."""
    return "PVC" if cable.type.insulation == "PVC" else "XLPE"


def conductor_class(cable: Cable) -> int:
    """Return the class of IEC 60228: 2 stranded, 5 flexible."""
    return 5 if cable.type.strands == "class 5" else 2


def hot_c(cable: Cable) -> float:
    """Return the conductor's temperature at full load. [°C]"""
    return _OPERATING_C[insulation(cable)]


def rise_limit_percent(system: System) -> float | None:
    """Return the limit of the voltage rise from the supply point to an inverter, None where there is none. [%]"""
    if system.supply.voltage_rise_limit_percent is not None:
        return system.supply.voltage_rise_limit_percent
    limit = profile(system.profile).ac_rise_limit_percent
    return limit.value if limit.is_set else None


def ac_cables(system: System, ledger: Ledger) -> None:
    """Rate every AC cable, then the whole voltage rise of every inverter and every battery with a converter."""
    for cable in system.of(Cable):
        if isinstance(cable.given, AcCable):
            _cable(system, ledger, cable, cable.given)
    for unit in system.devices.values():
        if unit.dc or not isinstance(unit, InverterUnit | BatteryUnit):
            continue
        rises = [
            rating
            for device in system.upstream(unit.key)
            if isinstance(device, Cable) and (rating := ledger.get(device.key, "Δu rise")) is not None
        ]
        if rises:
            ledger.add(unit.key, voltage_change.voltage_rise_sum(list(reversed(rises))), symbol="Δu,ac")


def _cable(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    key = cable.key
    needed = _demand(system, ledger, cable)
    factors, assumed = _factors(system, ledger, cable, given)
    loaded = 3 if phases(system, cable.owner) == 3 else 2
    method = ("F3t" if loaded == 3 else "F2") if given.method == "F" else given.method
    plan = CableDesign(
        conductor_material(cable),
        insulation(cable),
        loaded,
        method,
        factors or (),
        given.parallel,
        conductor_class(cable),
    )
    if given.section_mm2 is not None:
        ledger.add(key, specified("S", given.section_mm2, "mm²"))
    elif needed is not None and factors is not None:
        _choose(system, ledger, cable, given, plan, needed)
    else:
        ledger.unanswered(key, "S", "nothing says what current flows here" if needed is None else "no capacity")
    section = ledger.get(key, "S")
    if section is None:
        return
    if factors is not None:
        tabulated = (plan.material, plan.insulation, loaded, method, section.value)
        ledger.attempt(
            key,
            "Iz",
            lambda: ac_cable.corrected_capacity(
                ac_cable.tabulated_capacity(*tabulated), factors, given.parallel
            ).assuming(*assumed),
            "no table value",
        )
    resistance = ledger.attempt(
        key,
        "R",
        lambda: conductor.resistance(plan.material, section.value, hot_c(cable), plan.conductor_class),
        "no table value",
    )
    flow = _flow(system, ledger, cable)
    if resistance is not None and flow is not None:
        ledger.add(key, _rise_percent(system, cable, given, flow, resistance.value))


def _choose(system: System, ledger: Ledger, cable: Cable, given: AcCable, plan: CableDesign, needed: Rating) -> None:
    """Keep the smallest section that carries the current and, at every power factor behind it, keeps the rise."""
    least_mm2 = 16.0 if plan.material == "Al" else 1.5
    flow, limit_percent = _flow(system, ledger, cable), _limit_share_percent(system, cable, given)
    demands: list[VoltageDemand | None] = [None]
    if flow is not None and limit_percent is not None:
        demands = [
            VoltageDemand(
                flow.phase_count,
                flow.current_a,
                given.length_m,
                flow.base_v,
                limit_percent,
                hot_c(cable),
                conductor.reactance().value,
                power_factor,
            )
            for power_factor in _power_factors(system, cable.key)
        ]

    def smallest() -> Rating | None:
        sections = [smallest_section(plan, needed.value, demand, least_mm2) for demand in demands]
        fitting = [section for section in sections if section is not None]
        return max(fitting, key=lambda section: section.value) if len(fitting) == len(sections) else None

    why = f"no standard section carries {needed.quantity()} within the voltage rise"
    ledger.attempt(cable.key, "S", smallest, why)


def _demand(system: System, ledger: Ledger, cable: Cable) -> Rating | None:
    """Keep the least Iz: the rated current of the protective device, more where it trips late, and the design current.

    I2 must not exceed 1.45 Iz: a circuit-breaker meets that with Iz = In, a gG fuse (I2 1.6 In, more below 16 A) needs
    a larger cable.
    """
    design = ledger.get(cable.key, "Ib")
    device = overcurrent_device(system, cable.key)
    rated = ledger.get(device.key, "In") if device else None
    if rated is not None and device is not None:
        tripping = ledger.get(device.key, "I2")
        by_tripping_a = tripping.value / _I2_SHARE if tripping is not None else rated.value
        candidates = [("In", rated.value), ("I2/1.45", by_tripping_a if by_tripping_a > rated.value * 1.0001 else 0.0)]
        candidates.append(("Ib", design.value if design is not None else 0.0))
        formula, value = max(candidates, key=lambda candidate: candidate[1])
        given = [Given(f"In({device.designation})", rated.value, "A")]
        given += [Given("I2", tripping.value, "A")] if tripping is not None else []
        given += [Given("Ib", design.value, "A")] if design is not None else []
        needed = Rating("Iz,min", value, "A", formula, tuple(given), _OVERLOAD)
    elif design is not None:
        needed = Rating("Iz,min", design.value, "A", "Ib", design.given, design.clause)
    else:
        return None
    ledger.add(cable.key, needed)
    return needed


def _factors(
    system: System, ledger: Ledger, cable: Cable, given: AcCable
) -> tuple[tuple[Rating, ...] | None, list[str]]:
    """Return the correction factors of a cable, None where a table has no answer, and what was assumed for them."""
    in_ground = given.method in ("D1", "D2")
    assumed: list[str] = []
    ambient_c = given.ambient_temperature_c
    if ambient_c is None and cable.location in system.site.locations:
        location = system.site.locations[cable.location]
        ambient_c = location.ambient_temperature_c
        if ambient_c is None and location.outdoor:
            ambient_c = 40.0
            assumed.append("40 °C around outdoor AC cables")
    if ambient_c is None:
        ambient_c = 20.0 if in_ground else 30.0
        assumed.append(f"{ambient_c:.0f} °C {'ground' if in_ground else 'air'} around AC cables")
    try:
        factors = (
            ac_cable.ambient_factor(ambient_c, insulation(cable), "ground" if in_ground else "air"),
            ac_cable.grouping_factor(_GROUPING[given.method], given.grouped_circuits),
        )
    except NoRow as miss:
        # without its factor a table value would claim a capacity that the cable does not have
        ledger.unanswered(cable.key, "Iz", str(miss.args[0]))
        return None, assumed
    if given.grouped_circuits == 1:
        assumed.append("AC cables not grouped with other circuits")
    return factors, assumed


@dataclass(frozen=True, slots=True)
class _Flow:
    """What the rise of a cable is worked out with: single-phase of a base voltage to neutral, or three-phase."""

    phase_count: int
    current_a: float
    base_v: float


def _flow(system: System, ledger: Ledger, cable: Cable) -> _Flow | None:
    """Return the export through a cable, None where nothing feeds through it.

    Single-phase inverters that load the lines of a three-phase cable unequally send the difference through the neutral;
    the rise of the most loaded line is then that of a single-phase circuit (see `sld.rate.currents`).
    """
    export = ledger.get(cable.key, "Iexport")
    if export is None:
        return None
    if phases(system, cable.owner) == 1:
        return _Flow(1, export.value, system.voltage_to_earth_v)
    unbalanced = ledger.get(cable.key, "Irise")
    if unbalanced is not None:
        return _Flow(1, unbalanced.value, system.voltage_to_earth_v)
    return _Flow(3, export.value, system.voltage_v)


def _limit_share_percent(system: System, cable: Cable, given: AcCable) -> float | None:
    """Return this cable's share of the allowed rise: by its length among the cables of the longest way through it."""
    limit = rise_limit_percent(system)
    if limit is None:
        return None
    ways = [
        sum(each.given.length_m for each in system.upstream(device.key) if isinstance(each, Cable))
        for device in system.downstream(cable.key)
        if isinstance(device, InverterUnit | BatteryUnit) and not device.dc
    ]
    total_m = max(ways, default=given.length_m)
    return limit * given.length_m / total_m if total_m else limit


def _power_factors(system: System, key: str) -> list[float]:
    """Return the power factors that the inverters behind a cable are set to, 1 where there is none."""
    return sorted({unit.given.power_factor for unit in system.inverters_behind(key)}) or [1.0]


def _rise_percent(system: System, cable: Cable, given: AcCable, flow: _Flow, r_ohm_per_km: float) -> Rating:
    """Return the voltage rise of a cable at full export, the greatest over the power factors behind it. [%]"""
    rises = [
        voltage_change.voltage_rise(
            flow.phase_count,
            flow.current_a,
            given.length_m,
            r_ohm_per_km / given.parallel,
            conductor.reactance().value / given.parallel,
            power_factor,
        )
        for power_factor in _power_factors(system, cable.key)
    ]
    greatest = max(rises, key=lambda rise: rise.value)
    hot = f"{insulation(cable)} conductor at {hot_c(cable):.0f} °C"
    return voltage_change.change_percent(greatest, flow.base_v).assuming(hot)
