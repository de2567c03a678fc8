"""Ground-fault protection of the array missing.

What it checks
    Whether the array of each inverter has protection that detects, interrupts and reports earth faults.

Why
    The first earth fault of an array stays unseen; the second drives the current of all strings through a roof.

How
    The inverter type says that it has no ground_fault_protection: a non-compliance. Where it does not say, advice. A
    ground-mounted array of one or two strings is not asked for it.

Remedy
    An inverter that is listed with ground-fault protection, and `ground_fault_protection: true` at its type.

Clause
    NEC 2023 690.41(B) (from memory); the exception for two circuits off buildings as
    http://ecmweb.com/code-basics/article-690-solar-photovoltaic-systems-part-2 tells 690.5 of older editions.

Not covered
    The current at which it opens; circuits of at most 30 V and 8 A, which are exempt: accept the finding.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.inputs import groups_behind, strings_count
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("NE08", "ground-fault protection of the array missing", Severity.NON_COMPLIANCE, "NEC 2023 690.41(B)")
def ground_fault_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        exempt = system.site.building == "ground_mounted" and strings_count(groups_behind(system, unit.key)) <= 2
        if unit.type.ground_fault_protection or exempt:
            continue
        unknown = unit.type.ground_fault_protection is None
        yield Breach(
            phrase("whether {unit} protects its array against earth faults is not stated", unit=named(unit))
            if unknown
            else phrase("{unit} does not protect its array against earth faults", unit=named(unit)),
            phrase("give `ground_fault_protection` as the data sheet says")
            if unknown
            else phrase("use an inverter that is listed with ground-fault protection"),
            ("types", "inverters", unit.type_name, "ground_fault_protection"),
            unit.key,
            severity=Severity.ADVICE if unknown else None,
        )
