"""String fuse that may never open.

What it checks
    The reverse current of the other strings against the current at which the string fuse opens for certain.

Why
    Below it a fault current flows on for good. Modules are tested with 1.35 times their largest series fuse for two
    hours, not for ever.

How
    Irev,test < 1.45 · In, where string fuses are needed. Told once for fuses and currents that are alike.

Remedy
    The smallest rating of the range; cables that carry the reverse current; monitoring that tells a failed string.

Clause
    IEC 60269-6, conventional fusing current (from memory); IEC 61730-2 MST 26 (from memory).

Not covered
    The time-current curve of the fuse.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.dc_devices import protects_string, terminal_of
from sld.steps.ledger import NEEDED, Ratings
from sld.words import phrase


@rule("DC37", "string fuse that may never open", Severity.ADVICE, "IEC 60269-6", once=True)
def fuse_may_never_open(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[tuple[float, float]] = set()
    for fuse in system.apparatus(DC_FUSE):
        terminal = terminal_of(system, fuse.key)
        reverse, opens = ratings.get(terminal.key, Symbol.IREV_TEST), ratings.get(fuse.key, Symbol.IF)
        needed = protects_string(system, fuse) and ratings.told(terminal.key, Word.STRING_FUSES) == NEEDED
        if reverse is None or opens is None or not needed or not below(reverse.value, opens.value):
            continue
        if (reverse.value, opens.value) in told:
            continue
        told.add((reverse.value, opens.value))
        flows, certain = two(reverse.value, opens.value, "A")
        yield Breach(
            phrase(
                "{fuse} opens for certain from {certain}, and the other strings feed {flows} into a fault",
                fuse=named(fuse),
                certain=certain,
                flows=flows,
            ),
            phrase(
                "let modules and cables of each string carry {flows} for good, and monitor the strings", flows=flows
            ),
            (*fuse.at, "rated_current"),
            fuse.key,
            (),
            (reverse, opens),
        )
