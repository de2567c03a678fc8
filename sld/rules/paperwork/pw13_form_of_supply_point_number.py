"""Supply point number of another form.

What it checks
    Whether the number of the supply point has the form of its country.

Why
    The operator finds the connection by it; a number of another form belongs to something else, such as a meter or a
    customer account, and the papers come back.

How
    The number without spaces, dots and hyphens is compared with the form in the grid rules. Countries without a
    national number have none.

Remedy
    The number from the bill or the meter, in the form that the finding names.

Clause
    As the entry of the country cites it.

Not covered
    The check digit (PW14); whether the number is that of the site.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.check_digit import bare
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW13", "supply point number of another form", Severity.NON_COMPLIANCE, "grid rules of the country")
def form_of_supply_point_number(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    asked, number = system.grid_rules.supply_point, system.supply.supply_point
    if asked is None or asked.form is None or not number or re.fullmatch(asked.form, bare(number)):
        return
    yield Breach(
        phrase(
            "the supply point number `{number}` has not the form of a {called}: {form}",
            number=number,
            called=asked.called,
            form=asked.described,
        ),
        phrase("write the {called} as on the bill", called=asked.called),
        ("supply", "supply_point"),
    )
