"""Pole of a floating array without a fuse.

What it checks
    The poles of DC fuses at inputs without functional earth.

Why
    Two earth faults in a floating array close a loop through one pole alone. If the fuse is in the other pole, nothing
    opens.

How
    A fuse with poles: 1 at an input without functional_earth.

Remedy
    A fuse in both poles.

Clause
    IEC 62548:2016 6.5 (from memory). NEC 2023 690.9(C) allows one pole with listed equipment (from memory).

Not covered
    Arrays with functional earth: see DC53.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import fused_poles_count
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC39", "pole of a floating array without a fuse", Severity.DANGER, "IEC 62548-1 6.5")
def pole_without_fuse(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse in system.apparatus(DC_FUSE):
        terminal = terminal_of(system, fuse.key)
        if fused_poles_count(system, fuse) != 1 or terminal.given.functional_earth:
            continue
        one_is_listed = system.profile == "NEC 690"
        yield Breach(
            phrase(
                "{fuse} is in one pole of an array of which no pole is earthed, which NEC 690.9(C) allows with listed "
                "equipment alone",
                fuse=named(fuse),
            )
            if one_is_listed
            else phrase("{fuse} is in one pole of an array of which no pole is earthed", fuse=named(fuse)),
            phrase("leave `poles` out, or write 2: a fuse in both poles"),
            (*fuse.at, "poles"),
            fuse.key,
            severity=Severity.ADVICE if one_is_listed else Severity.DANGER,
        )
