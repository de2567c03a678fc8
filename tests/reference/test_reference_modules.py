"""String voltages by coefficients against the single-diode model and measured modules that pvlib ships.

What this proves and what not: the list's single-diode parameters were fitted with the maker's β made larger or smaller
by the percentage in its column `Adjust`, so that the model also meets γ. Uoc by model and by coefficient differ by that
change of β, which says nothing about either. What is left after it is the bend of Uoc(T), and that is judged. The
voltage at the hot maximum power point is judged against Sandia's measured coefficients, which no fit has touched.
"""

from __future__ import annotations

import numpy as np
import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: pip install -e '.[test]'")

from open_modules import distribution, listed, measured

COLD_STEP_K, HOT_STEP_K = 35, 45


@pytest.fixture(scope="module")
def crystalline():
    modules = listed()
    return modules[modules.crystalline]


def test_the_whole_list_is_compared(crystalline) -> None:
    assert len(listed()) > 21_000  # 21 535 rows in the file of 2019-03-05
    assert len(crystalline) > 20_000
    assert np.isfinite(listed().drop(columns="crystalline").to_numpy(dtype=float)).all()


def test_every_difference_in_cold_uoc_is_the_adjusted_coefficient_and_the_bend(crystalline) -> None:
    """With the list's own β·(1 + Adjust/100) only the bend of the diode equation is left, in every single module.

    The formula of the bend leaves the shunt out. A shunt takes up to some 5 % of the current; from 25 to -10 °C Uoc,
    and so that share, rises by 12 %; a·ln(1 - share) then moves by 0.05·0.05·0.12 of Uoc, 0.03 %. Bound: 0.05 %.
    """
    left = crystalline.uoc_adjusted - crystalline.curvature
    assert left.abs().max() < 0.05
    assert (crystalline.uoc_adjusted > 0).all()  # straight lies above bent: the coefficient errs to the high side
    assert crystalline.uoc_adjusted.max() < 0.15


def test_outliers_in_cold_uoc_come_from_the_coefficients_of_the_list(crystalline) -> None:
    """The difference goes with Adjust, and where ours is more than 5 % higher the listed β cannot be that of silicon.

    A cell loses (Eg/q + 3kT/q - Uoc)/T a kelvin: (1.12 + 0.08 - 0.55 V)/298 K is 2.2 mV, 0.40 %/K of 0.55 V, the
    lowest Uoc of a crystalline cell on the market. Listed are -0.59 and -0.85 %/K; the fit takes a quarter
    to a half off.
    """
    assert np.corrcoef(crystalline.uoc_linear, crystalline.adjust)[0, 1] < -0.95
    higher = crystalline[crystalline.uoc_linear > 5]
    assert 0 < len(higher) < 0.01 * len(crystalline)
    assert (higher.beta < -0.5).all()
    assert (higher.adjust < -25).all()
    lower = crystalline[crystalline.uoc_linear < -5]  # what the model adds to β, it adds to meet γ
    assert (lower.adjust > 30).all()


def test_distribution_of_the_difference_in_cold_uoc(crystalline) -> None:
    """A β that is right within 10 % moves Uoc by 35 K · 0.33 %/K · 10 % = 1.2 %, one within 30 % by 3.5 %.

    A coefficient read in the wrong unit (V/K for %/K) or sign is out by a factor of two and more: 10 % and more.
    """
    found = distribution(crystalline.uoc_linear)
    assert abs(found["mean"]) < 1.2
    assert abs(found["50 %"]) < 1.2
    assert -3.5 < found["1 %"] < found["99 %"] < 3.5


def test_the_factor_table_is_not_always_the_higher_voltage(crystalline) -> None:
    """1.14 at -10 °C is a coefficient of -0.40 %/K (14 % over 35 K): some modules have more, most have less."""
    share_below = (crystalline.table_over_linear < -1e-6).mean()
    assert 0 < share_below < 0.10
    assert crystalline.table_over_linear.max() < 100 * (1.14 / (1 + 0.0020 * COLD_STEP_K) - 1)  # none below 0.20 %/K


def test_hot_umpp_against_the_model_errs_to_the_low_side(crystalline) -> None:
    """γ - α takes the coefficient of Isc, 0.03 to 0.07 %/K, for that of Impp, near 0: 1.4 to 3.2 % low at 70 °C.

    Leaving out the product α·(α - γ)·ΔT² of the two straight lines adds 0.3 to 0.8 %. So the mean lies between -4 and
    -1.4 %. The list's model was fitted to γ: this shows consistency, the next test what was measured.
    """
    found = distribution(crystalline.umpp)
    assert -4.0 < found["mean"] < -1.4
    assert found["99 %"] < 0
    assert (crystalline.umpp > 0).mean() < 0.01


def test_hot_umpp_against_measured_modules_is_never_too_high() -> None:
    """Isc rises more with temperature than Impp in every measured module; by that difference ours is below.

    In percent of the hot voltage: the difference over 45 K divided by 1 + κ·45 K, κ from -0.3 to -0.65 %/K.
    """
    modules = measured()
    assert len(modules) > 350
    assert (modules.below > 0).all()
    assert (modules.umpp < 0).all()
    least, most = 1 - 0.0065 * HOT_STEP_K, 1 - 0.0030 * HOT_STEP_K
    assert (-modules.umpp >= modules.below / most).all()
    assert (-modules.umpp <= modules.below / least).all()


def test_the_coefficient_of_uoc_reads_hot_umpp_too_high(crystalline) -> None:
    """Why `umpp_coefficient` never takes it: too high in all measured modules, by several percent."""
    assert (measured().beta > 0).all()
    assert (crystalline.umpp_by_beta > 0).mean() > 0.99
    assert distribution(measured().beta)["mean"] > 4
    assert distribution(crystalline.umpp_by_beta)["mean"] > 4
