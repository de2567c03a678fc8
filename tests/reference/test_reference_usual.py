"""The usual ranges of module data against every module of an open list: none that is sold is asked about.

The list is that of the California Energy Commission as pvlib ships it (file of 2019-03-05, 21 535 modules), the same
that the voltages are compared with.
"""

from __future__ import annotations

from functools import cache

import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: pip install -e '.[test]'")

import pandas as pd
from pvlib import pvsystem

from sld.spec.blocks.block import usual_of
from sld.spec.blocks.module import _FILL_FACTOR, ModuleType


@cache
def modules() -> pd.DataFrame:
    """Return one row a module, its values by key of the spec, coefficients in %/K, and the fill factor."""
    listing = pvsystem.retrieve_sam("CECMod").T
    columns = ["STC", "V_oc_ref", "I_sc_ref", "V_mp_ref", "I_mp_ref", "beta_oc", "alpha_sc", "gamma_r", "T_NOCT"]
    found = listing[columns].apply(pd.to_numeric)
    return pd.DataFrame(
        {
            "crystalline": listing.Technology.isin(["Mono-c-Si", "Multi-c-Si"]),
            "rated_power": found.STC,
            "open_circuit_voltage": found.V_oc_ref,
            "short_circuit_current": found.I_sc_ref,
            "mpp_voltage": found.V_mp_ref,
            "mpp_current": found.I_mp_ref,
            "voltage_coefficient": 100 * found.beta_oc / found.V_oc_ref,
            "current_coefficient": 100 * found.alpha_sc / found.I_sc_ref,
            "power_coefficient": found.gamma_r,
            "nominal_cell_temperature": found.T_NOCT,
            "fill_factor": found.V_mp_ref * found.I_mp_ref / (found.V_oc_ref * found.I_sc_ref),
        }
    )


def unusual(key: str) -> pd.DataFrame:
    """Return the modules whose value of a key is outside of its range."""
    _, usual, unit = usual_of(ModuleType)[key]
    found = modules()
    return found[[not usual.holds(value, unit) for value in found[key]]]


def test_the_whole_list_is_looked_at() -> None:
    assert len(modules()) > 21_000
    assert modules().crystalline.sum() > 20_000


@pytest.mark.parametrize(
    ("key", "most"),
    [
        ("rated_power", 0),
        ("open_circuit_voltage", 0),
        ("short_circuit_current", 0),
        ("mpp_voltage", 0),
        ("mpp_current", 0),
        ("voltage_coefficient", 5),  # one entry of the list under five names, -0.853 %/K; the next is -0.587 %/K
        ("current_coefficient", 191),  # 0.9 %: 105 far below 0, where no crystalline cell is, 90 above 0.15 %/K
        ("power_coefficient", 0),
        ("nominal_cell_temperature", 0),
    ],
)
def test_modules_of_the_list_are_usual(key: str, most: int) -> None:
    assert len(unusual(key)) <= most


def test_the_voltage_coefficients_that_are_asked_about_share_one_slip_of_the_list() -> None:
    found = unusual("voltage_coefficient")
    assert found.voltage_coefficient.round(3).unique().tolist() == [-0.853]
    assert len({name.split("TBEA")[0] for name in found.index}) == 1


def test_the_range_of_the_voltage_coefficient_is_not_much_wider_than_the_list() -> None:
    """A range that refuses nothing finds nothing: a tenth and double of the median are outside, and so is mV as V."""
    usual = usual_of(ModuleType)["voltage_coefficient"].usual
    median = modules().voltage_coefficient.median()
    assert not any(usual.holds(median * factor, "%/K") for factor in (0.001, 0.01, 0.1, 2, 10, 1000, -1))


def test_a_wrong_sign_and_a_digit_of_the_current_coefficient_are_asked_about() -> None:
    usual = usual_of(ModuleType)["current_coefficient"].usual
    found = modules().current_coefficient
    assert not any(usual.holds(found.median() * factor, "%/K") for factor in (-1, 10))
    assert all(usual.holds(found.quantile(share), "%/K") for share in (0.01, 0.5, 0.99))


def test_fill_factors_of_the_list_are_usual() -> None:
    low, high = _FILL_FACTOR
    assert modules().fill_factor.between(low, high).all()
    assert modules().fill_factor.min() > 0.51
    assert modules().fill_factor.max() < 0.83
