"""Impulse current of DC surge protection too low.

What it checks
    The impulse current Iimp of DC surge protective devices of type 1 where the building has a lightning protection
    system.

Why
    Part of the lightning current flows through the array's frames and cables; a device that is too weak bursts.

How
    Iimp < Iimp,min of one mode for the class of the lightning protection system, at inputs that need type 1. Advice
    where Iimp is not given.

Remedy
    A device for at least that current.

Clause
    IEC 61643-32:2017 Annex A (from memory).

Not covered
    The exact share by number of down-conductors, and devices with spark gaps.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.impulse import impulse_breach
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU17", "impulse current of DC surge protection too low", Severity.NON_COMPLIANCE, "IEC 61643-32 Annex A")
def dc_impulse_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(DC_SURGE_PROTECTION):
        needed = ratings.word(terminal_of(system, device.key).key, Word.SPD_TYPE) == "1"
        told = impulse_breach(device, ratings, phrase("a mode")) if needed else None
        if told is not None:
            yield told
