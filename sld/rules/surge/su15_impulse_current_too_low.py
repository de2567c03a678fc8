"""Impulse current of AC surge protection too low.

What it checks
    The impulse current Iimp of AC surge protective devices of type 1 where the building has a lightning protection
    system.

Why
    Part of the lightning current leaves through the supply; a device that is too weak bursts, and the surge goes on
    into the installation.

How
    Iimp < Iimp,min of one pole for the class of the lightning protection system. Advice where Iimp is not given.

Remedy
    A device for at least that current.

Clause
    IEC 60364-5-53:2019 534.4.4 (from memory).

Not covered
    DC surge protection, whose share depends on the number of down-conductors. Single-phase supplies, where fewer
    conductors share the current.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.rules.impulse import impulse_breach
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU15", "impulse current of AC surge protection too low", Severity.NON_COMPLIANCE, "IEC 60364-5-53 534.4.4")
def impulse_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(AC_SURGE_PROTECTION):
        told = impulse_breach(device, ratings, phrase("a pole"))
        if told is not None:
            yield told
