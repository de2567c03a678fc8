"""Shutdown of the array missing.

What it checks
    Inputs on buildings where the rule profile or the country asks that the conductors of an array can be shut down.

Why
    Fire-fighters cut into a roof. Without shutdown the conductors in it stay live as long as there is light.

How
    The notes of the `country`, or those of the National Electrical Code where the profile follows it, hold the topic
    rapid shutdown, and the circuit of the input has no `rapid_shutdown`. Micro-inverters stand beside their modules and
    stop with the network: their conductors are not asked for one, nor are strings whose optimisers say rapid_shutdown.

Remedy
    Shutdown devices at the array with an initiating device outside; accept the finding where modules or inverter do it.

Clause
    As the note cites it: NEC 2023 690.12, a demand ("shall") whatever the country.

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
from sld.rules.profile_applies import asking
from sld.rules.ways import devices_of_input
from sld.steps.inputs import groups_behind
from sld.steps.ledger import Ratings
from sld.steps.optimisers import optimiser_of
from sld.tables.country import notes_of
from sld.words import phrase


@rule("DC50", "shutdown of the array missing", Severity.NON_COMPLIANCE, "NEC 690.12; the note of the country")
def rapid_shutdown_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.building == "ground_mounted":
        return
    for note in notes_of(system.supply.country, system.follows_nec):
        if note["topic"] != "rapid shutdown":
            continue
        for terminal in system.of(InputTerminal):
            micro = system.inverter_of(terminal).type.micro
            units = [optimiser_of(system, group) for group in groups_behind(system, terminal.key)]
            by_units = all(each is not None and each.rapid_shutdown for each in units)
            if micro or by_units or devices_of_input(system, terminal, RAPID_SHUTDOWN):
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
                (asking(system),),
            )
