"""What each column of each schedule says, read off the sheets below the headings. Worked by hand as in the labels."""

from __future__ import annotations

import pytest
from printed_sheet import drawing

STRING_COLUMNS = ("Designation", "Input", "Strings × in series, module, power", "Uoc STC / max", "Umpp,min",
                  "Isc STC / design", "Orientation, place")  # fmt: skip

# Umpp,min: N · 33 V · (1 - 0.4 % · (Tc - 25)), κ = γ - α = -0.35 - 0.05 %/K. Tc of the workshop: 40 °C + 1000 W/m² ·
# (45 - 20) / 800 = 71.25 °C by NOCT; free standing 40 + 25 °C, close to the roof 40 + 35 °C by the table of mountings
STRINGS = [
    ("workshop", ("-TB1-GC1…3", "-TB1-XD1", "3 × 10 × F310, 9.3 kWp", "400 / 440 V", "269 V", "10 / 10.7 A",
                  "S, 30°, south roof (outdoors)")),
    ("workshop", ("-TB1-GC4", "-TB1-XD2", "1 × 8 × F310, 2.48 kWp", "320 / 352 V", "215 V", "10 / 10.7 A",
                  "W, 30°")),
    ("workshop", ("-TB2-GC1", "-TB2-XD1", "1 × 9 × F310, 2.79 kWp", "360 / 396 V", "242 V", "10 / 10.7 A", "–")),
    ("cottage", ("-TB1-GC1…2", "-TB1-XD1", "2 × 12 × F310, 7.44 kWp", "480 / 528 V", "333 V", "10 / 10 A",
                 "outdoor shed")),
    ("cottage", ("-TB1-GC3", "-TB1-XD3", "1 × 6 × F310, 1.86 kWp", "240 / 264 V", "166 V", "10 / 10 A",
                 "lower row, shaded at noon")),
    ("cottage", ("-TB4-GC1", "-TB4-XD1", "1 × 1 × F310, 310 Wp", "40 / 44 V", "27.7 V", "10 / 10 A", "–")),
    ("yard", ("-TB1…5-GC1", "-TB1…5-XD1", "1 × 16 × F310, 4.96 kWp", "640 / 704 V", "422 V", "10 / 10 A", "–")),
]  # fmt: skip

CABLE_COLUMNS = ("Designation", "From – to", "Cable", "Length", "Laid", "Iz,min / Iz", "Δu")

SHORT = "From – to in the circuit"
"""What the column is called where all cables and their ends are of one circuit each, so that the cable names it."""

# Δu: 2 · I · L · R / 230 V with one phase, √3 · I · L · R / 400 V with three, 2 · Impp · L · R / (N · 33 V) for
# strings; R20 of IEC 60228 in Ω/km: 1.91 (16 mm² Al), 7.41 (2.5 mm²), 3.08 (6 mm²), 0.268 (70 mm²), tinned 3.39 (6),
# 5.09 (4); strings hot: Al at 90 °C · (1 + 0.00403 · 70), Cu at 90 °C · 1.275; AC cables at the temperature of their
# load, tp − (C² − I²/It²) · (tp − θ0) of BS 7671 Appendix 4 6.1: in the workshop -UC2-WD1 with 14 A of 59 A, C 0.8415,
# 44.4 °C, -TB2-WD1 with 14 A of 27 A and 0.87 50.5 °C, -TB1-WD1 with 16 A of 41 A 36.1 °C
CABLES = [
    # Iz,min: 1.6 · 50 A / 1.45 of the gG fuse; Δu: 2 · 14 A · 30 m · 2.098 Ω/km / 230 V
    ("workshop", ("-UC2-WD1", "-UC2-FC1 – -UC2", "NYY-J 5 × 16 mm² Al", "30 m",
                  "D1, 2 circuits, 0.25 m apart, 0.7 m deep, yard (outdoors)", "55.2 / 49.6 A", "0.766 %")),
    # 2 · 14 A · 8 m · 8.298 Ω/km / 230 V
    ("workshop", ("-TB2-WD1", "-TB2-FB1 – -TB2", "Cu/PVC 3 × 2.5 mm²", "8 m", "C", "16 / 23.5 A", "0.808 %")),
    # √3 · 16 A · 12 m · (3.275 · 0.95 + 0.08 · 0.312) Ω/km / 400 V
    ("workshop", ("-TB1-WD1", "-TB1-QA1 – -TB1-QB1", "NYM-J 4 × 6 + 10 mm²", "12 m", "C", "32 / 41 A", "0.261 %")),
    # 2 · 9.4 A · 15 m · 6.49 Ω/km / 297 V; 1.25 · 10.7 A
    ("workshop", ("-TB2-WD2", "-TB2-QB1 – -TB2-GC1", "H1Z2Z2-K 2 × 4 mm², 1.5 kV DC", "15 m", "–", "13.4 / 40.5 A",
                  "0.616 %")),
    # 2 · 9.4 A · 20 m · 4.323 Ω/km / 330 V; the fuse of 16 A is above 13.4 A
    ("workshop", ("-TB1-WD2…4", "-TB1-FC2…4 – -TB1-GC1…3", "H1Z2Z2-K 3 × 2 × 6 mm², 1.5 kV DC", "20 m", "3 circuits",
                  "16 / 36.7 A", "0.493 %")),
    ("workshop", ("-TB1-WD5", "-TB1-FC5 – -TB1-GC4", "H1Z2Z2-K 2 × 4 mm², 1.5 kV DC", "25 m", "–", "13.4 / 40.5 A",
                  "1.16 %")),
    # the way from the shed to the hall, and the place that is given; 2 · 9.4 A · 10 m · 4.323 Ω/km / 396 V
    ("cottage", ("-TB1-WD1…2", "-TB1-FC2…3 – -TB1-GC1…2", "H1Z2Z2-K 2 × 2 × 6 mm², 1.5 kV DC", "10 m",
                 "2 circuits, outdoor shed – hall, outdoor shed", "12.5 / 42 A", "0.205 %")),
    # √3 · 400 A · 60 m · 0.3207 Ω/km / 2 / 400 V; the design current of 400 A is above the breaker
    # 1.25 · 4 · 10 A; 2 · 0.05 km · 37.6 A · 1.20 Ω/km (IEC 60228) · (1 + 0.00403 · 70) = 5.785 V of 12 · 33 V
    ("meadow", ("-TB1-WD1", "-QB2 – -XD2…3", "AX 1 kV 2 × 25 mm² Al", "50 m",
                "D1, 0.6 m deep, × 0.9 for hot pipe", "50 / 81 A", "1.46 %")),
    # 2 strings at 400 V: 12 · 310 W / 400 V = 9.3 A; 2 · 0.01 km · 9.3 A · 4.323 Ω/km = 0.804 V of 400 V
    ("meadow", ("-TB1-WD6…7", "-FC2…3 – -TA1…24", "H1Z2Z2-K 2 × 2 × 6 mm², 1.5 kV DC", "10 m", "–",
                "20 / 52.4 A", "0.201 %")),
    ("yard", ("-UC2-WD1", "-UC2-FC1 – -UC2", "Cu/PVC 2 × (4 × 70 + 35) mm²", "60 m",
              "E, 4 cables, × 0.95 for sun on the tray", "400 / 249 A", "1.81 %")),
]  # fmt: skip

EARTHING_COLUMNS = ("Designation", "From earthing terminal to", "Least", "Section", "Length", "Clause")

EARTHING = [
    ("workshop", ("-WE1", "rod electrode, RA 12 Ω, buried, protected against corrosion", "16 mm²", "25 mm²",
                  "6 m", "IEC 60364-5-54:2011 Table 54.1")),
    ("workshop", ("-WE2", "PE of the supply", "–", "–", "–", "as brought by the supply")),
    ("workshop", ("-WE4", "module frames", "16 mm²", "10 mm²", "18 m", "EN 62305-3 Supplement 5")),
    ("ranch", ("-WE2", "grounded conductor of the supply", "–", "–", "–", "as brought by the supply")),
    ("yard", ("-WE2", "PEN of the supply", "–", "–", "–", "as brought by the supply")),
    # bonded by the installer, whatever its section: the supply does not bring it
    ("cottage", ("-WE2", "steel frame", "–", "–", "–", "–")),
]  # fmt: skip

BUS_COLUMNS = ("Chain", "No.", "Device, from – to", "Address", "Protocol, medium; baud rate; cable; termination",
               "Shield earthed at", "Polled by", "Cable from the one before", "Length")  # fmt: skip
WIRING_COLUMNS = ("Designation", "Device", "Terminals", "Torque", "Strip", "Route")


@pytest.mark.parametrize(
    ("table", "columns", "spec", "cells"),
    [
        *(("String schedule", STRING_COLUMNS, *row) for row in STRINGS),
        *(("Cable schedule", CABLE_COLUMNS, *row) for row in CABLES),
        *(("Earthing conductors", EARTHING_COLUMNS, *row) for row in EARTHING),
    ],
)
def test_row(table: str, columns: tuple[str, ...], spec: str, cells: tuple[str, ...]) -> None:
    """A column in which no row says anything is not printed."""
    row = drawing(spec).row(table, cells[0])
    if SHORT in row:
        columns = tuple(SHORT if column == "From – to" else column for column in columns)
    assert dict.fromkeys(columns, "–") | row == dict(zip(columns, cells, strict=True))


@pytest.mark.parametrize(
    ("table", "columns", "rows"),
    [
        # 7 m and 9 m
        ("Data bus and links", BUS_COLUMNS,
         [("-WF1", "", "", "", "Modbus RTU, 19200 Bd, shielded pair", "-KF1", "-KF1", "", "16 m"),
          ("-WF1", "1", "-KF1", "–", "120 Ω", "", "", "", ""),
          ("-WF1", "2", "-TB1", "3", "", "", "", "7 m", ""),
          ("-WF1", "3", "-UC1-PG2", "5", "120 Ω", "", "", "9 m", ""),
          ("", "", "-KF1 – -TF1", "", "Ethernet", "", "", "", "15 m"),
          ("", "", "-TF1 – -TF2", "", "wireless", "", "", "", "–"),
          ("", "", "-KF2 – -TF1", "", "Ethernet", "", "", "", "–")]),
        ("Terminals and routes", WIRING_COLUMNS,
         [("-UC1-QB1", "main switch", "L1 1 L2 3 L3 5", "4 Nm", "14 mm", "–"),
          ("-UC2-WD1", "cable", "–", "–", "–", "duct 3, then tray"),
          ("-TB1", "inverter", "X1", "–", "–", "–"),
          ("-XE1", "main earthing terminal", "1 to 6", "–", "–", "–")]),
    ],
)  # fmt: skip
def test_whole_table(table: str, columns: tuple[str, ...], rows: list[tuple[str, ...]]) -> None:
    assert drawing("workshop").rows(table) == [dict(zip(columns, cells, strict=True)) for cells in rows]


def test_a_shield_may_be_earthed_elsewhere_than_at_the_device_that_polls() -> None:
    sheet = drawing("workshop", "", ("shield_earthed_at: [scribe]", "shield_earthed_at: [south]"))
    row = sheet.rows("Data bus and links")[0]
    assert (row["Shield earthed at"], row["Polled by"]) == ("-TB1", "-KF1")


def test_what_is_not_said_of_an_earthing_conductor_is_not_printed() -> None:
    row = drawing("workshop", "", (", buried: true, corrosion_protected: true", "")).row("Earthing conductors", "-WE1")
    assert row["From earthing terminal to"] == "rod electrode, RA 12 Ω"


def test_what_is_not_said_of_a_buried_cable_is_not_printed() -> None:
    row = drawing("workshop", "", (", depth: 0.7 m", "")).row("Cable schedule", "-UC2-WD1")
    assert row["Laid"] == "D1, 2 circuits, 0.25 m apart, yard (outdoors)"


def test_what_is_not_known_of_a_cable_is_left_open() -> None:
    """A section of 3 mm² is in no table (IEC 60364-5-52): what it carries is not said; 20 A is its breaker."""
    thin = ("section: 4 mm2, method: C, cores: 3", "section: 3 mm2, method: C, cores: 3")
    row = drawing("cottage", "", thin).row("Cable schedule", "-WC2-WD1")
    assert (row["Iz,min / Iz"], row["Δu"]) == ("20 / –", "–")
    assert "Iz" not in drawing("cottage", "", thin).label("-WC2-WD1")
