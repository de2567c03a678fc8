"""DC surge protection missing on a long route.

What it checks
    The length of the DC route of each input against the critical length of the site, and whether surge protection
    is there.

Why
    A long route forms a loop in which a near flash induces a voltage that destroys inverter and modules.

How
    Lroute >= Lcrit, and neither the circuit of the input nor the inverter has DC surge protection.

Remedy
    A DC surge protective device in the circuit of the input, or a shorter route.

Clause
    IEC 60364-7-712:2017 712.443.102 (number from memory); UTE C15-712-1.

Not covered
    Loops formed by plus and minus laid apart.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.ways import has_dc_surge_protection
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU01", "DC surge protection missing on a long route", Severity.NON_COMPLIANCE, "IEC 60364-7-712 712.443.102")
def dc_surge_protection_missing_by_length(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        route, critical = ratings.get(terminal.key, Symbol.LROUTE), ratings.get(terminal.key, Symbol.LCRIT)
        if route is None or critical is None or has_dc_surge_protection(system, terminal):
            continue
        if below(route.value, critical.value):
            continue
        has, limit = two(route.value, critical.value, "m")
        kind = ratings.word(terminal.key, Word.SPD_TYPE) or "2"
        yield Breach(
            phrase(
                "{terminal} has a DC route of {has} and no surge protection, which is required from {limit}",
                terminal=named(terminal),
                has=has,
                limit=limit,
            ),
            phrase("add a `surge_protection` of type {kind} to the `circuit` of the input", kind=kind),
            (*terminal.at, "circuit"),
            terminal.key,
            ((("site", "lightning_density"), phrase("lightning density")),),
            (route, critical),
        )
