"""String voltages and module counts against published worked examples, on the limits and a hair beyond."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sld.ratings.module import coefficient_percent_per_k, hottest_cell_by_mounting
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

POST_69 = "https://amozeshbargh.ir/post-69"
SOLFACIL = "https://blog.solfacil.com.br/energia-solar/como-calcular-numero-maximo-modulos-por-inversor/"
TRAINING = "https://www.scribd.com/document/700873953/Calculating-Module-Voltages-1"
ETC = "https://www.etc-energy.com.br/post/o-frio-pode-danificar-seu-inversor-descubra-se-seu-sistema-está-em-risco"
AQUISAV = "https://studylibfr.com/doc/76714/aquisav---evaluation"
SAARTHI = "http://www.solarsaarthi.com/selection-and-sizing-of-solar-dc-fuses-for-solar-pv-rooftop-projects/4/"
CREDENTIAL = "http://greencredential.com/nabcep-sample-exam-questions/"
HOMEWORK = "https://fdocuments.net/document/topicos-selectos-sfv-tarea-1.html"


@pytest.mark.parametrize(
    ("modules", "uoc", "beta", "t_min", "published", "tolerance", "source"),
    [
        (1, 49.5, -0.28, -5, 53.66, 0.005, POST_69),
        (1, 46.1, -0.29, 0, 49.44, 0.005, SOLFACIL),
        (20, 49.83, -0.22, 0, 1051.4, 0.05, f"{ETC}: set-up published, product own calculation"),
        (1, 45.8, -0.13 / 45.8 * 100, 0, 49.05, 0.005, TRAINING),
        (14, 33.8, -0.28, 25, 473.2, 1e-9, "definition: no change at the 25 °C of STC"),
    ],
)
def test_uoc_max_by_coefficient(
    modules: int, uoc: float, beta: float, t_min: float, published: float, tolerance: float, source: str
) -> None:
    rating = uoc_max_by_coefficient(modules, uoc, beta, t_min)
    assert rating.value == pytest.approx(published, abs=tolerance), source


@pytest.mark.parametrize(
    ("umpp", "volts_per_k", "t_cell", "published"), [(35.4, -0.16, 55, 30.6), (36.4, -0.17, 70, 28.75)]
)
def test_umpp_min_with_a_coefficient_in_volts(umpp: float, volts_per_k: float, t_cell: float, published: float) -> None:
    kappa = coefficient_percent_per_k(volts_per_k, umpp).value
    assert umpp_min(1, umpp, kappa, t_cell).value == pytest.approx(published, abs=0.005), TRAINING


def test_strings_at_stc() -> None:
    # 6 modules of 17.4 V, CREDENTIAL; 9 modules of 30.30 V, HOMEWORK
    assert umpp_min(6, 17.4, -0.4, 25).value == pytest.approx(104.4), CREDENTIAL
    assert umpp_max(9, 30.30, -0.4, 25).value == pytest.approx(272.7), HOMEWORK


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
    # AQUISAV, a school evaluation: 14 modules of 33.8 V and a factor of 1.15 give 544.18 V, within 550 V
    cautious = profile("cautious")
    school = replace(cautious, uoc_default_factor=replace(cautious.uoc_default_factor, text="1.15"))
    assert uoc_max_by_default(14, 33.8, school).value == pytest.approx(544.18, abs=0.005), AQUISAV
    # IEC 60364-7-712:2017 Annex B (from memory)
    assert uoc_max_by_default(10, 40.0, cautious).value == pytest.approx(480)
    assert uoc_max_by_default(10, 40.0, cautious).assumptions
    with pytest.raises(NoRow, match="no default factor"):
        uoc_max_by_default(10, 40.0, profile("NEC 690"))


@pytest.mark.parametrize(
    ("uoc", "beta", "t_min", "limit", "count", "source"),
    [
        (49.5, -0.28, -5, 1000, 18, POST_69),
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


class TestWrongInPrint:
    """Published results that must not come out of the right use of these functions."""

    def test_fuse_voltage_at_stc(self) -> None:
        # SAARTHI prints 827.7 V for 16 modules of 51.7 V at STC; it is 827.2 V, and cold it is 943 V at -10 °C.
        at_stc = uoc_max_by_table(16, 51.7, 25).value
        assert at_stc == pytest.approx(827.2)
        assert at_stc != pytest.approx(827.7, abs=0.1)
        assert uoc_max_by_table(16, 51.7, -10).value == pytest.approx(943.008)

    def test_hot_umpp_with_air_temperature_and_the_coefficient_of_uoc(self) -> None:
        # POST_69 prints 38.9 V for 41.2 V with -0.28 %/K (of Uoc) at 45 °C (air); its arithmetic is right.
        assert umpp_min(1, 41.2, -0.28, 45).value == pytest.approx(38.9, abs=0.05)
        hot = umpp_min(1, 41.2, -0.35, hottest_cell_by_mounting(45, "flush").value).value
        assert hot < 0.92 * 38.9
        assert umpp_min(1, 41.2, -0.35, 70).value == pytest.approx(34.711, abs=0.0005)  # own calculation

    def test_series_count_from_umpp(self) -> None:
        # CREDENTIAL divides 600 V by Umpp = 26.3 V and prints 22. Uoc is at least 1.176 times Umpp in six modules of an
        # open module file, and -10 °C adds 14 %: far fewer modules fit.
        assert modules_count_max(umpp_min(1, 26.3, -0.4, 25), 600).value == 22
        assert modules_count_max(uoc_max_by_table(1, 26.3 * 1.176, -10), 600).value == 17
