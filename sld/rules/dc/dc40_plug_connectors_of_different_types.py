"""Plug connectors of different types.

What it checks
    Whether both halves of each DC plug connector are of one type of one maker.

Why
    Connectors of different makers are not made for each other even where they fit: the contact grows hot, and fires
    have begun so.

How
    The connector has a mated_with.

Remedy
    Fit the other half of the same type and maker to one of the two cables, and leave mated_with out.

Clause
    IEC 62548:2016 7.3 and IEC 60364-7-712:2017 712.526 (numbers from memory). The same demand in AS/NZS 5033 is told by
    https://worksafe.nt.gov.au, bulletin on mismatched d.c. connectors; IEC TR 63225:2019 describes the problem.

Not covered
    Connectors that the spec does not list, such as those between the modules of a string.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import PLUG_CONNECTOR
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Value, phrase, sequence


@rule("DC40", "plug connectors of different types", Severity.NON_COMPLIANCE, "IEC 62548 7.3; IEC 60364-7-712 712.526")
def plug_connectors_of_different_types(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for connector, given in system.given_as(PLUG_CONNECTOR):
        other = given.mated_with
        if other is None:
            continue
        own: list[Value] = [named(connector), *([f"({connector.product})"] if connector.product else [])]
        yield Breach(
            phrase(
                "{connector} is mated with a half of another type, {other}",
                connector=sequence(own, " "),
                other=other,
            ),
            phrase("fit two halves of one type of one maker, and leave `mated_with` out"),
            (*connector.at, "mated_with"),
            connector.key,
        )
