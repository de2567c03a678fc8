"""The string fuses of each input: whether the profile asks for them, and between which ratings they may lie."""

from __future__ import annotations

from sld.citation import cited
from sld.frozen import dataclass, replace
from sld.model.device import InputTerminal, StringGroup
from sld.model.system import System
from sld.quantity import Given
from sld.ratings import string_fuse
from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.optimiser import Optimiser
from sld.steps.inputs import groups_behind, joined_groups, largest_isc_a, strings_count
from sld.steps.ledger import NEEDED, NOT_NEEDED, Ledger
from sld.steps.optimisers import optimiser_of
from sld.tables.profiles import Profile, profile
from sld.words import Phrase, Sayable, amount, phrase, sequence
from sld.words.cell import of_cell

__all__ = ["string_fuses"]

_UNSTATED_FUSE_SHARE = 1.35 / 1.25
"""Modules are tested with 1.35 times their largest fuse; 1.25 Isc is the least that a module must bear."""


def string_fuses(system: System, ledger: Ledger) -> None:
    """Keep the need and the window of string fuses of every input."""
    rules = profile(system.profile)
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        backfeed_a = system.inverter_of(terminal).type.backfeed_current_a
        joined = joined_groups(system, terminal)
        units = tuple(optimiser_of(system, group) for group in groups)
        feeding = _Feeding(strings_count(joined), largest_isc_a(ledger, joined), backfeed_a, units)
        _fuse_need(ledger, terminal, groups, feeding, largest_isc_a(ledger, groups), rules)


@dataclass(frozen=True, slots=True)
class _Feeding:
    """What can feed a fault in one string: all strings that are joined, and the inverter.

    isc_a: of the strongest string among them. units: optimisers of each group of the input, None without them.
    """

    strings_count: int
    isc_a: float
    backfeed_a: float
    units: tuple[Optimiser | None, ...]


def _fuse_need(
    ledger: Ledger,
    terminal: InputTerminal,
    groups: list[StringGroup],
    feeding: _Feeding,
    isc_a: float,
    rules: Profile,
) -> None:
    """Keep both sides of the string fuse test, the most strings without fuses, and the window of ratings."""
    key = terminal.key
    ocpr_a, assumed = _largest_fuse_a(groups, isc_a)
    need = string_fuse.need(feeding.strings_count, feeding.isc_a, ocpr_a, rules)
    needed, reverse = need.needed, need.reverse
    if feeding.backfeed_a:
        given = (*reverse.given, Given("Ibackfeed", feeding.backfeed_a, "A"))
        value, formula = reverse.value + feeding.backfeed_a, sequence([reverse.formula, " + Ibackfeed"], "")
        reverse = replace(reverse, value=value, formula=formula, given=given)
        needed = needed or reverse.value > need.withstand.value
    ledger.add(key, reverse.assuming(*assumed), symbol=Symbol.IREV_TEST)
    ledger.add(key, need.withstand.assuming(*assumed), symbol=Symbol.IREV_LIMIT)
    ledger.word(key, Word.STRING_FUSES, NEEDED if needed else NOT_NEEDED, reverse.clause)
    unfused = string_fuse.unfused_strings_max(feeding.isc_a, ocpr_a, rules)
    units = feeding.units
    if all(units):
        # no current comes back through a converter into its modules: what its maker says decides
        ledger.word(key, Word.STRING_FUSES, NOT_NEEDED, cited(phrase("data sheet of the optimiser")))
    limits = [each.parallel_unfused_max for each in (*units, *(group.type for group in groups)) if each is not None]
    by_maker = [most for most in limits if most is not None]
    if by_maker and min(by_maker) < unfused.value:
        unfused = replace(
            unfused,
            value=float(min(by_maker)),
            formula=phrase("as the maker states"),
            clause=cited(phrase("data sheet of the optimiser") if all(units) else phrase("data sheet of the module")),
        )
        if feeding.strings_count > unfused.value:
            ledger.word(key, Word.STRING_FUSES, NEEDED, unfused.clause)
    ledger.add(key, unfused, symbol=Symbol.NP_UNFUSED)
    _fuse_window(ledger, terminal, isc_a, ocpr_a, assumed, rules)


def _fuse_window(
    ledger: Ledger, terminal: InputTerminal, isc_a: float, ocpr_a: float, assumed: tuple[Sayable, ...], rules: Profile
) -> None:
    """Keep the window of ratings of a string fuse, and the smallest standard rating in it."""
    key, group_count = terminal.key, terminal.given.strings_per_fuse
    if group_count == 1:
        window = string_fuse.window(isc_a, ocpr_a, rules)
    else:
        window = string_fuse.grouped_window(isc_a, ocpr_a, group_count, rules)
    ledger.add(key, window.lower, symbol=Symbol.IN_MIN)
    ledger.add(key, window.upper.assuming(*assumed), symbol=Symbol.IN_MAX)
    carried = string_fuse.carried_current(isc_a, group_count, rules)
    ledger.add(key, carried)
    given = terminal.given.string_fuses
    hot = string_fuse.current_when_hot(1.0, given.temperature_factor if given else None)
    chosen = string_fuse.smallest_rating(
        window, series_name=rules.dc_fuse_series.text, carried_a=carried.value / hot.value
    )
    if chosen is not None:
        ledger.add(key, chosen, symbol=Symbol.IN_STRING)
    else:
        why = phrase("no standard rating lies between {lower} and {upper}", lower=window.lower, upper=window.upper)
        ledger.unanswered(key, Symbol.IN_STRING, why)
    ledger.word(key, Word.WINDOW, window_text(window), of_cell(rules.name))


def _largest_fuse_a(groups: list[StringGroup], isc_a: float) -> tuple[float, tuple[Sayable, ...]]:
    """Return the largest series fuse that the modules allow, and the remark where none of them states one. [A]"""
    limits = [group.type.series_fuse_max_a for group in groups if group.type.series_fuse_max_a is not None]
    if limits:
        return min(limits), ()
    ocpr_a = _UNSTATED_FUSE_SHARE * isc_a
    return ocpr_a, (
        phrase("the module states no largest series fuse; {ocpr} taken (1.08 Isc)", ocpr=amount(ocpr_a, "A")),
    )


def window_text(window: string_fuse.FuseWindow) -> Phrase:
    """Return a window of ratings in words: `from 20.9 A to 25 A`."""
    ends = {"low": window.lower, "high": window.upper}
    if window.lower_included:
        return (
            phrase("from {low} to {high}", **ends)
            if window.upper_included
            else phrase("from {low} to below {high}", **ends)
        )
    return (
        phrase("above {low} to {high}", **ends)
        if window.upper_included
        else phrase("above {low} and below {high}", **ends)
    )
