"""Each inverter input: what its strings come to together, and whether they need fuses."""

from __future__ import annotations

from dataclasses import replace

from sld.model.device import InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Rating
from sld.rate.ledger import Ledger, specified
from sld.ratings import array, string_fuse
from sld.tables.profiles import profile

__all__ = ["groups_behind", "inputs", "joined_strings_count"]


def groups_behind(system: System, key: str) -> list[StringGroup]:
    """Return the groups of strings fed through a DC device, in order."""
    return [device for device in system.downstream(key) if isinstance(device, StringGroup)]


def joined_strings_count(system: System, terminal: InputTerminal) -> int:
    """Return how many strings can feed one fault: those of the input, or of the whole inverter where its inputs are not
    independent."""
    inverter = system.devices[terminal.owner]
    independent = not isinstance(inverter, InverterUnit) or inverter.type.inputs_independent
    groups = groups_behind(system, terminal.key if independent else terminal.owner)
    return sum(group.given.count for group in groups)


def inputs(system: System, ledger: Ledger) -> None:
    """Rate every input."""
    rules = profile(system.profile)
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        count = sum(group.given.count for group in groups)
        isc_a = max(ledger.value(group.key, "Isc,d") or 0.0 for group in groups)
        impp_a = max(group.type.mpp_current_a for group in groups)
        gain = max((ledger.value(group.key, "Isc,d") or 0.0) / group.type.short_circuit_current_a for group in groups)
        key = terminal.key
        ledger.add(key, _worst(ledger, groups, "Uoc,max", True), _worst(ledger, groups, "Umpp,min", False))
        ledger.add(key, _worst(ledger, groups, "Umpp,max", True), _worst(ledger, groups, "Uoc,hot", False))
        ledger.add(key, array.impp_total(count, impp_a * gain), array.isc_total(count, isc_a))
        ledger.add(key, array.isc_max(count, isc_a, rules))
        inverter = system.devices[terminal.owner]
        backfeed_a = inverter.type.backfeed_current_a if isinstance(inverter, InverterUnit) else 0.0
        joined = joined_strings_count(system, terminal)
        ledger.add(key, array.reverse_current(joined, isc_a, rules, backfeed_a))
        if terminal.limits is not None:
            ledger.add(key, specified("Impp,limit", terminal.limits.current_max_a, "A"))
            ledger.add(key, specified("Isc,limit", terminal.limits.short_circuit_current_max_a, "A"))
        _fuse_need(ledger, terminal, groups, joined, isc_a, system.profile)


def _worst(ledger: Ledger, groups: list[StringGroup], symbol: str, highest: bool) -> Rating | None:
    """Return the highest or lowest rating of a symbol among groups of strings."""
    ratings = [rating for group in groups if (rating := ledger.get(group.key, symbol)) is not None]
    ratings.sort(key=lambda rating: rating.value, reverse=highest)
    return ratings[0] if ratings else None


def _fuse_need(
    ledger: Ledger, terminal: InputTerminal, groups: list[StringGroup], joined: int, isc_a: float, profile_name: str
) -> None:
    """Keep both sides of the string fuse test, the most strings without fuses, and the window of ratings."""
    rules = profile(profile_name)
    limits = [group.type.series_fuse_max_a for group in groups if group.type.series_fuse_max_a is not None]
    assumed: tuple[str, ...] = ()
    if limits:
        ocpr_a = min(limits)
    else:
        ocpr_a = 1.35 * isc_a / 1.25
        assumed = (f"the module states no largest series fuse; {ocpr_a:.1f} A taken (1.08 Isc)",)
    need = string_fuse.need(joined, isc_a, ocpr_a, rules)
    ledger.add(terminal.key, need.reverse.assuming(*assumed), symbol="Irev,test")
    ledger.add(terminal.key, need.withstand.assuming(*assumed), symbol="Irev,limit")
    ledger.word(terminal.key, "string fuses", "needed" if need.needed else "not needed", need.reverse.clause)
    unfused = string_fuse.unfused_strings_max(isc_a, ocpr_a, rules)
    by_maker = [g.type.parallel_unfused_max for g in groups if g.type.parallel_unfused_max is not None]
    if by_maker and min(by_maker) < unfused.value:
        unfused = replace(
            unfused, value=float(min(by_maker)), formula="as the maker states", clause="data sheet of the module"
        )
        if joined > unfused.value:
            ledger.word(terminal.key, "string fuses", "needed", unfused.clause)
    ledger.add(terminal.key, unfused, symbol="Np,unfused")
    window = string_fuse.window(isc_a, ocpr_a, rules)
    ledger.add(terminal.key, window.lower, symbol="In,min")
    ledger.add(terminal.key, window.upper.assuming(*assumed), symbol="In,max")
    chosen = string_fuse.smallest_rating(window)
    if chosen is not None:
        ledger.add(terminal.key, chosen, symbol="In,string")
    else:
        why = f"no gPV rating lies between {window.lower.quantity()} and {window.upper.quantity()}"
        ledger.unanswered(terminal.key, "In,string", why)
    ledger.word(terminal.key, "window", window_text(window), rules.name)


def window_text(window: string_fuse.FuseWindow) -> str:
    """Write a window of ratings: `from 20.9 A to 25 A`."""
    low = "from" if window.lower_included else "above"
    high = "to" if window.upper_included else "below"
    return f"{low} {window.lower.quantity()} {high} {window.upper.quantity()}"
