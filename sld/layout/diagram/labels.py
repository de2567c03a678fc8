"""The lines below each symbol, what an inspector looks for, and how lines are written and wrapped."""

from __future__ import annotations

import re
from functools import singledispatch

from sld.layout.diagram.apparatus import apparatus_lines, quantity
from sld.model.conductors import cores
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    ChargeConverter,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
    Transformer,
)
from sld.model.kinds.ac import AC_CABLE
from sld.model.places import passage, place_words
from sld.model.system import System
from sld.model.wording import built_in
from sld.quantity import Rating, shown
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.symbols.typeface import text_width_mm

__all__ = ["LINE_WIDTHS_MM", "below", "conductors", "kilo", "short_product", "wrapped"]

_WORD = re.compile(
    r"[≤>≥] \S+ \S+|type \d\S*|\+ \S+ (?:mm²|AWG|kcmil)"
    r"|\S*\d\S* (?:[kM]?(?:V|A|W|VA|Wp|Wh|Hz|Ω)|m|mm²|mA|%|AWG|kcmil)(?!\S)|\S+"
)
"""A word, a number with its unit, a type with its number, or the last conductor of a cable."""

_FAR_TOO_LONG_FACTOR = 1.6
"""A single word up to this multiple of the width stands on a line of its own, a longer one is torn."""

_LONG_PRODUCT_COUNT = 40
"""A longer make and model would stand beside every string; there the model is enough, the schedules have the make."""

LINE_WIDTHS_MM = (24.5, 19.0, 15.0)
"""Lines beside a symbol are wrapped at one of these widths, so that one long name does not widen a whole lane; the
narrower ones make a diagram that is narrower and taller."""


def kilo(value: float, unit: str) -> str:
    """Write a value in units or in thousands of them: `14.8 kW`, `800 W`."""
    return f"{shown(value / 1000)} k{unit}" if abs(value) >= 1000 else f"{shown(value)} {unit}"


def short_product(device: Device) -> str:
    """Return make and model, the model alone where both are long: the equipment schedule has the make."""
    return device.product if len(device.product) <= _LONG_PRODUCT_COUNT else device.model


def below(device: Device, system: System, ratings: Ratings) -> tuple[str, ...]:
    """Return the lines below a device's symbol. Raises TypeError for a class of device that has none."""
    return tuple(line for line in _below(device, system, ratings) if line)


def wrapped(lines: tuple[str, ...], width_mm: float) -> tuple[str, ...]:
    """Return the lines with each wrapped between words at a width; no quantity is torn apart."""
    found: list[str] = []
    for line in lines:
        row = ""
        for word in _WORD.findall(line):
            for part in _torn(word, width_mm):
                longer = f"{row} {part}".strip()
                if row and text_width_mm(longer) > width_mm:
                    found.append(row)
                    longer = part
                row = longer
        found.append(row)
    return tuple(found)


def _torn(word: str, width_mm: float) -> list[str]:
    """Return a word in parts that fit, where it is far too long for a line: the number of a supply point, a maker."""
    if " " in word or text_width_mm(word) <= _FAR_TOO_LONG_FACTOR * width_mm:
        return [word]
    parts = [""]
    for sign in word:
        if text_width_mm(parts[-1] + sign) > width_mm:
            parts.append("")
        parts[-1] += sign
    return parts


def _place(device: Device, system: System) -> str:
    return str(place_words(system.site.locations, device.location))


@singledispatch
def _below(device: Device, system: System, ratings: Ratings) -> list[str]:
    raise TypeError(f"no label for {device.kind}")


@_below.register
def _(device: Network, system: System, ratings: Ratings) -> list[str]:
    supply = device.given
    limit, transformer = supply.export_limit_w, supply.transformer
    if transformer is None:
        lines = _low_voltage(system, ratings)
    else:
        fault_va = transformer.network_fault_power_va
        lines = [
            f"{supply.phases} ~ {shown(supply.frequency_hz)} Hz",
            kilo(transformer.primary_voltage_v, "V"),
            f"Sk {shown(fault_va / 1e6)} MVA" if fault_va else "",
        ]
    return [
        *lines,
        f"No. {supply.supply_point}" if supply.supply_point else "",
        f"feed-in ≤ {kilo(limit, 'W')}" if limit is not None else "",
    ]


def _low_voltage(system: System, ratings: Ratings) -> list[str]:
    """Write the kind of supply at the installation's side.

    In TT and IT the network brings no protective conductor (IEC 60364-1:2005 312.2), so none is named. Notation after
    IEC 61293:2019 (from memory).
    """
    if system.follows_nec:
        return _low_voltage_in_north_america(system, ratings)
    supply, volts = system.supply, shown(system.voltage_v)
    protective = " PE" if supply.earthing_system in ("TN-S", "TN-C-S") else ""
    return [
        f"{supply.phases}N{protective} ~ {shown(supply.frequency_hz)} Hz",
        f"{volts}/{shown(round(system.voltage_to_earth_v))} V" if supply.phases == 3 else f"{volts} V",
        f"{supply.earthing_system} {quantity(ratings, '', Symbol.IPF, 'Ipf {}')}".strip(),
    ]


def _low_voltage_in_north_america(system: System, ratings: Ratings) -> list[str]:
    """Write the kind of supply as it is named there: `120/240 V, 1 ph, 3 wire`, `208Y/120 V, 3 ph, 4 wire`."""
    supply, volts = system.supply, shown(system.voltage_v)
    to_neutral = shown(round(system.voltage_to_earth_v))
    if supply.phases == 3:
        name = f"{volts}Y/{to_neutral} V"
    else:
        name = f"{to_neutral}/{volts} V" if supply.split_phase else f"{volts} V"
    wires = 4 if supply.phases == 3 else 3 if supply.split_phase else 2
    return [
        name,
        f"{supply.phases} ph, {wires} wire",
        f"{shown(supply.frequency_hz)} Hz",
        quantity(ratings, "", Symbol.IPF, "fault {}"),
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
        *_low_voltage(system, ratings),
    ]


@_below.register
def _(device: Busbar, system: System, ratings: Ratings) -> list[str]:
    least = quantity(ratings, device.key, Symbol.INA_LEAST, "≥ {}") if device.given.trunk else ""
    return [
        quantity(ratings, device.key, Symbol.INA) or least,
        quantity(ratings, device.key, Symbol.IK_MAX, "Ik {}"),
        quantity(ratings, device.key, Symbol.IP, "ip {}"),
    ]


@_below.register
def _(device: InverterUnit, system: System, ratings: Ratings) -> list[str]:
    type_ = device.type
    apparent = device.apparent_power_va
    limit = device.given.power_limit_w
    given = device.given
    inside = [str(function) for function in built_in(type_)]
    return [
        device.product,
        " ".join(
            [kilo(type_.rated_power_w, "W"), *([kilo(apparent, "VA")] if apparent != type_.rated_power_w else [])]
        ),
        quantity(ratings, device.key, Symbol.IB, "Ib {}"),
        f"on {given.line}" if given.line else "",
        f"cos φ {shown(given.power_factor)}" if given.power_factor != 1 else "",
        f"set to ≤ {kilo(limit, 'W')}" if limit is not None else "",
        f"built in: {', '.join(inside)}" if inside else "",
        _place(device, system),
    ]


@_below.register
def _(device: InputTerminal, system: System, ratings: Ratings) -> list[str]:
    voltage, most_v = ratings.get(device.key, Symbol.UOC_MAX), system.inverter_of(device).type.dc_voltage_max_v
    limit, reverse = "", ratings.get(device.key, Symbol.IREV)
    if voltage is not None:
        limit = f"{'≤' if voltage.value <= most_v else '>'} {shown(most_v)} V"
    return [
        quantity(ratings, device.key, Symbol.UOC_MAX, "Uoc {}"),
        limit,
        quantity(ratings, device.key, Symbol.ISC_MAX, "Isc {}"),
        f"Irev {reverse.quantity()}" if reverse is not None and reverse.value > 0 else "",
    ]


@_below.register
def _(device: StringGroup, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    times = f"{given.count} × " if given.count > 1 else ""
    total = ratings[device.key, Symbol.PSTRING].value * given.count
    return [
        f"{times}{given.modules_in_series} × {device.model}",
        kilo(total, "Wp"),
        given.orientation or "",
        "" if _told_by_its_cable(device, system) else _place(device, system),
    ]


def _told_by_its_cable(group: StringGroup, system: System) -> bool:
    """Return whether the next cable says where it comes from, so that the strings need not."""
    cable = next((each for each in system.upstream(group.key) if isinstance(each, Cable)), None)
    return cable is not None and bool(passage(system, cable))


@_below.register
def _(device: Consumer, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        kilo(given.power_w, "W") if given.power_w else "",
        quantity(ratings, device.key, Symbol.IB, "Ib {}"),
        _place(device, system),
    ]


@_below.register
def _(device: BatteryUnit, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        device.product,
        kilo(given.energy_wh, "Wh") if given.energy_wh else "",
        kilo(given.converter_power_va, "VA") if given.converter_power_va else "",
        quantity(ratings, device.key, Symbol.IB, "Ib {}"),
        _place(device, system),
    ]


@_below.register
def _(device: ChargeConverter, system: System, ratings: Ratings) -> list[str]:
    return [kilo(device.given.charge_converter_power_w or 0.0, "W"), _place(device, system)]


@_below.register
def _(device: GeneratorUnit, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        device.product,
        kilo(given.power_va, "VA"),
        quantity(ratings, device.key, Symbol.IB, "Ib {}"),
        given.changeover,
        _place(device, system),
    ]


@_below.register
def _(device: DataNode, system: System, ratings: Ratings) -> list[str]:
    return [device.product, _place(device, system)]


@_below.register
def _(device: Cable, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    return [
        device.marking,
        conductors(device, system, ratings) or "section not found",
        f"{shown(given.length_m)} m",
        quantity(ratings, device.key, Symbol.IZ, "Iz {}"),
        str(passage(system, device)),
    ]


def conductors(device: Cable, system: System, ratings: Ratings) -> str:
    """Write the conductors of a cable, nothing where the section is not known.

    `5 × 6 mm²`, `4 × 25 + 16 mm²` with a smaller PE, `2 × (5 × 95) mm²` in parallel, `3 × 2 × 4 mm²` for equal ones.
    """
    section, protective = ratings.get(device.key, Symbol.S), ratings.get(device.key, Symbol.SPE)
    if section is None:
        return ""
    count = cores(system, device)
    size, unit = _size(section), "" if section.trade_name else " mm²"
    text = f"{count} × {size}"
    if protective is not None and protective.value != section.value and not device.dc and count > 2:
        text = f"{count - 1} × {size} + {_size(protective)}"
    given = device.given_as(AC_CABLE)
    if given is not None and given.parallel > 1:
        return f"{given.parallel} × ({text}){unit}"
    return f"{device.count} × {text}{unit}" if device.count > 1 else f"{text}{unit}"


def _size(section: Rating) -> str:
    """Write a section: its trade name, which holds its unit, or the number alone."""
    return section.trade_name or shown(section.value)


@_below.register
def _(device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    return [*apparatus_lines(device, system, ratings), _place(device, system)]
