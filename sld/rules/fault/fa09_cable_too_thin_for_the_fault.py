"""Cable too thin for the heat of a fault.

What it checks
    Line and protective conductor of each AC cable behind its breaker or fuse against the section that a fault heats to
    the limit of its insulation.

Why
    The current of a short circuit melts a thin conductor, or its insulation, before the device has opened.

How
    S < S,thermal or SPE < SPE,thermal = √(I²t)/k. Danger by the I²t that the spec states, by energy limiting class 3
    up to 4.5 kA for miniature breakers of curve B or C up to 40 A, by a stated clearing time, and for gG fuses by
    Ia² · t at the least fault current. Advice for what is assumed: class 3 above 4.5 kA (a note to 434.5 takes class 3
    as enough; the I²t of the maker shows it), 25 ms for other breakers, and class 3 where nobody stated the fault
    current at the supply point. A section that is left out is enlarged by class 3 up to 6 kA, not for the 25 ms.
    A breaker is judged by the greatest current at the start of the cable, a fuse by the least at its end: so a larger
    current through a breaker, a smaller one through a fuse, a longer time and a smaller section are never judged
    milder. Fuses ahead, the service fuse too, limit what reaches a breaker.

Remedy
    The next larger section, or the I²t of the maker (`let_through_energy`).

Clause
    IEC 60364-4-43:2008 434.5.2; IEC 60364-5-54:2011 543.1.2; EN 60898-1 Annex ZA (from memory);
    IEC 60269-1 Table 3; IEEE 1584-2002 for 25 ms (from memory).

Not covered
    Breakers that do not trip at once at the start of the cable. Protective conductors in TT, where the electrode limits
    the earth fault. Parallel cables are each taken alone.
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
from sld.rules.ways import ac_cables, is_armoured
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device, protective_family
from sld.steps.thermal import certain_mm2, heated
from sld.words import Sayable, phrase

_FIELD = {Symbol.S: "section", Symbol.SPE: "protective_section"}


@rule("FA09", "cable too thin for the heat of a fault", Severity.DANGER, "IEC 60364-4-43 434.5.2; IEC 60364-5-54")
def cable_too_thin_for_the_fault(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    supply = system.supply
    current_stated = supply.prospective_fault_current_ka is not None or supply.transformer is not None
    for cable in ac_cables(system):
        # a fuse is judged by the least current, which no assumed greatest one changes
        device = overcurrent_device(system, cable.key)
        stated = current_stated or (device is not None and protective_family(device) == "gG")
        found = []
        for least_symbol, symbol in heated(system).items():
            least, section = ratings.get(cable.key, least_symbol), ratings.get(cable.key, symbol)
            if least is None or section is None or not below(section.value, least.value):
                continue
            certain = below(section.value, certain_mm2(least))
            if certain or stated:
                field = "armour_section" if is_armoured(cable) else _FIELD[symbol]
                found.append(_finding(system, cable, (section, least), field, certain and stated))
        yield from sorted(found, key=lambda each: each.severity or Severity.DANGER, reverse=True)[:1]


def _finding(system: System, cable: Cable, compared: tuple[Rating, Rating], field: str, certain: bool) -> Breach:
    device = overcurrent_device(system, cable.key)
    section, least = compared
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
        compared,
        severity=Severity.DANGER if certain else Severity.ADVICE,
    )
