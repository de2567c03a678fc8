"""Installation method for single cores with a multicore cable.

What it checks
    The installation method of AC cables that have several cores.

Why
    Method F is tabulated for single-core cables, which cool better: a multicore cable carries less.

How
    method: F, and `cores` is given or the marking counts the cores (`5x`, `4G`).

Remedy
    Method E for a multicore cable in free air; or no `cores`, where single-core cables are laid.

Clause
    IEC 60364-5-52:2009 Table A.52.3 (from memory).

Not covered
    Single cores in flat or spaced formation: trefoil is taken.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_COUNTED_CORES = re.compile(r"(?<![\d.])[2-5]\s*[xX×G]")


@rule("AC26", "installation method for single cores with a multicore cable", Severity.ADVICE, "IEC 60364-5-52 A.52.3")
def single_core_method_for_multicore(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, given in system.ac_cables():
        if given.method != "F":
            continue
        if given.cores is not None:
            what = phrase("{cores} cores", cores=given.cores)
        elif _COUNTED_CORES.search(cable.marking):
            what = phrase("the marking {marking}", marking=cable.marking)
        else:
            continue
        yield Breach(
            phrase("{cable} has {what}, and method F is for single-core cables", cable=named(cable), what=what),
            phrase("use `method: E`, or leave `cores` out and name a single-core `type`"),
            (*cable.at, "method"),
            cable.key,
        )
