"""Rated current of a connector, disconnector or shutdown device too low.

What it checks
    Whether plug connectors, disconnectors and devices for rapid shutdown on the DC side are rated for what the strings
    behind them can deliver.

Why
    Contacts that carry more than their rated current for hours of sun grow hot and age.

How
    In < In,min, the profile's factor times Isc of all strings behind it.

Remedy
    A device for a higher current.

Clause
    IEC 62548:2016 7.3 (from memory); IEC 62852 for connectors.

Not covered
    Derating in heat, for which the maker's curve counts.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import AS_STATED, CARRYING
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("DC42", "rated current of a connector, disconnector or shutdown device too low", Severity.DANGER, "IEC 62548 7.3")
def dc_device_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    devices = (device for device in system.apparatus(AS_STATED) if device.has(CARRYING))
    for device, rated, least in shortfalls(ratings, devices, Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of the strings behind it",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one for at least {least}", least=amount(least.value, "A", digits=4)),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
