"""Surge protection in the box of another input.

What it checks
    The `enclosure` of DC surge protective devices.

Why
    A device in the box of another input does not protect the input that it is listed for, and its leads are long.

How
    The enclosure is the junction box of another input and not that of its own.

Remedy
    The junction box of the input.

Clause
    Common practice, no source; IEC 61643-32 asks for short leads (from memory).

Not covered
    Boxes that are no input's junction box: nothing says where they stand.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU14", "surge protection in the box of another input", Severity.ADVICE, "common practice, no source")
def surge_protection_in_another_box(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    terminals = list(system.every(InputTerminal))
    others = {each.given.junction_box: each for each in terminals if each.given.junction_box is not None}
    for terminal in terminals if others else ():
        for device in devices_of_input(system, terminal, DC_SURGE_PROTECTION):
            box = device.given.enclosure
            if box is None or box == terminal.given.junction_box or box not in others:
                continue
            yield Breach(
                phrase(
                    "{device} of {terminal} sits in `{box}`, the junction box of {other}",
                    device=named(device),
                    terminal=named(terminal),
                    box=box,
                    other=named(others[box]),
                ),
                phrase("give the junction box of the input as its `enclosure`, or move it to the other input"),
                (*device.at, "enclosure"),
                device.key,
                ((others[box].at, phrase("the other input")),),
            )
