"""Cable carries less than its protective device lets through.

What it checks
    The current-carrying capacity Iz of each AC cable as laid against the rated current In of the device that
    protects it, or against the design current where none does.

Why
    The device lets through for good what overheats the cable; its insulation fails and burns.

How
    Iz < In of the next overcurrent device towards the network; without one, Iz < Ib. Iz < In + Σ Ig for a trunk cable
    with loads and generation along it: the device sees only what comes from the network, a load takes both.

Remedy
    A larger section, or a smaller device where the design current allows one.

Clause
    IEC 60364-4-43:2008 433.1; IEC 60364-5-55 551.7.2 (both from memory).

Not covered
    Cables that are allowed to go without overload protection.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import Phrase, phrase, sequence


@rule("AC02", "cable carries less than its protective device lets through", Severity.DANGER, "IEC 60364-4-43 433.1")
def cable_not_protected_against_overload(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in ac_cables(system):
        capacity, device = ratings.get(cable.key, Symbol.IZ), overcurrent_device(system, cable.key)
        both = ratings.get(cable.key, Symbol.I_BOTH)
        rated = both or (ratings.get(device.key, Symbol.IN) if device else ratings.get(cable.key, Symbol.IZ_MIN))
        if capacity is None or rated is None or not below(capacity.value, rated.value):
            continue
        has, lets = two(capacity.value, rated.value, "A")
        what = phrase("its design current of {lets}", lets=lets)
        if device and both:
            what = phrase("the {lets} of {device} and the generation on it", lets=lets, device=named(device))
        elif device:
            what = phrase("the {lets} of {device}", lets=lets, device=named(device))
        design = ratings.get(cable.key, Symbol.IB)
        larger = phrase("leave `section` out, and the smallest that fits is chosen")
        # a smaller device than the design current asks for would trip in normal use
        spare = device is not None and design is not None and not below(capacity.value, design.value)
        largest = ratings.get(cable.key, Symbol.IN_LARGEST) if spare and not both else None
        smaller: tuple[Phrase, ...] = ()
        if largest:
            smaller = (phrase("or use a protective device of at most {largest}", largest=largest),)
        elif spare:
            smaller = (phrase("or use a smaller protective device"),)
        also = ((device.at, phrase("the device that protects it")),) if device else ()
        yield Breach(
            phrase("{cable} carries {has} as laid, below {what}", cable=named(cable), has=has, what=what),
            sequence([larger, *smaller], "; "),
            (*cable.at, "section"),
            cable.key,
            also,
            (capacity, rated),
        )
