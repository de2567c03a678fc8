"""Boundary of ownership not given.

What it checks
    Whether the drawing shows where the network operator's part ends and the customer's begins.

Why
    Either side may work on its own part only, and each answers for the maintenance of its own.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads, without the key, and
    where nothing usual can be assumed: no transformer of the site and no service fuse, or NEC 690 without such a
    transformer.

Remedy
    Give `ownership_boundary` under `supply`, after the operator's terms of connection.

Clause
    common practice: operators' forms.

Not covered
    Whether it is where the operator's terms put it; who owns the meter where that is another party.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW12", "boundary of ownership not given", Severity.ADVICE, "common practice: operators' forms")
def ownership_boundary_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.ownership_boundary:
        yield Breach(
            phrase("the drawing is to be handed in, and does not show where the network operator's part ends"),
            phrase("give `ownership_boundary` under `supply`: `network`, `service_fuse` or `supply_meter`"),
            ("supply", "ownership_boundary"),
        )
