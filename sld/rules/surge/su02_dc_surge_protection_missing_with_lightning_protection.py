"""DC surge protection missing on a building with lightning protection.

What it checks
    Inputs without DC surge protection on a building with a lightning protection system.

Why
    The rods attract the flash; parts of its current and its field reach the array and what is connected to it.

How
    A lightning protection system is given, and neither the circuit of the input nor the inverter has DC surge
    protection.

Remedy
    A DC surge protective device in the circuit of each input, type 1 where the separation distance is not kept.

Clause
    IEC 61643-32; IEC 62305-3 6.3 (from memory).

Not covered
    The design of the lightning protection itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.rules.ways import has_dc_surge_protection
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "SU02",
    "DC surge protection missing on a building with lightning protection",
    Severity.NON_COMPLIANCE,
    "IEC 61643-32; IEC 62305-3",
)
def dc_surge_protection_missing_with_lightning_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.earthing.lightning_protection is None:
        return
    for terminal in system.of(InputTerminal):
        if has_dc_surge_protection(system, terminal):
            continue
        kind = ratings.word(terminal.key, Word.SPD_TYPE) or "2"
        yield Breach(
            phrase(
                "{terminal} has no surge protection, on a building with a lightning protection system",
                terminal=named(terminal),
            ),
            phrase("add a `surge_protection` of type {kind} to the `circuit` of the input", kind=kind),
            (*terminal.at, "circuit"),
            terminal.key,
            ((("earthing", "lightning_protection"), phrase("lightning protection system")),),
        )
