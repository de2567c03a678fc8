"""Protective conductor too small.

What it checks
    The section of the protective conductor that each cable is given against the table.

Why
    A fault current through a conductor that is too thin melts it, and the exposed parts stay live.

How
    SPE < SPE,min by the table: S up to 16 mm², 16 mm² up to 35 mm², half above; at least 2.5 mm², unprotected 4 mm²,
    where it is no part of a cable; and the adiabatic equation does not show that less is enough: SPE < SPE,thermal, or
    nothing switches an earth fault at the far end off at once. An armour of steel counts with the ratio of its factor k
    to that of the line conductors. No equation makes less of what its strength asks for.

Remedy
    The next standard section, or the data that the equation needs.

Clause
    IEC 60364-5-54:2011 543.1.1 and 543.1.2, Table 54.2; BS 7671:2018 543.1.1, Table 54.7.

Not covered
    Separate conductors of other metals than copper.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, shortfalls, two_sections
from sld.rules.naming import named
from sld.rules.nearest import section_at_least
from sld.rules.ways import ac_cables, has_residual_device, is_armoured
from sld.steps.largest_protective import by_strength
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("AC23", "protective conductor too small", Severity.NON_COMPLIANCE, "IEC 60364-5-54 Table 54.2")
def protective_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.SPE, Symbol.SPE_MIN):
        if _shown_by_the_equation(system, ratings, cable, section.value):
            strong = by_strength(cable)
            if strong is None or not below(section.value, strong.value):
                continue
            least = strong
        has, needs = two_sections(section, least)
        said, armoured = {"cable": named(cable), "has": has, "needs": needs}, is_armoured(cable)
        yield Breach(
            phrase("{cable} has an armour that stands for a protective conductor of {has}, below {needs}", **said)
            if armoured
            else phrase("{cable} has a protective conductor of {has}, below {needs}", **said),
            phrase("lay a protective conductor beside it, or use a cable with a core for it")
            if armoured
            else phrase("use a protective conductor of {size}", size=section_at_least(least)),
            (*cable.at, "armour_section" if armoured else "protective_section"),
            cable.key,
            (),
            (section, least),
        )


def _shown_by_the_equation(system: System, ratings: Ratings, cable: Cable, section_mm2: float) -> bool:
    """Return whether a protective conductor stands the heat of every fault of its circuit until that is off."""
    least = ratings.get(cable.key, Symbol.SPE_THERMAL) or ratings.get(cable.key, Symbol.S_THERMAL)
    device = overcurrent_device(system, cable.key)
    if least is None or device is None or below(section_mm2, least.value):
        return False
    flows, opens = ratings.get(device.key, Symbol.IK1_MIN), ratings.get(device.key, Symbol.IA)
    at_once = flows is not None and opens is not None and not below(flows.value, opens.value)
    return at_once or has_residual_device(system, device)
