"""The impulse current of a surge protective device that must carry a share of the lightning current."""

from __future__ import annotations

from sld.finding import Finding, Severity
from sld.model.device import Apparatus
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings

__all__ = ["impulse_finding"]


def impulse_finding(code: str, device: Apparatus, ratings: Ratings, way: str) -> Finding | None:
    """Return what is to be told of the impulse current of a device, None where it is high enough or not asked for.

    way: what carries the share of the lightning current: a pole, a mode.
    """
    rated, least = ratings.get(device.key, Symbol.IIMP), ratings.get(device.key, Symbol.IIMP_MIN)
    if least is None or (rated is not None and not below(rated.value, least.value)):
        return None
    severity, message = Severity.ADVICE, f"{named(device)} does not state its impulse current"
    needs = least.quantity()
    if rated is not None:
        has, needs = two(rated.value, least.value, "kA")
        severity, message = Severity.NON_COMPLIANCE, f"{named(device)} has an impulse current of {has}"
    return Finding(
        code,
        severity,
        f"{message}; the lightning protection system asks for {needs} {way}",
        f"use a device of at least {needs} (10/350 µs) and give its `impulse_current`",
        (*device.at, "impulse_current"),
        device.key,
        ((("earthing", "lightning_protection"), "lightning protection system"),),
        (rated, least) if rated else (least,),
    )
