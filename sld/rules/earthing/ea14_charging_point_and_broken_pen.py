"""Charging point outdoors on a combined neutral.

What it checks
    Charging points for electric vehicles on a supply with a combined neutral (TN-C-S, PME) in the United Kingdom.

Why
    If the combined conductor of the network breaks, the body of the vehicle stands at up to the voltage of the line,
    and who touches it stands on true earth. No fuse and no RCD opens.

How
    Profile BS 7671 or country GB, TN-C-S at the place of the charging point, and no `open_pen_protection` at one whose
    vehicle may stand outdoors; advice where the spec does not say where it stands.

Remedy
    One of the measures of the clause, written as `open_pen_protection`; or `vehicle_outdoors: false`.

Clause
    BS 7671:2018+A2:2022 722.411.4.1, in words at https://matt-e.co.uk/commercial-installations/

Not covered
    Whether the measure works: 70 V and 5 s of a device, the resistance of an electrode, the distance of an earth of
    its own from what is bonded to the other. Other countries, whose rules do not ask for it.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Consumer
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA14", "charging point outdoors on a combined neutral", Severity.NON_COMPLIANCE, "BS 7671 722.411.4.1")
def charging_point_and_broken_pen(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    british = system.profile == "BS 7671" or system.supply.country == "GB"
    if not british:
        return
    for load in system.of(Consumer):
        outdoors = _outdoors(system, load)
        if (
            system.earthing_at(load.key) != "TN-C-S"
            or not load.given.charging_point
            or load.given.open_pen_protection is not None
            or outdoors is False
        ):
            continue
        yield Breach(
            phrase("{load} charges outdoors on a combined neutral (TN-C-S), and nothing protects if that breaks",
                   load=named(load))
            if outdoors
            else phrase("{load} is on a combined neutral (TN-C-S); may the vehicle stand outdoors?", load=named(load)),
            phrase("give `open_pen_protection`, or `vehicle_outdoors: false` where it cannot stand outdoors"),
            load.at,
            load.key,
            ((("supply", "earthing_system"), phrase("earthing system")),),
            severity=Severity.NON_COMPLIANCE if outdoors else Severity.ADVICE,
        )  # fmt: skip


def _outdoors(system: System, load: Consumer) -> bool | None:
    """Return whether the vehicle may stand outdoors: as given, else where the charging point is, None if neither."""
    if load.given.vehicle_outdoors is not None:
        return load.given.vehicle_outdoors
    place = system.site.locations.get(load.location)
    return True if place is not None and place.outdoor else None
