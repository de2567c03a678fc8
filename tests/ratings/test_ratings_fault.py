"""Fault currents against an independent network library; published worked examples are in tests/examples."""

from __future__ import annotations

from math import sqrt

import pytest

from sld.ratings.fault import (
    cable_impedance,
    earth_fault_current,
    generation_share,
    line_to_line_current,
    loop_impedance,
    peak_current,
    sequence_loop,
    standard_peak_current,
    three_phase_current,
)
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.source_impedance import (
    assumed_fault_current,
    assumed_loop_impedance,
    impedance_from_fault_current,
    impedance_from_short_circuit_power,
    voltage_factor,
)
from sld.ratings.transformer import (
    correction_factor,
    rated_current,
    transformer_impedance,
)
from sld.tables.table import NoRow


@pytest.mark.parametrize(("r_over_x", "kappa"), [(0, 2.0), (1e6, 1.02)])
def test_peak_factor_at_its_ends(r_over_x: float, kappa: float) -> None:
    # IEC 60909-0:2016 8.1: κ runs from 1.02 to 2
    assert peak_current(1, r_over_x).value == pytest.approx(kappa * sqrt(2))


# The network below was computed with the general library of tests/reference (IEC 60909, 20/0.4 kV): 500 MVA and
# 300 MVA (R/X 0.1), 400 kVA Dyn 4 % / 1.15 %, 60 m of 10 mm² (1.83 + j0.08 Ω/km, Z0 four times Z1), cable at 90 °C.
U_N_V = 400.0
U_0_V = U_N_V / sqrt(3)


def transformer(extreme: str, c_max: float = 1.10) -> Impedance:
    # the library, as IEC 60909-0, corrects the transformer for the greatest current only
    factor = correction_factor(4, 1.15, c_max).value if extreme == "max" else 1.0
    return transformer_impedance(400, U_N_V, 4, 1.15) * factor


def upstream(extreme: str, c_max: float = 1.10) -> Impedance:
    # the medium-voltage side has voltage factors of its own, 1.10 and 1.00, whatever the low-voltage side has
    network = (500, 1.10) if extreme == "max" else (300, 1.00)
    return impedance_from_short_circuit_power(network[0], U_N_V, network[1]) + transformer(extreme, c_max)


def line(temperature_c: float) -> Impedance:
    return cable_impedance(1.83, 0.08, 60, temperature_c)


def loop(extreme: str, at_inverter: bool) -> Impedance:
    cable = line(20 if extreme == "max" else 90) if at_inverter else Impedance(0, 0)
    return sequence_loop(upstream(extreme) + cable, transformer(extreme) + 4 * cable)


def test_correction_factor_of_the_library_network() -> None:
    assert correction_factor(4, 1.15, 1.10).value == pytest.approx(1.0215, abs=5e-5)


@pytest.mark.parametrize(
    ("extreme", "cable_c", "c_factor", "library_ka"),
    [
        ("max", None, 1.10, 15.2208),
        ("max", 20, 1.10, 2.1823),
        ("min", None, 0.90, 12.5786),
        ("min", 90, 0.90, 1.4172),
    ],
)
def test_three_phase_current_of_the_library(
    extreme: str, cable_c: float | None, c_factor: float, library_ka: float
) -> None:
    z = upstream(extreme) + (Impedance(0, 0) if cable_c is None else line(cable_c))
    current = three_phase_current(U_N_V, z, c_factor, extreme)
    in_ka = current.value if current.unit == "kA" else current.value / 1000
    assert in_ka == pytest.approx(library_ka, rel=5e-5)


@pytest.mark.parametrize(
    ("extreme", "cable_c", "c_factor", "library_ka"),
    [("max", None, 1.05, 15.206), ("max", 20, 1.05, 2.089), ("min", None, 0.95, 13.277), ("min", 90, 0.95, 1.496)],
)
def test_three_phase_current_in_a_narrow_network(
    extreme: str, cable_c: float | None, c_factor: float, library_ka: float
) -> None:
    z = upstream(extreme, 1.05) + (Impedance(0, 0) if cable_c is None else line(cable_c))
    current = three_phase_current(U_N_V, z, c_factor, extreme)
    in_ka = current.value if current.unit == "kA" else current.value / 1000
    assert in_ka == pytest.approx(library_ka, rel=4e-4)


def test_line_to_line_current_of_the_library() -> None:
    current = line_to_line_current(U_N_V, upstream("min") + line(90), 0.90, "min")
    assert (current.value, current.unit) == (pytest.approx(1227.3, abs=0.1), "A")


@pytest.mark.parametrize(
    ("extreme", "at_inverter", "c_factor", "library_ka"),
    [("max", False, 1.10, 15.3266), ("max", True, 1.10, 1.1252), ("min", True, 0.90, 0.7246)],
)
def test_earth_fault_current_of_the_library(
    extreme: str, at_inverter: bool, c_factor: float, library_ka: float
) -> None:
    current = earth_fault_current(U_0_V, loop(extreme, at_inverter), c_factor, extreme)
    in_ka = current.value if current.unit == "kA" else current.value / 1000
    assert in_ka == pytest.approx(library_ka, rel=8e-5)


def test_the_simple_current_is_no_upper_bound() -> None:
    # 14.43 kA by In · 100 / uk at 400 V against 15.22 kA of the library
    simple_ka = rated_current(400, 400).value / 4 / 10
    assert simple_ka == pytest.approx(14.43, abs=0.01)
    assert simple_ka < three_phase_current(U_N_V, upstream("max"), 1.10, "max").value


def test_a_magnitude_alone_leaves_the_angle_open() -> None:
    # 6 kA and 15 m of 10 mm²: between 3.50 kA (same angle) and 4.79 kA (all reactive), own computation by Ohm's law
    cable = cable_impedance(1.83, 0.08, 15)
    greatest = impedance_from_fault_current(6, 400, 1.0) + cable
    least = impedance_from_fault_current(6, 400, 1.0, cable.r_ohm / cable.x_ohm) + cable
    assert three_phase_current(400, greatest, 1, "max").value == pytest.approx(4.79, abs=0.01)
    assert three_phase_current(400, least, 1, "max").value == pytest.approx(3.50, abs=0.01)


@pytest.mark.parametrize(("tolerance", "c_max", "c_min"), [(6, 1.05, 0.95), (10, 1.10, 0.90)])
def test_voltage_factor(tolerance: float, c_max: float, c_min: float) -> None:
    # IEC 60909-0:2016 Table 1
    assert (voltage_factor(tolerance, "max").value, voltage_factor(tolerance, "min").value) == (c_max, c_min)


def test_no_voltage_factor() -> None:
    with pytest.raises(NoRow):
        voltage_factor(8, "max")


@pytest.mark.parametrize(("earthing", "ze_ohm"), [("TN-C-S", 0.35), ("TN-S", 0.80), ("TT", 21)])
def test_assumed_supply_says_so(earthing: str, ze_ohm: float) -> None:
    # usual answers of distributors in Great Britain: https://www.diybanter.com/764167-post4.html
    assert assumed_loop_impedance(earthing).value == ze_ohm
    assert assumed_loop_impedance(earthing).assumptions
    assert assumed_fault_current(earthing).assumptions


def test_no_assumption_for_an_insulated_system() -> None:
    with pytest.raises(NoRow):
        assumed_loop_impedance("IT")


def test_impedances_add_as_complex_numbers() -> None:
    assert in_series([Impedance(3, 0), Impedance(0, 4)]).magnitude_ohm == 5
    assert in_series([]) == Impedance(0, 0)
    assert loop_impedance([Impedance(1, 1), 2 * Impedance(1, 1.5)]).value == 5
    with pytest.raises(ValueError, match="at least one"):
        loop_impedance([])


@pytest.mark.parametrize(
    ("z", "extreme", "word"), [(Impedance(0, 0), "max", "z_ohm"), (Impedance(1, 0), "middle", "extreme")]
)
def test_refused_fault(z: Impedance, extreme: str, word: str) -> None:
    with pytest.raises(ValueError, match=word):
        three_phase_current(400, z, 1, extreme)


def test_resistive_part_above_the_whole_is_refused() -> None:
    assert transformer_impedance(400, 400, 4, 4).x_ohm == 0
    with pytest.raises(ValueError, match="above u_k_percent"):
        transformer_impedance(400, 400, 4, 4.001)


@pytest.mark.parametrize(
    ("i_k_ka", "peak_ka"), [(5, 7.5), (5.01, 5.01 * 1.7), (10, 17), (20, 40), (20.1, 20.1 * 2.1), (50, 105), (60, 132)]
)
def test_peak_at_an_assembly(i_k_ka: float, peak_ka: float) -> None:
    # IEC 61439-1 Table 7, printed at
    # https://pangonilo.com/2015/10/iec-61439-relationship-between-peak-current-and-short-time-current.html
    assert standard_peak_current(i_k_ka).value == pytest.approx(peak_ka)


@pytest.mark.parametrize(("generation_a", "i_k_ka", "percent"), [(20, 0.4, 5), (0, 6, 0), (150, 6, 2.5)])
def test_share_of_the_generation(generation_a: float, i_k_ka: float, percent: float) -> None:
    # definition (arithmetic)
    assert generation_share(generation_a, i_k_ka).value == pytest.approx(percent)
