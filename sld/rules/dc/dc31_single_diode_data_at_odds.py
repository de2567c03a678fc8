"""Single-diode data at odds with the data sheet.

What it checks
    The voltage of a string by the single-diode data of its module type against that by the data sheet, at 25 °C and at
    the lowest temperature.

Why
    A coefficient in the wrong unit or a lost digit hides the highest voltage. Two sources seldom have the same slip.

How
    Uoc,model at 25 °C more than 5 % off N · Uoc, or Uoc,model when cold more than 5 % off Uoc,max by the coefficient.

Remedy
    The two sets of values compared with the data sheet: unit, sign and digits.

Clause
    Common practice. The two differ by at most 2 to 3 % in a database of 20 946 modules of crystalline silicon.

Not covered
    Which of the two is right. Where there is a coefficient, it alone gives the design value.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, SpecPath, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase

_GAP_PERCENT = 5.0


@rule("DC31", "single-diode data at odds with the data sheet", Severity.NON_COMPLIANCE, "common practice", once=True)
def single_diode_data_at_odds(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for group in system.of(StringGroup):
        if group.type_name in told:
            continue
        stc_v = group.given.modules_in_series * group.type.open_circuit_voltage_v
        cold = ratings[group.key, Symbol.UOC_MAX]
        pairs = (
            (ratings.get(group.key, Symbol.UOC_MODEL_STC), stc_v, phrase("at 25 °C"), "open_circuit_voltage"),
            (
                ratings.get(group.key, Symbol.UOC_MODEL),
                cold.value,
                phrase("when cold"),
                "voltage_coefficient",
            ),
        )
        for modelled, stated_v, when, key in pairs:
            by_coefficient = group.type.voltage_coefficient is not None or key == "open_circuit_voltage"
            if modelled is None or not by_coefficient or not above(_gap_percent(modelled, stated_v), _GAP_PERCENT):
                continue
            told.add(group.type_name)
            reaches, stated = two(modelled.value, stated_v, "V")
            at: SpecPath = ("types", "modules", group.type_name, key)
            yield Breach(
                phrase(
                    "{group} reaches {reaches} {when} by its single-diode data and {stated} by its data sheet, "
                    "more than {gap} apart",
                    group=named(group),
                    reaches=reaches,
                    when=when,
                    stated=stated,
                    gap=amount(_GAP_PERCENT, "%"),
                ),
                phrase("compare unit, sign and digits of both with the data sheet"),
                at,
                group.key,
                ((("types", "modules", group.type_name, "single_diode"), phrase("single-diode data")),),
                (modelled,),
            )
            break


def _gap_percent(modelled: Rating, stated_v: float) -> float:
    """Return how far the two are apart, in percent of the voltage of the data sheet."""
    return 100 * abs(modelled.value / stated_v - 1) if stated_v > 0 else 0.0
