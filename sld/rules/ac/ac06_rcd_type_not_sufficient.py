"""Type of an RCD not sufficient.

What it checks
    The type of each RCD or RCBO ahead of an inverter against the type that the inverters behind it need.

Why
    Direct residual current from the array saturates an RCD of type A; it then trips at no fault at all.

How
    Type B is needed, unless the inverter separates DC from AC or its maker declares a small direct residual
    current.

Remedy
    An RCD of the type that is needed, or the maker's declaration in the inverter type.

Clause
    IEC 60364-7-712:2017 712.531.3.5.1; IEC 60364-5-53:2019 531.3.3 (numbers from memory).

Not covered
    The residual current monitor inside the inverter, which does not take the place of an RCD.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_ORDER = ("A", "F", "B")


@rule("AC06", "type of an RCD not sufficient", Severity.DANGER, "IEC 60364-7-712 712.531.3.5.1")
def rcd_type_not_sufficient(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, block in system.given_as(RESIDUAL_PROTECTION):
        given = block.sensitivity
        needed = ratings.word(device.key, Word.RCD_TYPE)
        if given not in _ORDER or needed not in _ORDER or _ORDER.index(given) >= _ORDER.index(needed):
            continue
        units = system.inverters_behind(device.key)
        if not units:  # a charging point: AC30
            continue
        unit = units[0]
        also = ((("types", "inverters", unit.type_name, "dc_residual_current"), phrase("what the maker declares")),)
        yield Breach(
            phrase(
                "{device} is of type {given}, and the inverters behind it need type {needed}",
                device=named(device),
                given=given,
                needed=needed,
            ),
            phrase(
                "use type {needed}, or give the `dc_residual_current` that the inverter's maker declares", needed=needed
            ),
            (*device.at, "sensitivity"),
            device.key,
            also,
        )
