"""The procedure that follows for a system, why, and what would change it; every limit beside its value here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.documents.cell import Cell, State, by_ratings, computed
from sld.documents.procedure.arithmetic import arithmetic
from sld.documents.procedure.laid_down import condition, laid_down, outcome, rests_on, value_of
from sld.documents.section import Column, Form, Table
from sld.grid import GENERIC
from sld.grid.decide import Facts, deciding, is_met, met
from sld.grid.entry import Limit
from sld.grid.outcome import timing
from sld.model.planned import feeding, leaves_out_planned
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.steps.notified import SYMBOLS, facts
from sld.words import NOTHING, Sayable, listing, phrase, sequence, verbatim

__all__ = ["decision", "limits", "procedure_of"]

_COLUMNS = (
    Column(phrase("What follows"), 1.0),
    Column(phrase("Conditions, and the value here"), below=True),
    Column(phrase("Here")),
    Column(phrase("Clause, edition"), 1.0),
    Column(phrase("Read in"), below=True),
    Column(phrase("Standing"), below=True),
)


def procedure_of(system: System, ratings: Ratings) -> Limit:
    """Return the procedure whose conditions hold."""
    found = deciding(system.grid_rules.procedures, facts(system, ratings))
    assert found is not None, "the last procedure of every file has no conditions"
    return found


def decision(system: System, ratings: Ratings) -> Form:
    """Return the procedure with its arithmetic, the rule, its state, and what would change it."""
    rules, found = system.grid_rules, procedure_of(system, ratings)
    known, current = facts(system, ratings), ratings[("", Symbol.ILINE)]
    days = timing(found.outcome).said(found.days)
    fields: list[tuple[Sayable, Cell]] = [
        (phrase("Grid rules"), _rules(system)),
        (phrase("Current of a line"), by_ratings(arithmetic(current), current)),
        *((phrase("Decisive here"), each) for each in _values(found, ratings)),
        (phrase("Procedure"), laid_down(found, phrase("{what}; {time}", what=outcome(found), time=days))),
        (phrase("Rule"), laid_down(found, sequence([found.cited, rests_on(found)], "; "))),
        (phrase("Standing"), laid_down(found, found.standing.phrase)),
        *((phrase("Another source"), laid_down(found, each)) for each in _differing(found, system)),
        (phrase("What would change it"), laid_down(found, _changing(rules.procedures, found, known))),
    ]
    if leaves_out_planned(system, feeding(system)):
        fields.append((phrase("Counted"), computed(phrase("existing and new units; what is only planned is left out"))))
    return Form("procedure", phrase("Procedure"), tuple(fields))


def _rules(system: System) -> Cell:
    rules, supply = system.grid_rules, system.supply
    book = verbatim(rules.book)
    if rules.code != GENERIC:
        return Cell(sequence([rules.code, book], ": "), State.LAID_DOWN, why=book)
    if supply.country is not None:
        said = phrase("{country}: no rules of its own here; generic ones: {book}", country=supply.country, book=book)
        return Cell(said, State.LAID_DOWN, why=book)
    why = phrase("the country is not given")
    return Cell(phrase("{why}; generic rules: {book}", why=why, book=book), State.ASSUMED, why=why)


def _values(limit: Limit, ratings: Ratings) -> Iterator[Cell]:
    """Yield the conditions of the procedure with the values that meet them."""
    for each in limit.when:
        rating = ratings.get("", SYMBOLS[each.quantity])
        said = phrase("{condition}; here {value}", condition=condition(each), value=value_of(each.quantity, rating))
        yield laid_down(limit, said, (rating,) if rating else ())


def _differing(limit: Limit, system: System) -> Iterator[Sayable]:
    """Yield what other sources say of the limit, the cautious one being used."""
    for other in limit.differs:
        source = system.grid_rules.sources[other.source]
        changed = limit.when[0].model_copy(update={"sign": other.sign, "limit": other.limit})
        where = sequence([source.publisher or phrase("from memory"), source.short_address])
        yield phrase("{condition} ({source}); the cautious one is used", condition=condition(changed), source=where)


def _changing(procedures: Iterable[Limit], found: Limit, known: Facts) -> Sayable:
    """Return which conditions would have to be other for another procedure to hold."""
    other: list[Sayable] = [condition(each.opposite) for each in found.when]
    for limit in procedures:
        if limit is found:
            break
        if limit.phases in (None, known.phases):
            unmet = [condition(each) for each in limit.when if not is_met(each, known)]
            other.append(phrase("{conditions}: {outcome}", conditions=listing(unmet), outcome=outcome(limit)))
    unique = list(dict.fromkeys(other))
    return sequence(unique, "; ") if unique else phrase("nothing that the rules here know of")


def limits(system: System, ratings: Ratings) -> Table:
    """Return every limit of the country with the value here, whether it holds, and where it is from."""
    rules, known = system.grid_rules, facts(system, ratings)
    decided = deciding(rules.procedures, known)
    rows = [_row(each, met(each, known) and each is decided, ratings, known) for each in rules.procedures]
    for group in (rules.duties, rules.interface, rules.imbalance):
        rows += [_row(each, met(each, known), ratings, known) for each in group]
    return Table("grid_limits", phrase("Limits of the grid rules"), _COLUMNS, tuple(rows))


def _row(limit: Limit, holds: bool, ratings: Ratings, known: Facts) -> tuple[Cell, ...]:
    said = [
        phrase(
            "{condition}; here {value}",
            condition=condition(each),
            value=value_of(each.quantity, ratings.get("", SYMBOLS[each.quantity])),
        )
        for each in limit.when
    ]
    behind: list[Rating] = [
        rating for each in limit.when if (rating := ratings.get("", SYMBOLS[each.quantity])) is not None
    ]
    phases = _phases(limit)
    conditions = [*([phases] if phases != NOTHING else ()), *said]
    return (
        laid_down(limit, outcome(limit)),
        laid_down(limit, listing(conditions) if conditions else phrase("in every other case"), tuple(behind)),
        computed(phrase("holds") if holds else phrase("does not hold")),
        laid_down(limit, limit.cited),
        laid_down(limit, rests_on(limit)),
        laid_down(limit, limit.standing.phrase),
    )


def _phases(limit: Limit) -> Sayable:
    if limit.phases is None:
        return NOTHING
    return phrase("supply with one phase") if limit.phases == 1 else phrase("supply with three phases")
