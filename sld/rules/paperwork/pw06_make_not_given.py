"""Make not given.

What it checks
    Whether the make of every type of module and inverter that is used is given.

Why
    The reviewer looks the type up in the list of certified equipment. A name that differs from that on the other
    papers is among the reasons for which they come back.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `make` (and `model`) at the type.

Clause
    IEC 62446-1:2016 4.2.1 (from memory).

Not covered
    Whether the type is certified for the network.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit, StringGroup
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW06", "make not given", Severity.ADVICE, "IEC 62446-1:2016 4.2.1 (from memory)", once=True)
def make_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    told: set[tuple[str, str]] = set()
    units: list[InverterUnit | StringGroup] = [*system.of(InverterUnit), *system.of(StringGroup)]
    for unit in units:
        group, word = ("inverters", "inverter") if isinstance(unit, InverterUnit) else ("modules", "module")
        if unit.make or (group, unit.type_name) in told:
            continue
        told.add((group, unit.type_name))
        yield Breach(
            phrase("the make of {word} type {type_name} is not given", word=word, type_name=unit.type_name),
            phrase("give `make` and `model` at the type, as on the other papers"),
            ("types", group, unit.type_name, "make"),
            unit.key,
        )
