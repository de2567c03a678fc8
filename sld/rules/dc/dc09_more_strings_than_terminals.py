"""More strings than terminals.

What it checks
    The number of strings of an input against the number of strings that its terminals take.

Why
    Two strings forced into one terminal or joined with plugs overload the contact and escape the count of parallel
    strings.

How
    Strings of the input > strings_max of the input, where the data sheet states it and no junction box joins the
    strings.

Remedy
    As many strings as terminals, another input, or a junction box.

Clause
    Data sheet of the inverter; IEC 62548:2016 7.3 (from memory).

Not covered
    The current of a single terminal, which may be lower than that of the input.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.inputs import terminal_pairs_count
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC09", "more strings than terminals", Severity.NON_COMPLIANCE, "IEC 62548-1; data of the inverter")
def more_strings_than_terminals(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        most = terminal.limits.strings_max if terminal.limits else None
        if most is None or terminal.given.junction_box:
            continue
        count = terminal_pairs_count(terminal)
        if count <= most:
            continue
        unit = system.inverter_of(terminal)
        also = ((("types", "inverters", unit.type_name, "inputs"), phrase("limits of the inputs")),)
        yield Breach(
            phrase(
                "{terminal} has {count} strings and terminals for {most}",
                terminal=named(terminal),
                count=count,
                most=most,
            ),
            phrase(
                "connect at most {most} strings to the input, or name the `junction_box` that joins them", most=most
            ),
            (*terminal.at, "strings"),
            terminal.key,
            also,
        )
