"""Transformer voltage unlike that of the supply.

What it checks
    The low-voltage side of the site's transformer against the nominal voltage of the supply.

Why
    Inverters, loads and surge protection are for the nominal voltage; all currents and fault levels here are worked out
    with it.

How
    More than 10 % apart. A single-phase supply counts with √3 times its voltage.

Remedy
    The same system in both places: 400 V for 400 V to 420 V no-load voltage.

Clause
    IEC 60038:2009 Table 1: 230/400 V ± 10 %.

Not covered
    Inverters with a transformer of their own for another voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Transformer
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase

_APART_PERCENT = 10.0


@rule("AC28", "transformer voltage unlike that of the supply", Severity.NON_COMPLIANCE, "IEC 60038:2009")
def transformer_voltage_unlike_supply(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    given = system.supply.transformer
    nominal_v = (
        system.voltage_v if system.supply.phases == 3 or system.supply.split_phase else system.voltage_v * 3**0.5
    )
    for device in system.of(Transformer):
        secondary_v = given.secondary_voltage_v if given else None
        if secondary_v is None or not above(abs(secondary_v - nominal_v), nominal_v * _APART_PERCENT / 100):
            continue
        has, supply = two(secondary_v, nominal_v, "V")
        yield Breach(
            phrase(
                "{device} gives {has}, more than {apart} from the {supply} of the supply",
                device=named(device),
                has=has,
                apart=amount(_APART_PERCENT, "%"),
                supply=supply,
            ),
            phrase(
                "give the low-voltage side in `secondary_voltage` and the nominal voltage of the same system "
                "in `voltage`"
            ),
            ("supply", "transformer", "secondary_voltage"),
            device.key,
            ((("supply", "voltage"), phrase("nominal voltage")),),
        )
