"""Busbar too small for its sources.

What it checks
    The rating of each busbar against what the device that protects it and the sources on it come to.

Why
    Network and sources together can feed more into the busbar than its own device lets through, and nothing trips.

How
    InA < InA,least, by the board's `source_connection`: Imain + 1.25 Σ Ig at any position, that divided by 1.2 at the
    opposite end, the sum of all devices but the main, or the setting of the power control system; never less than
    Imain. An AC trunk cable, which has sources alone: the larger of Imain and 1.25 Ig.

Remedy
    A larger busbar, a smaller main device, the source at the opposite end, or a connection ahead of the service
    disconnect.

Clause
    NEC 2023 705.12(B)(1) to (3), 2020 705.13; 408.36; the numbers differ between editions and public pages.

Not covered
    What sources ahead of the service disconnect ask of a busbar; boards fed in the middle (705.12(B)(4)); whether the
    power control system is listed and watches every source and conductor (705.13).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, phrase


@rule("NE04", "busbar too small for its sources", Severity.DANGER, "NEC 2023 705.12(B)")
def busbar_with_sources(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board, rated, least in shortfalls(ratings, system.of(Busbar), Symbol.INA, Symbol.INA_LEAST):
        has, needs = two(rated.value, least.value, "A")
        size = size_at_least("nec_panelboard_a", least.value, "A")
        yield Breach(
            phrase(
                "{board} is rated {has}, below {needs} = {formula}",
                board=named(board),
                has=has,
                needs=needs,
                formula=least.formula,
            ),
            _remedy(board, least, size),
            (*board.at, "rated_current"),
            board.key,
            ((((*board.at, "source_connection")), phrase("how sources feed it")),),
            (rated, least),
        )


def _remedy(board: Busbar, least: Rating, size: Sayable) -> Phrase:
    way = board.given.source_connection
    if board.given.trunk:
        return phrase("use a trunk cable for {least} at least", least=least)
    if way == "any_position":
        return phrase("connect the sources at the opposite end, or use a busbar for {size}", size=size)
    if way == "power_control":
        return phrase("use a busbar for {size}, or a lower setting", size=size)
    return phrase("use a busbar for {size}", size=size)
