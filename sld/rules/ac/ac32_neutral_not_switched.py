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

from sld.finding import Breach, Severity, rule
from sld.model.conductors import lines_count, phases
from sld.model.kinds.ac import RCD
from sld.model.kinds.role import POLES
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, counted, phrase


@rule("AC32", "neutral not switched", Severity.NON_COMPLIANCE, "IEC 60364-4-43 431.2; IEC 60364-5-53 461.2")
def neutral_not_switched(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    earthing = system.supply.earthing_system
    if earthing not in ("TT", "IT"):
        return
    for device, given in system.given_as(POLES):
        poles, lines = given.poles, phases(system, device.owner)
        between = lines_count(system, device.owner) == 2  # which has no neutral
        if device.dc or device.kind is RCD or poles is None or poles != lines or between:
            continue
        yield Breach(
            _message(named(device), poles, earthing),
            phrase("use a device with {poles} poles", poles=lines + 1),
            (*device.at, "poles"),
            device.key,
            ((("supply", "earthing_system"), phrase("earthing system")),),
            severity=Severity.NON_COMPLIANCE if earthing == "IT" and lines == 1 else Severity.ADVICE,
        )


def _message(device: Sayable, poles: int, earthing: str) -> Phrase:
    if earthing == "IT":
        return counted(
            "{device} has {count} pole and leaves the neutral connected, in an IT system",
            "{device} has {count} poles and leaves the neutral connected, in an IT system",
            poles,
            device=device,
        )
    return counted(
        "{device} has {count} pole and leaves the neutral connected, in a TT system",
        "{device} has {count} poles and leaves the neutral connected, in a TT system",
        poles,
        device=device,
    )
