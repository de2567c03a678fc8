"""AC surge protection missing at the main board.

What it checks
    Whether the main board has surge protection where the standard asks for it.

Why
    Surges of the network and of lightning nearby reach everything in the building, the inverter with its electronics
    first. Lightning current that enters the earthing system leaves over the network's conductors, through the main
    board.

How
    No AC surge protective device sits in the main board or in its supply, and one is asked for:
    with a lightning protection system, whatever else holds;
    by BS 7671 443.4.1, unless `surge_protection_declined` says that the owner does without;
    by IEC 60364-4-44 443.4, for commerce and industry (`building: other_building`) always; else unless the calculated
    risk level is 1000 or more, or the owner of a dwelling declines it. Without `surroundings` and `lightning_density`
    no risk is assessed, and protection is asked for.
    Advice where the main board is existing, and no lightning protection system is there.

Remedy
    A device of type 2, with a lightning protection system of type 1 or 1+2, in the circuit of the main board.

Clause
    BS 7671:2018+A2:2022 443.4.1 (as https://professional-electrician.com/technical/
    bs-76712018a22022-what-are-the-changes-in-surge-protection-requirements-napit tells it); IEC 60364-4-44:2007+A1:2015
    443.4, 443.5 (as https://www.europa-plc.com/a-guide-to-surge-protection-in-domestic-dwellings tells them); IEC
    60364-5-53:2019 534 (from memory).

Not covered
    Profile AS/NZS 5033, whose wiring rules do not demand it. Protection built into an inverter, which stands too far
    from the origin to count here. Safety services and danger to life, for which nobody can decline it.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, SpecPath, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile
from sld.words import Phrase, phrase

_LEAST_RISK_LEVEL = 1000.0
"""IEC 60364-4-44:2007+A1:2015 443.5, as https://www.eca.co.uk/ECAApplications/SPDCalculator/index.html restates it."""


@rule(
    "SU08", "AC surge protection missing at the main board", Severity.NON_COMPLIANCE, "IEC 60364-4-44; IEC 60364-5-53"
)
def ac_surge_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board, lightning = system.main_board(), system.earthing.lightning_protection is not None
    protected = any(board.key in (each.enclosure, each.owner) for each in system.apparatus(AC_SURGE_PROTECTION))
    if protected or not (lightning or _asked(system, ratings)):
        return
    risk = ratings.get(board.key, Symbol.CRL)
    yield Breach(
        phrase("{board} has no surge protection, on a building with a lightning protection system", board=named(board))
        if lightning
        else phrase(
            "{board} has no surge protection, and {clause} asks for it", board=named(board), clause=_clause(system)
        ),
        phrase("add a `surge_protection` of type 1+2 to the `circuit` of the main board")
        if lightning
        else phrase("add a `surge_protection` of type 2 to the `circuit` of the main board"),
        (*board.at, "circuit"),
        board.key,
        (_why(lightning),),
        (risk,) if risk and not lightning else (),
        severity=Severity.ADVICE if board.status == "existing" and not lightning else None,
    )


def _asked(system: System, ratings: Ratings) -> bool:
    """Return whether the standard of the profile asks for it without a lightning protection system."""
    rules, site = profile(system.profile), system.site
    if not rules.ac_surge_is_required.holds:
        return False
    if not rules.ac_surge_by_risk.holds:
        return site.surge_protection_declined is None
    if site.building == "other_building":
        return True
    if site.building == "dwelling" and site.surge_protection_declined is not None:
        return False
    risk = ratings.get(system.main_board().key, Symbol.CRL)
    return risk is None or below(risk.value, _LEAST_RISK_LEVEL)


def _clause(system: System) -> str:
    return "IEC 60364-4-44 443.4" if profile(system.profile).ac_surge_by_risk.holds else "BS 7671 443.4.1"


def _why(lightning: bool) -> tuple[SpecPath, Phrase]:
    if lightning:
        return ("earthing", "lightning_protection"), phrase("lightning protection system")
    return ("site",), phrase("what is said of the site")
