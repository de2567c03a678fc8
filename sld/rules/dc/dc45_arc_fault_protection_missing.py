"""DC arc-fault protection missing.

What it checks
    Inverters on buildings where the rule profile or the country asks for arc-fault protection of the DC side.

Why
    A loose contact draws an arc that no fuse sees, on a roof above people.

How
    The notes of the `country`, or those of the National Electrical Code where the profile follows it, hold a voltage
    from which arc-fault protection is asked for on a building; an input reaches it, and the inverter type has no
    arc_fault_protection.

Remedy
    An inverter with arc-fault protection, or a device of its own; accept the finding with that reason.

Clause
    As the note cites it: NEC 690.11, a demand ("shall") whatever the country.

Not covered
    Other profiles in countries whose notes hold no such voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.profile_applies import asking
from sld.steps.inputs import inputs_of
from sld.steps.ledger import Ratings
from sld.tables.country import notes_of
from sld.words import phrase


@rule("DC45", "DC arc-fault protection missing", Severity.NON_COMPLIANCE, "NEC 690.11; the note of the country")
def arc_fault_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.building == "ground_mounted":
        return
    for note in notes_of(system.supply.country, system.follows_nec):
        if note["topic"] != "arc fault" or not note.has("from_v"):
            continue
        from_v = note.number("from_v")
        for unit in system.of(InverterUnit):
            inputs = inputs_of(system, unit.key)
            found = [rating for each in inputs if (rating := ratings.get(each.key, Symbol.UOC_MAX)) is not None]
            highest = max(found, key=lambda rating: rating.value, default=None)
            if unit.type.arc_fault_protection or highest is None or below(highest.value, from_v):
                continue
            reached, limit = two(highest.value, from_v, "V")
            yield Breach(
                phrase(
                    "{unit} has no arc-fault protection, and its array reaches {reached}; {note} asks for it "
                    "from {limit} on a building",
                    unit=named(unit),
                    reached=reached,
                    note=note.said("clause"),
                    limit=limit,
                ),
                phrase(
                    "use an inverter with `arc_fault_protection`, or accept the finding where another device has it"
                ),
                unit.at,
                unit.key,
                (
                    (("types", "inverters", unit.type_name, "arc_fault_protection"), phrase("what the inverter has")),
                    asking(system),
                ),
                (highest,),
            )
