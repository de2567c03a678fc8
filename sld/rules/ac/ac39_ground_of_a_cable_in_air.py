"""Ground of a cable in air.

What it checks
    AC cables with a depth, a soil or a spacing in the ground and an installation method in air.

Why
    These keys change nothing outside the ground; either they or the method are not what is built.

How
    `depth`, `soil_resistivity` or `spacing` is given, and `method` is neither D1 nor D2.

Remedy
    Method D1 in a duct, D2 directly in the ground, or the keys removed.

Clause
    IEC 60364-5-52:2009 Annex B (reference methods).

Not covered
    Cables partly in the ground: give each part as a `cable` of its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_IN_GROUND = ("D1", "D2")
_GROUND_KEYS = ("depth_m", "soil_resistivity_k_m_per_w", "spacing_m")


@rule("AC39", "ground of a cable in air", Severity.ADVICE, "IEC 60364-5-52 Annex B")
def ground_of_a_cable_in_air(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, given in system.ac_cables():
        if given.method in _IN_GROUND:
            continue
        if all(getattr(given, key) is None for key in _GROUND_KEYS):
            continue
        yield Breach(
            phrase(
                "{cable} is given as in the ground, but method {method} is in air",
                cable=named(cable),
                method=given.method,
            ),
            phrase("use `method: D1` in a duct or `method: D2` in the ground, or remove depth, soil and spacing"),
            (*cable.at, "method"),
            cable.key,
        )
