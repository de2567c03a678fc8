"""Burden of current transformers exceeded.

What it checks
    The burden of the leads between current transformers and meter against the rated burden of the transformers.

Why
    Above its burden a transformer reads too little, and at a fault it saturates.

How
    Slead = Isn² · 2 · L · R > Sn.

Remedy
    A larger section, shorter leads, transformers with 1 A secondary or a higher burden.

Clause
    IEC 61869-2:2012 5.601 (from memory).

Not covered
    The burden of the meter itself, some tenths of a VA for electronic ones.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME07", "burden of current transformers exceeded", Severity.NON_COMPLIANCE, "IEC 61869-2")
def burden_of_current_transformers_exceeded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for meter in system.apparatus(METER):
        leads, rated = ratings.get(meter.key, Symbol.SLEAD), ratings.get(meter.key, Symbol.SN)
        if leads is None or rated is None or not above(leads.value, rated.value):
            continue
        takes, stands = two(leads.value, rated.value, "VA")
        yield Breach(
            phrase(
                "the leads of {meter} burden its transformers with {takes}, above {stands}",
                meter=named(meter),
                takes=takes,
                stands=stands,
            ),
            phrase("use a larger `ct_lead_section`, shorter leads, or transformers with 1 A secondary"),
            (*meter.at, "ct_lead_length"),
            meter.key,
            (),
            (leads, rated),
        )
