"""Meter number not given.

What it checks
    Whether each existing supply meter has its number.

Why
    Operators compare the number on the drawing with the meter at the site; inspection reports without it are refused
    in Flanders (vreg.be, on the inspection by the AREI).

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `number` at the meter, as printed on it.

Clause
    common practice: operators' checklists.

Not covered
    New meters, whose number is known when they are installed.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW05", "meter number not given", Severity.ADVICE, "common practice: operators' checklists")
def meter_number_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    for meter, given in system.given_as(METER):
        if given.purpose == "supply" and meter.status == "existing" and not given.number:
            yield Breach(
                phrase("{meter} exists, and its number is not given", meter=named(meter)),
                phrase("give `number` at the meter, as printed on it"),
                (*meter.at, "number"),
                meter.key,
            )
