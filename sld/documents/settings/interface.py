"""Interface protection, feed-in limit and reactive power: what the country asks, what is there, and what follows."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.cell import FILL_IN, NOT_GIVEN, Cell, by_ratings, given, of_rating
from sld.documents.procedure.laid_down import condition, laid_down, outcome, rests_on, value_of
from sld.documents.procedure.points import interface_words
from sld.documents.section import Column, Form, Table
from sld.grid.decide import deciding
from sld.layout.diagram.controllers import feed_in_words
from sld.layout.diagram.ranges import joined
from sld.model.device import InverterUnit
from sld.model.kinds.ac import INTERFACE_PROTECTION, INTERFACE_RELAY
from sld.model.limiters import feed_in_limiters
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.steps.notified import SYMBOLS, facts
from sld.words import Sayable, amount, phrase, sequence, verbatim

__all__ = ["export", "interface", "reactive"]


def interface(system: System, ratings: Ratings) -> Form:
    """Return which rule asks for protection outside of the inverters, or lets the built-in one serve, and what is."""
    found = deciding(system.grid_rules.interface, facts(system, ratings))
    fields: list[tuple[Sayable, Cell]] = []
    if found is not None:
        for each in found.when:
            rating = ratings.get("", SYMBOLS[each.quantity])
            said = phrase("{condition}; here {value}", condition=condition(each), value=value_of(each.quantity, rating))
            fields.append((phrase("Decisive here"), laid_down(found, said, (rating,) if rating else ())))
        fields.append((phrase("Asked for"), laid_down(found, outcome(found))))
        fields.append((phrase("Rule"), laid_down(found, sequence([found.cited, rests_on(found)], "; "))))
        fields.append((phrase("Standing"), laid_down(found, found.standing.phrase)))
    words = interface_words(system)
    fields.append((phrase("What is there"), given(sequence(words, "; ")) if words else FILL_IN))
    for device in system.apparatus(INTERFACE_PROTECTION, INTERFACE_RELAY):
        stated = getattr(device.given, "settings", None)
        caption = phrase("Settings of {device}", device=device.designation)
        fields.append((caption, given(verbatim(stated)) if stated else FILL_IN))
    fields.append((phrase("Trip test: date, by"), FILL_IN))
    return Form("interface", phrase("Interface protection"), tuple(fields))


def export(system: System, ratings: Ratings) -> Form:
    """Return the feed-in limit as the country counts it, what keeps it, and what happens without a measurement."""
    limit_w = system.supply.export_limit_w
    fields: list[tuple[Sayable, Cell]] = []
    if limit_w is None:
        fields.append((phrase("Feed-in limit"), given(phrase("none stated"))))
    else:
        fields.append((phrase("Feed-in limit"), given(amount(limit_w / 1000, "kW", 4))))
        counted = ratings.get("", Symbol.IFEED_LIMIT)
        if counted is not None and system.grid_rules.export_counted == "A":
            power, lines, voltage = (each.number for each in counted.given)
            said = phrase(
                "{power_w} / ({lines} × {voltage}) = {current} a line",
                power_w=amount(power, "", 8),
                lines=amount(lines),
                voltage=amount(voltage, "", 8),
                current=amount(counted.value, "A", 4),
            )
            fields.append((phrase("The same as a current, as it is counted here"), by_ratings(said, counted)))
    fed = ratings.get("", Symbol.PFEED)
    highest = by_ratings(amount(fed.value / 1000, "kW", 4), fed) if fed else NOT_GIVEN
    fields.append((phrase("Highest power fed in"), highest))
    for device, limit in feed_in_limiters(system):
        fields.append((verbatim(device.designation), given(sequence(feed_in_words(limit, system), "; "))))
    if limit_w is not None:
        fields.append((phrase("Reached in the test, and without its meter after"), FILL_IN))
    return Form("export", phrase("Feed-in limit"), tuple(fields))


_REACTIVE = (
    Column(phrase("Designation")),
    Column(phrase("Mode"), 1.4),
    Column(phrase("Design current")),
    Column(phrase("Voltage rise")),
    Column(phrase("Read back")),
)


def reactive(system: System, ratings: Ratings) -> Table:
    """Return the reactive power of each inverter as it is set, with current and voltage rise that follow from it."""
    groups: dict[tuple[Sayable, Sayable | None, Sayable | None], list[InverterUnit]] = {}
    for unit in system.of(InverterUnit):
        current, rise = ratings.get(unit.key, Symbol.IB), ratings.get(unit.key, Symbol.DU_AC)
        groups.setdefault((_mode(unit), current, rise), []).append(unit)
    rows = tuple(
        (
            given(verbatim(joined(each.designation for each in units))),
            given(mode),
            of_rating(ratings.get(units[0].key, Symbol.IB)),
            of_rating(ratings.get(units[0].key, Symbol.DU_AC)),
            FILL_IN,
        )
        for (mode, _, _), units in groups.items()
    )
    return Table("reactive", phrase("Reactive power"), _REACTIVE, rows)


def _mode(unit: InverterUnit) -> Sayable:
    return sequence(_modes(unit), "; ")


def _modes(unit: InverterUnit) -> Iterator[Sayable]:
    """Yield what is set: characteristics by their names, and the power factor that current and rise are computed at."""
    said = unit.given.network_settings
    if said and said.q_of_u:
        yield verbatim("Q(U)")
    if said and said.power_factor_of_power:
        yield verbatim("cos φ(P)")
    factor = amount(unit.given.power_factor, "", 4)
    match unit.given.reactive_power:
        case "supplied":
            yield phrase("power factor {factor}, reactive power supplied", factor=factor)
        case "absorbed":
            yield phrase("power factor {factor}, reactive power absorbed", factor=factor)
        case _:
            yield phrase("power factor {factor}", factor=factor)
