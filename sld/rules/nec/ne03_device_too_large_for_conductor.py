"""Overcurrent device too large for its conductor.

What it checks
    The rated current of the device ahead of each AC and DC conductor against the largest that its ampacity allows.

Why
    An overload or a fault heats a conductor that its device does not protect.

How
    In > In,allowed: the next standard rating above the ampacity up to 800 A, none above it beyond; 15 A, 20 A and
    30 A for copper of 14, 12 and 10 AWG.

Remedy
    A larger size; or a smaller device, where the current lets it.

Clause
    NEC 2023 240.4(B), (C), (D) (240.4(D) seen, the rest from memory).

Not covered
    Tap conductors (240.21(B)) and the conductors of 240.4(E) and (G).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus, Cable
from sld.model.kinds.role import OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ac_cables import incoming_device
from sld.steps.batteries import overcurrent_protection, stores, way_from
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("NE03", "overcurrent device too large for its conductor", Severity.DANGER, "NEC 2023 240.4")
def device_too_large_for_conductor(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in system.of(Cable):
        device = _fuse(system, cable) if cable.dc else _device(system, cable)
        rated = ratings.get(device.key, Symbol.IN) if device else None
        allowed = ratings.get(cable.key, Symbol.IN_ALLOWED)
        if device is None or rated is None or allowed is None or not above(rated.value, allowed.value):
            continue
        has, most = two(rated.value, allowed.value, "A")
        yield Breach(
            phrase(
                "{cable} is behind {device} of {has}, above the {most} that its ampacity allows",
                cable=named(cable),
                device=named(device),
                has=has,
                most=most,
            ),
            phrase("leave `section` out, and the smallest size that fits is chosen; or use a smaller device"),
            (*cable.at, "section"),
            cable.key,
            ((device.at, phrase("the device that protects it")),),
            (rated, allowed),
        )


def _device(system: System, cable: Cable) -> Apparatus | None:
    return overcurrent_device(system, cable.key) or incoming_device(system, cable)


def _fuse(system: System, cable: Cable) -> Apparatus | None:
    """Return the fuse between a DC cable and its inverter; at a battery the one nearest to the battery."""
    for store in stores(system):
        if cable in way_from(system, store):
            return overcurrent_protection(system, store)
    for device in system.upstream(cable.key):
        if not device.dc:
            return None
        if isinstance(device, Apparatus) and device.has(OVERCURRENT_PROTECTION):
            return device
    return None
