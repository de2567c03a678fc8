"""Current of a pair of terminals above its limit.

What it checks
    The largest current through one pair of terminals of each input, where the maker states a limit for it.

Why
    The contacts of one pair often stand far less than the input behind them. Overloaded contacts burn.

How
    KI · n · Isc > terminal_current_max, n the strings on one pair: all of them where they are joined before (junction
    box, string fuses, a cable in the circuit of the input), else spread over the pairs.

Remedy
    Strings on more pairs of terminals, or fewer strings joined before the input.

Clause
    Data sheet of the inverter; the profile's KI.

Not covered
    Branch connectors that the spec does not mention.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import counted, phrase


@rule("DC34", "current of a pair of terminals above its limit", Severity.DANGER, "data of the inverter")
def terminal_current_above_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        current, limit = ratings.get(terminal.key, Symbol.ITERMINAL), ratings.get(terminal.key, Symbol.ITERMINAL_LIMIT)
        if current is None or limit is None or not above(current.value, limit.value):
            continue
        flows, allowed = two(current.value, limit.value, "A")
        unit = system.inverter_of(terminal)
        yield Breach(
            counted(
                "{terminal} carries up to {flows} on one pair of terminals ({count} string), above its limit "
                "of {allowed}",
                "{terminal} carries up to {flows} on one pair of terminals ({count} strings), above its "
                "limit of {allowed}",
                int(current.number("n")),
                terminal=named(terminal),
                flows=flows,
                allowed=allowed,
            ),
            phrase(
                "spread the strings over more pairs of terminals, so that each carries at most {allowed}",
                allowed=allowed,
            ),
            (*terminal.at, "strings"),
            terminal.key,
            ((("types", "inverters", unit.type_name, "inputs"), phrase("limits of the inputs")),),
            (current, limit),
        )
