"""Fuse in the earthed pole of an array.

What it checks
    The poles in which DC fuses are at inputs with functional earth.

Why
    A fuse that opens the earthed pole takes the earth off the array while the other pole stays live, and nobody sees
    it. Where it is the only one, a fault to earth of the other pole bypasses it, and nothing opens.

How
    Danger: the one fuse is given in the `pole` that is the `functional_earth_pole`. Non-compliance: poles: 2, so that
    one is in the earthed pole beside that in the other.

Remedy
    A fuse in the pole that is not earthed, none in the earthed one. The device that opens the functional earth stands
    between that pole and earth, not in the pole.

Clause
    IEC 62548:2016 6.5 (from memory); NEC 2023 240.22, no overcurrent device in a grounded conductor (from memory).

Not covered
    A fuse in one pole of which the spec does not say which.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import fused_poles_count
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC53", "fuse in the earthed pole of an array", Severity.DANGER, "IEC 62548-1 6.5")
def fuse_in_the_earthed_pole(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse, given in system.given_as(DC_FUSE):
        earth = terminal_of(system, fuse.key).given
        if not earth.functional_earth:
            continue
        if fused_poles_count(system, fuse) == 2:
            yield Breach(
                phrase("{fuse} is in both poles of an array of which one is earthed", fuse=named(fuse)),
                phrase("leave `poles` out: a fuse in the pole that is not earthed"),
                (*fuse.at, "poles"),
                fuse.key,
                severity=Severity.NON_COMPLIANCE,
            )
        elif given.pole is not None and given.pole == earth.functional_earth_pole:
            yield Breach(
                phrase("{fuse} is in the earthed pole alone, and the other has none", fuse=named(fuse)),
                phrase("put the fuse into the pole that is not earthed"),
                (*fuse.at, "pole"),
                fuse.key,
            )
