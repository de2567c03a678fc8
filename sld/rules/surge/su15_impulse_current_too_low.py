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

from sld.finding import Finding, Severity, rule
from sld.model.system import System
from sld.rate.ledger import Ratings
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.ways import apparatus
from sld.spec.blocks.circuit import AcSurgeProtection


@rule("SU15", "impulse current of AC surge protection too low", Severity.NON_COMPLIANCE, "IEC 60364-5-53 534.4.4")
def impulse_current_too_low(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in apparatus(system, AcSurgeProtection):
        rated, least = ratings.get(device.key, "Iimp"), ratings.get(device.key, "Iimp,min")
        if least is None or (rated is not None and not below(rated.value, least.value)):
            continue
        severity, message = Severity.ADVICE, f"{named(device)} does not state its impulse current"
        needs = least.quantity()
        if rated is not None:
            has, needs = two(rated.value, least.value, "kA")
            severity, message = Severity.NON_COMPLIANCE, f"{named(device)} has an impulse current of {has}"
        yield Finding(
            "SU15",
            severity,
            f"{message}; the lightning protection system asks for {needs} a pole",
            f"use a device of at least {needs} (10/350 µs) and give its `impulse_current`",
            (*device.at, "impulse_current"),
            device.key,
            ((("earthing", "lightning_protection"), "lightning protection system"),),
            (rated, least) if rated else (least,),
        )
