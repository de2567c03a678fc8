"""The lines of text below the apparatus of a circuit: what an inspector reads off its nameplate."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from sld.model.conductors import phases
from sld.model.device import Apparatus
from sld.model.kinds.ac import (
    AC_SURGE_PROTECTION,
    BREAKER,
    CONTACTOR,
    FUSE,
    INTERFACE_PROTECTION,
    ISOLATOR,
    MAIN_SWITCH,
    METER,
    RCBO,
    RCD,
    SERVICE_FUSE,
)
from sld.model.kinds.dc import (
    BLOCKING_DIODE,
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
from sld.model.system import System
from sld.quantity import shown
from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.circuit import (
    AcSurgeProtection,
    BlockingDiode,
    Breaker,
    DcFuse,
    DcIsolator,
    DcSurgeProtection,
    Fuse,
    InterfaceProtection,
    Isolator,
    Meter,
    Rcbo,
    Rcd,
)
from sld.spec.blocks.dc_breaker import DcBreaker
from sld.spec.blocks.dc_path import InsulationMonitor, RapidShutdown
from sld.steps import Ratings

__all__ = ["apparatus_lines", "quantity"]


Values = TypeVar("Values")
_Lines = Callable[[Values, Apparatus, System, Ratings], list[str]]
_LINES: dict[Kind[Any], _Lines[Any]] = {}


def _lines(*kinds: Kind[Values]) -> Callable[[_Lines[Values]], _Lines[Values]]:
    """Mark a function as the one that writes the lines of some kinds."""

    def keep(function: _Lines[Values]) -> _Lines[Values]:
        _LINES.update(dict.fromkeys(kinds, function))
        return function

    return keep


def apparatus_lines(device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    """Return the lines below the symbol of an apparatus; those without content are empty."""
    return _LINES[device.kind](device.given, device, system, ratings)


def quantity(ratings: Ratings, key: str, symbol: Symbol, template: str = "{}") -> str:
    """Write a rating by its symbol, value and unit put into the template; nothing where there is no such rating."""
    rating = ratings.get(key, symbol)
    return template.format(rating.quantity()) if rating else ""


def _poles(given_poles: int | None, system: System, device: Apparatus) -> str:
    """Write the number of poles: as given, else all live conductors; the neutral is not switched under the NEC."""
    live = (3 if system.follows_nec else 4) if phases(system, device.owner) == 3 else 2
    return f"{given_poles or live}P"


@_lines(BLOCKING_DIODE)
def _(given: BlockingDiode, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        f"{shown(given.rated_voltage_v)} V" if given.rated_voltage_v else "",
        f"{shown(given.rated_current_a)} A" if given.rated_current_a else "",
    ]


@_lines(BREAKER)
def _(given: Breaker, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        _tripping(given, device, system, ratings),
        _breaking(device, system, ratings),
    ]


def _tripping(given: Tripping, device: Apparatus, system: System, ratings: Ratings) -> str:
    """Write curve, rated current and poles: `B 16 A 4P`."""
    curve = given.curve or ratings.word(device.key, Word.CURVE)
    return f"{curve} {_rated_current(device, ratings)} {_poles(given.poles, system, device)}".strip()


def _breaking(device: Apparatus, system: System, ratings: Ratings) -> str:
    """Write the breaking capacity, in North America called interrupting rating."""
    return quantity(ratings, device.key, Symbol.ICN, "AIC {}" if system.follows_nec else "Icn {}")


def _rated_current(device: Apparatus, ratings: Ratings) -> str:
    return quantity(ratings, device.key, Symbol.IN) or "In not found"


@_lines(FUSE, SERVICE_FUSE)
def _(given: Fuse, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    kind = "" if system.follows_nec else "gG"
    return [f"{_rated_current(device, ratings)} {kind}".rstrip(), _breaking(device, system, ratings)]


@_lines(RCD)
def _(given: Rcd, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        f"{quantity(ratings, device.key, Symbol.IN)} {_poles(given.poles, system, device)}",
        *_sensitivity(given, device, system, ratings),
    ]


def _sensitivity(given: ResidualProtection, device: Apparatus, system: System, ratings: Ratings) -> tuple[str, str]:
    if system.follows_nec:
        return "ground-fault", quantity(ratings, device.key, Symbol.IDN)
    letter = given.sensitivity or ratings.word(device.key, Word.RCD_TYPE) or "A"
    rcd = device.given_as(RCD)
    selective = " S" if rcd is not None and rcd.selective else ""
    return f"type {letter}{selective}", quantity(ratings, device.key, Symbol.IDN)


@_lines(RCBO)
def _(given: Rcbo, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        _tripping(given, device, system, ratings),
        *_sensitivity(given, device, system, ratings),
        _breaking(device, system, ratings),
    ]


@_lines(MAIN_SWITCH, CONTACTOR)
def _(given: object, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    opened = device.given_as(POLES)
    return [_current_and_poles(opened.poles if opened else None, device, system, ratings)]


@_lines(ISOLATOR)
def _(given: Isolator, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [_current_and_poles(given.poles, device, system, ratings), "lockable" if given.lockable else ""]


@_lines(INTERFACE_PROTECTION)
def _(given: InterfaceProtection, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [_current_and_poles(None, device, system, ratings), given.settings or ""]


def _current_and_poles(poles: int | None, device: Apparatus, system: System, ratings: Ratings) -> str:
    return f"{quantity(ratings, device.key, Symbol.IN)} {_poles(poles, system, device)}".strip()


@_lines(AC_SURGE_PROTECTION)
def _(given: AcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    stated = quantity(ratings, device.key, Symbol.UC, "Uc {}")
    return [stated or quantity(ratings, device.key, Symbol.UC_MIN, "Uc ≥ {}"), _protection_level(device, ratings)]


def _protection_level(device: Apparatus, ratings: Ratings) -> str:
    level = quantity(ratings, device.key, Symbol.UP, "Up {}")
    return level or quantity(ratings, device.key, Symbol.UP_RATING, "Up {}")


@_lines(DC_SURGE_PROTECTION)
def _(given: DcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [quantity(ratings, device.key, Symbol.UCPV, "Ucpv {}"), _protection_level(device, ratings)]


@_lines(METER)
def _(given: Meter, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    purposes = {"supply": "supply meter", "generation": "generation meter", "feed_in_limit": "feed-in limit"}
    if given.connection == "direct":
        reach = quantity(ratings, device.key, Symbol.IMAX, "{} direct")
    else:
        primary, secondary = ratings.get(device.key, Symbol.IPN), ratings.get(device.key, Symbol.ISN)
        reach = f"CT {shown(primary.value)}/{shown(secondary.value)} A" if primary and secondary else "CT"
    return [purposes[given.purpose], reach, f"No. {given.number}" if given.number else ""]


@_lines(DC_ISOLATOR)
def _(given: DcIsolator, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    category = given.utilization_category or ratings.word(device.key, Word.CATEGORY)
    return [
        quantity(ratings, device.key, Symbol.UE),
        quantity(ratings, device.key, Symbol.IE),
        f"{category} {given.poles}P".strip(),
    ]


@_lines(DC_FUSE)
def _(given: DcFuse, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    count = device.count * given.poles
    kind = "PV" if system.follows_nec else "gPV"
    return [f"{count} × {_rated_current(device, ratings)}", f"{kind} {quantity(ratings, device.key, Symbol.UN)}"]


@_lines(DC_BREAKER)
def _(given: DcBreaker, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    current = _stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN)
    return [
        f"{given.curve or ''} {current} {given.poles}P".strip(),
        _stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        _breaking(device, system, ratings),
        {True: "polarized", False: "not polarized", None: ""}[given.polarized],
        "suitable for isolation" if given.isolating else "",
    ]


@_lines(DISCONNECTOR, PLUG_CONNECTOR)
def _(given: object, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        _stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        _stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
    ]


@_lines(RAPID_SHUTDOWN)
def _(given: RapidShutdown, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    operated = f"operated {given.operated_from}" if given.operated_from else ""
    return [
        _stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        _stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
        operated,
    ]


@_lines(INSULATION_MONITOR)
def _(given: InsulationMonitor, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    alarm = quantity(ratings, device.key, Symbol.RALARM, "alarm < {}")
    return [
        _stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        alarm or quantity(ratings, device.key, Symbol.RISO_START, "alarm ≥ {}"),
    ]


def _stated_or_least(device: Apparatus, ratings: Ratings, symbol: Symbol, least: Symbol) -> str:
    """Write a rated value as given, else the least that it may be: nothing is chosen for these devices."""
    return quantity(ratings, device.key, symbol) or quantity(ratings, device.key, least, f"{symbol} ≥ {{}}")
