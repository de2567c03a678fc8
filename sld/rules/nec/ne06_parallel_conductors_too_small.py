"""Conductors in parallel too small.

What it checks
    The size of conductors that are connected in parallel.

Why
    Thin conductors share the current badly, and one of them takes more than its part.

How
    More than one in parallel, below 1/0 AWG.

Remedy
    One larger conductor, or conductors in parallel of 1/0 AWG at least.

Clause
    NEC 2023 310.10(G) (from memory).

Not covered
    Whether the conductors are alike in length and material.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_LEAST_MM2 = 53.4  # 1/0 AWG, 53.5 mm², rounded down


@rule("NE06", "conductors in parallel too small", Severity.NON_COMPLIANCE, "NEC 2023 310.10(G)")
def parallel_conductors_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, given in system.ac_cables():
        section = ratings.get(cable.key, Symbol.S)
        if given.parallel == 1 or section is None:
            continue
        if below(section.value, _LEAST_MM2):
            yield Breach(
                phrase(
                    "{cable} has {parallel} conductors of {section} in parallel, below 1/0 AWG",
                    cable=named(cable),
                    parallel=given.parallel,
                    section=section,
                ),
                phrase("use one larger conductor, or 1/0 AWG at least"),
                (*cable.at, "section"),
                cable.key,
                (),
                (section,),
            )
