"""The lines of text below the apparatus of a circuit: what an inspector reads off its nameplate."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from sld.layout.diagram.line import Line, Role, beside, line, rated, value_of
from sld.layout.diagram.settings import settings
from sld.layout.diagram.string_apparatus import OF_STRINGS, stated_or_least
from sld.model.conductors import fused_poles_count, has_neutral, lines_count
from sld.model.device import Apparatus
from sld.model.kinds.ac import (
    AC_SURGE_PROTECTION,
    BREAKER,
    CHANGEOVER,
    CONTACTOR,
    FUSE,
    INTERFACE_PROTECTION,
    INTERFACE_RELAY,
    ISOLATOR,
    MAIN_SWITCH,
    METER,
    NETWORK_SEPARATION,
    RCBO,
    RCD,
    SERVICE_FUSE,
)
from sld.model.kinds.battery import BATTERY_BREAKER, BATTERY_FUSE, BATTERY_ISOLATOR
from sld.model.kinds.dc import (
    DC_BREAKER,
    DC_FUSE,
    DC_ISOLATOR,
    DC_SURGE_PROTECTION,
    DISCONNECTOR,
    INSULATION_MONITOR,
    PLUG_CONNECTOR,
    RAPID_SHUTDOWN,
)
from sld.model.kinds.role import POLES, ResidualProtection, Tripping
from sld.model.kinds.row import Kind
from sld.model.kinds.units import GENERATOR
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.battery_circuit import BatteryFuse, BatteryIsolator
from sld.spec.blocks.circuit import (
    AcSurgeProtection,
    Breaker,
    Changeover,
    DcFuse,
    DcIsolator,
    DcSurgeProtection,
    Fuse,
    InterfaceProtection,
    Isolator,
    Meter,
    NetworkSeparation,
    Rcbo,
    Rcd,
)
from sld.spec.blocks.dc_breaker import DcBreaker
from sld.spec.blocks.dc_path import InsulationMonitor, RapidShutdown
from sld.spec.blocks.interface_relay import InterfaceRelay
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, amount, phrase, sequence, unbroken, verbatim

__all__ = ["apparatus_lines"]


Values = TypeVar("Values")
_Lines = Callable[[Values, Apparatus, System, Ratings], list[Line | None]]
_LINES: dict[Kind[Any], _Lines[Any]] = {**OF_STRINGS}


def _lines(*kinds: Kind[Values]) -> Callable[[_Lines[Values]], _Lines[Values]]:
    """Mark a function as the one that writes the lines of some kinds."""

    def keep(function: _Lines[Values]) -> _Lines[Values]:
        _LINES.update(dict.fromkeys(kinds, function))
        return function

    return keep


def apparatus_lines(device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    """Return the lines below the symbol of an apparatus, None for each without content."""
    return _LINES[device.kind](device.given, device, system, ratings)


def _poles(given_poles: int | None, system: System, device: Apparatus) -> str:
    """Return the number of poles: as given, else all live conductors; the neutral is not switched under the NEC."""
    lines = lines_count(system, device.owner)
    live = lines if system.follows_nec else lines + has_neutral(system, device.owner) if lines == 3 else 2
    return f"{given_poles or live}P"


@_lines(BREAKER)
def _(given: Breaker, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        _tripping(given, device, system, ratings),
        *settings(given),
        *_breaking_and_service(device, system, ratings),
    ]


def _breaking_and_service(device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    """Return the breaking capacities, both as one where they are equal: `Icu = Ics 36 kA`."""
    ultimate, service = ratings.get(device.key, Symbol.ICN), ratings.get(device.key, Symbol.ICS)
    if ultimate and service and ultimate.value == service.value and not system.follows_nec:
        return [rated(ultimate, f"{ultimate.symbol} = Ics")]
    return [_breaking(device, system, ratings), beside(rated(service, "Ics"))]


def _tripping(given: Tripping, device: Apparatus, system: System, ratings: Ratings) -> Line | None:
    """Return curve, rated current and poles: `B 16 A 4P`."""
    curve = given.curve or ratings.word(device.key, Word.CURVE)
    poles = _poles(given.poles, system, device)
    moulded = device.given_as(BREAKER)
    stated_a = moulded.rated_current_a if moulded is not None and moulded.overload_setting_a else None
    current = amount(stated_a, "A") if stated_a is not None else _rated_current(device, ratings)
    return line(Role.RATED, sequence([curve, current, poles], " "))


def _breaking(device: Apparatus, system: System, ratings: Ratings) -> Line | None:
    """Return the breaking capacity, in North America called interrupting rating."""
    rating = ratings.get(device.key, Symbol.ICN)
    return rated(rating, "AIC" if system.follows_nec else str(rating.symbol)) if rating else None


def _rated_current(device: Apparatus, ratings: Ratings) -> Sayable:
    rating = ratings.get(device.key, Symbol.IN)
    return value_of(rating) if rating else phrase("{symbol} not found", symbol="In")


@_lines(FUSE, SERVICE_FUSE)
def _(given: Fuse, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    kind = "" if system.follows_nec else "gG"
    return [
        line(Role.RATED, sequence([_rated_current(device, ratings), kind], " ")),
        _breaking(device, system, ratings),
    ]


@_lines(RCD)
def _(given: Rcd, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        _current_and_poles(given.poles, device, system, ratings),
        *_sensitivity(given, device, system, ratings),
    ]


def _sensitivity(
    given: ResidualProtection, device: Apparatus, system: System, ratings: Ratings
) -> tuple[Line | None, Line | None]:
    residual = rated(ratings.get(device.key, Symbol.IDN))
    if system.follows_nec:
        return line(Role.RATED, phrase("ground-fault")), residual
    letter = given.sensitivity or ratings.word(device.key, Word.RCD_TYPE) or "A"
    rcd = device.given_as(RCD)
    selective = "S" if given.selective else ""
    delay_s = rcd.delay_s if rcd is not None else None
    delay: Sayable = unbroken("Δt", amount(delay_s, "s")) if delay_s is not None else NOTHING
    kind = line(Role.RATED, sequence([unbroken(phrase("type {name}", name=letter), selective), delay], " "))
    return kind, residual


@_lines(RCBO)
def _(given: Rcbo, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        _tripping(given, device, system, ratings),
        *_sensitivity(given, device, system, ratings),
        _breaking(device, system, ratings),
    ]


@_lines(MAIN_SWITCH, CONTACTOR)
def _(given: object, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    opened = device.given_as(POLES)
    return [_current_and_poles(opened.poles if opened else None, device, system, ratings)]


_LOCKABLE = {True: phrase("lockable"), False: phrase("not lockable")}
"""What is said of an isolator whose spec says it; nothing is said of others."""


@_lines(ISOLATOR)
def _(given: Isolator, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    lockable = line(Role.SETTING, None if given.lockable is None else _LOCKABLE[given.lockable])
    return [_current_and_poles(given.poles, device, system, ratings), lockable]


@_lines(INTERFACE_PROTECTION)
def _(given: InterfaceProtection, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [_current_and_poles(None, device, system, ratings), line(Role.SETTING, given.settings)]


@_lines(INTERFACE_RELAY)
def _(given: InterfaceRelay, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    opened = [system.devices[key].designation for key in system.names[given.trips]] if given.trips else []
    told = [line(Role.SETTING, phrase("opens {device}", device=each)) for each in opened]
    return [line(Role.RATED, phrase("measures voltage and frequency")), *told, line(Role.SETTING, given.settings)]


def _current_and_poles(poles: int | None, device: Apparatus, system: System, ratings: Ratings) -> Line | None:
    current = ratings.get(device.key, Symbol.IN)
    return line(Role.RATED, sequence([value_of(current) if current else NOTHING, _poles(poles, system, device)], " "))


_INTERLOCKS = {
    "mechanical": phrase("mechanical interlock"),
    "electrical": phrase("electrical interlock"),
    "key": phrase("key interlock"),
    "three_position": phrase("three positions, opens first"),
    "none": phrase("no interlock"),
}
_OPERATIONS = {"manual": phrase("by hand"), "automatic": phrase("automatic")}
_LINKED = phrase("N–PE link while the network is off")


@_lines(CHANGEOVER)
def _(given: Changeover, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    source = system.devices[system.names[given.second_source][0]]
    generator = source.has(GENERATOR)  # which is drawn at way II
    return [
        _current_and_poles(given.poles, device, system, ratings),
        line(Role.SETTING, _OPERATIONS[given.operation] if given.operation else None),
        line(Role.SETTING, _INTERLOCKS[given.interlock] if given.interlock else None),
        None if generator else line(Role.SETTING, phrase("II: backup output of {unit}", unit=source.designation)),
        line(Role.SETTING, _LINKED if given.neutral_earth_link else None),
    ]


@_lines(NETWORK_SEPARATION)
def _(given: NetworkSeparation, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    linked = line(Role.SETTING, _LINKED if given.neutral_earth_link else None)
    return [_current_and_poles(given.poles, device, system, ratings), linked]


@_lines(AC_SURGE_PROTECTION)
def _(given: AcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    stated = rated(ratings.get(device.key, Symbol.UC), "Uc")
    own_a = given.backup_fuse_a
    return [
        stated or rated(ratings.get(device.key, Symbol.UC_MIN), "Uc", "≥"),
        _protection_level(device, ratings),
        line(Role.RATED, phrase("backup fuse {current}", current=amount(own_a, "A"))) if own_a is not None else None,
    ]


def _protection_level(device: Apparatus, ratings: Ratings) -> Line | None:
    return rated(ratings.get(device.key, Symbol.UP) or ratings.get(device.key, Symbol.UP_RATING), "Up")


@_lines(DC_SURGE_PROTECTION)
def _(given: DcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [rated(ratings.get(device.key, Symbol.UCPV), "Ucpv"), _protection_level(device, ratings)]


_PURPOSES = {
    "supply": phrase("supply meter"),
    "generation": phrase("generation meter"),
    "feed_in_limit": phrase("feed-in limit"),
}


@_lines(METER)
def _(given: Meter, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        line(Role.SETTING, _PURPOSES[given.purpose]),
        line(Role.RATED, _reach(given, device, ratings)),
        line(Role.SETTING, phrase("CT on {lines}", lines=", ".join(given.ct_lines)) if given.ct_lines else None),
        line(Role.NUMBER, unbroken(phrase("No. {number}", number=given.number)) if given.number else None),
    ]


def _reach(given: Meter, device: Apparatus, ratings: Ratings) -> Sayable:
    """Return the highest current of a meter, or the ratio of its current transformers: `CT 200/5 A`."""
    if given.connection == "direct":
        most = ratings.get(device.key, Symbol.IMAX)
        return phrase("{current} direct", current=value_of(most)) if most else NOTHING
    primary, secondary = ratings.get(device.key, Symbol.IPN), ratings.get(device.key, Symbol.ISN)
    if not primary or not secondary:
        return verbatim("CT")
    return sequence(["CT", sequence([amount(primary.value), amount(secondary.value, "A")], "/")], " ")


@_lines(DC_ISOLATOR)
def _(given: DcIsolator, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    category = given.utilization_category or ratings.word(device.key, Word.CATEGORY)
    return [
        rated(ratings.get(device.key, Symbol.UE)),
        beside(rated(ratings.get(device.key, Symbol.IE)), " "),
        line(Role.RATED, sequence([category, f"{given.poles}P"], " ")),
        line(Role.SETTING, None if given.lockable is None else _LOCKABLE[given.lockable]),
    ]


@_lines(DC_FUSE)
def _(given: DcFuse, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    count = device.count * fused_poles_count(system, device)
    voltage, kind = ratings.get(device.key, Symbol.UN), "PV" if system.follows_nec else "gPV"
    return [
        line(Role.RATED, sequence([amount(count, "×"), _rated_current(device, ratings)], " ")),
        line(Role.RATED, sequence([kind, value_of(voltage) if voltage else NOTHING], " ")),
        line(Role.RATED, _IN_POLE[given.pole]),
    ]


_IN_POLE = {"positive": phrase("in the positive pole"), "negative": phrase("in the negative pole"), None: NOTHING}


_POLARITIES = {True: phrase("polarized"), False: phrase("not polarized"), None: NOTHING}


@_lines(BATTERY_BREAKER, DC_BREAKER)
def _(given: DcBreaker, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    current = stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN)
    told = [given.curve or "", current.said if current else NOTHING, f"{given.poles}P"]
    return [
        line(Role.RATED, sequence(told, " ")),
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        _breaking(device, system, ratings),
        line(Role.RATED, _POLARITIES[given.polarized]),
        line(Role.RATED, phrase("suitable for isolation") if given.isolating else None),
    ]


@_lines(BATTERY_FUSE)
def _(given: BatteryFuse, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    current = stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN)
    return [
        line(Role.RATED, sequence([amount(given.poles, "×"), current.said if current else NOTHING], " ")),
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        _breaking(device, system, ratings),
    ]


@_lines(BATTERY_ISOLATOR)
def _(given: BatteryIsolator, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
        line(Role.RATED, sequence([given.utilization_category or "", f"{given.poles}P"], " ")),
    ]


@_lines(DISCONNECTOR, PLUG_CONNECTOR)
def _(given: object, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
    ]


@_lines(RAPID_SHUTDOWN)
def _(given: RapidShutdown, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    operated = given.operated_from
    return [
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
        line(Role.SETTING, phrase("operated {from_where}", from_where=operated) if operated else None),
    ]


@_lines(INSULATION_MONITOR)
def _(given: InsulationMonitor, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    alarm, least = ratings.get(device.key, Symbol.RALARM), ratings.get(device.key, Symbol.RISO_START)
    below = phrase("alarm {limit}", limit=unbroken("<", value_of(alarm))) if alarm else None
    from_ = phrase("alarm {limit}", limit=unbroken("≥", value_of(least))) if least else None
    return [stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN), line(Role.SETTING, below or from_)]
