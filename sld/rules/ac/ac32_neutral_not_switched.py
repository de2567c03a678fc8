"""Neutral not switched.

What it checks
    The stated number of poles of switching and protective devices in TT and IT systems, of RCDs and RCBOs in every one.

Why
    In these systems the neutral can stand at a voltage against the earth of the installation: a device that leaves it
    connected does not isolate, and in IT a second fault can flow through it. An RCD or RCBO that the neutral passes by
    takes the current of any single-phase load for a fault.

How
    poles given without one for the neutral, where the circuit may have one. Non-compliance for what isolates a circuit
    that has a neutral, and in IT for every device of a single-phase circuit; else advice, because a three-phase circuit
    may have no neutral. In TN the neutral need not be isolated where it is reliably earthed. An RCD encloses the
    neutral in every system.

Remedy
    Two poles with one phase, four with three.

Clause
    IEC 60364-4-43:2008 431.2; IEC 60364-4-46 461.2; BS 7671:2018 461.2; IEC 60364-5-53:2019 531.3.1 (from memory).

Not covered
    Devices whose poles are not given: all live conductors are taken.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import cores, has_neutral, lines_count, phases
from sld.model.device import Device
from sld.model.kinds.role import ISOLATION, POLES, RESIDUAL_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, counted, phrase


@rule("AC32", "neutral not switched", Severity.NON_COMPLIANCE, "IEC 60364-4-43 431.2; IEC 60364-4-46 461.2")
def neutral_not_switched(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(POLES):
        poles, lines = given.poles, phases(system, device.owner)
        without = lines_count(system, device.owner) == 2 or not has_neutral(system, device.owner)
        earthing, is_rcd = system.earthing_at(device.key), device.has(RESIDUAL_PROTECTION)
        if device.dc or poles is None or poles != lines or without or not (is_rcd or earthing in ("TT", "IT")):
            continue
        laid = _is_laid(system, device)
        if is_rcd and not laid:
            continue
        isolates = (is_rcd or device.has(ISOLATION)) and laid
        yield Breach(
            _of_rcd(named(device), poles) if is_rcd else _message(named(device), poles, earthing),
            phrase("use a device with {poles} poles", poles=lines + 1),
            (*device.at, "poles"),
            device.key,
            ((("supply", "earthing_system"), phrase("earthing system")),),
            severity=Severity.NON_COMPLIANCE if isolates or (earthing == "IT" and lines == 1) else Severity.ADVICE,
        )


def _is_laid(system: System, device: Device) -> bool:
    """Return whether a neutral is laid: unless the cables are said to have cores for lines and PE alone."""
    cables = (each for each, _ in system.ac_cables() if each.owner == device.owner)
    return all(cores(system, cable) > lines_count(system, device.owner) + 1 for cable in cables)


def _of_rcd(device: Sayable, poles: int) -> Phrase:
    return phrase("{device} has {poles} poles, and the neutral does not pass through it", device=device, poles=poles)


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
