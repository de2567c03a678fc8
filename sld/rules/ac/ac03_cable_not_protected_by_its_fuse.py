"""Fuse trips too late for its cable.

What it checks
    The capacity Iz of each AC cable behind a fuse against what the conventional tripping current I2 of the fuse
    asks for.

Why
    A fuse melts at 1.6 times its rated current or more; the cable may be overloaded by 45 % for an hour at most.

How
    Iz < Iz,min = 1.6/1.45 · In, with In itself not above Iz.

Remedy
    A larger section, a smaller fuse, or a circuit-breaker.

Clause
    IEC 60364-4-43:2008 433.1, I2 <= 1.45 Iz; IEC 60269-1 (from memory).

Not covered
    Fuses below 16 A, whose I2 is 1.9 times In and more.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, shortfalls, two
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device, protective_family
from sld.words import phrase


@rule("AC03", "fuse trips too late for its cable", Severity.NON_COMPLIANCE, "IEC 60364-4-43 433.1")
def cable_not_protected_by_its_fuse(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, capacity, least in shortfalls(ratings, ac_cables(system), Symbol.IZ, Symbol.IZ_MIN):
        device = overcurrent_device(system, cable.key)
        rated = ratings.get(device.key, Symbol.IN) if device else None
        if device is None or rated is None or protective_family(device) != "gG" or below(capacity.value, rated.value):
            continue
        has, needs = two(capacity.value, least.value, "A")
        yield Breach(
            phrase(
                "{cable} carries {has} as laid; {device} of {rated} needs a cable of {needs}, because it trips late",
                cable=named(cable),
                has=has,
                device=named(device),
                rated=rated,
                needs=needs,
            ),
            phrase("leave `section` out, and the smallest that fits is chosen; or use a circuit-breaker"),
            (*cable.at, "section"),
            cable.key,
            ((device.at, phrase("the fuse that protects it")),),
            (capacity, least),
        )
