"""The impulse current of a surge protective device that must carry a share of the lightning current."""

from __future__ import annotations

from sld.finding import Breach, Severity
from sld.model.device import Apparatus
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, amount, phrase

__all__ = ["impulse_breach"]


def impulse_breach(device: Apparatus, ratings: Ratings, way: Phrase) -> Breach | None:
    """Return what is to be told of the impulse current of a device, None where it is high enough or not asked for.

    way: what carries the share of the lightning current: a pole, a mode.
    """
    rated, least = ratings.get(device.key, Symbol.IIMP), ratings.get(device.key, Symbol.IIMP_MIN)
    if least is None or (rated is not None and not below(rated.value, least.value)):
        return None
    if rated is None:
        severity, needs = Severity.ADVICE, amount(least.value, "kA")
        message = phrase("{device} does not state its impulse current", device=named(device))
    else:
        has, needs = two(rated.value, least.value, "kA")
        severity = Severity.NON_COMPLIANCE
        message = phrase("{device} has an impulse current of {has}", device=named(device), has=has)
    return Breach(
        phrase(
            "{message}; the lightning protection system asks for {needs} {way}", message=message, needs=needs, way=way
        ),
        phrase("use a device of at least {needs} (10/350 µs) and give its `impulse_current`", needs=needs),
        (*device.at, "impulse_current"),
        device.key,
        ((("earthing", "lightning_protection"), phrase("lightning protection system")),),
        (rated, least) if rated else (least,),
        severity=severity,
    )
