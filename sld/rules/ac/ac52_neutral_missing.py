"""Neutral missing.

What it checks
    What takes a neutral on a supply that distributes none.

Why
    What is built for the voltage between a line and the neutral has nothing to connect it to; between two lines it gets
    a voltage √3 times as high, or one that stands differently against the earth than it was made for.

How
    Non-compliance for an inverter with needs_neutral on a supply without a distributed neutral, and for a unit or board
    that `line` puts on one line alone.

Remedy
    An inverter for three wires, or a transformer that makes a neutral; `line` with the two lines.

Clause
    IEC 60364-1:2005 312.1 (from memory): the conductors of a supply and of what it feeds.

Not covered
    Inverters of which needs_neutral is not given. Loads. An inverter whose rated voltage the supply does not have is
    asked about when the spec is read (SP41).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC52", "neutral missing", Severity.NON_COMPLIANCE, "IEC 60364-1 312.1")
def neutral_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.has_neutral:
        return
    supply = ((system.point.place(("supply",)), phrase("supply")),)
    for device in system.of(Device):
        if isinstance(device, InverterUnit) and device.type.needs_neutral:
            yield Breach(
                phrase("{device} takes a neutral, and none is distributed", device=named(device)),
                phrase("use an inverter for lines without a neutral, or a transformer that makes one"),
                (*device.at, "type"),
                device.key,
                supply,
            )
        line = device.given.line if isinstance(device, InverterUnit | Consumer | Busbar) else None
        if line is not None and "-" not in line:
            yield Breach(
                phrase("{device} is on {line} alone, and no neutral is distributed", device=named(device), line=line),
                phrase("write in `line` the two lines that it works between"),
                (*device.at, "line"),
                device.key,
                supply,
            )
