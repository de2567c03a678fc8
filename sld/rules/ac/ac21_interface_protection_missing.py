"""No interface protection.

What it checks
    Whether each inverter is cut off when voltage or frequency of the network leave their range.

Why
    Without it the inverter may keep a dead network alive, and whoever works on it.

How
    The inverter type has none built in, and upstream of the inverter is no interface protection, nor a switch that an
    interface relay opens.

Remedy
    An interface protection device in the circuit, or the inverter's own where its certificate covers it.

Clause
    EN 50549-1:2019 (clause from memory); IEC 60364-7-712.

Not covered
    The settings; the network operator decides them.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import has_separate_interface_protection
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC21", "no interface protection", Severity.NON_COMPLIANCE, "EN 50549-1")
def interface_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        if unit.type.interface_protection or has_separate_interface_protection(system, unit.key):
            continue
        yield Breach(
            phrase("{unit} has no interface protection, neither built in nor upstream", unit=named(unit)),
            phrase("add an `interface_protection` to the circuit of the inverter or of the main board"),
            (*unit.at, "circuit"),
            unit.key,
            ((("types", "inverters", unit.type_name, "interface_protection"), phrase("what is built in")),),
        )
