"""Main bonding missing.

What it checks
    Whether the extraneous conductive parts of each building are bonded to its earthing terminal.

Why
    A metal pipe that comes from outside has the potential of true earth. In a fault the housings have another one, and
    whoever touches both closes the circuit.

How
    No bonding with purpose: main_bonding, unless `extraneous_parts: false` says that there is nothing to bond.
    Advice where the spec says nothing about earthing at all, and for arrays on the ground. The building of another
    board is asked where it has an electrode of its own, as advice; where `extraneous_parts` of the board says that it
    has such parts, it is a non-compliance.

Remedy
    A bonding entry for each part, or the word that there is none.

Clause
    IEC 60364-4-41:2005+A1:2017 411.3.1.2.

Not covered
    Whether every such part is bonded: nobody but who was in the building knows them.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA13", "main bonding missing", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.3.1.2")
def main_bonding_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    earthing = system.earthing
    yield from (breach for board in system.of(Busbar) if (breach := _of_building(system, board)) is not None)
    if system.bonding_at("") or earthing.extraneous_parts is False:
        return
    asked = not earthing.extraneous_parts
    mild = asked and (system.site.building == "ground_mounted" or not earthing.model_fields_set)
    terminal = system.earthing_designation
    yield Breach(
        phrase(
            "no main bonding at earth terminal {terminal} is given; are there metal pipes or steel?", terminal=terminal
        )
        if asked
        else phrase(
            "no main bonding at earth terminal {terminal} is given for the extraneous parts", terminal=terminal
        ),
        phrase("add a `bonding` entry for each of them under `earthing`, or write `extraneous_parts: false` there"),
        ("earthing", "bonding") if earthing.model_fields_set else ("earthing",),
        "earthing",
        severity=Severity.ADVICE if mild else Severity.NON_COMPLIANCE,
    )


def _of_building(system: System, board: Busbar) -> Breach | None:
    """Return what is missing at the board of another building, None where nothing is known to be."""
    has, own = board.given.extraneous_parts, board.given.earthing_system is not None
    if system.bonding_at(board.key) or not (has or (has is None and own)):
        return None
    return Breach(
        phrase("no main bonding in the building of {board} is given for the extraneous parts", board=named(board))
        if has
        else phrase(
            "no main bonding in the building of {board} is given; are there metal pipes or steel?", board=named(board)
        ),
        phrase("add a `bonding` entry for each of them to the board, or write `extraneous_parts: false` there"),
        board.at,
        board.key,
        severity=Severity.NON_COMPLIANCE if has else Severity.ADVICE,
    )
