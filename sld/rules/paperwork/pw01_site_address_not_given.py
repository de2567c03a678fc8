"""Site address not given.

What it checks
    Whether the address of the site is given.

Why
    A drawing without the address cannot be matched with its application; the customer's documents have it too.
    Operators and building departments list it first among what the drawing shows.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `address` under `project`.

Clause
    IEC 62446-1:2016 4.2.1 (from memory).

Not covered
    Whether it is right.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW01", "site address not given", Severity.ADVICE, "IEC 62446-1:2016 4.2.1 (from memory)")
def site_address_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.project.address:
        yield Breach(
            phrase("the drawing is to be handed in, and the address of the site is not given"),
            phrase("give `address` under `project`"),
            ("project", "address"),
        )
