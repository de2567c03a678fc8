"""Second DC surge protection on a long route.

What it checks
    How far the modules and the inverter are from the nearest DC surge protective device of the input, where surge
    protection is required.

Why
    A device holds the voltage down where it is. Beyond some 10 m of cable the surge swings back to twice that.

How
    More than 10 m of cable between the device and the modules, or between it and the inverter; for an input whose route
    is longer than the critical length, or on a building with a lightning protection system.

Remedy
    A second device at the far end.

Clause
    IEC 61643-32, as two makers of protective devices restate it (clause from memory).

Not covered
    Inputs without any device (SU01, SU02), and those where none is required.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, phrase

_ENDS = (Symbol.L_MODULES, Symbol.L_INVERTER)


@rule("SU16", "second DC surge protection on a long route", Severity.ADVICE, "IEC 61643-32 (from memory)")
def second_dc_surge_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        most = ratings.get(terminal.key, Symbol.L_PROTECTED)
        for symbol in _ENDS:
            far = ratings.get(terminal.key, symbol)
            if far is None or most is None or not above(far.value, most.value):
                continue
            has, limit = two(far.value, most.value, "m")
            said: dict[str, Sayable] = {"terminal": named(terminal), "has": has, "limit": limit}
            message, remedy = _at_the_modules(said) if symbol is Symbol.L_MODULES else _at_the_inverter(said)
            yield Breach(
                message,
                remedy,
                (*terminal.at, "circuit"),
                terminal.key,
                (),
                (far, most),
            )


def _at_the_modules(said: dict[str, Sayable]) -> tuple[Phrase, Phrase]:
    message = phrase(
        "{terminal} has {has} of cable between DC surge protection and the modules, and one device protects {limit}",
        **said,
    )
    return message, phrase("add a `surge_protection` near the modules")


def _at_the_inverter(said: dict[str, Sayable]) -> tuple[Phrase, Phrase]:
    message = phrase(
        "{terminal} has {has} of cable between DC surge protection and the inverter, and one device protects {limit}",
        **said,
    )
    return message, phrase("add a `surge_protection` near the inverter")
