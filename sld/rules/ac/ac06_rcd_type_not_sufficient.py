"""Type of an RCD not sufficient.

What it checks
    The type of each RCD or RCBO ahead of an inverter or the converter of a battery against the type that all
    converters and charging points behind it need.

Why
    Smooth direct residual current saturates an RCD of type A; it then trips at no fault at all. The currents of
    several converters add in it.

How
    Type B is needed, unless each converter separates DC from AC or its maker declares a direct residual current: type A
    up to 6 mA in sum, type F up to 10 mA. A charging point counts with what is declared, else with 6 mA.
    An RCD at the origin, also a time-delayed one of the network operator, carries the same current and is asked too.

Remedy
    An RCD of the type that is needed, an RCD for each, or the maker's declaration.

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
from sld.ratings.symbol import Symbol, Word
from sld.rules.naming import named
from sld.rules.ways import feeds_back
from sld.steps.ledger import Ratings
from sld.words import Value, phrase

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
        if not feeds_back(system, device):  # a charging point: AC30
            continue
        where = ("types", "inverters", units[0].type_name, "dc_residual_current") if units else None
        also = ((where, phrase("what the maker declares")),) if where else ()
        together = ratings.get(device.key, Symbol.IDC)
        said: dict[str, Value] = {"device": named(device), "given": given, "needed": needed}
        yield Breach(
            phrase("{device} is of type {given}, and the converters behind it need type {needed}", **said)
            if together is None
            else phrase(
                "{device} is of type {given}, and the converters behind it need type {needed}: {together} of smooth "
                "direct current together",
                together=together,
                **said,
            ),
            phrase(
                "use type {needed}, or an RCD for each, or give the `dc_residual_current` that the makers declare",
                needed=needed,
            ),
            (*device.at, "sensitivity"),
            device.key,
            also,
            (together,) if together else (),
        )
