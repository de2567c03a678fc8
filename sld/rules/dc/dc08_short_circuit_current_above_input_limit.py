"""Short-circuit current above the limit of the input.

What it checks
    The largest short-circuit current Isc,max of all strings of an input, the profile's factor KI included, against
    the limit of the input.

Why
    An internal fault of the inverter, or a reversed string, drives that current. Above its limit the input can be
    destroyed and burn.

How
    Isc,max = KI · Np · Isc > short_circuit_current_max. This is the cautious reading: where the data sheet states
    its limit for standard test conditions, Isc without KI may be compared; the message gives both.

Remedy
    Fewer strings at the input, or an inverter with a higher limit. Where the limit holds for standard test
    conditions and Isc keeps it, accept the finding with that reason.

Clause
    IEC 62548:2016 (KI), IEC 62109-1 (rating of the input) (from memory); data sheet of the inverter.

Not covered
    The rating of a single pair of terminals; see the rule on the number of terminals.
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
from sld.words import amount, phrase


@rule(
    "DC08", "short-circuit current above the limit of the input", Severity.DANGER, "IEC 62548-1; data of the inverter"
)
def short_circuit_current_above_input_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        current, limit = ratings.get(terminal.key, Symbol.ISC_MAX), ratings.get(terminal.key, Symbol.ISC_LIMIT)
        if current is None or limit is None or not above(current.value, limit.value):
            continue
        flows, allowed = two(current.value, limit.value, "A")
        plain = ratings.get(terminal.key, Symbol.ISC)
        who, factor = named(terminal), amount(current.number("KI"))
        unit = system.inverter_of(terminal)
        also = ((("types", "inverters", unit.type_name, "inputs"), phrase("limits of the inputs")),)
        yield Breach(
            phrase(
                "{terminal} gets up to {flows} in short circuit with KI = {factor} ({plain} without it), above its "
                "limit of {allowed}",
                terminal=who,
                flows=flows,
                factor=factor,
                plain=plain,
                allowed=allowed,
            )
            if plain
            else phrase(
                "{terminal} gets up to {flows} in short circuit with KI = {factor}, above its limit of {allowed}",
                terminal=who,
                flows=flows,
                factor=factor,
                allowed=allowed,
            ),
            phrase("put fewer strings on the input, so that KI · Isc is at most {allowed}", allowed=allowed),
            (*terminal.at, "strings"),
            terminal.key,
            also,
            (current, limit),
        )
