"""Current transformer too small.

What it checks
    The rated primary current of each meter's transformers against what can flow through them for long: what the device
    ahead lets through (the setting of its overload release where there is one), at most the rated current of the
    transformer that is the source and the generation beside the meter; or the generation behind it, if that is more.

Why
    Overloaded transformers measure wrongly and overheat.

How
    Ipn < Im.

Remedy
    The next standard primary current.

Clause
    IEC 61869-2:2012 (from memory).

Not covered
    The burden of the secondary leads.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME02", "current transformer too small", Severity.NON_COMPLIANCE, "IEC 61869-2")
def current_transformer_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for meter, rated, needed in shortfalls(ratings, system.apparatus(METER), Symbol.IPN, Symbol.IM):
        has, needs = two(rated.value, needed.value, "A")
        yield Breach(
            phrase(
                "{meter} has transformers of {has}, below the {needs} that can flow",
                meter=named(meter),
                has=has,
                needs=needs,
            ),
            phrase(
                "use transformers with a primary current of at least {needs}, or leave `ct_primary` out", needs=needs
            ),
            (*meter.at, "ct_primary"),
            meter.key,
            (),
            (rated, needed),
        )
