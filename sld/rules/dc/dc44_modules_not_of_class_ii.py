"""Modules not of protection class II.

What it checks
    The protection class of the modules of each string above extra-low voltage.

Why
    Nothing switches the DC side off in daylight: up to the terminals of the inverter only double or reinforced
    insulation protects from shock.

How
    Uoc,max > 120 V with a module type whose protection_class is not II.

Remedy
    Modules of class II, or so few in series that the array keeps to extra-low voltage.

Clause
    IEC 60364-7-712:2017 712.410.102, 712.412.101, 712.414.101.

Not covered
    Cables and boxes, which have to be of class II too.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_EXTRA_LOW_V = 120.0


@rule("DC44", "modules not of protection class II", Severity.NON_COMPLIANCE, "IEC 60364-7-712 712.412.101, 712.414.101")
def modules_not_of_class_ii(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        voltage, class_ = ratings[group.key, Symbol.UOC_MAX], group.type.protection_class
        if class_ == "II" or not above(voltage.value, _EXTRA_LOW_V):
            continue
        reached, limit = two(voltage.value, _EXTRA_LOW_V, "V")
        yield Breach(
            phrase(
                "{group} reaches {reached} with modules of protection class {protection_class}; above {limit} they "
                "have to be of class II",
                group=named(group),
                reached=reached,
                protection_class=class_,
                limit=limit,
            ),
            phrase("use modules of class II, or so few in series that Uoc,max is at most {limit}", limit=limit),
            (*group.at, "module"),
            group.key,
            ((("types", "modules", group.type_name, "protection_class"), phrase("protection class of the module")),),
            (voltage,),
        )
