"""Insulation threshold of the inverter too low.

What it checks
    The insulation resistance below which the inverter does not start, where the data sheet states it.

Why
    An inverter that starts with a poor insulation puts the network's voltage on a frame that someone may touch.

How
    insulation_threshold < Uoc,max / 30 mA for an inverter without separation, or < the value for the power of the
    array.

Remedy
    Another setting of the inverter, or another inverter.

Clause
    IEC 62109-2:2011 4.8.2; IEC 62548:2016 6.4 (from memory).

Not covered
    Insulation monitoring in operation by a device of its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "EA10",
    "insulation threshold of the inverter too low",
    Severity.NON_COMPLIANCE,
    "IEC 62109-2 4.8.2; IEC 62548-1 6.4",
)
def insulation_threshold_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        threshold = ratings.get(unit.key, Symbol.RISO_INVERTER)
        demands = [ratings.get(unit.key, Symbol.RISO_ARRAY)]
        if not unit.type.galvanic_separation:
            demands.append(ratings.get(unit.key, Symbol.RISO_START))
        worst = max((each for each in demands if each is not None), key=lambda rating: rating.value, default=None)
        if threshold is None or worst is None or not below(threshold.value, worst.value):
            continue
        has, needs = two(threshold.value, worst.value, "kΩ")
        yield Breach(
            phrase(
                "{unit} starts from {has} of insulation resistance, below the {needs} that its array asks for",
                unit=named(unit),
                has=has,
                needs=needs,
            ),
            phrase("set the inverter to at least {needs}, or use another one", needs=needs),
            ("types", "inverters", unit.type_name, "insulation_threshold"),
            unit.key,
            (),
            (threshold, worst),
        )
