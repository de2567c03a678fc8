"""Neutral not switched.

What it checks
    The stated number of poles of switching and protective devices in TT and IT systems.

Why
    In these systems the neutral can stand at a voltage against the earth of the installation: a device that leaves it
    connected does not isolate, and in IT a second fault can flow through it.

How
    poles given without one for the neutral, in a single-phase circuit: non-compliance in IT, advice in TT. In a
    three-phase circuit advice, because it may have no neutral.

Remedy
    Two poles with one phase, four with three.

Clause
    IEC 60364-4-43:2008 431.2; IEC 60364-5-53 461.2 (from memory).

Not covered
    Devices whose poles are not given: all live conductors are taken. A neutral that is not distributed.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.conductors import phases
from sld.model.kinds.ac import RCD
from sld.model.kinds.role import POLES
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings


@rule("AC32", "neutral not switched", Severity.NON_COMPLIANCE, "IEC 60364-4-43 431.2; IEC 60364-5-53 461.2")
def neutral_not_switched(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    earthing = system.supply.earthing_system
    if earthing not in ("TT", "IT"):
        return
    for device, given in system.given_as(POLES):
        poles, lines = given.poles, phases(system, device.owner)
        if device.dc or device.kind is RCD or poles is None or poles != lines:
            continue
        yield Finding(
            "AC32",
            Severity.NON_COMPLIANCE if earthing == "IT" and lines == 1 else Severity.ADVICE,
            f"{named(device)} has {poles} {'pole' if poles == 1 else 'poles'} and leaves the neutral connected, "
            f"in {'an' if earthing == 'IT' else 'a'} {earthing} system",
            f"use a device with {lines + 1} poles",
            (*device.at, "poles"),
            device.key,
            ((("supply", "earthing_system"), "earthing system"),),
        )
