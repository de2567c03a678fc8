"""AC cables: the current they must carry, what they can carry as laid, their section, and the voltage rise."""

from __future__ import annotations

from sld.model.conductors import phases
from sld.model.device import Cable, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ledger import Ledger, specified
from sld.rate.protection import overcurrent_device, protective_family
from sld.ratings import ac_cable, conductor, voltage_change
from sld.ratings.cable_section import CableDesign, VoltageDemand, smallest_section
from sld.spec.blocks.circuit import AcCable
from sld.tables.profiles import profile
from sld.tables.table import NoRow

__all__ = ["ac_cables", "conductor_material", "hot_c", "rise_limit_percent"]

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


def conductor_material(cable: Cable) -> str:
    """Return the material as the tables name it."""
    return "Cu" if cable.type.conductor == "copper" else "Al"


def insulation(cable: Cable) -> str:
    """Return the insulation as the tables name it; a solar cable used for AC counts as cross-linked."""
    return "PVC" if cable.type.insulation == "PVC" else "XLPE"


def hot_c(cable: Cable) -> float:
    """Return the conductor's temperature at full load. [°C]"""
    return _OPERATING_C[insulation(cable)]


def rise_limit_percent(system: System) -> float | None:
    """Return the limit of the voltage rise from the supply point to an inverter, None where the profile sets none. [%]"""
    if system.supply.voltage_rise_limit_percent is not None:
        return system.supply.voltage_rise_limit_percent
    limit = profile(system.profile).ac_rise_limit_percent
    return limit.value if limit.is_set else None


def ac_cables(system: System, ledger: Ledger) -> None:
    """Rate every AC cable, then the whole voltage rise of every inverter."""
    for cable in system.of(Cable):
        if isinstance(cable.given, AcCable):
            _cable(system, ledger, cable, cable.given)
    for unit in system.of(InverterUnit):
        rises = [
            rating
            for device in system.upstream(unit.key)
            if isinstance(device, Cable) and (rating := ledger.get(device.key, "Δu rise")) is not None
        ]
        if rises:
            ledger.add(unit.key, voltage_change.voltage_rise_sum(list(reversed(rises))), symbol="Δu,ac")


def _cable(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    key = cable.key
    design = ledger.get(key, "Ib")
    device = overcurrent_device(system, key)
    rated = ledger.get(device.key, "In") if device else None
    needed = _demand(ledger, cable, design, rated, protective_family(device) if device else "")
    factors, assumed = _factors(system, ledger, cable, given)
    loaded = 3 if phases(system, cable.owner) == 3 else 2
    method = ("F3t" if loaded == 3 else "F2") if given.method == "F" else given.method
    plan = CableDesign(
        conductor_material(cable),
        insulation(cable),
        loaded,
        method,
        factors,
        given.parallel,
        5 if cable.type.strands == "class 5" else 2,
    )
    if given.section_mm2 is not None:
        ledger.add(key, specified("S", given.section_mm2, "mm²"))
    elif needed is not None:
        voltage = _voltage_demand(system, ledger, cable, given, loaded)
        least_mm2 = 16.0 if plan.material == "Al" else 1.5
        ledger.attempt(
            key,
            "S",
            lambda: smallest_section(plan, needed.value, voltage, least_mm2),
            f"no standard section carries {needed.quantity()} within the voltage rise",
        )
    section = ledger.get(key, "S")
    if section is None:
        return
    ledger.attempt(
        key,
        "Iz",
        lambda: ac_cable.corrected_capacity(
            ac_cable.tabulated_capacity(plan.material, plan.insulation, loaded, method, section.value),
            factors,
            given.parallel,
        ).assuming(*assumed),
        "no table value",
    )
    resistance = ledger.attempt(
        key,
        "R",
        lambda: conductor.resistance(plan.material, section.value, hot_c(cable), plan.conductor_class),
        "no table value",
    )
    export = ledger.get(key, "Iexport")
    if resistance is not None and export is not None:
        rise = _rise(system, cable, given, loaded, export.value, resistance.value)
        base_v = (
            system.voltage_v
            if loaded == system.supply.phases or system.supply.phases == 1
            else system.voltage_to_earth_v
        )
        percent = voltage_change.change_percent(rise, base_v).assuming(
            f"{insulation(cable)} conductor at {hot_c(cable):.0f} °C"
        )
        ledger.add(key, percent)


def _demand(ledger: Ledger, cable: Cable, design: Rating | None, rated: Rating | None, family: str) -> Rating | None:
    """Keep the least Iz: the rated current of the protective device, more for a fuse, else the design current."""
    if rated is not None:
        share = 1.0
        if family == "gG":
            # a fuse trips later than a breaker: I2 = 1.6 In must not exceed 1.45 Iz
            share = max(1.0, 1.6 / _I2_SHARE)
        given = (Given(rated.symbol, rated.value, rated.unit),)
        formula = "In" if share == 1.0 else "1.6/1.45 · In"
        clause = "IEC 60364-4-43:2008 433.1 (from memory)"
        needed = Rating("Iz,min", rated.value * share, "A", formula, given, clause)
    elif design is not None:
        needed = Rating("Iz,min", design.value, "A", "Ib", design.given, design.clause)
    else:
        return None
    ledger.add(cable.key, needed)
    return needed


def _factors(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> tuple[tuple[Rating, ...], list[str]]:
    """Return the correction factors of a cable and what had to be assumed for them."""
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
    factors: list[Rating] = []
    try:
        factors.append(ac_cable.ambient_factor(ambient_c, insulation(cable), "ground" if in_ground else "air"))
        factors.append(ac_cable.grouping_factor(_GROUPING[given.method], given.grouped_circuits))
    except NoRow as miss:
        ledger.unanswered(cable.key, "Iz", str(miss.args[0]))
    if given.grouped_circuits == 1:
        assumed.append("AC cables not grouped with other circuits")
    return tuple(factors), assumed


def _voltage_demand(system: System, ledger: Ledger, cable: Cable, given: AcCable, loaded: int) -> VoltageDemand | None:
    """Return this cable's share of the allowed rise: by its length among the cables of the longest way through it."""
    limit = rise_limit_percent(system)
    export = ledger.get(cable.key, "Iexport")
    if limit is None or export is None:
        return None
    ways = []
    for unit in system.inverters_behind(cable.key):
        ways.append(sum(d.given.length_m for d in system.upstream(unit.key) if isinstance(d, Cable)))
    total_m = max(ways, default=given.length_m)
    share = given.length_m / total_m if total_m else 1.0
    base_v = (
        system.voltage_v if loaded == system.supply.phases or system.supply.phases == 1 else system.voltage_to_earth_v
    )
    return VoltageDemand(
        3 if loaded == 3 else 1,
        export.value,
        given.length_m,
        base_v,
        limit * share,
        hot_c(cable),
        conductor.reactance().value,
    )


def _rise(system: System, cable: Cable, given: AcCable, loaded: int, export_a: float, r_ohm_per_km: float) -> Rating:
    """Return the voltage rise of a cable in V at full export and the power factor of the inverters behind it."""
    units = system.inverters_behind(cable.key)
    power_factor = min((unit.given.power_factor for unit in units), default=1.0)
    return voltage_change.voltage_rise(
        3 if loaded == 3 else 1,
        export_a,
        given.length_m,
        r_ohm_per_km / given.parallel,
        conductor.reactance().value / given.parallel,
        power_factor,
    )
