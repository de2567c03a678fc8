"""Cable too thin for the heat of a fault.

What it checks
    Line and protective conductor of each AC cable behind its breaker or fuse against the section that a fault heats to
    the limit of its insulation.

Why
    The current of a short circuit melts a thin conductor, or its insulation, before the device has opened.

How
    S or SPE < S,thermal = √(I²t)/k. Danger by the let-through energy of energy limiting class 3, for miniature breakers
    of curve B or C up to 32 A on at most 6 kA, and for gG fuses by Ia² · t at the least fault current. Else advice,
    with the least fault current for 0.1 s where the breaker trips at once: a breaker is faster than that, so its
    maker's figure may do.

Remedy
    The next larger section, or the I²t of the maker; then accept the finding with it.

Clause
    IEC 60364-4-43:2008 434.5.2; IEC 60364-5-54:2011 543.1.2; EN 60898-1 Annex ZA (from memory);
    IEC 60269-1 Table 3.

Not covered
    Fuses that need not open within 5 s. Breakers above 32 A or 6 kA near the start of the cable, where the maker's I²t
    decides. Parallel cables are each taken alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import Sayable, phrase

_CONDUCTORS = ((Symbol.S, "section"), (Symbol.SPE, "protective_section"))


@rule("FA09", "cable too thin for the heat of a fault", Severity.DANGER, "IEC 60364-4-43 434.5.2; IEC 60364-5-54")
def cable_too_thin_for_the_fault(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in ac_cables(system):
        least = ratings.get(cable.key, Symbol.S_THERMAL)
        if least is None:
            continue
        for symbol, field in _CONDUCTORS:
            section = ratings.get(cable.key, symbol)
            if section is not None and below(section.value, least.value):
                yield _finding(system, cable, section, least, field)
                break


def _finding(system: System, cable: Cable, section: Rating, least: Rating, field: str) -> Breach:
    device = overcurrent_device(system, cable.key)
    has, needs = two(section.value, least.value, "mm²")
    who = phrase("{cable} behind {device}", cable=named(cable), device=named(device)) if device else named(cable)
    said: dict[str, Sayable] = {"cable": who, "has": has, "needs": needs}
    return Breach(
        phrase("{cable} has line conductors of {has}, below the {needs} that a fault asks for", **said)
        if field == "section"
        else phrase("{cable} has a protective conductor of {has}, below the {needs} that a fault asks for", **said),
        phrase(
            "use {size}, or compare with the I²t of the maker of the device",
            size=size_at_least("section_mm2", least.value, "mm²"),
        ),
        (*cable.at, field),
        cable.key,
        ((device.at, phrase("the protective device")),) if device else (),
        (section, least),
        severity=Severity.DANGER if any(given.symbol == "I²t" for given in least.given) else Severity.ADVICE,
    )
