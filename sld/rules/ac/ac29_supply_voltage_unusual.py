"""Supply voltage unusual for its phases.

What it checks
    The nominal voltage of the supply against those that systems of one or three phases are built for.

Why
    400 V given for one phase, or 230 V for three, makes every current wrong by √3.

How
    More than 10 % from 120 V, 230 V or 277 V to neutral with one phase; from 208 V, 400 V, 480 V, 600 V, 690 V or
    1000 V between lines with three, 230 V and 240 V too where no neutral is distributed; from 240 V between the lines
    of a split phase. Behind a transformer of the site what its secondary side and the inverters name is no slip (800 V
    of field arrays).

Remedy
    The voltage between lines with three phases, to neutral with one.

Clause
    IEC 60038:2009 Table 1.

Not covered
    Four wires of 240 V with a neutral in the middle of two lines.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.compare import above
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, amount, phrase, sequence

_NOMINAL_V = {1: (120.0, 230.0, 277.0), 3: (208.0, 400.0, 480.0, 600.0, 690.0, 1000.0)}
_THREE_WIRE_V = (230.0, 240.0)
_APART_SHARE = 0.1


@rule("AC29", "supply voltage unusual for its phases", Severity.NON_COMPLIANCE, "IEC 60038:2009 Table 1")
def supply_voltage_unusual(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    voltage_v, phases = system.supply.voltage_v, system.supply.phases
    if voltage_v is None:
        return
    if _own_voltage(system, voltage_v):
        return
    nominal = (240.0,) if system.supply.split_phase else _NOMINAL_V[phases]
    if phases == 3 and not system.supply.has_neutral:
        nominal = (*_THREE_WIRE_V, *nominal)
    if all(above(abs(voltage_v - each), each * _APART_SHARE) for each in nominal):
        usual = sequence(amount(each, digits=4) for each in nominal)
        yield Breach(
            _unusual(system, voltage_v, usual),
            phrase("check `voltage` and `phases`"),
            ("supply", "voltage"),
            system.root,
            ((("supply", "phases"), phrase("phases of the supply")),),
        )


def _own_voltage(system: System, voltage_v: float) -> bool:
    """Return whether inverters are built for the voltage of a transformer that serves them alone."""
    transformer = system.supply.transformer
    if transformer is None or transformer.secondary_voltage_v is None:
        return False
    rated_v = {unit.type.rated_voltage_v for unit in system.of(InverterUnit)}
    return rated_v == {voltage_v} and not above(
        abs(transformer.secondary_voltage_v - voltage_v), voltage_v * _APART_SHARE
    )


def _unusual(system: System, voltage_v: float, usual: Sayable) -> Phrase:
    said: dict[str, Sayable] = {
        "device": named(system.devices[system.root]),
        "voltage": amount(voltage_v, "V", digits=4),
        "usual": usual,
    }
    if system.supply.split_phase:
        return phrase("{device} has {voltage} between lines with split phase; nominal voltages are {usual} V", **said)
    if system.supply.phases == 1:
        return phrase("{device} has {voltage} to neutral with one phase; nominal voltages are {usual} V", **said)
    return phrase("{device} has {voltage} between lines with three phases; nominal voltages are {usual} V", **said)
