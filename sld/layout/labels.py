"""The lines of text beside each device: designation first, then what an inspector looks for."""

from __future__ import annotations

import re
from functools import singledispatch

from sld.model.conductors import cores, phases
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    DataNode,
    Device,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
    Transformer,
)
from sld.model.system import System
from sld.quantity import shown
from sld.rate import Ratings
from sld.spec.blocks.circuit import (
    AcSurgeProtection,
    Breaker,
    Contactor,
    DcFuse,
    DcIsolator,
    DcSurgeProtection,
    Fuse,
    InterfaceProtection,
    Isolator,
    MainSwitch,
    Meter,
    Rcbo,
    Rcd,
)
from sld.symbols.typeface import text_width_mm

__all__ = ["LINE_WIDTHS_MM", "below", "kilo", "wrapped"]

_WORD = re.compile(r"[≤>≥] \S+ \S+|\S*\d\S* (?:[kM]?(?:V|A|W|VA|Wp|Wh|Hz|Ω)|m|mm²|mA|%)(?!\S)|\S+")
"""A word, or a number with its unit."""

LINE_WIDTHS_MM = (23.0, 19.0, 15.0)
"""Lines beside a symbol are wrapped at one of these widths, so that one long name does not widen a whole lane; the
narrower ones make a diagram that is narrower and taller."""


def kilo(value: float, unit: str) -> str:
    """Write a value in units or in thousands of them: `14.8 kW`, `800 W`."""
    return f"{shown(value / 1000)} k{unit}" if abs(value) >= 1000 else f"{shown(value)} {unit}"


def below(device: Device, system: System, ratings: Ratings) -> tuple[str, ...]:
    """Return the lines below a device's symbol. Raises TypeError for a class of device that has none."""
    return tuple(line for line in _below(device, system, ratings) if line)


def wrapped(lines: tuple[str, ...], width_mm: float) -> tuple[str, ...]:
    """Return the lines with each wrapped between words at a width; no word and no quantity is torn apart."""
    found: list[str] = []
    for line in lines:
        row = ""
        for word in _WORD.findall(line):
            longer = f"{row} {word}".strip()
            if row and text_width_mm(longer) > width_mm:
                found.append(row)
                longer = word
            row = longer
        found.append(row)
    return tuple(found)


@singledispatch
def _below(device: Device, system: System, ratings: Ratings) -> list[str]:
    raise TypeError(f"no label for {device.kind}")


def _value(ratings: Ratings, key: str, symbol: str, template: str = "{}") -> str:
    rating = ratings.get(key, symbol)
    return template.format(rating.quantity()) if rating else ""


def _poles(given_poles: int | None, system: System, device: Device) -> str:
    """Write the number of poles: as given, else all live conductors."""
    return f"{given_poles or (4 if phases(system, device.owner) == 3 else 2)}P"


def _place(device: Device) -> str:
    return device.location


@_below.register
def _(device: Network, system: System, ratings: Ratings) -> list[str]:
    supply = device.given
    volts = shown(system.voltage_v)
    if supply.phases == 3:
        kind, voltage = "3N PE", f"{volts}/{shown(round(system.voltage_to_earth_v))} V"
    else:
        kind, voltage = "1N PE", f"{volts} V"
    limit = supply.export_limit_w
    return [
        f"{kind} ~ {shown(supply.frequency_hz)} Hz",
        voltage,
        f"{supply.earthing_system} {_value(ratings, '', 'Ipf', 'Ipf {}')}".strip(),
        f"No. {supply.supply_point}" if supply.supply_point else "",
        f"feed-in ≤ {kilo(limit, 'W')}" if limit is not None else "",
    ]


@_below.register
def _(device: Transformer, system: System, ratings: Ratings) -> list[str]:
    given = system.supply.transformer
    assert given is not None
    return [
        kilo(given.rated_power_va, "VA"),
        f"uk {shown(given.short_circuit_voltage_percent)} %",
        f"{kilo(given.primary_voltage_v, 'V')} / {shown(given.secondary_voltage_v or system.voltage_v)} V",
        given.vector_group or "",
    ]


@_below.register
def _(device: Busbar, system: System, ratings: Ratings) -> list[str]:
    return [_value(ratings, device.key, "InA"), _value(ratings, device.key, "Ik,max", "Ik {}")]


@_below.register
def _(device: InverterUnit, system: System, ratings: Ratings) -> list[str]:
    type_ = device.type
    apparent = type_.apparent_power_max_va or type_.rated_power_w
    limit = device.given.power_limit_w
    given = device.given
    return [
        device.product,
        f"{kilo(type_.rated_power_w, 'W')} {kilo(apparent, 'VA')}",
        _value(ratings, device.key, "Ib", "Ib {}") + (f", {given.line}" if given.line else ""),
        f"cos φ {shown(given.power_factor)}" if given.power_factor != 1 else "",
        f"set to ≤ {kilo(limit, 'W')}" if limit is not None else "",
        _place(device),
    ]


@_below.register
def _(device: InputTerminal, system: System, ratings: Ratings) -> list[str]:
    voltage, owner = ratings.get(device.key, "Uoc,max"), system.devices[device.owner]
    limit = ""
    if voltage is not None and isinstance(owner, InverterUnit):
        most_v = owner.type.dc_voltage_max_v
        limit = f"{'≤' if voltage.value <= most_v else '>'} {shown(most_v)} V"
    return [
        _value(ratings, device.key, "Uoc,max", "Uoc {}"),
        limit,
        _value(ratings, device.key, "Isc,max", "Isc {}"),
        "functional earth" if device.given.functional_earth else "",
    ]


@_below.register
def _(device: StringGroup, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    times = f"{given.count} × " if given.count > 1 else ""
    power = ratings.get(device.key, "Pstring")
    total = power.value * given.count if power else 0.0
    return [
        f"{times}{given.modules_in_series} × {device.model}",
        kilo(total, "Wp"),
        given.orientation or "",
        _place(device),
    ]


@_below.register
def _(device: Consumer, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        device.name,
        kilo(given.power_w, "W") if given.power_w else "",
        _value(ratings, device.key, "Ib", "Ib {}"),
        _place(device),
    ]


@_below.register
def _(device: BatteryUnit, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        device.name or device.model,
        kilo(given.energy_wh, "Wh") if given.energy_wh else "",
        kilo(given.converter_power_va, "VA") if given.converter_power_va else "",
        _value(ratings, device.key, "Ib", "Ib {}"),
        _place(device),
    ]


@_below.register
def _(device: DataNode, system: System, ratings: Ratings) -> list[str]:
    return [device.name, device.product, _place(device)]


@_below.register
def _(device: Cable, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    section = ratings.get(device.key, "S")
    return [
        device.marking,
        f"{_bundle(device, system, ratings)} mm²" if section else "section not found",
        f"{shown(given.length_m)} m",
        _value(ratings, device.key, "Iz", "Iz {}"),
    ]


def _bundle(device: Cable, system: System, ratings: Ratings) -> str:
    """Write the conductors of a cable: `5 × 6`, `4 × 25 + 16` with a smaller PE, `2 × (5 × 95)`, `3 × 2 × 4`."""
    section = ratings.get(device.key, "S")
    protective = ratings.get(device.key, "SPE")
    assert section is not None
    count = cores(system, device)
    text = f"{count} × {shown(section.value)}"
    if protective is not None and protective.value != section.value and not device.dc and count > 2:
        text = f"{count - 1} × {shown(section.value)} + {shown(protective.value)}"
    parallel = getattr(device.given, "parallel", 1)
    if parallel > 1:
        return f"{parallel} × ({text})"
    return f"{device.count} × {text}" if device.count > 1 else text


@_below.register
def _(device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [*_apparatus(device.given, device, system, ratings), _place(device)]


@singledispatch
def _apparatus(given: object, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [device.name]


@_apparatus.register
def _(given: Breaker, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    curve = given.curve or ratings.word(device.key, "curve")
    current = _value(ratings, device.key, "In") or "In not found"
    return [
        f"{curve} {current} {_poles(given.poles, system, device)}".strip(),
        _value(ratings, device.key, "Icn", "Icn {}"),
    ]


@_apparatus.register
def _(given: Fuse, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    current = _value(ratings, device.key, "In") or "In not found"
    return [f"{current} gG", _value(ratings, device.key, "Icn", "Icn {}"), device.name]


@_apparatus.register
def _(given: Rcd, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [
        f"{_value(ratings, device.key, 'In')} {_poles(given.poles, system, device)}",
        *_sensitivity(given, device, ratings),
    ]


def _sensitivity(given: Rcd | Rcbo, device: Apparatus, ratings: Ratings) -> tuple[str, str]:
    letter = given.sensitivity or ratings.word(device.key, "RCD type") or "A"
    selective = " S" if isinstance(given, Rcd) and given.selective else ""
    return f"type {letter}{selective}", _value(ratings, device.key, "IΔn")


@_apparatus.register
def _(given: Rcbo, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    curve = given.curve or ratings.word(device.key, "curve")
    current = _value(ratings, device.key, "In") or "In not found"
    return [
        f"{curve} {current} {_poles(given.poles, system, device)}".strip(),
        *_sensitivity(given, device, ratings),
        _value(ratings, device.key, "Icn", "Icn {}"),
    ]


@_apparatus.register(Isolator)
@_apparatus.register(MainSwitch)
@_apparatus.register(Contactor)
@_apparatus.register(InterfaceProtection)
def _(
    given: Isolator | MainSwitch | Contactor | InterfaceProtection, device: Apparatus, system: System, ratings: Ratings
) -> list[str]:
    poles = getattr(given, "poles", None)
    lockable = "lockable" if isinstance(given, Isolator) and given.lockable else ""
    settings = given.settings or "" if isinstance(given, InterfaceProtection) else ""
    return [
        f"{_value(ratings, device.key, 'In')} {_poles(poles, system, device)}".strip(),
        lockable,
        settings,
        device.name,
    ]


@_apparatus.register
def _(given: AcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    stated = _value(ratings, device.key, "Uc", "Uc {}")
    return [stated or _value(ratings, device.key, "Uc,min", "Uc ≥ {}"), _value(ratings, device.key, "Up", "Up {}")]


@_apparatus.register
def _(given: DcSurgeProtection, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [_value(ratings, device.key, "Ucpv", "Ucpv {}"), _value(ratings, device.key, "Up", "Up {}")]


@_apparatus.register
def _(given: Meter, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    purposes = {"supply": "supply meter", "generation": "generation meter", "feed_in_limit": "feed-in limit"}
    if given.connection == "direct":
        reach = _value(ratings, device.key, "Imax", "{} direct")
    else:
        primary, secondary = ratings.get(device.key, "Ipn"), ratings.get(device.key, "Isn")
        reach = f"CT {shown(primary.value)}/{shown(secondary.value)} A" if primary and secondary else "CT"
    return [device.name or purposes[given.purpose], reach, f"No. {given.number}" if given.number else ""]


@_apparatus.register
def _(given: DcIsolator, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    category = given.utilization_category or ratings.word(device.key, "category")
    return [
        _value(ratings, device.key, "Ue"),
        _value(ratings, device.key, "Ie"),
        f"{category} {given.poles}P".strip(),
    ]


@_apparatus.register
def _(given: DcFuse, device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    current = _value(ratings, device.key, "In") or "In not found"
    count = device.count * given.poles
    return [f"{count} × {current}", f"gPV {_value(ratings, device.key, 'Un')}"]
