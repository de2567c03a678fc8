"""Value unusual.

What it checks
    Every quantity of the spec against the usual range of its key, and a few values against one another: the fill
    factor of a module, the limits of an input and of the MPP range, the AC current and voltage of an inverter against
    its power and the supply, the array against the inverter, breaking capacities against the kind of device.

Why
    A slip of one digit, prefix or sign can turn a danger into silence, because all that is computed from it is wrong
    as well.

How
    A value outside of its range makes the spec unusable, and the message asks for the likely slip. Where the spec
    accepts the value in writing (code SP41, at the very key), it is used as it stands and printed among the accepted
    deviations.

Remedy
    Correct the value. If it is meant, say why under `accept`.

Clause
    Common practice, no source: the ranges stand on the page of the spec language. Those of the coefficients of modules
    and of the fill factor leave out 5 of 21 535 modules of an open list.

Not covered
    Slips within the range, keys without one, texts.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.spec.doubts import CODE
from sld.steps.ledger import Ratings
from sld.words import phrase

__all__ = ["value_unusual"]


@rule(CODE, "value unusual", Severity.DANGER, "common practice, no source")
def value_unusual(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each unusual value; where a spec file is read, only accepted ones come so far."""
    for each in system.unusual:
        yield Breach(each.said, phrase("compare it with the data sheet"), each.at)
