"""Charging point without its residual current protection.

What it checks
    Whether each charging point for electric vehicles has an RCD of at most 30 mA on its way, and of which type.

Why
    The vehicle stands outdoors and is touched; its charger can send smooth direct current back, which makes an RCD of
    type A or AC blind.

How
    Non-compliance without an RCD or RCBO of at most 30 mA, with type AC, and with type A or F where more than 6 mA of
    direct current is declared; advice for types A and F, which need a detection of 6 mA direct current in the charging
    point, where `dc_residual_current` does not say that it has one.

Remedy
    An RCD of 30 mA, type B; or type A where the charging point detects 6 mA direct current.

Clause
    IEC 60364-7-722:2018 722.531.3.101 (from memory).

Not covered
    RCDs built into a charging point: the spec has no field for them; accept the finding with the data sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Consumer
from sld.model.system import System
from sld.ratings.rcd import CHARGING_POINT_MA
from sld.ratings.symbol import Word
from sld.rules.compare import above
from sld.rules.naming import named
from sld.rules.ways import residual_devices_ahead
from sld.steps.ledger import Ratings
from sld.words import Value, amount, phrase

_MOST_MA = 30.0


@rule(
    "AC30",
    "charging point without its residual current protection",
    Severity.NON_COMPLIANCE,
    "IEC 60364-7-722:2018 722.531.3 (from memory)",
)
def charging_point_without_residual_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for load in system.of(Consumer):
        if load.given.charging_point:
            yield from _charging_point(system, ratings, load)


def _charging_point(system: System, ratings: Ratings, load: Consumer) -> Iterator[Breach]:
    sensitive = [
        (device, given.sensitivity or ratings.word(device.key, Word.RCD_TYPE))
        for device, given in residual_devices_ahead(system, ratings, load, _MOST_MA)
    ]
    if not sensitive:
        yield Breach(
            phrase("{load} has no RCD of at most {most} on its way", load=named(load), most=amount(_MOST_MA, "mA")),
            phrase("begin its `circuit` with an `rcd` of {most}, type B", most=amount(_MOST_MA, "mA")),
            (*load.at, "circuit"),
            load.key,
        )
        return
    device, letter = sensitive[0]
    declared_ma = load.given.dc_residual_current_ma
    beyond = declared_ma is not None and above(declared_ma, CHARGING_POINT_MA)
    weak = letter == "AC" or beyond
    if any(letter == "B" for _, letter in sensitive) or (declared_ma is not None and not weak):
        return
    where: dict[str, Value] = {"load": named(load), "device": named(device), "letter": letter}
    yield Breach(
        phrase("{load} is behind {device} of type {letter}, which does not see its currents", **where)
        if weak
        else phrase(
            "{load} is behind {device} of type {letter}, which is enough only where it detects 6 mA direct current "
            "itself",
            **where,
        ),
        phrase(
            "use type B, or type A with a detection of 6 mA direct current in the charging point, which "
            "`dc_residual_current: 6 mA` says"
        ),
        (*device.at, "sensitivity"),
        load.key,
        ((load.at, phrase("the charging point")),),
        severity=Severity.NON_COMPLIANCE if weak else Severity.ADVICE,
    )
