"""Each inverter input: what its strings come to together, and which inputs can feed one fault."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from sld.model.device import Apparatus, BatteryUnit, InputTerminal, InverterUnit, StringGroup
from sld.model.kinds.dc import DC_CABLE
from sld.model.kinds.table import circuit_kind
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import array
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.optimisers import operating_point, optimiser_of, rules_of
from sld.words import Sayable, phrase

__all__ = [
    "groups_behind",
    "inputs",
    "inputs_of",
    "joined_groups",
    "joined_inputs",
    "largest_isc_a",
    "linked_inputs",
    "strings_count",
    "strings_through",
    "terminal_pairs_count",
]


def groups_behind(system: System, key: str) -> list[StringGroup]:
    """Return the groups of strings fed through a DC device, in order."""
    return [device for device in system.downstream(key) if isinstance(device, StringGroup)]


def inputs_of(system: System, key: str) -> list[InputTerminal]:
    """Return the inputs of an inverter by its key, in their order: they are next to it in the tree."""
    below = (system.devices[child] for child in system.children.get(key, ()))
    return [device for device in below if isinstance(device, InputTerminal)]


def linked_inputs(system: System, terminal: InputTerminal) -> list[InputTerminal]:
    """Return the inputs that are linked in parallel with one, itself included, in the order of the inverter."""
    own = inputs_of(system, terminal.owner)
    found = {terminal.index}
    grown = True
    while grown:
        pairs = [(each.index, each.given.linked_to - 1) for each in own if each.given.linked_to is not None]
        more = {place for pair in pairs if found & set(pair) for place in pair}
        grown = not more <= found
        found |= more
    return [each for each in own if each.index in found]


def joined_inputs(system: System, terminal: InputTerminal) -> list[InputTerminal]:
    """Return the inputs whose strings can feed one fault: linked ones, or all where they are not independent."""
    if system.inverter_of(terminal).type.inputs_independent:
        return linked_inputs(system, terminal)
    return inputs_of(system, terminal.owner)


def joined_groups(system: System, terminal: InputTerminal) -> list[StringGroup]:
    """Return the groups of strings that can feed one fault: those of all inputs that are joined."""
    return [group for each in joined_inputs(system, terminal) for group in groups_behind(system, each.key)]


def strings_count(groups: Iterable[StringGroup]) -> int:
    """Return how many strings groups of them come to."""
    return sum(group.given.count for group in groups)


def strings_through(device: Apparatus, groups: Iterable[StringGroup]) -> int:
    """Return how many strings a device carries the current of, which may stand for several alike."""
    return ceil(strings_count(groups) / device.count)


def largest_isc_a(ledger: Ledger, groups: list[StringGroup]) -> float:
    """Return the largest short-circuit current of one string among groups, with its rear gain. [A]"""
    return max(ledger[group.key, Symbol.ISC_D].value for group in groups)


def inputs(system: System, ledger: Ledger) -> None:
    """Rate every input."""
    for group in system.of(StringGroup):
        own = array.isc_max(1, ledger[group.key, Symbol.ISC_D].value, rules_of(system, [group]))
        ledger.add(group.key, own, symbol=Symbol.ISC_STRING)
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        count, rules = strings_count(groups), rules_of(system, groups)
        isc_a = largest_isc_a(ledger, groups)
        impp_a = max(operating_point(system, group)[1] for group in groups)
        gain = max(_rear_gain(system, ledger, group) for group in groups)
        key = terminal.key
        ledger.add(key, _worst(ledger, groups, Symbol.UOC_MAX, True), _worst(ledger, groups, Symbol.UMPP_MIN, False))
        ledger.add(key, _worst(ledger, groups, Symbol.UMPP_MAX, True), _worst(ledger, groups, Symbol.UOC_HOT, False))
        ledger.add(key, array.impp_total(count, impp_a * gain), array.isc_total(count, isc_a))
        ledger.add(key, array.isc_max(count, isc_a, rules))
        inverter = system.inverter_of(terminal)
        backfeed_a = inverter.type.backfeed_current_a
        joined = joined_groups(system, terminal)
        joined_count, joined_isc_a = strings_count(joined), largest_isc_a(ledger, joined)
        said = _backfeed_said(system, inverter)
        of_joined = rules_of(system, joined)
        ledger.add(key, array.reverse_current(joined_count, joined_isc_a, of_joined, backfeed_a).assuming(*said))
        if terminal.limits is not None:
            ledger.add(key, specified(Symbol.IMPP_LIMIT, terminal.limits.current_max_a, "A"))
            ledger.add(key, specified(Symbol.ISC_LIMIT, terminal.limits.short_circuit_current_max_a, "A"))
            if terminal.limits.terminal_current_max_a is not None:
                on_one_pair = _strings_on_one_pair(terminal, count)
                ledger.add(key, array.terminal_current(on_one_pair, isc_a, rules))
                ledger.add(key, specified(Symbol.ITERMINAL_LIMIT, terminal.limits.terminal_current_max_a, "A"))


def _rear_gain(system: System, ledger: Ledger, group: StringGroup) -> float:
    """Return what the rear adds to the current of a string; optimisers pass on no more than they give. [factor]"""
    if optimiser_of(system, group) is not None:
        return 1.0
    return ledger[group.key, Symbol.ISC_D].value / group.type.short_circuit_current_a


def _strings_on_one_pair(terminal: InputTerminal, count: int) -> int:
    """Return how many strings one pair of terminals carries: all where they are joined before, else spread evenly."""
    given = terminal.given
    laid = any(circuit_kind(device) is DC_CABLE for device in given.circuit or ())
    if given.junction_box or given.string_fuses or laid:
        return count
    pairs = terminal.limits.strings_max if terminal.limits else None
    joined = max(string.joined_ahead for string in given.strings)
    return joined * ceil(terminal_pairs_count(terminal) / pairs) if pairs else joined


def terminal_pairs_count(terminal: InputTerminal) -> int:
    """Return how many pairs of conductors come from the strings of an input: branch connectors make several one."""
    return sum(string.count // string.joined_ahead for string in terminal.given.strings)


def _backfeed_said(system: System, inverter: InverterUnit) -> tuple[Sayable, ...]:
    """Return the remark on a hybrid inverter that declares no backfeed current."""
    if "backfeed_current_a" in inverter.type.model_fields_set:
        return ()
    has_battery = any(device.dc and isinstance(device, BatteryUnit) for device in system.downstream(inverter.key))
    return (phrase("no current flows from the battery into the array, none declared"),) if has_battery else ()


def _worst(ledger: Ledger, groups: list[StringGroup], symbol: Symbol, highest: bool) -> Rating | None:
    """Return the highest or lowest rating of a symbol among groups of strings."""
    ratings = [rating for group in groups if (rating := ledger.get(group.key, symbol)) is not None]
    ratings.sort(key=lambda rating: rating.value, reverse=highest)
    return ratings[0] if ratings else None
