"""The way of a fault current: the cables it flows through, the loop at the end of a circuit, what trips there."""

from __future__ import annotations

from sld.citation import cited
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, Device, InverterUnit
from sld.model.kinds.ac import AC_CABLE, BREAKER
from sld.model.kinds.role import TRIPPING
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import breaker, conductor, disconnection, fault, fuse, protective_conductor
from sld.ratings import release as release_current
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.symbol import Symbol
from sld.steps.cable_conductors import brings_protective
from sld.steps.cable_design import conductor_class, conductor_material, hot_c
from sld.steps.ledger import Ledger
from sld.steps.protection import protective_family
from sld.steps.releases import release_of
from sld.steps.source import C_MAX, Source, between_lines_v
from sld.steps.unanswered import Unanswered, Why
from sld.tables.table import NoRow
from sld.words import NOTHING, Phrase, phrase

__all__ = [
    "C_MIN",
    "cables_of_circuit",
    "cold",
    "earth_tripping",
    "far_end",
    "greatest_earth_fault_ka",
    "hot",
    "hot_with_neutral",
    "loop_at",
    "loop_parts",
    "magnetic_trip_factor",
    "time_allowed",
    "to_earth_ohm",
    "tripping",
    "unknown_way",
    "upstream_cables",
]

C_MIN = 0.95
"""Of BS 7671:2018 411.4.4, which IEC 60909-0 gives for networks within ±6 %."""

_MCCB_TRIP = 12.0
"""The usual magnetic setting of 10 In, and the 20 % by which the release may miss it (IEC 60947-2, from memory)."""


def upstream_cables(system: System, key: str) -> list[Cable]:
    """Return the cables from a device to the network, a cable itself included."""
    here = system.devices[key]
    own = [here] if isinstance(here, Cable) else []
    return [*own, *(device for device in system.upstream(key) if isinstance(device, Cable))]


def cables_of_circuit(system: System, device: Apparatus) -> list[Cable]:
    """Return the AC cables between a protective device and the far end of its circuit."""
    here = {each.key for each in upstream_cables(system, device.key)}
    return [each for each in upstream_cables(system, far_end(system, device.key)) if each.key not in here]


def cold(ledger: Ledger, cable: Cable) -> Impedance | None:
    """Return the impedance of one conductor of a cable at 20 °C, None where its section or resistance is unknown."""
    return _conductor(cable, ledger.value(cable.key, Symbol.S), 20.0)


def hot(ledger: Ledger, cable: Cable) -> Impedance | None:
    """Return the impedance of one conductor of a cable at its operating temperature, None where it is unknown."""
    return _conductor(cable, ledger.value(cable.key, Symbol.S), hot_c(cable))


def hot_with_neutral(ledger: Ledger, cable: Cable) -> Impedance | None:
    """Return the impedance of line and neutral of a cable at its operating temperature, None where it is unknown."""
    line, neutral_mm2 = hot(ledger, cable), ledger.value(cable.key, Symbol.S_NEUTRAL)
    neutral = line if neutral_mm2 is None else _conductor(cable, neutral_mm2, hot_c(cable))
    return None if line is None or neutral is None else line + neutral


def _loop(system: System, ledger: Ledger, cable: Cable, temperature_c: float, place: Busbar | None) -> Impedance | None:
    """Return the loop of line and protective conductor of a cable at a temperature, or None.

    Where no protective conductor comes with the cable from the network (TT), the fault returns through the earth; so it
    does where the cable belongs to another building than the fault, which has an electrode of its own (`place`).
    """
    line = _conductor(cable, ledger.value(cable.key, Symbol.S), temperature_c)
    section_mm2 = ledger.value(cable.key, Symbol.SPE)
    if system.earthed_by(cable.key) is not place:
        return line
    if section_mm2 is None and system.supply.earthing_system == "TT" and not brings_protective(system, cable):
        return line
    protective = _armour(cable, temperature_c) or _conductor(cable, section_mm2, temperature_c)
    return None if line is None or protective is None else line + protective


def _armour(cable: Cable, temperature_c: float) -> Impedance | None:
    """Return the impedance of an armour that is the protective conductor, None where there is none; hot it is 10 K
    cooler than the conductors, and its resistance grows as much more with temperature (IEC 60364-5-54 Table A.54.5)."""
    given = cable.given_as(AC_CABLE)
    if given is None or given.armour_section_mm2 is None:
        return None
    r_20 = protective_conductor.armour_resistance_ohm_per_km(given.armour_section_mm2)
    return fault.cable_impedance(r_20, conductor.reactance().value, given.length_m, temperature_c, given.parallel)


def _conductor(cable: Cable, section_mm2: float | None, temperature_c: float) -> Impedance | None:
    given = cable.given_as(AC_CABLE)
    if section_mm2 is None or given is None:
        return None
    try:
        r_20 = conductor.resistance(conductor_material(cable), section_mm2, 20.0, conductor_class(cable))
    except NoRow:
        return None
    x = conductor.reactance().value
    return fault.cable_impedance(r_20.value, x, given.length_m, temperature_c, given.parallel)


def unknown_way(ledger: Ledger, key: str, symbol: Symbol, cable: Cable) -> None:
    """Keep that a rating is not known because a cable on the way is not."""
    what = phrase("the impedance of {cable} is not known", cable=cable.designation)
    ledger.unanswered(key, symbol, Unanswered(what, Why.FOLLOWS))


def loop_parts(system: System, ledger: Ledger, device: Apparatus, source: Source) -> list[Impedance] | Cable:
    """Return the parts of the loop to the far end of a device's circuit, or the cable whose part is not known."""
    end = far_end(system, device.key)
    parts, place = [source.loop + _electrode(system, end)], system.earthed_by(end)
    for cable in upstream_cables(system, end):
        part = _loop(system, ledger, cable, hot_c(cable), place)
        if part is None:
            return cable
        parts.append(part)
    return parts


def greatest_earth_fault_ka(system: System, ledger: Ledger, key: str, source: Source) -> float | None:
    """Return the greatest earth-fault current at a device by the loop that the spec states, None where it states none.

    Cables cold, Cmax. [kA]
    """
    stated = system.supply.loop_impedance_ohm is not None or system.supply.transformer is not None
    place = system.earthed_by(key)
    parts = [_loop(system, ledger, cable, 20.0, place) for cable in upstream_cables(system, key)]
    known = [part for part in parts if part is not None]
    if not stated or len(known) < len(parts) or system.earthing_at(key) == "IT":
        return None
    u0_v = between_lines_v(system) / 3**0.5
    return fault.earth_fault_current(
        u0_v, in_series([source.loop, _electrode(system, key), *known]), C_MAX, "max"
    ).value


def _electrode(system: System, key: str) -> Impedance:
    """Return what the electrode at a device adds to the loop: its resistance in TT, nothing where it is not stated."""
    electrode = system.electrode_at(key)
    in_loop = electrode is not None and system.earthing_at(key) == "TT"
    return Impedance((electrode.resistance_ohm or 0.0) if electrode and in_loop else 0.0, 0.0)


def to_earth_ohm(system: System, ledger: Ledger, device: Apparatus) -> float | None:
    """Return electrode and protective conductors to the far end of a circuit in TT, None where they are not known."""
    end = far_end(system, device.key)
    electrode, place = system.electrode_at(end), system.earthed_by(end)
    if electrode is None or electrode.resistance_ohm is None:
        return None
    here = [each for each in upstream_cables(system, end) if system.earthed_by(each.key) is place]
    parts = [_conductor(cable, ledger.value(cable.key, Symbol.SPE), hot_c(cable)) for cable in here]
    return electrode.resistance_ohm + sum(part.magnitude_ohm for part in parts if part is not None)


def loop_at(system: System, ledger: Ledger, device: Apparatus, source: Source) -> Rating | None:
    """Return the loop impedance at the far end of the circuit of a protective device.

    None in an IT system: what flows there depends on how the source is earthed, and a first fault need not be switched
    off.
    """
    end = far_end(system, device.key)
    if system.earthing_at(end) == "IT":
        return None
    parts = loop_parts(system, ledger, device, source)
    if isinstance(parts, Cable):
        unknown_way(ledger, device.key, Symbol.ZS, parts)
        return None
    loop = fault.loop_impedance(parts)
    given = (Given(phrase("Z source"), parts[0].magnitude_ohm, "Ω"), *loop.given)
    said: list[Phrase] = []
    if isinstance(system.devices[end], Consumer) and not cables_of_circuit(system, device):
        said.append(phrase("loop at the board, cable of the load not given"))
    electrode = system.electrode_at(end)
    if system.earthing_at(end) == "TT" and (electrode is None or electrode.resistance_ohm is None):
        said.append(phrase("resistance of the earth electrode not stated and not counted"))
    return Rating(loop.symbol, loop.value, loop.unit, loop.formula, given, loop.clause).assuming(
        *source.assumptions, phrase("cables hot, added as resistances"), *said
    )


def far_end(system: System, key: str) -> str:
    """Return the key of the last AC device of the circuit that a protective device protects: a unit, or a busbar, or
    the device before the next overcurrent device, or before a building with an earth electrode of its own."""
    end, place = key, system.earthed_by(key)
    for device in system.downstream(key):
        if device.dc or system.earthed_by(device.key) is not place:
            break
        if isinstance(device, Apparatus) and protective_family(device):
            break
        end = device.key
        if isinstance(device, InverterUnit | Consumer | BatteryUnit | Busbar):
            break
    return end


def time_allowed(system: System, device: Device, rated: Rating) -> Rating:
    """Return the longest time to disconnect the circuit of a device protected at `rated`. Raises NoRow without one.

    A circuit that feeds a board is a distribution circuit (IEC 60050-826-14-02, from memory), a trunk cable with
    micro-inverters plugged in is not.
    """
    owner = system.devices.get(device.owner)
    feeds_board = isinstance(owner, Busbar) and not owner.given.trunk
    sockets = isinstance(owner, Consumer) and owner.given.supplies == "socket_outlets"
    kind = "distribution" if feeds_board else disconnection.circuit_kind(rated.value, sockets)
    return disconnection.disconnection_time(system.earthing_at(device.key), system.voltage_to_earth_v, kind)


def tripping(
    system: System, device: Apparatus, rated: Rating, loop_ohm: float, allowed: Rating | None
) -> tuple[str, Rating | None]:
    """Return the curve (given, else C where the loop allows it, else B) and the current sure to trip in time.

    A breaker trips at once, a fuse opens within the time allowed; None for a fuse that no table holds.
    """
    u0_v, trips, moulded = system.voltage_to_earth_v, device.given_as(TRIPPING), device.given_as(BREAKER)
    if trips is None:
        return "", _opening(rated, allowed, system.profile == "BS 7671")
    release = release_of(device)
    if release is not None and release.sees_short_circuits:
        return "", release_current.tripping_current(release, allowed.value if allowed else None)
    if moulded is not None and (moulded.construction == "moulded_case" or moulded.trip_factor is not None):
        factor, rated_a = magnetic_trip_factor(device), moulded.rated_current_a or rated.value
        text = phrase("magnetic trip of moulded-case breakers at 12 In: setting 10 In, tolerance 20 %")
        assumed = () if moulded.trip_factor else (text,)
        values = (Given("In", rated_a, "A"), Given("Im/In", factor))
        return "", Rating(
            Symbol.IA,
            factor * rated_a,
            "A",
            "Im/In · In",
            values,
            cited("IEC 60947-2", phrase("data of the maker")),
            NOTHING,
            assumed,
        )
    if trips.curve is not None:
        return trips.curve, breaker.instantaneous_tripping_current(trips.curve, rated.value)
    current = breaker.instantaneous_tripping_current("C", rated.value)
    if loop_ohm <= disconnection.largest_loop_impedance(u0_v, current.value, C_MIN).value:
        return "C", current
    return "B", breaker.instantaneous_tripping_current("B", rated.value)


def earth_tripping(device: Apparatus, allowed: Rating | None) -> Rating | None:
    """Return the current of an earth fault that is sure to trip the release for it in time, None without one."""
    release = release_of(device)
    return release_current.earth_tripping_current(release, allowed.value if allowed else None) if release else None


def magnetic_trip_factor(device: Apparatus) -> float:
    """Return the upper bound of the magnetic trip of a moulded-case breaker as a multiple of In: given, else usual."""
    given = device.given_as(BREAKER)
    return (given.trip_factor if given is not None else None) or _MCCB_TRIP


def _opening(rated: Rating, allowed: Rating | None, bs_88: bool) -> Rating | None:
    if allowed is None:
        return None
    try:
        return fuse.opening_current(rated.value, allowed.value, bs_88)
    except NoRow:
        return None
