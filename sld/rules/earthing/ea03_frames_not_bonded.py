"""Bonding of the module frames not given.

What it checks
    Whether the spec bonds the module frames, where an inverter does not separate the DC from the AC side.

Why
    Without separation the frames float at a part of the network's voltage; touching them gives a shock, on a roof a
    fall.

How
    No bonding with purpose: array_frame, and an inverter type without galvanic_separation.

Remedy
    A bonding entry with purpose: array_frame; the drawing shows an assumed one until then.

Clause
    IEC 62548:2016 7.4; guidelines in Australia ask for it too (from memory).

Not covered
    How the frames are joined among each other.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA03", "bonding of the module frames not given", Severity.ADVICE, "IEC 62548-1 7.4")
def frames_not_bonded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    units = [unit for unit in system.of(InverterUnit) if not unit.type.galvanic_separation]
    for conductor in system.earth_conductors:
        if conductor.purpose == "array_frame" and conductor.assumed and units:
            yield Breach(
                phrase(
                    "bonding conductor {conductor} to the module frames is assumed, and {unit} does not separate "
                    "DC from AC",
                    conductor=conductor.designation,
                    unit=named(units[0]),
                ),
                phrase("add a `bonding` entry with `purpose: array_frame` under `earthing`"),
                ("earthing", "bonding"),
                conductor.key,
            )
