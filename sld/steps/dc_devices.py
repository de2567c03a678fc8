"""DC isolators, fuses and diodes: what they must stand, and what is chosen where the spec leaves a rating out."""

from __future__ import annotations

from sld.citation import clause_from_memory
from sld.model.device import Apparatus, InputTerminal, StringGroup
from sld.model.kinds.dc import BLOCKING_DIODE, DC_FUSE, DC_ISOLATOR
from sld.model.kinds.role import OVERCURRENT_PROTECTION, OvercurrentProtection
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import dc_isolator, string_fuse
from sld.ratings.standard_value import smallest_standard
from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.circuit import BlockingDiode, DcFuse, DcIsolator
from sld.steps.inputs import groups_behind, joined_groups, largest_isc_a, strings_count, strings_through
from sld.steps.ledger import Ledger
from sld.tables.profiles import profile
from sld.words import NOTHING, phrase

__all__ = ["dc_devices", "protects_array", "protects_string", "terminal_of"]


def terminal_of(system: System, key: str) -> InputTerminal:
    """Return the inverter input that a DC device belongs to."""
    return next(device for device in system.upstream(key) if isinstance(device, InputTerminal))


def dc_devices(system: System, ledger: Ledger) -> None:
    """Rate every DC isolator, overcurrent device and diode."""
    rules = profile(system.profile)
    for device in system.of(Apparatus):
        if not device.in_array:
            continue
        terminal = terminal_of(system, device.key)
        uoc_max = ledger[terminal.key, Symbol.UOC_MAX]
        groups = groups_behind(system, device.key)
        isc_a = largest_isc_a(ledger, groups)
        count = strings_count(groups)
        if (isolator := device.given_as(DC_ISOLATOR)) is not None:
            ledger.add(device.key, dc_isolator.voltage_min(uoc_max), dc_isolator.current_min(count, isc_a, rules))
            if rules.dc_isolator_has_category.holds:
                category = dc_isolator.category(count)
                ledger.word(device.key, Word.CATEGORY, str(category.value), category.origin)
            _isolator(device.key, isolator, ledger, rules.dc_isolator_series.text)
        elif (fuse := device.given_as(DC_FUSE)) is not None:
            ledger.add(device.key, string_fuse.voltage_min(uoc_max), symbol=Symbol.UN_MIN)
            _fuse(system, ledger, device, fuse, terminal, groups)
        elif (stated := device.given_as(OVERCURRENT_PROTECTION)) is not None:
            _window(system, ledger, device, terminal, groups)
            ledger.specified(device.key, Symbol.IN, stated.rated_current_a)
            _breaking(system, ledger, device, stated, terminal)
        elif (diode := device.given_as(BLOCKING_DIODE)) is not None:
            _diode(device.key, diode, ledger, uoc_max, strings_through(device, groups), isc_a)


def _isolator(key: str, given: DcIsolator, ledger: Ledger, series_name: str) -> None:
    demand = ledger.get(key, Symbol.UE_MIN)
    ledger.choose(
        key,
        Symbol.UE,
        given.rated_voltage_v,
        lambda: demand and chosen_voltage(Symbol.UE, "dc_isolator_v", demand),
        phrase("no standard rated voltage is high enough"),
    )
    least = ledger.get(key, Symbol.IE_MIN)
    ledger.choose(
        key,
        Symbol.IE,
        given.rated_current_a,
        lambda: least and dc_isolator.smallest_rating(least, series_name=series_name),
        phrase("no standard rated current is large enough"),
    )


def _fuse(
    system: System,
    ledger: Ledger,
    device: Apparatus,
    given: DcFuse,
    terminal: InputTerminal,
    groups: list[StringGroup],
) -> None:
    """Rate a string fuse, or the array fuse of an input where it stands behind the junction of several strings."""
    key, rules = device.key, profile(system.profile)
    window = _window(system, ledger, device, terminal, groups)
    if window is None:
        chosen = ledger.get(terminal.key, Symbol.IN_STRING)
    else:
        hot = string_fuse.current_when_hot(1.0, given.temperature_factor)
        carried_a = (ledger.value(key, Symbol.ICARRY) or 0.0) / hot.value
        chosen = string_fuse.smallest_rating(window, series_name=rules.dc_fuse_series.text, carried_a=carried_a)
    ledger.choose(
        key, Symbol.IN, given.rated_current_a, lambda: chosen, phrase("no gPV rating lies in the allowed range")
    )

    demand = ledger.get(key, Symbol.UN_MIN)
    ledger.choose(
        key,
        Symbol.UN,
        given.rated_voltage_v,
        lambda: demand and chosen_voltage(Symbol.UN, "gpv_fuse_v", demand),
        phrase("no standard fuse voltage is high enough"),
    )
    _fuse_currents(system, device, given, terminal, ledger)


def _window(
    system: System, ledger: Ledger, device: Apparatus, terminal: InputTerminal, groups: list[StringGroup]
) -> string_fuse.FuseWindow | None:
    """Keep between which ratings an overcurrent device may lie, and the current that it carries.

    Return the range of one behind the junction of several strings; None for that of a string, kept at the input.
    """
    key, rules = device.key, profile(system.profile)
    if protects_string(system, device):
        for symbol in (Symbol.IN_MIN, Symbol.IN_MAX):
            ledger.add(key, ledger.get(terminal.key, symbol), symbol=symbol)
        ledger.add(key, ledger.get(terminal.key, Symbol.ICARRY))
        return None
    isc = ledger.get(terminal.key, Symbol.ISC)
    window = string_fuse.array_window(isc.value if isc else 0.0, rules)
    ledger.add(key, window.lower, symbol=Symbol.IN_MIN)
    if rules.array_fuse_upper_factor.is_set:
        ledger.add(key, window.upper, symbol=Symbol.IN_MAX)
    ledger.add(key, string_fuse.carried_current(largest_isc_a(ledger, groups), strings_count(groups), rules))
    return window


def _fuse_currents(system: System, device: Apparatus, given: DcFuse, terminal: InputTerminal, ledger: Ledger) -> None:
    """Keep what a fuse carries when hot, what opens it for certain, and what it may have to break."""
    key = device.key
    rated = ledger.value(key, Symbol.IN)
    if rated is not None:
        ledger.add(key, string_fuse.current_when_hot(rated, given.temperature_factor))
        ledger.add(key, string_fuse.fusing_current(rated))
    _breaking(system, ledger, device, given, terminal)


def _breaking(
    system: System, ledger: Ledger, device: Apparatus, given: OvercurrentProtection, terminal: InputTerminal
) -> None:
    """Keep what an overcurrent device may have to break, and what it can."""
    key = device.key
    total_a = sum(
        group.given.count * (ledger.value(group.key, Symbol.ISC_D) or 0.0) for group in joined_groups(system, terminal)
    )
    backfeed_a = system.inverter_of(terminal).type.backfeed_current_a
    ledger.add(key, string_fuse.breaking_current(total_a, profile(system.profile), backfeed_a))
    ledger.specified(key, Symbol.ICN, given.breaking_capacity_ka)


def protects_string(system: System, device: Apparatus) -> bool:
    """Return whether a DC overcurrent device is one of those in each string, or in each group of joined ones.

    The one in the circuit of an input with one string is one too.
    """
    if not device.in_array or not device.has(OVERCURRENT_PROTECTION):
        return False
    return not protects_array(device) or strings_count(groups_behind(system, device.key)) == 1


def protects_array(device: Apparatus) -> bool:
    """Return whether a DC overcurrent device is in the circuit of an input, and cuts off what the inverter feeds."""
    return device.in_array and device.has(OVERCURRENT_PROTECTION) and ".circuit." in device.key


def _diode(key: str, given: BlockingDiode, ledger: Ledger, uoc_max: Rating, count: int, isc_a: float) -> None:
    """Keep what a blocking diode must stand: twice the highest voltage, 1.4 times the short-circuit current."""
    clause = clause_from_memory(phrase("{standard}, blocking diodes", standard="IEC 62548:2016"))
    u_given = (uoc_max.as_input(),)
    ledger.add(
        key, Rating(Symbol.UN_MIN, 2 * uoc_max.value, "V", "2·Uoc,max", u_given, clause, NOTHING, uoc_max.assumptions)
    )
    i_given = (Given("Np", count), Given("Isc", isc_a, "A"))
    ledger.add(key, Rating(Symbol.IN_MIN, 1.4 * count * isc_a, "A", "1.4·Np·Isc", i_given, clause))
    ledger.specified(key, Symbol.UN, given.rated_voltage_v)
    ledger.specified(key, Symbol.IN, given.rated_current_a)


def chosen_voltage(symbol: Symbol, series_name: str, demand: Rating) -> Rating | None:
    """Return the smallest standard voltage of a series that meets a demand in V, None above the series."""
    least = demand.as_input()
    return smallest_standard(
        symbol, series_name, least, demand.clause, phrase("smallest standard value ≥ {least}", least=demand.symbol)
    )
