"""Line conductor thinner than its circuit may have.

What it checks
    The section that each AC cable is given against the smallest one that a circuit of a fixed installation may have.

Why
    A thinner conductor breaks when it is laid or clamped, whatever current it carries.

How
    S < 1.5 mm² of copper; with BS 7671 S < 1 mm² in the circuit of a load that `supplies: luminaires`.

Remedy
    The smallest section of the table.

Clause
    IEC 60364-5-52:2009 Table 52.2; BS 7671:2018 Table 52.3 (from memory).

Not covered
    Conductors of aluminium, of which the tables of capacity hold no small ones; those of control circuits.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable, Consumer
from sld.model.system import System
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.tables.table import NoRow, table
from sld.words import phrase


@rule("AC46", "line conductor thinner than its circuit may have", Severity.NON_COMPLIANCE, "IEC 60364-5-52 Table 52.2")
def line_conductor_too_thin(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, given in system.ac_cables():
        least_mm2 = _least_mm2(system, cable)
        if given.section_mm2 is None or cable.type.conductor != "copper" or not below(given.section_mm2, least_mm2):
            continue
        has, needs = two(given.section_mm2, least_mm2, "mm²")
        yield Breach(
            phrase(
                "{cable} has line conductors of {has}, below the {needs} of its circuit",
                cable=named(cable),
                has=has,
                needs=needs,
            ),
            phrase("use {size}", size=needs),
            (*cable.at, "section"),
            cable.key,
        )


def _least_mm2(system: System, cable: Cable) -> float:
    owner, rows = system.devices.get(cable.owner), table("least_section")
    book = "BS 7671" if system.profile == "BS 7671" else "IEC 60364"
    supplies = owner.given.supplies if isinstance(owner, Consumer) else None
    try:
        return rows.pick(book=book, supplies=supplies or "any").number("section_mm2")
    except NoRow:
        return rows.pick(book=book, supplies="any").number("section_mm2")
