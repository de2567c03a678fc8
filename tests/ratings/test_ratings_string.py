"""String voltages and module counts on the limits and a hair beyond; worked examples are in tests/examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sld.ratings.string import (
    modules_count_max,
    modules_count_min,
    rated_power,
    umpp_max,
    umpp_min,
    uoc_hot,
    uoc_max_by_coefficient,
    uoc_max_by_default,
    uoc_max_by_table,
)
from sld.tables.profiles import profile
from sld.tables.table import NoRow

SOLFACIL = "https://blog.solfacil.com.br/energia-solar/como-calcular-numero-maximo-modulos-por-inversor/"
ETC = "https://www.etc-energy.com.br/post/o-frio-pode-danificar-seu-inversor-descubra-se-seu-sistema-está-em-risco"
HOMEWORK = "https://fdocuments.net/document/topicos-selectos-sfv-tarea-1.html"


@pytest.mark.parametrize(
    ("modules", "uoc", "beta", "t_min", "published", "tolerance", "source"),
    [
        (20, 49.83, -0.22, 0, 1051.4, 0.05, f"{ETC}: set-up published, product own calculation"),
        (14, 33.8, -0.28, 25, 473.2, 1e-9, "definition: no change at the 25 °C of STC"),
    ],
)
def test_uoc_max_by_coefficient(
    modules: int, uoc: float, beta: float, t_min: float, published: float, tolerance: float, source: str
) -> None:
    rating = uoc_max_by_coefficient(modules, uoc, beta, t_min)
    assert rating.value == pytest.approx(published, abs=tolerance), source


@pytest.mark.parametrize("voltage", [uoc_max_by_coefficient, umpp_min, umpp_max, uoc_hot])
def test_a_rising_voltage_coefficient_is_refused(voltage) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match="must not be above 0"):
        voltage(1, 40.0, 0.28, -5.0)


@pytest.mark.parametrize(
    ("t_min", "factor"),
    [
        # NEC Table 690.7(A): rows and their ends; between two bins the colder one holds
        (30, 1.00),
        (25, 1.00),
        (24.9, 1.02),
        (20, 1.02),
        (19.5, 1.04),
        (0, 1.10),
        (-0.1, 1.12),
        (-5, 1.12),
        (-5.4, 1.14),
        (-6, 1.14),
        (-10, 1.14),
        (-36, 1.25),
        (-40, 1.25),
    ],
)
def test_uoc_max_by_table(t_min: float, factor: float) -> None:
    assert uoc_max_by_table(10, 40.0, t_min).value == pytest.approx(400 * factor)


def test_the_table_ends_at_minus_40() -> None:
    with pytest.raises(NoRow, match="open-circuit voltage factor"):
        uoc_max_by_table(10, 40.0, -40.1)


def test_uoc_max_by_a_default_factor() -> None:
    cautious = profile("cautious")
    # IEC 60364-7-712:2017 Annex B (from memory)
    assert uoc_max_by_default(10, 40.0, cautious).value == pytest.approx(480)
    assert uoc_max_by_default(10, 40.0, cautious).assumptions
    with pytest.raises(NoRow, match="no default factor"):
        uoc_max_by_default(10, 40.0, profile("NEC 690"))


@pytest.mark.parametrize(
    ("uoc", "beta", "t_min", "limit", "count", "source"),
    [
        (46.1, -0.29, 0, 600, 12, f"{SOLFACIL}: 600/49.44 = 12.1"),
        (50.0, -0.3, 25, 1000, 20, "exactly at the limit"),
        (50.00001, -0.3, 25, 1000, 19, "a hair above the limit"),
        (115.2, -0.3, 25, 230, 1, "tolerance 0: 2 modules would reach 230.4 V"),
        (50.0, -0.3, 25, 49.9, 0, "not even one module"),
    ],
)
def test_modules_count_max(uoc: float, beta: float, t_min: float, limit: float, count: int, source: str) -> None:
    assert modules_count_max(uoc_max_by_coefficient(1, uoc, beta, t_min), limit).value == count, source


@pytest.mark.parametrize(
    ("umpp", "limit", "drop", "count", "source"),
    [
        (40.0, 200, 0, 5, "exactly at the limit"),
        (40.0, 200.001, 0, 6, "a hair above the limit"),
        (40.0, 198, 1, 5, "exactly at the limit after 1 % drop"),
        (40.0, 198.001, 1, 6, "a hair above the limit after 1 % drop"),
        (40.0, 200, 1, 6, "1 % drop takes the fifth module's margin"),
        (30.30, 200, 0, 7, "window 200 to 400 V of HOMEWORK, own calculation 200/30.3 = 6.6"),
    ],
)
def test_modules_count_min(umpp: float, limit: float, drop: float, count: int, source: str) -> None:
    assert modules_count_min(umpp_min(1, umpp, -0.4, 25), limit, drop_percent=drop).value == count, source


@given(st.floats(5, 120), st.floats(60, 1500))
def test_the_largest_count_agrees_with_the_comparison_of_string_and_limit(uoc: float, limit: float) -> None:
    count = int(modules_count_max(uoc_max_by_coefficient(1, uoc, -0.3, -10), limit).value)
    assert count == 0 or uoc_max_by_coefficient(count, uoc, -0.3, -10).value <= limit
    assert uoc_max_by_coefficient(count + 1, uoc, -0.3, -10).value >= limit


@given(st.floats(5, 120), st.floats(60, 1500))
def test_the_smallest_count_agrees_with_the_comparison(umpp: float, limit: float) -> None:
    count = int(modules_count_min(umpp_min(1, umpp, -0.4, 70), limit).value)
    assert umpp_min(count, umpp, -0.4, 70).value >= limit
    assert umpp_min(count - 1, umpp, -0.4, 70).value <= limit


def test_a_voltage_that_does_not_change_is_allowed() -> None:
    assert uoc_max_by_coefficient(1, 40.0, 0.0, -10).value == 40


def test_uoc_hot_and_rated_power() -> None:
    # definition: 10·40·(1 - 0.3 %·45) and 10·400, own calculation
    assert uoc_hot(10, 40.0, -0.3, 70).value == pytest.approx(346)
    assert rated_power(10, 400).value == 4000
