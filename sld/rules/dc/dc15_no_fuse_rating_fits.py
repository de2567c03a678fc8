"""No fuse rating fits the strings.

What it checks
    Whether a standard gPV fuse exists between the least and the largest rated current, where string fuses are
    needed.

Why
    Without a fuse that carries the string and protects the module, the strings cannot be joined like this.

How
    The search for a rating had no answer, and the profile's test needs fuses.

Remedy
    Join fewer strings, so that no fuses are needed, or use modules with a larger series fuse.

Clause
    IEC 62548:2016 6.5; IEC 60269-6 (from memory).

Not covered
    Fuses outside the standard series.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.naming import named
from sld.steps.inputs import groups_behind
from sld.steps.ledger import NEEDED, Ratings
from sld.words import amount, phrase


@rule("DC15", "no fuse rating fits the strings", Severity.DANGER, "IEC 62548-1; IEC 60269-6")
def no_fuse_rating_fits(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        why = ratings.unanswered.get((terminal.key, Symbol.IN_STRING))
        unfused = ratings.get(terminal.key, Symbol.NP_UNFUSED)
        if why is None or unfused is None or ratings.told(terminal.key, Word.STRING_FUSES) != NEEDED:
            continue
        groups = groups_behind(system, terminal.key)
        also = (
            (("types", "modules", groups[0].type_name, "series_fuse_max"), phrase("largest series fuse of the module")),
        )
        yield Breach(
            phrase("{terminal} needs string fuses, and {why}", terminal=named(terminal), why=why),
            phrase("join at most {unfused} strings, which need no fuses", unfused=amount(unfused.value)),
            (*terminal.at, "strings"),
            terminal.key,
            also,
        )
