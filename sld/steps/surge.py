"""Surge protection on both sides: where it is needed, and what it must stand."""

from __future__ import annotations

from sld.citation import cited, from_memory
from sld.model.device import Apparatus, Cable, InputTerminal, InverterUnit, StringGroup
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import ac_surge, dc_surge, separation
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.circuit import AcSurgeProtection, DcSurgeProtection
from sld.steps.dc_devices import terminal_of
from sld.steps.inputs import groups_behind
from sld.steps.ledger import Ledger
from sld.tables.profiles import profile
from sld.words import Sayable, phrase

__all__ = ["surge"]

_PREMISES = {"dwelling": "dwelling", "other_building": "building", "ground_mounted": "ground"}

_STAR_POINT = phrase("star point of the network taken as earthed, so that U / √3 is to earth")
_LONGEST_LP_M = 2000.0
"""Of a line that is not known: 1 km, taken as low-voltage overhead line, which counts twice (443.5, from memory)."""

_LEAST_DENSITY = 1e-3
"""Flashes to ground a km² and year below which there is no lightning to speak of, and no critical length."""


def surge(system: System, ledger: Ledger) -> None:
    """Rate every surge protective device, and the need of one at every input."""
    lightning = system.earthing.lightning_protection
    needed = dc_surge.spd_type(
        lightning is not None,
        lightning.separation_kept if lightning else False,
        lightning is not None and system.site.building == "ground_mounted",
    )
    if lightning is not None and lightning.separation_path_m is not None:
        path_m, count = lightning.separation_path_m, lightning.down_conductors
        ledger.add("", separation.separation_distance(lightning.level, path_m, count))
        if lightning.separation_m is not None:
            ledger.add("", specified(Symbol.SEPARATION_GIVEN, lightning.separation_m, "m"))
    for terminal in system.of(InputTerminal):
        _input(system, ledger, terminal)
        ledger.word(terminal.key, Word.SPD_TYPE, str(needed.value), needed.origin)
    origin = ac_surge.surge_device_type(lightning is not None, bool(system.supply.direct_strokes))
    ledger.add(system.main_board().key, origin, _risk(system))
    for unit in system.of(InverterUnit):
        ledger.add(unit.key, _far_from_surge_protection(system, unit))
    for device in system.apparatus(SURGE_PROTECTION):
        if (dc_given := device.given_as(DC_SURGE_PROTECTION)) is not None:
            _dc(system, ledger, device, dc_given)
        elif (ac_given := device.given_as(AC_SURGE_PROTECTION)) is not None:
            _ac(system, ledger, device, ac_given)


def _risk(system: System) -> Rating | None:
    """Return the calculated risk level, None where the spec lacks surroundings or density or the profile has none."""
    density, surroundings = system.site.lightning_density_per_km2_year, system.site.surroundings
    if surroundings is None or not density or not profile(system.profile).ac_surge_by_risk.holds:
        return None
    length_m = system.supply.risk_length_m
    risk = ac_surge.calculated_risk_level(surroundings, length_m or _LONGEST_LP_M, density)
    return risk if length_m else risk.assuming(phrase("1 km of overhead low-voltage line"))


def _input(system: System, ledger: Ledger, terminal: InputTerminal) -> None:
    """Keep the route length of an input's cables and the length from which surge protection is required."""
    density = system.site.lightning_density_per_km2_year
    if density is not None and density >= _LEAST_DENSITY:
        ledger.add(terminal.key, dc_surge.critical_length(density, _PREMISES[system.site.building]))
    route = _route(system, terminal)
    critical = ledger.get(terminal.key, Symbol.LCRIT)
    ledger.add(terminal.key, route)
    if system.earthing.lightning_protection is not None or (critical and route.value >= critical.value):
        _distances(system, ledger, terminal)


def _route(system: System, terminal: InputTerminal) -> Rating:
    """Return the length of the DC route: every cable way once, and the way they share to the inverter. [m]"""
    own: dict[str, float] = {}
    shared_m = 0.0
    for group in groups_behind(system, terminal.key):
        cables = [device for device in system.upstream(group.key) if isinstance(device, Cable) and device.dc]
        length_m = sum(cable.given.length_m for cable in cables if cable.key.startswith(f"{group.key}."))
        name = group.given.cable_route or group.key
        own[name] = max(own.get(name, 0.0), length_m)
        shared_m = sum(cable.given.length_m for cable in cables if not cable.key.startswith(f"{group.key}."))
    return dc_surge.route_length(tuple(own.values()), shared_m)


def _distances(system: System, ledger: Ledger, terminal: InputTerminal) -> None:
    """Keep how far modules and inverter are from the nearest surge protection of an input that needs one."""
    built_in = system.inverter_of(terminal).type.dc_surge_protection != "none"
    ends = [each for group in groups_behind(system, terminal.key) if (each := _ends(system, terminal, group, built_in))]
    if not ends:
        return
    ledger.add(terminal.key, dc_surge.protected_length())
    for symbol, far_m in (
        (Symbol.L_MODULES, max(end[0] for end in ends)),
        (Symbol.L_INVERTER, max(end[1] for end in ends)),
    ):
        text = phrase("cable to the nearest DC surge protection")
        ledger.add(terminal.key, Rating(symbol, far_m, "m", text, (), cited(phrase("spec"))))


def _ends(system: System, terminal: InputTerminal, group: StringGroup, is_built_in: bool) -> tuple[float, float] | None:
    """Return the cable between a string and the nearest device, and between inverter and nearest; None without. [m]"""
    since_last_m, first_m = 0.0, None
    for device in system.upstream(group.key):
        if device.key == terminal.key:
            break
        if isinstance(device, Cable):
            since_last_m += device.given.length_m
        elif device.has(SURGE_PROTECTION):
            first_m = since_last_m if first_m is None else first_m
            since_last_m = 0.0
    if is_built_in:
        return (since_last_m if first_m is None else first_m), 0.0
    return None if first_m is None else (first_m, since_last_m)


def _dc(system: System, ledger: Ledger, device: Apparatus, given: DcSurgeProtection) -> None:
    ledger.add(device.key, _lead(given.test_class, from_memory("IEC 61643-32")))
    terminal = terminal_of(system, device.key)
    uoc_max = ledger[terminal.key, Symbol.UOC_MAX]
    demand = dc_surge.ucpv_min(uoc_max)
    ledger.add(device.key, demand)
    why = phrase("no impulse withstand voltage is laid down for {uoc_max}", uoc_max=uoc_max)
    withstand_v = system.inverter_of(terminal).type.dc_impulse_withstand_v
    withstand_kv = None if withstand_v is None else withstand_v / 1000
    ledger.attempt(device.key, Symbol.UP_MAX, lambda: dc_surge.up_max(uoc_max.value, withstand_kv), why)
    _dc_currents(system, ledger, device, given, terminal)
    ledger.choose(
        device.key,
        Symbol.UCPV,
        given.continuous_voltage_v,
        lambda: dc_surge.smallest_ucpv(demand),
        phrase("no usual Ucpv is high enough"),
    )
    if given.protection_level_v is not None:
        up_kv = given.protection_level_v / 1000
        ledger.add(device.key, specified(Symbol.UP, up_kv, "kV"))
        ledger.add(device.key, dc_surge.protection_level_with_leads(up_kv, given.lead_length_m))
    if given.discharge_current_ka is not None:
        ledger.add(
            device.key, specified(Symbol.IN_SURGE, given.discharge_current_ka, "kA"), dc_surge.discharge_current_min()
        )


def _dc_currents(
    system: System, ledger: Ledger, device: Apparatus, given: DcSurgeProtection, terminal: InputTerminal
) -> None:
    """Keep the short-circuit current that a device stands and needs, and its share of the lightning current."""
    isc_max = ledger.get(terminal.key, Symbol.ISC_MAX)
    if isc_max is not None:
        ledger.add(device.key, dc_surge.iscpv_min(isc_max))
    ledger.specified(device.key, Symbol.ISCPV, given.short_circuit_current_a)
    lightning = system.earthing.lightning_protection
    if lightning is not None and "1" in given.test_class:
        ledger.add(device.key, dc_surge.impulse_current_min(lightning.level))
    ledger.specified(device.key, Symbol.IIMP, given.impulse_current_ka)


def _ac(system: System, ledger: Ledger, device: Apparatus, given: AcSurgeProtection) -> None:
    earthing = system.earthing_at(device.key)
    without = system.supply.phases == 3 and not system.supply.has_neutral
    mode = "L-PE" if earthing in ("TN-S", "TN-C-S", "IT") or (without and earthing == "TT") else "L-N"
    u0_v = system.voltage_to_earth_v
    said = (_STAR_POINT,) if without and earthing != "IT" else ()
    ledger.attempt(
        device.key,
        Symbol.UC_MIN,
        lambda: ac_surge.least_operating_voltage(earthing, mode, u0_v, system.voltage_v).assuming(*said),
        phrase("no least Uc is laid down for {earthing}, {mode}", earthing=earthing, mode=mode),
    )
    ledger.add(device.key, _lead(given.test_class, from_memory("IEC 60364-5-53:2019 534.4.8")))
    ledger.add(device.key, ac_surge.largest_protection_level(False, system.voltage_v), symbol=Symbol.UP_MAX)
    lightning = system.earthing.lightning_protection
    if lightning is not None and "1" in given.test_class:
        level = lightning.level if lightning.level in ("I", "II") else "III/IV"
        ledger.add(device.key, ac_surge.least_discharge_current(1, level), symbol=Symbol.IIMP_MIN)
    ledger.specified(device.key, Symbol.IIMP, given.impulse_current_ka)
    ledger.specified(device.key, Symbol.UC, given.continuous_voltage_v)
    if given.protection_level_v is not None:
        ledger.add(device.key, specified(Symbol.UP, given.protection_level_v / 1000, "kV"))


def _far_from_surge_protection(system: System, unit: InverterUnit) -> Rating | None:
    """Return the cable between an inverter and the nearest AC surge protection ahead of it, None without. [m]"""
    length_m = 0.0
    for device in system.upstream(unit.key):
        if device.has(SURGE_PROTECTION):
            return Rating(
                Symbol.L_AC_SURGE,
                length_m,
                "m",
                phrase("cable to the nearest AC surge protection"),
                (),
                cited(phrase("spec")),
            )
        if isinstance(device, Cable):
            length_m += device.given.length_m
    return None


def _lead(test_class: str, clause: Sayable) -> Rating:
    """Return the least protective conductor of a surge protective device by its type, in copper. [mm²]

    Source: IEC 60364-5-53:2019 534.4.8 (from memory; 16 mm² for type 1 is in a maker's guide too), IEC 61643-32 for DC.
    """
    carries_lightning = "1" in test_class
    given = (Given(phrase("type"), test_class),)
    formula = phrase("16 mm² Cu for type 1") if carries_lightning else phrase("6 mm² Cu for type 2")
    return Rating(Symbol.SPE, 16.0 if carries_lightning else 6.0, "mm²", formula, given, clause)
