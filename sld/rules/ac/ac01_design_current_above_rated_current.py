"""Design current above the rated current.

What it checks
    The design current Ib through each overcurrent protective device against its rated current In.

Why
    The device trips in full sun, or ages in the heat.

How
    Ib > In. Generation is added without diversity, loads with their `diversity_factor` and the `load_limit` of load
    management; the larger sum counts.

Remedy
    The next standard rating that is not below Ib, with a cable that carries it.

Clause
    IEC 60364-4-43:2008 433.1 (from memory).

Not covered
    Derating in a warm board.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.steps.protection import protective_family
from sld.words import phrase

_SERIES = {"MCB": "mcb_a", "MCCB": "mccb_a", "gG": "gg_fuse_a"}


@rule("AC01", "design current above the rated current", Severity.NON_COMPLIANCE, "IEC 60364-4-43 433.1")
def design_current_above_rated_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, design in shortfalls(ratings, overcurrent_devices(system), Symbol.IN, Symbol.IB):
        has, needs = two(rated.value, design.value, "A")
        size = size_at_least(_SERIES[protective_family(device)], design.value, "A")
        yield Breach(
            phrase(
                "{device} is rated {has}, below the design current of {needs}",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a rated current of {size}", size=size),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, design),
        )
