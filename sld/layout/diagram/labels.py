"""The lines below each symbol: what an inspector looks for."""

from __future__ import annotations

from functools import singledispatch

from sld.citation import with_mark
from sld.frozen import replace
from sld.layout.diagram.apparatus import apparatus_lines
from sld.layout.diagram.battery import battery_lines
from sld.layout.diagram.conductors import conductors
from sld.layout.diagram.controllers import feed_in_held, limits
from sld.layout.diagram.earth_bar import earth_conductor_line
from sld.layout.diagram.line import Line, Role, beside, computed, following, kilo, line, rated, value_of
from sld.model.device import (
    Apparatus,
    BatteryCells,
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
from sld.model.kinds.units import BATTERY_CONVERTER
from sld.model.places import facing, place_words
from sld.model.system import EarthConductor, System
from sld.model.wording import built_in
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, amount, phrase, sequence, span, unbroken, verbatim

__all__ = ["along", "below", "input_current"]

_LONG_PRODUCT_COUNT = 40
"""A longer make and model would stand beside every string; there the model is enough, the schedules have the make."""


def _short_product(device: Device) -> str:
    """Return make and model, the model alone where both are long: the equipment schedule has the make."""
    return device.product if len(device.product) <= _LONG_PRODUCT_COUNT else device.model


def below(device: Device, system: System, ratings: Ratings) -> tuple[Line, ...]:
    """Return the lines below a device's symbol. Raises TypeError for a class of device that has none."""
    return tuple(each for each in _below(device, system, ratings) if each is not None)


def _place(device: Device, system: System) -> Line | None:
    return line(Role.PLACE, place_words(system.site.locations, device.location))


def _product(device: Device) -> Line | None:
    return line(Role.PRODUCT, device.product)


def _most(value: float, unit: str) -> Sayable:
    return unbroken("≤", kilo(value, unit))


def _design_current(device: Device, ratings: Ratings) -> Line | None:
    return computed(ratings.get(device.key, Symbol.IB), "Ib")


@singledispatch
def _below(device: Device, system: System, ratings: Ratings) -> list[Line | None]:
    raise TypeError(f"no label for {device.kind}")


@_below.register
def _(device: Network, system: System, ratings: Ratings) -> list[Line | None]:
    supply = device.given
    limit, transformer, number = supply.export_limit_w, supply.transformer, supply.supply_point
    return [
        *(_high_voltage(system) if transformer else (*_low_voltage(system, ratings), _way_in(system))),
        line(Role.NUMBER, unbroken(phrase("No. {number}", number=number)) if number else None),
        line(Role.SETTING, phrase("feed-in {limit}", limit=_most(limit, "W")) if limit is not None else None),
    ]


def _frequency(system: System) -> Sayable:
    """Return the nominal frequency, nothing where nobody says it."""
    supply = system.supply
    return amount(supply.frequency_hz, "Hz") if supply.frequency_said else NOTHING


def _high_voltage(system: System) -> list[Line | None]:
    """Return the kind of supply at the network's side of a transformer."""
    supply, transformer = system.supply, system.supply.transformer
    assert transformer is not None, "asked for only where there is one"
    fault_va = transformer.network_fault_power_va
    return [
        line(Role.SUPPLY, sequence([str(supply.phases), "~", _frequency(system)], " ")),
        line(Role.SUPPLY, kilo(transformer.primary_voltage_v, "V")),
        line(Role.SUPPLY, unbroken("Sk", amount(fault_va / 1e6, "MVA")) if fault_va else None),
    ]


def _low_voltage(system: System, ratings: Ratings) -> list[Line | None]:
    """Return the kind of supply at the installation's side.

    In TT and IT the network brings no protective conductor (IEC 60364-1:2005 312.2), so none is named. Notation after
    IEC 61293:2019 (from memory).
    """
    if system.follows_nec:
        return _low_voltage_in_north_america(system, ratings)
    supply, fault = system.supply, ratings.get("", Symbol.IPF)
    protective = "PE" if supply.earthing_system in ("TN-S", "TN-C-S") else ""
    to_earth, between = amount(round(system.voltage_to_earth_v), "V"), amount(system.voltage_v)
    to_neutral = supply.phases == 3 and supply.has_neutral
    volts = sequence([between, to_earth], "/") if to_neutral else amount(system.voltage_v, "V")
    live = f"{supply.phases}N" if supply.has_neutral else f"{supply.phases}"
    return [
        line(Role.SUPPLY, sequence([live, protective, "~", _frequency(system)], " ")),
        line(Role.SUPPLY, volts),
        line(
            Role.SUPPLY, sequence([supply.earthing_system, unbroken("Ipf", value_of(fault)) if fault else NOTHING], " ")
        ),
        beside(_loop(ratings.get("", Symbol.ZE))),
    ]


def _loop(rating: Rating | None) -> Line | None:
    """Return the line with the loop impedance of the supply, which says so where it is a usual one."""
    found = computed(rating, "Ze", Role.SUPPLY)
    if found is None or rating is None or not rating.assumptions:
        return found
    return line(Role.SUPPLY, sequence([found.said, phrase("assumed")], " "))


def _way_in(system: System) -> Line | None:
    """Return what is known of the conductors that lead to the main board where no cable of the spec does."""
    transformer = system.supply.transformer
    if any(isinstance(each, Cable) for each in system.upstream(system.main_board().key)):
        return None
    length_m = transformer.secondary_length_m if transformer else None
    if length_m is None:
        return line(Role.SUPPLY, phrase("cable not given"))
    return line(Role.SUPPLY, phrase("{length} to the first overcurrent device", length=amount(length_m, "m")))


def _low_voltage_in_north_america(system: System, ratings: Ratings) -> list[Line | None]:
    """Return the kind of supply as it is named there: `120/240 V, 1 ph, 3 wire`, `208Y/120 V, 3 ph, 4 wire`."""
    supply, volts = system.supply, amount(system.voltage_v, "V")
    to_neutral, fault = round(system.voltage_to_earth_v), ratings.get("", Symbol.IPF)
    name: Sayable = volts
    if supply.phases == 3 and supply.has_neutral:
        name = sequence([amount(system.voltage_v), "Y/", amount(to_neutral, "V")], "")
    elif supply.split_phase:
        name = sequence([amount(to_neutral), volts], "/")
    wires = 3 if supply.split_phase else max(2, supply.phases + supply.has_neutral)
    return [
        line(Role.SUPPLY, name),
        line(Role.SUPPLY, phrase("{phases} ph, {wires} wire", phases=supply.phases, wires=wires)),
        line(Role.SUPPLY, amount(supply.frequency_hz, "Hz")),
        line(Role.RATED, phrase("fault {current}", current=value_of(fault)) if fault else None),
    ]


@_below.register
def _(device: Transformer, system: System, ratings: Ratings) -> list[Line | None]:
    given = system.supply.transformer
    assert given is not None
    low = amount(given.secondary_voltage_v or system.voltage_v, "V")
    return [
        line(Role.RATED, kilo(given.rated_power_va, "VA")),
        beside(line(Role.RATED, unbroken("uk", amount(given.short_circuit_voltage_percent, "%")))),
        line(Role.RATED, sequence([kilo(given.primary_voltage_v, "V"), low], " / ")),
        beside(line(Role.RATED, given.vector_group)),
        *_low_voltage(system, ratings),
        _way_in(system),
    ]


@_below.register
def _(device: Busbar, system: System, ratings: Ratings) -> list[Line | None]:
    least = rated(ratings.get(device.key, Symbol.INA_LEAST), sign="≥") if device.given.trunk else None
    return [
        rated(ratings.get(device.key, Symbol.INA)) or least,
        line(Role.SETTING, phrase("on {line}", line=device.given.line) if device.given.line else None),
        line(Role.SETTING, _own_earthing(device)),
        following(ratings.get(device.key, Symbol.IK_MAX), "Ik"),
        following(ratings.get(device.key, Symbol.IP), "ip", Role.STRESS),
        *(line(Role.RATED, _bonded(each, ratings)) for each in system.bonding_at(device.key)),
    ]


def _bonded(conductor: EarthConductor, ratings: Ratings) -> Sayable:
    """Return a main bonding conductor at the board of its building: `-WE4 water pipe 10 mm² Cu, 3 m`."""
    size = earth_conductor_line(conductor, ratings)
    return sequence([conductor.designation, conductor.to, *([size.said] if size else [])], " ")


def _own_earthing(board: Busbar) -> Sayable:
    """Return the earthing system of a building with an electrode of its own: `TT, RA 80 Ω`."""
    system, electrode = board.given.earthing_system, board.given.electrode
    if system is None:
        return NOTHING
    resistance_ohm = electrode.resistance_ohm if electrode is not None else None
    if resistance_ohm is None:
        return verbatim(system)
    return sequence([system, unbroken("RA", amount(resistance_ohm, "Ω"))])


_REACTIVE = {
    "supplied": phrase("supplies reactive power"),
    "absorbed": phrase("absorbs reactive power"),
}


@_below.register
def _(device: InverterUnit, system: System, ratings: Ratings) -> list[Line | None]:
    """Return what is looked for at the symbol; how it limits the feed-in and feeds islands is told in the schedule."""
    type_, given, backup = device.type, device.given, device.type.backup
    apparent_va, limit_w, inside = device.apparent_power_va, given.power_limit_w, built_in(device.type)
    apparent = kilo(apparent_va, "VA") if apparent_va != type_.rated_power_w else NOTHING
    way = [_REACTIVE[given.reactive_power]] if given.reactive_power is not None else []
    factor = (
        sequence([unbroken(unbroken("cos φ"), amount(given.power_factor)), *way]) if given.power_factor != 1 else None
    )
    return [
        _product(device),
        line(Role.RATED, sequence([kilo(type_.rated_power_w, "W"), apparent], " ")),
        beside(_design_current(device, ratings)),
        line(Role.SETTING, phrase("on {line}", line=given.line) if given.line else None),
        line(Role.SETTING, factor),
        line(Role.SETTING, phrase("set to {limit}", limit=_most(limit_w, "W")) if limit_w is not None else None),
        line(Role.SETTING, feed_in_held(system) if given.feed_in_limit is not None else None),
        line(Role.RATED, phrase("built in: {functions}", functions=sequence(inside)) if inside else None),
        line(Role.RATED, phrase("backup {power}", power=kilo(backup.power_va, "VA")) if backup is not None else None),
        _place(device, system),
    ]


@_below.register
def _(device: InputTerminal, system: System, ratings: Ratings) -> list[Line | None]:
    voltage, at_stc = ratings.get(device.key, Symbol.UOC_MAX), _limited_at_stc(device)
    current, most_a = input_current(device, ratings)
    most_v = system.inverter_of(device).type.dc_voltage_max_v
    return [
        _with_bare(voltage, "Uoc", Role.DANGER),
        _held_against(voltage, most_v),
        _with_bare(
            current, "Isc STC" if at_stc else "Isc", Role.DANGER if _exceeds(current, most_a) else Role.COMPUTED
        ),
        _held_against(current, most_a.value if most_a else None),
        line(Role.RATED, _EARTHED[device.given.functional_earth_pole]),
    ]


def _with_bare(rating: Rating | None, symbol: str, role: Role) -> Line | None:
    """Return the line with a value that may stand before its limit; none where there is no rating."""
    told = computed(rating, symbol, role)
    if told is None or rating is None:
        return None
    return replace(told, bare=unbroken(symbol, with_mark(amount(rating.value), rating)))


def input_current(device: InputTerminal, ratings: Ratings) -> tuple[Rating | None, Rating | None]:
    """Return the short-circuit current of an input at the conditions that its limit is for, and that limit."""
    symbol = Symbol.ISC if _limited_at_stc(device) else Symbol.ISC_MAX
    return ratings.get(device.key, symbol), ratings.get(device.key, Symbol.ISC_LIMIT)


def _limited_at_stc(device: InputTerminal) -> bool:
    """Return whether the limit of an input holds for the current at standard test conditions, by its data sheet."""
    return device.limits is not None and device.limits.short_circuit_limit_for == "standard_conditions"


_EARTHED = {
    "positive": phrase("positive pole earthed"),
    "negative": phrase("negative pole earthed"),
    None: NOTHING,
}


def _exceeds(rating: Rating | None, most: Rating | None) -> bool:
    return rating is not None and most is not None and rating.value > most.value


def _held_against(rating: Rating | None, most: float | None) -> Line | None:
    """Return the limit of an input, in such a way that one sees whether it is exceeded; none where none is stated."""
    if rating is None or most is None:
        return None
    exceeded = rating.value > most
    said = unbroken(">" if exceeded else "≤", amount(most, rating.unit))
    return Line(Role.DANGER if exceeded else Role.LIMIT, said, after=" ")


@_below.register
def _(device: StringGroup, system: System, ratings: Ratings) -> list[Line | None]:
    given = device.given
    power_w = ratings[device.key, Symbol.PSTRING].value * given.count
    times = [amount(given.count, "×")] if given.count > 1 else []
    return [
        line(Role.PRODUCT, unbroken(*times, amount(given.modules_in_series, "×"), device.model)),
        beside(line(Role.RATED, kilo(power_w, "Wp"))),
        line(Role.PLACE, given.orientation or facing(given)),
        beside(_place(device, system)),
    ]


@_below.register
def _(device: Consumer, system: System, ratings: Ratings) -> list[Line | None]:
    power_w, on = device.given.power_w, device.given.line
    return [
        line(Role.SETTING, phrase("on {line}", line=on) if on else None),
        line(Role.RATED, kilo(power_w, "W") if power_w else None),
        beside(_design_current(device, ratings)),
        _place(device, system),
    ]


@_below.register
def _(device: BatteryUnit, system: System, ratings: Ratings) -> list[Line | None]:
    given, converter_alone, backup_va = device.given, device.kind is BATTERY_CONVERTER, device.given.backup_power_va
    return [
        *([] if converter_alone else battery_lines(device, given, ratings)),
        beside(line(Role.RATED, kilo(given.converter_power_va, "VA") if given.converter_power_va else None)),
        line(Role.RATED, phrase("backup {power}", power=kilo(backup_va, "VA")) if backup_va is not None else None),
        _design_current(device, ratings),
        _place(device, system),
    ]


@_below.register
def _(device: BatteryCells, system: System, ratings: Ratings) -> list[Line | None]:
    lines = battery_lines(device, device.given, ratings)
    return [*lines, _design_current(device, ratings), _place(device, system)]


@_below.register
def _(device: ChargeConverter, system: System, ratings: Ratings) -> list[Line | None]:
    return [line(Role.RATED, kilo(device.given.charge_converter_power_w or 0.0, "W")), _place(device, system)]


@_below.register
def _(device: GeneratorUnit, system: System, ratings: Ratings) -> list[Line | None]:
    fault_a, built_in_a = device.given.short_circuit_current_a, device.given.protection_rated_current_a
    inside: list[Sayable] = [
        *([phrase("protection {current}", current=amount(built_in_a, "A"))] if built_in_a is not None else ()),
        *([verbatim("RCD")] if device.given.residual_protection else ()),
    ]
    return [
        _product(device),
        line(Role.RATED, kilo(device.given.power_va, "VA")),
        beside(_design_current(device, ratings)),
        line(Role.RATED, unbroken("Ik", amount(fault_a, "A")) if fault_a else None),
        line(Role.RATED, phrase("built in: {functions}", functions=sequence(inside)) if inside else None),
        line(Role.SETTING, device.given.changeover),
        line(Role.SETTING, phrase("neutral earthed at the set") if device.given.neutral_earthed else None),
        _place(device, system),
    ]


@_below.register
def _(device: DataNode, system: System, ratings: Ratings) -> list[Line | None]:
    return [_product(device), *limits(device, system), _place(device, system)]


@_below.register
def _(device: Cable, system: System, ratings: Ratings) -> list[Line | None]:
    fed = (system.devices[key] for key in system.children.get(device.key, ()))
    if any(isinstance(each, StringGroup) for each in fed):
        return []  # there the strings have their lines; the schedule of cables has the current
    return [computed(ratings.get(device.key, Symbol.IZ), "Iz")]


def along(device: Cable, system: System, ratings: Ratings) -> Line:
    """Return what stands along a cable: its conductors and its length."""
    made_of = conductors(device, system, ratings) or phrase("section not found")
    return Line(Role.CONDUCTORS, sequence([made_of, span(device.given.length_m, "m")], " "))


@_below.register
def _(device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [*apparatus_lines(device, system, ratings), _place(device, system)]
