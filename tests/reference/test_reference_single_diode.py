"""Every parameter of the single-diode model against pvlib, for six modules of its list of the Energy Commission."""

from __future__ import annotations

import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: pip install -e '.[test]'")

from pvlib import pvsystem

from sld.ratings.single_diode import SingleDiodeData, open_circuit_voltage_v, translated, uoc_by_single_diode

ROWS = (7955, 6235, 10455, 17149, 10650, 4690)
"""Five crystalline modules of 36 to 96 cells and one of cadmium telluride."""


@pytest.fixture(scope="module")
def listed():
    return pvsystem.retrieve_sam("CECMod").T


def _data(module) -> tuple[SingleDiodeData, float]:
    """Return the parameters of a row and its coefficient of current in A/K, with the adjustment of the list."""
    data = SingleDiodeData(*(float(module[key]) for key in ("I_L_ref", "I_o_ref", "R_s", "R_sh_ref", "a_ref")))
    return data, float(module["alpha_sc"]) * (1 - float(module["Adjust"]) / 100)


@pytest.mark.parametrize("row", ROWS)
def test_the_cold_voltage_is_that_of_another_implementation(listed, row: int) -> None:
    module = listed.iloc[row]
    data, alpha = _data(module)
    keys = ("alpha_sc", "a_ref", "I_L_ref", "I_o_ref", "R_sh_ref", "R_s", "Adjust")
    theirs = pvsystem.singlediode(*pvsystem.calcparams_cec(1000, -10, *(float(module[key]) for key in keys)))
    assert uoc_by_single_diode(1, data, alpha, -10).value == pytest.approx(float(theirs["v_oc"]), rel=1e-8)
    assert uoc_by_single_diode(18, data, alpha, -10).value == pytest.approx(18 * float(theirs["v_oc"]), rel=1e-8)


@pytest.mark.parametrize("t_cell_c", [-40, -10, 25, 70])
@pytest.mark.parametrize("irradiance", [200, 1000, 1200])
@pytest.mark.parametrize("row", ROWS)
def test_every_parameter(listed, row: int, irradiance: float, t_cell_c: float) -> None:
    data, alpha = _data(listed.iloc[row])
    theirs = pvsystem.calcparams_desoto(
        irradiance,
        t_cell_c,
        alpha,
        data.modified_ideality_v,
        data.photocurrent_a,
        data.saturation_current_a,
        data.shunt_resistance_ohm,
        data.series_resistance_ohm,
    )
    ours = translated(data, t_cell_c, alpha, irradiance)
    mine = (
        ours.photocurrent_a,
        ours.saturation_current_a,
        ours.series_resistance_ohm,
        ours.shunt_resistance_ohm,
        ours.modified_ideality_v,
    )
    assert mine == pytest.approx(tuple(float(each) for each in theirs), rel=1e-6)
    assert open_circuit_voltage_v(ours) == pytest.approx(float(pvsystem.singlediode(*theirs)["v_oc"]), rel=1e-7)
