"""Supply point number not given.

What it checks
    Whether the number of the supply point is given.

Why
    The operator finds the connection by it. Forms mark it as a field that may not be empty; an empty one makes the
    request incomplete.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `supply_point` under `supply`, as on the bill.

Clause
    common practice: operators' forms.

Not covered
    The form of the number in each country.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW02", "supply point number not given", Severity.ADVICE, "common practice: operators' forms")
def supply_point_number_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.supply.supply_point:
        yield Breach(
            phrase("the drawing is to be handed in, and the number of the supply point is not given"),
            phrase("give `supply_point` under `supply`, as on the bill"),
            ("supply", "supply_point"),
        )
