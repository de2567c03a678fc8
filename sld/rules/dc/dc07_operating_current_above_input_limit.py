"""MPP current above the limit of the input.

What it checks
    The MPP current Impp of all strings of an input at standard test conditions against the highest operating
    current of the input.

Why
    What is above the limit is clipped: energy is lost in strong sun. The inverter limits the current by itself.

How
    Impp > current_max of the input of the inverter type.

Remedy
    Fewer strings at the input, or modules of lower current.

Clause
    Data sheet of the inverter.

Not covered
    Irradiance above 1000 W/m².
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
from sld.words import phrase


@rule("DC07", "MPP current above the limit of the input", Severity.ADVICE, "data of the inverter")
def operating_current_above_input_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        current, limit = ratings.get(terminal.key, Symbol.IMPP), ratings.get(terminal.key, Symbol.IMPP_LIMIT)
        if current is None or limit is None or not above(current.value, limit.value):
            continue
        flows, allowed = two(current.value, limit.value, "A")
        unit = system.inverter_of(terminal)
        also = ((("types", "inverters", unit.type_name, "inputs"), phrase("limits of the inputs")),)
        yield Breach(
            phrase(
                "{terminal} gets {flows} at the MPP, above its limit of {allowed}; the rest is clipped",
                terminal=named(terminal),
                flows=flows,
                allowed=allowed,
            ),
            phrase("spread the strings over more inputs, so that no input gets more than {allowed}", allowed=allowed),
            (*terminal.at, "strings"),
            terminal.key,
            also,
            (current, limit),
        )
