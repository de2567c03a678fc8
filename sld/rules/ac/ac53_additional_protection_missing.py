"""Additional protection missing.

What it checks
    Whether each circuit with socket-outlets, and in a dwelling each with luminaires, has an RCD of at most 30 mA
    without a delay on its way.

Why
    What is plugged in is held in the hand, its cord is worn, and it is used outdoors: a person who touches a line is
    saved by this RCD alone.

How
    A load with `supplies: socket_outlets` whose overcurrent device is rated 32 A at most, or `supplies: luminaires` in
    a dwelling, without an RCD or RCBO of at most 30 mA between it and the network. One with a delay does not count.

Remedy
    An RCBO, or an RCD ahead of the circuits that are to have it.

Clause
    IEC 60364-4-41:2005+A1:2017 411.3.3, 411.3.4, 415.1 (from memory); the same numbers in BS 7671:2018, as told in
    https://www.wiring-regulations.co.uk/protection-against-electric-shock-chapter-41/; for 30 mA up to 32 A too
    http://regelwerke.vbg.de/vbg_dguvi/bi608/bi608_17_.html.

Not covered
    Loads that do not say what they supply. Socket-outlets that BS 7671 lets go without after a risk assessment, which
    is not for dwellings: accept the finding with it. RCDs inside socket-outlets.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Consumer
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above
from sld.rules.naming import named
from sld.rules.ways import is_delayed, residual_devices_ahead
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.steps.residual import additional_protection
from sld.words import amount, phrase

_MOST_MA, _MOST_A = 30.0, 32.0


@rule("AC53", "additional protection missing", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.3.3, 411.3.4")
def additional_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for load in system.of(Consumer):
        if not additional_protection(system, load) or _is_large(system, ratings, load):
            continue
        ahead = residual_devices_ahead(system, ratings, load, _MOST_MA)
        delayed = [device for device, _ in ahead if is_delayed(device)]
        if len(delayed) < len(ahead):
            continue
        what = {"load": named(load), "most": amount(_MOST_MA, "mA")}
        yield Breach(
            phrase("{load} has socket-outlets, and no RCD of at most {most} without a delay on its way", **what)
            if load.given.supplies == "socket_outlets"
            else phrase(
                "{load} has luminaires of a dwelling, and no RCD of at most {most} without a delay on its way", **what
            ),
            phrase("begin its `circuit` with an `rcbo` of {most}", most=what["most"]),
            (*load.at, "circuit"),
            load.key,
            tuple((device.at, phrase("an RCD with a delay")) for device in delayed),
        )


def _is_large(system: System, ratings: Ratings, load: Consumer) -> bool:
    """Return whether a circuit is for socket-outlets above the rated current up to which this is asked."""
    device = overcurrent_device(system, load.key)
    rated = ratings.get(device.key, Symbol.IN) if device else None
    return rated is not None and above(rated.value, _MOST_A)
