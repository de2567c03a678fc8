"""The single-diode model of a module: its parameters at another cell temperature, and its open-circuit voltage.

I = IL - I0·(exp((U + I·Rs)/a) - 1) - (U + I·Rs)/Rsh. Temperatures and irradiance are translated as De Soto, Klein and
Beckman do (Solar Energy 80, 2006, 78-88). Module databases that adjust the temperature coefficient of the current give
slopes up to 28 % off the maker's coefficient of the voltage, which therefore goes first; the model is for where there
is none, and for a second look.
"""

from __future__ import annotations

from math import exp, expm1, log

from sld.citation import citations, cited, clause_from_memory
from sld.frozen import dataclass
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["SingleDiodeData", "modified_ideality", "open_circuit_voltage_v", "translated", "uoc_by_single_diode"]

_BOLTZMANN_EV_PER_K = 8.617333262e-5
"""CODATA 2018, exact to the digits printed."""

_LARGEST_EXPONENT = 700.0
"""Of e, so that the power is a number that a computer can hold (1e304)."""

_KELVIN = 273.15
_STC_C = 25.0
_STC_W_PER_M2 = 1000.0
_SOURCE = cited("De Soto, Klein, Beckman: Solar Energy 80 (2006) 78-88")


@dataclass(frozen=True, slots=True)
class SingleDiodeData:
    """The five parameters at one temperature and irradiance, and the band gap at 25 °C.

    modified_ideality_v: cells in series times ideality factor times kT/q. band_gap_ev in eV, 1.121 for crystalline
    silicon; band_gap_per_k_factor its relative change in 1/K.
    """

    photocurrent_a: float
    saturation_current_a: float
    series_resistance_ohm: float
    shunt_resistance_ohm: float
    modified_ideality_v: float
    band_gap_ev: float = 1.121
    band_gap_per_k_factor: float = -0.0002677


def modified_ideality(cells_in_series_count: int, ideality_factor: float, t_cell_c: float = _STC_C) -> Rating:
    """Return the modified ideality a in V: Ns·n·kT/q at a cell temperature in °C. Definition of the model."""
    thermal_v = _BOLTZMANN_EV_PER_K * (t_cell_c + _KELVIN)
    given = (Given("Ns", cells_in_series_count), Given("n", ideality_factor), Given("kT/q", thermal_v, "V"))
    return Rating(
        Symbol.IDEALITY, cells_in_series_count * ideality_factor * thermal_v, "V", "Ns·n·kT/q", given, _SOURCE
    )


def translated(
    reference: SingleDiodeData, t_cell_c: float, alpha_a_per_k: float, irradiance_w_per_m2: float = _STC_W_PER_M2
) -> SingleDiodeData:
    """Return the parameters at a cell temperature in °C and an irradiance in W/m².

    alpha_a_per_k: temperature coefficient of the short-circuit current in A/K. a and I0 go with the temperature, I0
    also with the band gap, IL with irradiance and temperature, Rsh with the inverse of the irradiance, Rs stays.
    Raises ValueError for an irradiance that is not above 0, and for a band gap that leaves no finite
    saturation current. Source: De Soto, Klein, Beckman 2006, equations 6 to 11.
    """
    require_positive(irradiance_w_per_m2=irradiance_w_per_m2)
    reference_k, cell_k = _STC_C + _KELVIN, t_cell_c + _KELVIN
    share = irradiance_w_per_m2 / _STC_W_PER_M2
    gap_ev = reference.band_gap_ev * (1 + reference.band_gap_per_k_factor * (cell_k - reference_k))
    exponent = (reference.band_gap_ev / reference_k - gap_ev / cell_k) / _BOLTZMANN_EV_PER_K
    if exponent > _LARGEST_EXPONENT:
        raise ValueError(f"a band gap of {gap_ev} eV at {t_cell_c} °C leaves no finite saturation current")
    return SingleDiodeData(
        photocurrent_a=share * (reference.photocurrent_a + alpha_a_per_k * (cell_k - reference_k)),
        saturation_current_a=reference.saturation_current_a * (cell_k / reference_k) ** 3 * exp(exponent),
        series_resistance_ohm=reference.series_resistance_ohm,
        shunt_resistance_ohm=reference.shunt_resistance_ohm / share,
        modified_ideality_v=reference.modified_ideality_v * cell_k / reference_k,
        band_gap_ev=reference.band_gap_ev,
        band_gap_per_k_factor=reference.band_gap_per_k_factor,
    )


def open_circuit_voltage_v(data: SingleDiodeData) -> float:
    """Return the open-circuit voltage in V: the U with IL = I0·(exp(U/a) - 1) + U/Rsh.

    The right side rises with U, and U lies between 0 and a·ln(1 + IL/I0), so halving the range finds it. Raises
    ValueError for a photocurrent, saturation current, ideality or shunt resistance that is not above 0, and for
    currents so far apart that their ratio is no number.
    """
    require_positive(photocurrent_a=data.photocurrent_a, saturation_current_a=data.saturation_current_a)
    require_positive(modified_ideality_v=data.modified_ideality_v, shunt_resistance_ohm=data.shunt_resistance_ohm)
    require_positive(current_ratio=data.photocurrent_a / data.saturation_current_a)
    low_v, high_v = 0.0, data.modified_ideality_v * log(1 + data.photocurrent_a / data.saturation_current_a)
    while (middle_v := (low_v + high_v) / 2) not in (low_v, high_v):
        through_a = data.saturation_current_a * expm1(middle_v / data.modified_ideality_v)
        if through_a + middle_v / data.shunt_resistance_ohm > data.photocurrent_a:
            high_v = middle_v
        else:
            low_v = middle_v
    return low_v


def uoc_by_single_diode(
    modules_count: int,
    reference: SingleDiodeData,
    alpha_a_per_k: float,
    t_cell_c: float,
    symbol: Symbol = Symbol.UOC_MAX,
    temperature: str = "Tmin",
) -> Rating:
    """Return the open-circuit voltage in V of a string by the single-diode data, at 1000 W/m² and a cell in °C.

    alpha_a_per_k: temperature coefficient of the short-circuit current in A/K. symbol, temperature: what voltage and
    temperature are called. Raises ValueError where the coefficient leaves no current at that temperature. Source: De
    Soto, Klein, Beckman 2006.
    """
    there, at = translated(reference, t_cell_c, alpha_a_per_k), phrase("at {temperature}", temperature=temperature)
    return Rating(
        symbol,
        modules_count * open_circuit_voltage_v(there),
        "V",
        phrase("N·U with IL = I0·(exp(U/a) - 1) + U/Rsh at {temperature}", temperature=temperature),
        (
            Given("N", modules_count),
            Given("IL", there.photocurrent_a, "A", at),
            Given("I0", there.saturation_current_a * 1e12, "pA", at),
            Given("a", there.modified_ideality_v, "V", at),
            Given("Rsh", there.shunt_resistance_ohm, "Ω"),
            Given(temperature, t_cell_c, "°C"),
        ),
        citations(_SOURCE, clause_from_memory("IEC 62548:2016 7.2")),
    )
