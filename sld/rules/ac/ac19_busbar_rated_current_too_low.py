"""Rated current of a board too low.

What it checks
    The rated current InA of each board against the incoming device and all generation that feeds it; that of an AC
    trunk cable against the device that protects it.

Why
    The busbar carries what comes from the network and what the inverters add; no device sees the sum, and it
    overheats.

How
    InA < InA,least = In of the incoming device + the generation; of a trunk cable In alone, or the sum of its inverters
    where that is more, and both together where loads are on it. A board other than the first with nothing but inverters
    behind it carries their sum alone; so does the first board of a ground-mounted array with a transformer of its own.

Remedy
    A board for a higher current, or a smaller incoming device.

Clause
    IEC 60364-5-55 551.7.2; BS 7671:2018+A2 551.7.2 (formula from memory).

Not covered
    Boards whose generation is connected so that no part carries the sum. Loads that a board for inverters gets later.
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
from sld.words import phrase


@rule("AC19", "rated current of a board too low", Severity.DANGER, "IEC 60364-5-55 551.7.2")
def busbar_rated_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board, rated, least in shortfalls(ratings, system.of(Busbar), Symbol.INA, Symbol.INA_LEAST):
        has, needs = two(rated.value, least.value, "A")
        if board.given.trunk:
            yield _trunk(board, rated, least)
            continue
        what = phrase("the incoming device and the generation")
        if len(least.given) == 1:
            feeds = ratings.get(board.key, Symbol.IEXPORT) is not None
            what = phrase("the generation") if feeds else phrase("the incoming device")
        yield Breach(
            phrase(
                "{board} is rated {has}, below the {needs} of {what}",
                board=named(board),
                has=has,
                needs=needs,
                what=what,
            ),
            phrase("use a board for {size}", size=size_at_least("assembly_a", least.value, "A")),
            (*board.at, "rated_current"),
            board.key,
            (),
            (rated, least),
        )


def _trunk(trunk: Busbar, rated: Rating, least: Rating) -> Breach:
    has, needs = two(rated.value, least.value, "A")
    return Breach(
        phrase(
            "{trunk} is rated {has}, below the {needs} that it must carry", trunk=named(trunk), has=has, needs=needs
        ),
        phrase(
            "use a trunk cable for {needs}, or part the inverters among more circuits with smaller devices", needs=needs
        ),
        (*trunk.at, "rated_current"),
        trunk.key,
        (),
        (rated, least),
    )
