"""Service fuse smaller than the export.

What it checks
    The rated current of the service fuse against the current that the inverters export without any load.

Why
    The service fuse melts on a bright day when nobody is at home.

How
    Iexport > In of the service fuse. Where the supply has an `export_limit` and a meter measures for it, the export at
    that limit counts.

Remedy
    A larger connection, or a limit on the power of the inverters.

Clause
    IEC 60364-4-43:2008 433.1 (from memory); terms of the network operator.

Not covered
    How soon the controller is back below its limit; lines that loads take unequal shares from.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.ac import SERVICE_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC22", "service fuse smaller than the export", Severity.NON_COMPLIANCE, "IEC 60364-4-43; network operator")
def service_fuse_below_export(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    fuses = (device for device in system.of(Apparatus) if device.kind is SERVICE_FUSE)
    for fuse, rated, unlimited in shortfalls(ratings, fuses, Symbol.IN, Symbol.IEXPORT):
        exported = ratings.get(fuse.key, Symbol.IEXPORT_LIMIT) or unlimited
        if not below(rated.value, exported.value):
            continue
        has, flows = two(rated.value, exported.value, "A")
        size = size_at_least("gg_fuse_a", exported.value, "A", nec=system.follows_nec)
        yield Breach(
            phrase("{fuse} is rated {has}, below the export of {flows}", fuse=named(fuse), has=has, flows=flows),
            phrase("apply for a service fuse of {size}, or limit the inverters", size=size),
            ("supply", "service_fuse"),
            fuse.key,
            (),
            (rated, exported),
        )
