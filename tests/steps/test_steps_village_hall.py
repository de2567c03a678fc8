"""The shipped one-inverter example, every number worked out by hand from the data sheets and the published tables.

The arithmetic here is the tests' own and takes another way than the formulas of the package where there is one.
Published numbers: IEC 60364-5-52:2009 Tables B.52.2 to B.52.4 (capacities), IEC 60228:2004 (resistances), EN 50618:2014
Tables A.3 and A.4, IEC 60898-1:2015 Table 7 (10 In of curve C), IEC 60364-4-41:2017 Table 41.1, IEC 60364-5-54:2011
Table 54.1; the mounting's 35 K is common practice, from memory.
"""

from __future__ import annotations

from cmath import phase
from math import hypot, sqrt

import pytest
from rated_specs import value, village_hall

from sld.ratings.symbol import Symbol, Word

UNIT, IN1, IN2 = "inverters.hall", "inverters.hall.inputs.0", "inverters.hall.inputs.1"
BREAKER, RCD, CABLE, SWITCH = (f"inverters.hall.circuit.{place}" for place in range(4))

# 18 modules of 37.4 V; every kelvin below 25 °C adds 0.26 % of 37.4 V = 97.24 mV a module
UOC_MAX_V = 18 * 37.4 + 18 * 39 * 0.09724
# κ = γ - α = -0.34 - 0.05 = -0.39 %/K of 31.3 V = 122.07 mV; the cell is 35 K above 34 °C, 44 K above 25 °C
UMPP_MIN_V = 18 * 31.3 - 18 * 44 * 0.12207
UMPP_MAX_V = 18 * 31.3 + 18 * 39 * 0.12207
# 5.09 Ω/km of tinned 4 mm² at 20 °C (IEC 60228), 70 K hotter: +27.51 %
DC_R_OHM_PER_KM = 5.09 * 1.2751
# 7.41 Ω/km of 2.5 mm² class 2 with 19.2 A of 24 A: 70 − (1 − 0.64) · 40 = 55.6 °C (BS 7671 App. 4 6.1), 35.6 K more
AC_R_OHM_PER_KM = 7.41 * (1 + 0.00393 * 35.6)

FACTS = [
    (f"{IN1}.strings.0", Symbol.UOC_MAX, UOC_MAX_V),
    (f"{IN1}.strings.0", Symbol.UMPP_MIN, UMPP_MIN_V),
    (f"{IN1}.strings.0", Symbol.UMPP_MAX, UMPP_MAX_V),
    (f"{IN1}.strings.0", Symbol.PSTRING, 7380),
    (f"{IN1}.strings.0", Symbol.NMAX, 24),  # 1000 V / 41.19 V = 24.3
    (f"{IN1}.strings.0", Symbol.NMIN, 8),  # 200 V / 25.93 V = 7.7
    (IN1, Symbol.ISC_MAX, 17.375),  # 13.9 A and a quarter
    (IN1, Symbol.IN_MIN, 20.85),  # 13.9 A and a half
    (IN1, Symbol.IN_MAX, 25),  # largest series fuse of the module; 2.4 Isc would be 33 A
    (IN1, Symbol.IN_STRING, 25),
    (IN1, Symbol.NP_UNFUSED, 2),  # one other string: 13.9 A < 25 A; two others: 27.8 A > 25 A
    (IN1, Symbol.LCRIT, 375),  # 450 / 1.2
    (IN1, Symbol.DU_DC, 100 * 2 * 0.032 * 13.1 * DC_R_OHM_PER_KM / (18 * 31.3)),
    (IN2, Symbol.LROUTE, 38),
    (f"{IN1}.circuit.1", Symbol.UE, 800),
    (f"{IN1}.circuit.1", Symbol.IE, 20),
    (f"{IN1}.circuit.0", Symbol.UCPV_MIN, UOC_MAX_V),
    (f"{IN1}.circuit.0", Symbol.UCPV, 800),
    # EN 50618: 4 mm² two cables touching 44 A, 0.92 at 70 °C
    (f"{IN1}.strings.0.cable", Symbol.IZ, 40.48),
    (f"{IN1}.strings.0.cable", Symbol.S, 4),
    # 38 m: 4 mm² drops 1.15 %, beyond the 1 %; 6 mm² drops 0.76 %
    (f"{IN2}.strings.0.cable", Symbol.S, 6),
    (UNIT, Symbol.IB, 19.2),
    (UNIT, Symbol.PDC_BY_PAC, 1.23),
    (BREAKER, Symbol.IN, 20),  # IEC 60364-4-43 433.1: not below 19.2 A
    (BREAKER, Symbol.I2, 29),  # 1.45 · 20 A
    (BREAKER, Symbol.IA, 200),
    (BREAKER, Symbol.T_MAX, 0.4),
    (BREAKER, Symbol.ZS, 0.28 + 2 * 0.014 * hypot(7.41 * 1.2, 0.08)),  # IEC 60909-0 takes 0.4 %/K: 1.2 at 70 °C
    (BREAKER, Symbol.ZS_MAX, 0.95 * 230 / 200),
    (BREAKER, Symbol.IK_MAX, 5.5),
    (RCD, Symbol.IN, 20),
    (RCD, Symbol.IDN_LEAST, 4 / 0.3),  # 4 mA / 0.3
    (RCD, Symbol.IDN, 100),
    (CABLE, Symbol.IZ, 24),  # Table B.52.4, copper, PVC, three loaded, method C, 2.5 mm²
    (CABLE, Symbol.S, 2.5),
    (CABLE, Symbol.SPE, 2.5),
    (CABLE, Symbol.DU_RISE, 100 * sqrt(3) * 19.2 * 0.014 * AC_R_OHM_PER_KM / 400),
    (UNIT, Symbol.DU_AC, 100 * 19.2 * 0.014 * AC_R_OHM_PER_KM / (400 / sqrt(3))),
    # IEC 60909-0 with cmax 1.10 for a network of ±10 %, in the source and in the current alike
    (UNIT, Symbol.IK_MAX, 1.1 * 0.4 / sqrt(3) / abs(0.014 * complex(7.41, 0.08) + 1j * 1.1 * 400 / sqrt(3) / 5500)),
    ("boards.main", Symbol.IEXPORT, 19.2),
    ("boards.main", Symbol.IIMPORT, 18000 / 3 / (400 / sqrt(3))),
    ("boards.main", Symbol.INA_LEAST, 69.2),
    ("boards.main", Symbol.INA, 80),
    ("boards.main.circuit.0", Symbol.IMAX, 60),  # smallest of 60, 80 and 100 A not below the 50 A service fuse
    ("earth.electrode", Symbol.S, 16),  # Table 54.1: buried, protected against corrosion alone
    ("earth.bonding.0", Symbol.S, 6),
    ("earth.bonding.1", Symbol.S, 6),
    ("", Symbol.N, 36),
    ("", Symbol.PDC, 14_760),
    ("", Symbol.UTEST, 1000),  # IEC 62446-1: 1.25 · 673 V is above 500 V and up to 1000 V
    ("data.chains.bus1", Symbol.UNIT_LOADS, 1.25),
    ("data.chains.bus1", Symbol.L_BUS, 6),
]


@pytest.mark.parametrize(("key", "symbol", "by_hand"), FACTS)
def test_value(key, symbol, by_hand) -> None:
    _, ratings = village_hall()
    assert value(ratings, key, symbol) == pytest.approx(by_hand, rel=2e-4)


@pytest.mark.parametrize(
    ("key", "symbol", "word"),
    [
        (IN1, Word.STRING_FUSES, "not needed"),
        (f"{IN1}.circuit.1", Word.CATEGORY, "DC-PV1"),
        (RCD, Word.RCD_TYPE, "A"),  # 5 mA declared, up to 6 mA is type A (IEC 60364-5-53:2019, from memory)
        (BREAKER, Word.CURVE, "C"),
        (IN1, Word.SPD_TYPE, "2"),
    ],
)
def test_word(key, symbol, word) -> None:
    assert str(village_hall()[1].told(key, symbol) or village_hall()[1].word(key, symbol)) == word


def test_everything_is_answered() -> None:
    assert dict(village_hall()[1].unanswered) == {}


def test_the_rise_by_phasors() -> None:
    """The voltage at the inverter less that at the board, as complex numbers: the formula leaves out the tiny angle."""
    _, ratings = village_hall()
    u0_v = 400 / sqrt(3)
    far = u0_v + 19.2 * 0.014 * complex(AC_R_OHM_PER_KM, 0.08)
    assert abs(phase(far)) < 0.001
    assert value(ratings, UNIT, Symbol.DU_AC) == pytest.approx(100 * (abs(far) - u0_v) / u0_v, rel=1e-3)
