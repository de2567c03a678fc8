"""Isolator that cannot be locked open.

What it checks
    AC and DC isolators that the spec gives as not lockable.

Why
    Who works at an inverter must be certain that nobody closes the switch meanwhile.

How
    lockable: false. Non-compliance where locking is demanded: with the profile AS/NZS 5033; with BS 7671, and where the
    country is GB, whose network operators ask for a generator isolator that locks in the off position; and with every
    profile where the isolator and the inverter are given in two places, out of sight of each other. Advice elsewhere.

Remedy
    An isolator that takes a padlock in the open position.

Clause
    IEC 60364-4-46:2016 462.3, securing against inadvertent closing; BS 7671:2018 462.3; AS/NZS 5033:2021 4.3 (all
    numbers from memory).

Not covered
    Isolators of which the spec does not say whether they can be locked.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.ac import ISOLATOR
from sld.model.kinds.dc import DC_ISOLATOR
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, phrase


@rule("AC44", "isolator that cannot be locked open", Severity.NON_COMPLIANCE, "IEC 60364-4-46 462.3")
def isolator_not_lockable(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch in system.apparatus(ISOLATOR, DC_ISOLATOR):
        given = switch.given_as(ISOLATOR) or switch.given_as(DC_ISOLATOR)
        if given is None or given.lockable is not False:
            continue
        why = _demanded(system, switch)
        yield Breach(
            phrase("{switch} cannot be locked open, {why}", switch=named(switch), why=why)
            if why
            else phrase("{switch} cannot be locked open", switch=named(switch)),
            phrase("use an isolator that can be locked open"),
            (*switch.at, "lockable"),
            switch.key,
            severity=Severity.NON_COMPLIANCE if why else Severity.ADVICE,
        )


def _demanded(system: System, switch: Apparatus) -> Phrase | None:
    """Return by what locking is demanded, or None."""
    if system.profile in ("AS/NZS 5033", "BS 7671") or system.supply.country == "GB":
        return phrase("which is demanded here")
    served = system.devices.get(switch.owner)
    if switch.location and served is not None and served.location and served.location != switch.location:
        return phrase("and it is out of sight of what it isolates")
    return None
