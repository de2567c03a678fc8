"""Check digit of the supply point number.

What it checks
    Whether a number of the right form has the right check digit.

Why
    A digit may have been mistyped; the operator would look up another connection.

How
    The rule of the check digit in the grid rules of the country, where it is known. It is advice: the rules are partly
    from memory, and only the operator knows the number.

Remedy
    The number compared digit by digit with the bill or the meter.

Clause
    As the entry of the country cites it.

Not covered
    Countries whose rule is not known: IE, AT, CH, FR, IT, PL, NZ.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.check_digit import CHECKS, bare
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW14", "check digit of the supply point number", Severity.ADVICE, "grid rules of the country")
def check_digit_of_supply_point_number(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    asked, number = system.grid_rules.supply_point, system.supply.supply_point
    if asked is None or asked.form is None or asked.check is None or not number:
        return
    written = bare(number)
    if not re.fullmatch(asked.form, written) or CHECKS[asked.check](written):
        return
    yield Breach(
        phrase(
            "the check digit of the {called} `{number}` does not fit its other digits",
            called=asked.called,
            number=number,
        ),
        phrase("compare it with the bill or the meter, digit by digit"),
        ("supply", "supply_point"),
    )
