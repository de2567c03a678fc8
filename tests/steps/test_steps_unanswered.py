"""Where a table or a standard series has no answer, the rating is left out and the reason kept; nothing is guessed."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, reject, settings
from pydantic import ValidationError
from rated_specs import AC_CABLE, CABLE, SPECS, STRING, named, rated, rated_data

from sld.ratings.symbol import Symbol

UNIT, IN1 = "inverters.roof", "inverters.roof.inputs.0"

UNANSWERED = [
    ({AC_CABLE: {**CABLE, "section": "7 mm2"}}, AC_CABLE, Symbol.IZ),
    ({AC_CABLE: {**CABLE, "section": "7 mm2"}}, AC_CABLE, Symbol.R),
    ({AC_CABLE: {**CABLE, "section": "7 mm2"}}, UNIT, Symbol.IK_MAX),
    ({AC_CABLE: {**CABLE, "section": "7 mm2"}}, f"{UNIT}.circuit.0", Symbol.ZS),
    # IEC 60364-5-52 Table B.52.14 ends at 60 °C for PVC: a hotter place must not read as one without a factor
    ({AC_CABLE: {**CABLE, "section": "10 mm2", "ambient_temperature": "65 °C"}}, AC_CABLE, Symbol.IZ),
    ({AC_CABLE: {**CABLE, "ambient_temperature": "65 °C"}}, AC_CABLE, Symbol.S),
    ({"types.inverters.t.current_max": "2000 A"}, f"{UNIT}.circuit.0", Symbol.IN),
    ({"types.inverters.t.current_max": "2000 A"}, f"{UNIT}.circuit.2", Symbol.IN),
    ({"loads": {"oven": {}}}, "loads.oven.circuit.0", Symbol.IN),
    ({f"{STRING}.modules_in_series": 60}, f"{IN1}.circuit.0", Symbol.UE),
    ({f"{STRING}.count": 60}, f"{IN1}.circuit.0", Symbol.IE),
    ({f"{STRING}.cable": {"length": "20 m", "section": "7 mm2"}}, f"{STRING}.cable", Symbol.IZ),
    ({f"{STRING}.cable": {"length": "20 m", "ambient_temperature": "120 °C"}}, f"{STRING}.cable", Symbol.S),
    ({f"{STRING}.cable": {"length": "5 km"}}, f"{STRING}.cable", Symbol.S),
    ({"types.modules.m.series_fuse_max": "15 A"}, IN1, Symbol.IN_STRING),  # 1.5 · 13.5 A is above 15 A
]


DIODE = {
    "photocurrent": "13.5 A", "saturation_current": "0.1 nA", "series_resistance": 0.2, "shunt_resistance": 500,
    "modified_ideality": "1.44 V",
}  # fmt: skip


def test_single_diode_data_that_give_no_current_in_the_cold_are_passed_over() -> None:
    """0.5 %/K of Isc 13.5 A from 25 to -90 °C takes 7.76 A, and half of Isc is 6.75 A: nothing is left."""
    module = {"types.modules.m.single_diode": {**DIODE, "photocurrent": "6.75 A"}}
    module |= {"types.modules.m.current_coefficient": "0.5 %/K", "site.temperature_min": "-90 °C"}
    ratings = rated(module)
    assert "no current at -90 °C" in str(ratings.unanswered[STRING, Symbol.UOC_MODEL])
    assert ratings.get(STRING, Symbol.UOC_MODEL_STC) is not None
    del module["types.modules.m.single_diode"]
    assert ratings.get(STRING, Symbol.UOC_MAX) == rated(module).get(STRING, Symbol.UOC_MAX)


@pytest.mark.parametrize(("changes", "key", "symbol"), UNANSWERED)
def test_no_answer_is_said_and_no_value_given(changes, key, symbol) -> None:
    ratings = rated(changes)
    assert ratings.unanswered.get((key, symbol))
    assert ratings.get(key, symbol) is None


@given(SPECS)
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
def test_every_valid_spec_is_rated(data) -> None:
    """No shape that the blocks allow ends in a traceback, and nothing is both answered and unanswered.

    Values that contradict each other are refused in words when the spec is read, which is as good an end.
    """
    try:
        system, ratings = rated_data(named(data))
    except ValidationError:
        reject()
    for key, symbol in ratings.unanswered:
        assert ratings.get(key, symbol) is None
    for key, rating in ratings:
        assert rating.value == rating.value, f"{key} {rating.symbol} is not a number"
        assert rating.clause
        assert rating.trace()
    assert set(ratings.values) - set(system.devices) <= {
        "",
        *(conductor.key for conductor in system.earth_conductors),
        *(chain.key for chain in system.chains),
    }


@pytest.mark.parametrize(("changes", "key", "symbol"), UNANSWERED)
def test_the_reason_is_in_plain_words(changes, key, symbol) -> None:
    """No name of a table file or of its columns: they hold an underscore, or say "row"."""
    why = str(rated(changes).unanswered[key, symbol])
    assert "_" not in why.replace("`service_fuse`", "")
    assert " row" not in why
    assert "table " not in why
