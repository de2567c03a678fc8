"""String fuses missing.

What it checks
    Whether the strings that can feed one fault need fuses, and whether they have them.

Why
    Into a faulted string flows the current of all the others, which is not switched off. Above what the modules
    stand they overheat and burn.

How
    The reverse current by the profile against its multiple of the module's largest series fuse, and the number of
    strings against what the module's maker allows without fuses.

Remedy
    A fuse for each string, or fewer strings in parallel.

Clause
    IEC 62548:2016 6.5; IEC 60364-7-712:2017 712.431 (numbers partly from memory); the profile decides.

Not covered
    Sources other than strings and the backfeed that the inverter declares.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import string_protection_of
from sld.steps.inputs import groups_behind, joined_groups, strings_count
from sld.steps.ledger import NEEDED, Ratings
from sld.words import amount, phrase


@rule("DC12", "string fuses missing", Severity.DANGER, "IEC 62548-1; IEC 60364-7-712 712.431")
def string_fuses_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        if ratings.told(terminal.key, Word.STRING_FUSES) != NEEDED or all(
            string_protection_of(system, group) for group in groups
        ):
            continue
        reverse, limit = ratings.get(terminal.key, Symbol.IREV_TEST), ratings.get(terminal.key, Symbol.IREV_LIMIT)
        unfused, size = ratings.get(terminal.key, Symbol.NP_UNFUSED), ratings.get(terminal.key, Symbol.IN_STRING)
        if reverse is None or limit is None or unfused is None:
            continue
        if above(reverse.value, limit.value):
            flows, allowed = two(reverse.value, limit.value, "A")
            why = phrase(
                "the reverse current of {flows} is above the {allowed} of the modules' largest series fuse",
                flows=flows,
                allowed=allowed,
            )
        else:
            joined = strings_count(joined_groups(system, terminal))
            why = phrase(
                "{joined} strings are in parallel and {unfused} are allowed without fuses",
                joined=joined,
                unfused=amount(unfused.value),
            )
        fewer = phrase("join at most {unfused} strings", unfused=amount(unfused.value))
        remedy = (
            phrase("give each string a {size} gPV fuse (`string_fuses`), or {fewer}", size=size, fewer=fewer)
            if size
            else fewer
        )
        also = (
            (("types", "modules", groups[0].type_name, "series_fuse_max"), phrase("largest series fuse of the module")),
        )
        yield Breach(
            phrase("{terminal} has no string fuses, but {why}", terminal=named(terminal), why=why),
            remedy,
            (*terminal.at, "string_fuses"),
            terminal.key,
            also,
            (reverse, limit),
        )
