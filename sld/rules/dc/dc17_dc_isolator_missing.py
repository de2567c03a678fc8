"""No DC isolator.

What it checks
    Whether there is a switch that isolates between the strings of each input and the inverter, in the circuit or built
    into the inverter.

Why
    Without one nobody can work at the inverter: strings cannot be switched off, and plugs must not be pulled under
    load.

How
    No DC isolator and no circuit-breaker with isolating: true in the circuit of the input, and the inverter type has no
    dc_switch. Silent where the type of a micro-inverter says plugs_disconnect: its maker declares the DC plug
    connectors as the means of disconnection (NEC 2023 690.15, from memory). Advice where a micro-inverter has a plug
    connector at the input: parted with the AC side off, it takes the place of a switch (common practice, no source).

Remedy
    A DC isolator in the circuit of the input, dc_switch: true where the inverter has one, or plugs_disconnect: true
    where the data sheet of a micro-inverter says so.

Clause
    IEC 60364-7-712:2017 712.537 (number from memory).

Not covered
    Isolators on the roof, which some countries ask for besides.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.dc import PLUG_CONNECTOR
from sld.model.kinds.role import ISOLATION, SWITCHING
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.ledger import Ratings
from sld.words import Phrase, phrase


@rule("DC17", "no DC isolator", Severity.NON_COMPLIANCE, "IEC 60364-7-712 712.537")
def dc_isolator_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        switches = [each for each in devices_of_input(system, terminal, SWITCHING) if each.has(ISOLATION)]
        type_ = system.inverter_of(terminal).type
        if type_.dc_switch or type_.plugs_disconnect or switches:
            continue
        by_plug = type_.micro and devices_of_input(system, terminal, PLUG_CONNECTOR)
        message, remedy = _where_plugs_may_do(terminal) if by_plug else _without_any(terminal)
        yield Breach(
            message,
            remedy,
            (*terminal.at, "circuit"),
            terminal.key,
            severity=Severity.ADVICE if by_plug else Severity.NON_COMPLIANCE,
        )


def _without_any(terminal: InputTerminal) -> tuple[Phrase, Phrase]:
    message = phrase("{terminal} has no DC isolator, and the inverter has none built in", terminal=named(terminal))
    return message, phrase("add an `isolator` to the `circuit` of the input")


def _where_plugs_may_do(terminal: InputTerminal) -> tuple[Phrase, Phrase]:
    message = phrase(
        "{terminal} has no DC isolator, and the inverter has none built in; its plug connectors may be parted only "
        "while the AC side is off",
        terminal=named(terminal),
    )
    remedy = phrase(
        "add an `isolator` to the `circuit` of the input; or give `plugs_disconnect: true` in the inverter "
        "type where its maker declares them as means of disconnection"
    )
    return message, remedy
