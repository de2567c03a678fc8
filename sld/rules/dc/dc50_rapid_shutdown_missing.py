"""Shutdown of the array missing.

What it checks
    Inputs on buildings of countries whose rules ask that the conductors of an array can be shut down.

Why
    Fire-fighters cut into a roof. Without shutdown the conductors in it stay live as long as there is light.

How
    The notes of the `country` hold the topic rapid shutdown, and the circuit of the input has no `rapid_shutdown`.

Remedy
    Shutdown devices at the array with an initiating device outside; accept the finding where modules or inverter do it.

Clause
    As the note of the country cites it: NEC 2023 690.12 for US.

Not covered
    The limits of 30 V and 80 V, which depend on the device, and the label.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.dc import RAPID_SHUTDOWN
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.ledger import Ratings
from sld.tables.country import notes_of
from sld.words import phrase


@rule("DC50", "shutdown of the array missing", Severity.ADVICE, "NEC 690.12; the note of the country")
def rapid_shutdown_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.building == "ground_mounted":
        return
    for note in notes_of(system.supply.country):
        if note["topic"] != "rapid shutdown":
            continue
        for terminal in system.of(InputTerminal):
            if devices_of_input(system, terminal, RAPID_SHUTDOWN):
                continue
            yield Breach(
                phrase(
                    "{terminal} has no shutdown device, and {note} asks for one on a building",
                    terminal=named(terminal),
                    note=note.said("clause"),
                ),
                phrase(
                    "add a `rapid_shutdown` to the `circuit` of the input, or accept the finding where modules "
                    "or inverter shut the array down"
                ),
                (*terminal.at, "circuit"),
                terminal.key,
                ((("supply", "country"), phrase("country of the installation")),),
            )
