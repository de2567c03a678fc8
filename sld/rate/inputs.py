"""Each inverter input: what its strings come to together, and whether they need fuses."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sld.model.device import BatteryUnit, InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ledger import Ledger, specified
from sld.ratings import array, string_fuse
from sld.tables.profiles import Profile, profile

__all__ = ["groups_behind", "inputs", "joined_groups", "joined_strings_count", "largest_isc_a"]

_UNSTATED_FUSE_SHARE = 1.35 / 1.25
"""Modules are tested with 1.35 times their largest fuse; 1.25 Isc is the least that a module must bear."""


def groups_behind(system: System, key: str) -> list[StringGroup]:
    """Return the groups of strings fed through a DC device, in order."""
    return [device for device in system.downstream(key) if isinstance(device, StringGroup)]


def joined_groups(system: System, terminal: InputTerminal) -> list[StringGroup]:
    """Return the groups of strings that can feed one fault: those of the input, or of the whole inverter where its
    inputs are not independent."""
    independent = system.inverter_of(terminal).type.inputs_independent
    return groups_behind(system, terminal.key if independent else terminal.owner)


def joined_strings_count(system: System, terminal: InputTerminal) -> int:
    """Return how many strings can feed one fault at an input (see `joined_groups`)."""
    return sum(group.given.count for group in joined_groups(system, terminal))


def largest_isc_a(ledger: Ledger, groups: list[StringGroup]) -> float:
    """Return the largest short-circuit current of one string among groups, with its rear gain. [A]"""
    return max(ledger.value(group.key, "Isc,d") or 0.0 for group in groups)


def inputs(system: System, ledger: Ledger) -> None:
    """Rate every input."""
    rules = profile(system.profile)
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        count = sum(group.given.count for group in groups)
        isc_a = largest_isc_a(ledger, groups)
        impp_a = max(group.type.mpp_current_a for group in groups)
        gain = max((ledger.value(group.key, "Isc,d") or 0.0) / group.type.short_circuit_current_a for group in groups)
        key = terminal.key
        ledger.add(key, _worst(ledger, groups, "Uoc,max", True), _worst(ledger, groups, "Umpp,min", False))
        ledger.add(key, _worst(ledger, groups, "Umpp,max", True), _worst(ledger, groups, "Uoc,hot", False))
        ledger.add(key, array.impp_total(count, impp_a * gain), array.isc_total(count, isc_a))
        ledger.add(key, array.isc_max(count, isc_a, rules))
        inverter = system.inverter_of(terminal)
        backfeed_a = inverter.type.backfeed_current_a
        joined_by = joined_groups(system, terminal)
        joined, joined_isc_a = joined_strings_count(system, terminal), largest_isc_a(ledger, joined_by)
        said = _backfeed_said(system, inverter)
        ledger.add(key, array.reverse_current(joined, joined_isc_a, rules, backfeed_a).assuming(*said))
        if terminal.limits is not None:
            ledger.add(key, specified("Impp,limit", terminal.limits.current_max_a, "A"))
            ledger.add(key, specified("Isc,limit", terminal.limits.short_circuit_current_max_a, "A"))
        _fuse_need(ledger, terminal, groups, _Feeding(joined, joined_isc_a, backfeed_a), isc_a, rules)


def _backfeed_said(system: System, inverter: InverterUnit) -> tuple[str, ...]:
    """Return the remark on a hybrid inverter that declares no backfeed current."""
    if "backfeed_current_a" in inverter.type.model_fields_set:
        return ()
    has_battery = any(device.dc and isinstance(device, BatteryUnit) for device in system.downstream(inverter.key))
    return ("no current flows from the battery into the array, none declared",) if has_battery else ()


def _worst(ledger: Ledger, groups: list[StringGroup], symbol: str, highest: bool) -> Rating | None:
    """Return the highest or lowest rating of a symbol among groups of strings."""
    ratings = [rating for group in groups if (rating := ledger.get(group.key, symbol)) is not None]
    ratings.sort(key=lambda rating: rating.value, reverse=highest)
    return ratings[0] if ratings else None


@dataclass(frozen=True, slots=True)
class _Feeding:
    """What can feed a fault in one string: all strings that are joined, and the inverter.

    isc_a: of the strongest string among them.
    """

    strings_count: int
    isc_a: float
    backfeed_a: float


def _fuse_need(
    ledger: Ledger, terminal: InputTerminal, groups: list[StringGroup], feeding: _Feeding, isc_a: float, rules: Profile
) -> None:
    """Keep both sides of the string fuse test, the most strings without fuses, and the window of ratings."""
    key = terminal.key
    ocpr_a, assumed = _largest_fuse_a(groups, isc_a)
    need = string_fuse.need(feeding.strings_count, feeding.isc_a, ocpr_a, rules)
    needed, reverse = need.needed, need.reverse
    if feeding.backfeed_a:
        given = (*reverse.given, Given("Ibackfeed", feeding.backfeed_a, "A"))
        value, formula = reverse.value + feeding.backfeed_a, f"{reverse.formula} + Ibackfeed"
        reverse = replace(reverse, value=value, formula=formula, given=given)
        needed = needed or reverse.value > need.withstand.value
    ledger.add(key, reverse.assuming(*assumed), symbol="Irev,test")
    ledger.add(key, need.withstand.assuming(*assumed), symbol="Irev,limit")
    ledger.word(key, "string fuses", "needed" if needed else "not needed", reverse.clause)
    unfused = string_fuse.unfused_strings_max(feeding.isc_a, ocpr_a, rules)
    by_maker = [g.type.parallel_unfused_max for g in groups if g.type.parallel_unfused_max is not None]
    if by_maker and min(by_maker) < unfused.value:
        unfused = replace(
            unfused, value=float(min(by_maker)), formula="as the maker states", clause="data sheet of the module"
        )
        if feeding.strings_count > unfused.value:
            ledger.word(key, "string fuses", "needed", unfused.clause)
    ledger.add(key, unfused, symbol="Np,unfused")
    _fuse_window(ledger, key, string_fuse.window(isc_a, ocpr_a, rules), assumed, rules)


def _fuse_window(
    ledger: Ledger, key: str, window: string_fuse.FuseWindow, assumed: tuple[str, ...], rules: Profile
) -> None:
    """Keep the window of ratings of a string fuse, and the smallest standard rating in it."""
    ledger.add(key, window.lower, symbol="In,min")
    ledger.add(key, window.upper.assuming(*assumed), symbol="In,max")
    chosen = string_fuse.smallest_rating(window, series_name=rules.dc_fuse_series.text)
    if chosen is not None:
        ledger.add(key, chosen, symbol="In,string")
    else:
        why = f"no standard rating lies between {window.lower.quantity()} and {window.upper.quantity()}"
        ledger.unanswered(key, "In,string", why)
    ledger.word(key, "window", window_text(window), rules.name)


def _largest_fuse_a(groups: list[StringGroup], isc_a: float) -> tuple[float, tuple[str, ...]]:
    """Return the largest series fuse that the modules allow, and the remark where none of them states one. [A]"""
    limits = [group.type.series_fuse_max_a for group in groups if group.type.series_fuse_max_a is not None]
    if limits:
        return min(limits), ()
    ocpr_a = _UNSTATED_FUSE_SHARE * isc_a
    return ocpr_a, (f"the module states no largest series fuse; {ocpr_a:.1f} A taken (1.08 Isc)",)


def window_text(window: string_fuse.FuseWindow) -> str:
    """Write a window of ratings: `from 20.9 A to 25 A`."""
    low = "from" if window.lower_included else "above"
    high = "to" if window.upper_included else "below"
    return f"{low} {window.lower.quantity()} {high} {window.upper.quantity()}"
