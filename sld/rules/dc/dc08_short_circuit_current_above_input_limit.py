"""Short-circuit current above the limit of the input.

What it checks
    The largest short-circuit current Isc,max of all strings of an input, the profile's factor KI included, against
    the limit of the input.

Why
    An internal fault of the inverter, or a reversed string, drives that current. Above its limit the input can be
    destroyed and burn.

How
    Isc,max = KI · Np · Isc > short_circuit_current_max: the reading of IEC 62109-1, whose Isc PV is the largest current
    that flows, with light above 1000 W/m². Many data sheets state the limit for standard test conditions instead:
    short_circuit_limit_for says which. With `standard_conditions` Np · Isc without KI is compared. Left out, a limit
    that KI alone exceeds is a non-compliance until the data sheet is asked, one that Isc exceeds a danger.

Remedy
    Fewer strings at the input, an inverter with a higher limit, or short_circuit_limit_for from the data sheet.

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
from sld.words import NOTHING, amount, phrase


@rule(
    "DC08", "short-circuit current above the limit of the input", Severity.DANGER, "IEC 62548-1; data of the inverter"
)
def short_circuit_current_above_input_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        current, limit = ratings.get(terminal.key, Symbol.ISC_MAX), ratings.get(terminal.key, Symbol.ISC_LIMIT)
        plain = ratings.get(terminal.key, Symbol.ISC)
        basis = terminal.limits.short_circuit_limit_for if terminal.limits else None
        at_stc = plain is not None and basis == "standard_conditions"
        current = plain if at_stc else current
        if current is None or limit is None or not above(current.value, limit.value):
            continue
        by_factor_alone = basis is None and plain is not None and not above(plain.value, limit.value)
        flows, allowed = two(current.value, limit.value, "A")
        who = named(terminal)
        unit = system.inverter_of(terminal)
        also = ((("types", "inverters", unit.type_name, "inputs"), phrase("limits of the inputs")),)
        yield Breach(
            phrase(
                "{terminal} gets {flows} in short circuit at standard test conditions, above its limit of {allowed}",
                terminal=who,
                flows=flows,
                allowed=allowed,
            )
            if at_stc
            else phrase(
                "{terminal} gets up to {flows} in short circuit with KI = {factor} ({plain} without it), above its "
                "limit of {allowed}",
                terminal=who,
                flows=flows,
                factor=amount(current.number("KI")),
                plain=plain or NOTHING,
                allowed=allowed,
            ),
            phrase(
                "give `short_circuit_limit_for` after the data sheet: the limit is kept if it holds for standard test "
                "conditions; else put fewer strings on the input"
            )
            if by_factor_alone
            else phrase("put fewer strings on the input, so that the current is at most {allowed}", allowed=allowed),
            (*terminal.at, "strings"),
            terminal.key,
            also,
            (current, limit),
            severity=Severity.NON_COMPLIANCE if by_factor_alone else Severity.DANGER,
        )
