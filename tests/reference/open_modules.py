"""Our string voltages for every module of two open data sets, beside what pvlib's models say of the same modules.

pvlib (https://pvlib-python.readthedocs.io, BSD licence) ships the module list of the California Energy Commission
(`CECMod`) with coefficients and single-diode parameters, and Sandia's measured modules (`SandiaMod`).
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pandas as pd
from pvlib import pvsystem

from sld.ratings.module import coefficient_percent_per_k, umpp_coefficient
from sld.ratings.string import umpp_min, uoc_max_by_coefficient, uoc_max_by_table
from sld.ratings.symbol import Symbol

COLD_C, STC_C, HOT_C = -10.0, 25.0, 70.0
KELVIN = 273.15
PERCENTILES = (1, 5, 50, 95, 99)
NUMBERS = [
    "V_oc_ref", "V_mp_ref", "I_sc_ref", "beta_oc", "alpha_sc", "gamma_r",
    "a_ref", "I_L_ref", "I_o_ref", "R_sh_ref", "R_s", "Adjust",
]  # fmt: skip


def _single_diode(modules: pd.DataFrame, t_cell_c: float) -> Any:
    """Return pvlib's solution of the single-diode equation at 1000 W/m² and a cell temperature in °C."""
    parameters = pvsystem.calcparams_cec(
        1000.0, t_cell_c, modules.alpha_sc, modules.a_ref, modules.I_L_ref, modules.I_o_ref,
        modules.R_sh_ref, modules.R_s, modules.Adjust,
    )  # fmt: skip
    return pvsystem.singlediode(*parameters)


def _percent_above(ours: pd.Series, theirs: Any) -> pd.Series:
    return 100 * (ours / np.asarray(theirs) - 1)


def curvature_percent(modules: pd.DataFrame) -> pd.Series:
    """Return how far Uoc(T) of a diode bends below its tangent at 25 °C by -10 °C, in percent of Uoc.

    From the diode equation with a resistive shunt left out: Uoc = a(T)·ln(IL/I0), a in proportion to T,
    I0 in proportion to T³·exp(-Eg/kT) with Eg straight over T, IL straight over T. Only -3·T·ln T and T·ln IL bend.
    (De Soto, Klein, Beckman: Solar Energy 80 (2006) 78-88, equations 5 to 10.)
    """
    reference, cold = STC_C + KELVIN, COLD_C + KELVIN
    step = cold - reference
    light = modules.alpha_sc * (1 - modules.Adjust / 100) / modules.I_L_ref
    bend = 3 * (cold * np.log(cold / reference) - step) - (cold * np.log(1 + light * step) - reference * light * step)
    return 100 * modules.a_ref / modules.V_oc_ref / reference * bend


@cache
def listed() -> pd.DataFrame:
    """Return one row a module of the CEC list; every difference is ours over pvlib's, in percent.

    crystalline; adjust (%) and beta (%/K) of the list; uoc_linear, uoc_table at -10 °C; uoc_adjusted: with β replaced
    by β·(1 + Adjust/100), as the list's own fit does; curvature; umpp, umpp_by_beta at 70 °C; table_over_linear: our
    two methods.
    """
    listing = pvsystem.retrieve_sam("CECMod").T
    modules = listing[NUMBERS].apply(pd.to_numeric)
    cold, hot = (_single_diode(modules, t_cell_c) for t_cell_c in (COLD_C, HOT_C))
    ours = pd.DataFrame(
        [_ours(*row) for row in modules[[*NUMBERS[:6], "Adjust"]].itertuples(index=False)],
        columns=["linear", "table", "adjusted", "umpp", "umpp_by_beta"],
        index=modules.index,
    )
    return pd.DataFrame(
        {
            "crystalline": listing.Technology.isin(["Mono-c-Si", "Multi-c-Si"]),
            "adjust": modules.Adjust,
            "beta": 100 * modules.beta_oc / modules.V_oc_ref,
            "uoc_linear": _percent_above(ours.linear, cold["v_oc"]),
            "uoc_table": _percent_above(ours.table, cold["v_oc"]),
            "uoc_adjusted": _percent_above(ours.adjusted, cold["v_oc"]),
            "curvature": curvature_percent(modules),
            "umpp": _percent_above(ours.umpp, hot["v_mp"]),
            "umpp_by_beta": _percent_above(ours.umpp_by_beta, hot["v_mp"]),
            "table_over_linear": _percent_above(ours.table, ours.linear),
        }
    )


def _ours(
    uoc_v: float, umpp_v: float, isc_a: float, beta_v_per_k: float, alpha_a_per_k: float, gamma: float, adjust: float
) -> tuple[float, ...]:
    """Return our voltages for one module. The list gives β in V/K, α in A/K and γ in %/K."""
    beta = coefficient_percent_per_k(beta_v_per_k, uoc_v).value
    alpha = coefficient_percent_per_k(alpha_a_per_k, isc_a, Symbol.ALPHA, "A").value
    kappa = umpp_coefficient(gamma, alpha).value
    return (
        uoc_max_by_coefficient(1, uoc_v, beta, COLD_C).value,
        uoc_max_by_table(1, uoc_v, COLD_C).value,
        uoc_max_by_coefficient(1, uoc_v, beta * (1 + adjust / 100), COLD_C).value,
        umpp_min(1, umpp_v, kappa, HOT_C).value,
        umpp_min(1, umpp_v, beta, HOT_C).value,
    )


@cache
def measured() -> pd.DataFrame:
    """Return one row a crystalline module of Sandia's measurements, differences at 70 °C in percent.

    umpp: our voltage over the measured one (Vmpo + Bvmpo·45 K); beta: the same with the coefficient of Uoc;
    below: the coefficient of Isc less that of Impp over 45 K, in percent, by which γ - α reads low.
    The set states no γ; it is formed as the sum of the measured coefficients of Umpp and Impp.
    """
    listing = pvsystem.retrieve_sam("SandiaMod").T
    columns = ["Voco", "Vmpo", "Aisc", "Aimp", "Bvoco", "Bvmpo"]
    modules = listing[listing.Material.isin(["c-Si", "mc-Si"])][columns].apply(pd.to_numeric)
    warmer_k = HOT_C - STC_C
    hot_v = modules.Vmpo + modules.Bvmpo * warmer_k
    gamma = 100 * (modules.Bvmpo / modules.Vmpo + modules.Aimp)
    rows = zip(modules.Vmpo, gamma, 100 * modules.Aisc, modules.Voco, modules.Bvoco, strict=True)
    ours = [
        (
            umpp_min(1, umpp_v, umpp_coefficient(gamma_, alpha).value, HOT_C).value,
            umpp_min(1, umpp_v, coefficient_percent_per_k(beta_v_per_k, uoc_v).value, HOT_C).value,
        )
        for umpp_v, gamma_, alpha, uoc_v, beta_v_per_k in rows
    ]
    found = pd.DataFrame(ours, columns=["umpp", "beta"], index=modules.index)
    return pd.DataFrame(
        {
            "umpp": _percent_above(found.umpp, hot_v),
            "beta": _percent_above(found.beta, hot_v),
            "below": 100 * (modules.Aisc - modules.Aimp) * warmer_k,
        }
    )


def distribution(differences: pd.Series) -> dict[str, float]:
    """Return mean and percentiles of differences in percent."""
    values = np.asarray(differences, dtype=float)
    return {"mean": float(values.mean())} | {
        f"{percent} %": float(np.percentile(values, percent)) for percent in PERCENTILES
    }
