"""Diversity of a board below its generation.

What it checks
    The overcurrent devices that inverters feed through, in boards with a rated diversity factor RDF.

Why
    All inverters run at full load at the same hours. A board that was tested with its circuits at a part of their
    rated currents gets hotter than that, and its devices trip early.

How
    Ib > RDF · In.

Remedy
    A larger rated current, or a board with a higher factor.

Clause
    IEC 61439-1:2020 5.4 (from memory).

Not covered
    Boards that state no factor. Circuits of loads alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC38", "diversity of a board below its generation", Severity.NON_COMPLIANCE, "IEC 61439-1 5.4")
def diversity_of_a_board_below_its_generation(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in overcurrent_devices(system):
        limit, export = ratings.get(device.key, Symbol.IN_RDF), ratings.get(device.key, Symbol.IEXPORT)
        if limit is None or export is None or not above(export.value, limit.value):
            continue
        flows, allowed = two(export.value, limit.value, "A")
        yield Breach(
            phrase(
                "{device} carries {flows} of generation, above the {allowed} that its board allows for long",
                device=named(device),
                flows=flows,
                allowed=allowed,
            ),
            phrase("use a larger rated current, or a board with a higher `diversity_factor`"),
            (*device.at, "rated_current"),
            device.key,
            (),
            (export, limit),
        )
