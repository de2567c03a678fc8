"""String fuses not needed.

What it checks
    String fuses where the profile does not ask for them.

Why
    A fuse is a contact more that ages and warms, and one more thing to replace.

How
    There are string fuses, and the profile's test does not need them.

Remedy
    Leave them out, unless the maker of inverter or modules asks for them.

Clause
    IEC 62548:2016 6.5; IEC 60364-7-712:2017 712.431 (numbers partly from memory).

Not covered
    What the makers ask for beyond the data in the spec; circuit-breakers of strings, which switch as well.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.compare import two
from sld.rules.naming import named
from sld.rules.ways import string_protection_of
from sld.steps.inputs import groups_behind
from sld.steps.ledger import NEEDED, Ratings
from sld.words import phrase


@rule("DC13", "string fuses not needed", Severity.ADVICE, "IEC 62548-1; IEC 60364-7-712 712.431")
def string_fuses_not_needed(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        groups = groups_behind(system, terminal.key)
        reverse, limit = ratings.get(terminal.key, Symbol.IREV_TEST), ratings.get(terminal.key, Symbol.IREV_LIMIT)
        protecting = (string_protection_of(system, group) for group in groups)
        fused = any(device is not None and device.has(DC_FUSE) for device in protecting)
        if not fused or ratings.told(terminal.key, Word.STRING_FUSES) == NEEDED or reverse is None or limit is None:
            continue
        flows, allowed = two(reverse.value, limit.value, "A")
        yield Breach(
            phrase(
                "{terminal} has string fuses, though the reverse current of {flows} is within the {allowed} "
                "of the series fuse of the modules or too few strings are joined",
                terminal=named(terminal),
                flows=flows,
                allowed=allowed,
            ),
            phrase("leave `string_fuses` out, unless the maker of inverter or modules asks for them"),
            (*terminal.at, "string_fuses"),
            terminal.key,
            (),
            (reverse, limit),
        )
