"""What a reader must see beside each kind of device, read off the finished sheets.

A row: the spec (a YAML file beside this one), the designation, and all that stands beside it, as one line. What the
spec gives is printed as given; what is computed was worked by hand, the arithmetic is in the row. Each spec's module:
310 W, Uoc 40 V, Isc 10 A, Umpp 33 V, Impp 9.4 A, β -0.25 %/K; at -15 °C one gives 40 V · (1 + 0.25 · 40 / 100) = 44 V.
The cautious profile takes 1.25 · Isc (IEC 62548); bifacial modules with 10 % from the rear have 10 A · (1 + 0.7 · 0.1).
Capacities It: IEC 60364-5-52 Tables B.52.2 to B.52.5, of solar cables EN 50618 Table A.3; factors Ca of their tables.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

import pytest
from printed_sheet import Drawing, drawing

from sld import run
from sld.sheet.sheet import Group
from sld.symbols.stroke import Point, Polyline, Text

SUPPLY = [
    (
        "workshop",
        "-GA1",
        "Lowmere network 3N PE ~ 50 Hz 400/230 V TN-S Ipf 8 kA, Ze 0.2 Ω cable not given "
        "No. LM 5501 feed-in ≤ 25 kW existing",
    ),
    ("workshop", "-FC1", "100 A gG existing"),
    # TT: the network brings no protective conductor (IEC 60364-1:2005 312.2.2)
    ("cottage", "-GA1", "1N ~, 230 V TT Ipf 6 kA, Ze 21 Ω assumed cable not given existing"),
    # at 20 kV there are three lines; the low voltage is told at the transformer, in a TN-C-S system with PE
    ("yard", "-GA1", "3 ~ 20 kV Sk 200 MVA existing"),
    (
        "yard",
        "-TA1",
        "250 kVA, uk 4 %, 20 kV / 410 V, Dyn5 3N PE ~, 400/230 V, TN-C-S 3 m to the first overcurrent device, existing",
    ),
]

BOARDS = [
    # ip = 1.7 · 8 kA = 13.6 kA (IEC 61439-1 Table 7: n = 1.7 above 5 kA up to 10 kA)
    # 50 A fuse + 14 A generation = 64 A, next 80 A. Ik: c = 1.1; X = 1.1 · 230.9 V / 8 kA + 30 m · 0.08 mΩ/m = 34.2 mΩ,
    # R = 30 m · 1.91 mΩ/m = 57.3 mΩ (IEC 60228, 16 mm² Al), Z = 66.7 mΩ, 1.1 · 230.9 V / Z = 3.81 kA; n = 1.5: 5.71 kA
    # the trunk cable of micro-inverters: at least what its breaker has. Ik: X = 1.1 · 230 V / 6 kA + 18 m · 0.08 mΩ/m =
    # 43.6 mΩ, R = 18 m · 4.61 mΩ/m = 83 mΩ, Z = 93.7 mΩ, 1.1 · 230 V / Z = 2.70 kA; n = 1.5: 4.05 kA
    ("cottage", "-WC2", "≥ 20 A Ik 2.7 kA ip 4.05 kA"),
]

PROTECTION = [
    ("workshop", "-TB1-FC1", "32 A 3P Icu 16 kA"),  # poles as given, no curve for a moulded-case breaker
    ("workshop", "-GB1-FC1", "C 16 A 4P Icn 10 kA"),  # poles left out: three lines and the neutral
    ("workshop", "-EZ1-FC1", "D 25 A 4P Icn 10 kA existing"),
    ("workshop", "-GA2-FC1", "C 32 A 4P Icn 10 kA"),
    ("cottage", "-WC2-FC1", "C 20 A 2P Icn 10 kA"),  # one phase: line and neutral
    ("cottage", "-TB4-FC1", "B 16 A 2P future"),  # no breaking capacity is given, none is printed
    ("yard", "-UC2-FC1", "250 A 4P Icu 25 kA, Ics 20 kA"),
    ("ranch", "-UC1-FC1", "200 A 2P AIC 22 kA"),  # interrupting rating, as the NEC calls it
    ("ranch", "-EZ1-FC1", "80 A 2P AIC 10 kA"),  # split phase: both lines, the neutral is not switched
    ("workshop", "-UC2-FC1", "50 A gG Icn 50 kA"),
    ("workshop", "-EZ2-FC1", "25 A gG Icn 50 kA"),
    ("cottage", "-EZ1-FC1", "10 A gG"),
    ("ranch", "-TB1-FC1", "40 A AIC 100 kA"),  # gG is a class of IEC 60269
    ("workshop", "-TB1-FB1", "40 A 4P type B S 300 mA"),
    ("cottage", "-UC1-FB1", "63 A 2P type A 300 mA"),
    ("ranch", "-TB1-FB1", "60 A 2P ground-fault 30 mA"),
    ("workshop", "-TB2-FB1", "B 16 A 2P type A 30 mA Icn 6 kA"),
    ("cottage", "-EZ1-FB1", "C 10 A 2P type F 30 mA"),
    ("workshop", "-UC1-FA1", "Uc 320 V Up 1.3 kV"),
    ("cottage", "-UC1-FA1", "Uc ≥ 253 V"),  # nothing given: the least, 1.1 · 230 V (IEC 60364-5-53 534.4.4.2)
    ("yard", "-UC1-FA1", "Uc ≥ 253 V Up 1.5 kV"),
    ("workshop", "-TB1-BU1", "40 A 4P Lowmere table 3"),
]

SWITCHES_AND_METERS = [
    ("workshop", "-UC1-QB1", "100 A 3P"),
    ("cottage", "-UC1-QB1", "63 A 2P"),
    ("workshop", "-TB1-QB1", "gable switch 32 A 4P not lockable"),  # the spec says so
    ("cottage", "-TB1-QB1", "25 A 2P existing"),  # nobody says whether it can be locked
    ("ranch", "-TB1-QB1", "60 A 2P lockable"),
    ("workshop", "-TB1-QA1", "25 A 4P"),
    ("workshop", "-UC1-PG1", "supply meter CT 100/5 A No. 77 31 yard (outdoors) existing"),
    ("workshop", "-UC1-PG2", "feed-in limit 80 A direct addr. 5"),
    ("workshop", "-TB1-PG1", "generation meter 60 A direct"),
    ("cottage", "-UC1-PG1", "supply meter 80 A direct"),
    ("cottage", "-TB1-PG1", "generation meter CT 60/1 A"),
    ("yard", "-UC1-PG1", "supply meter CT 400/5 A"),  # secondary left out: 5 A
]

CABLES = [
    # It = 59 A (D1, XLPE, Al); Ca 0.85 (ground at 40 °C), Cg 0.9 (two ducts 0.25 m apart), Cs 1.1 (1.5 K·m/W): 49.6 A
    ("workshop", "-UC2-WD1", "NYY-J 5 × 16 mm² 30 m Iz 49.6 A"),
    # four cores of 6 mm², beside them 10 mm² for 40 mA of leakage (IEC 60364-5-54 543.7); It = 41 A at 30 °C
    ("workshop", "-TB1-WD1", "NYM-J 4 × 6 + 10 mm² 12 m Iz 41 A"),
    ("workshop", "-TB2-WD1", "Cu/PVC 3 × 2.5 mm² 8 m Iz 23.5 A"),  # It 27 A · Ca 0.87 (40 °C outdoors)
    ("cottage", "-WC2-WD1", "Cu/PVC 3 × 4 mm² 9 m Iz 36 A"),
    ("cottage", "-TB4-WD1", "Cu/PVC 2 × 6 mm² 5 m Iz 46 A future"),  # two cores, the protective conductor apart
    # two in parallel: 2 · 196 A · 0.87 (40 °C) · 0.77 (four on a tray) · 0.95 (given) = 249 A
    ("yard", "-UC2-WD1", "Cu/PVC 2 × (4 × 70 + 35) mm² 60 m Iz 249 A"),
    ("ranch", "-UC1-WD1", "THWN-2 3 × 3/0 AWG 4 m Iz 200 A"),  # NEC Table 310.16, 75 °C; two lines and the neutral
    # two lines and the equipment grounding conductor: 10 AWG for 40 A (NEC Table 250.122)
    ("ranch", "-TB1-WD1", "THWN-2 2 × 8 AWG + 10 AWG 12 m Iz 50 A"),
    # three strings, two conductors each. It 57 A · 0.92 (70 °C) · 0.7 (three bunched)
    ("workshop", "-TB1-WD2…4", "H1Z2Z2-K 3 × 2 × 6 mm² 20 m"),
    ("workshop", "-TB1-WD5", "H1Z2Z2-K 2 × 4 mm² 25 m"),  # 44 A · 0.92
    ("workshop", "-TB2-WD2", "H1Z2Z2-K 2 × 4 mm² 15 m"),
    ("cottage", "-TB1-WD1…2", "H1Z2Z2-K 2 × 2 × 6 mm² 10 m"),  # 57 A · 0.92 · 0.8
    ("ranch", "-TB1-WD2…4", "PV wire 3 × 2 × 10 AWG 18 m"),
]

INVERTERS = [
    (
        "workshop",
        "-TB1",
        "Orrin S10 10 kW 11 kVA, Ib 16 A cos φ 0.95 set to ≤ 9 kW built in: DC switch, AC surge protection type 2 "
        "switch room addr. 3",
    ),
    ("workshop", "-TB2", "Orrin S3 3 kW, Ib 14 A on L2 yard (outdoors)"),
    ("cottage", "-TB1", "Orrin H3 3 kW, Ib 13 A built in: DC surge protection type 2 hall existing"),  # 3000 W / 230 V
    ("cottage", "-TB2", "Nib one 300 W, Ib 1.3 A"),  # 300 W / 230 V
    ("cottage", "-TB3", "Nib one 300 W, Ib 1.3 A"),
    ("cottage", "-TB4", "Nib three 300 W, Ib 1.3 A future"),
    ("yard", "-TB1…5", "Orrin S50 50 kW, Ib 80 A"),
    ("yard", "-TB6", "Nib tri 900 W, Ib 1.3 A"),  # 900 W / (√3 · 400 V)
    ("ranch", "-TB1", "Orrin U8 7.6 kW, Ib 32 A"),
]

INPUTS = [
    # 10 · 44 V; 3 · 1.25 · 10.7 A = 40.1 A; back from two strings and the inverter: 2 · 1.25 · 10.7 A + 2 A = 28.8 A
    ("workshop", "-TB1-XD1", "Uoc 440 ≤ 900 V Isc 40.1 ≤ 60 A"),
    ("workshop", "-TB1-XD2", "Uoc 352 ≤ 900 V Isc 13.4 ≤ 60 A"),
    ("workshop", "-TB2-XD1", "Uoc 396 ≤ 600 V Isc 13.4 ≤ 20 A"),
    # 12 · 44 V is above what the inverter bears; 2 · 12.5 A; back from the other string 12.5 A
    ("cottage", "-TB1-XD1", "Uoc 528 > 500 V Isc 25 ≤ 40 A"),
    ("cottage", "-TB1-XD3", "Uoc 264 ≤ 500 V Isc 12.5 ≤ 40 A"),
    ("cottage", "-TB2-XD1", "Uoc 44 ≤ 60 V Isc 12.5 ≤ 15 A"),
    ("yard", "-TB6-XD1", "Uoc 88 ≤ 100 V Isc 12.5 ≤ 15 A"),
    ("yard", "-TB1…5-XD1", "Uoc 704 ≤ 1000 V Isc 12.5 ≤ 40 A"),
    ("ranch", "-TB1-XD1", "Uoc 440 ≤ 600 V Isc 37.5 ≤ 60 A"),
]

STRINGS = [
    ("workshop", "-TB1-GC1…3", "3 × 10 × F310, 9.3 kWp S, 30°, south roof (outdoors)"),  # 3 · 10 · 310 W
    ("workshop", "-TB1-GC4", "8 × F310, 2.48 kWp W, 30°"),
    ("workshop", "-TB2-GC1", "9 × F310, 2.79 kWp"),
    ("cottage", "-TB1-GC1…2", "2 × 12 × F310, 7.44 kWp, outdoor shed existing"),  # its cable says where it comes from
    ("cottage", "-TB1-GC3", "lower row 6 × F310, 1.86 kWp existing"),
    ("cottage", "-TB2-GC1", "1 × F310, 310 Wp, outdoor shed"),
    ("cottage", "-TB4-GC1", "1 × F310, 310 Wp future"),
    ("yard", "-TB6-GC1", "2 × F310, 620 Wp"),
    ("yard", "-TB1…5-GC1", "16 × F310, 4.96 kWp"),
    ("ranch", "-TB1-GC1…3", "3 × 10 × F310, 9.3 kWp"),
]

DC_DEVICES = [
    ("workshop", "-TB1-QB3", "800 V 50 A DC-PV2 4P"),
    ("workshop", "-TB1-QB4", "500 V 16 A DC-PV1 2P"),  # left out: the next above 352 V and 13.4 A
    ("workshop", "-TB2-QB1", "500 V 16 A DC-PV1 2P assumed"),
    ("yard", "-TB1…5-FC2", "C 20 A 2P 900 V Icn 6 kA not polarized suitable for isolation"),
    ("yard", "-TB6-FC2", "In ≥ 15 A 4P Un ≥ 88 V polarized"),  # nothing given: 1.5 · 10 A, 2 · 44 V
    ("ranch", "-TB1-QB2", "600 V 60 A 2P"),  # the NEC has no DC-PV categories
    ("workshop", "-TB1-FC2…4", "6 × 16 A gPV 600 V"),  # three strings, both poles
    ("cottage", "-TB1-FC2…3", "2 × In not found gPV 600 V"),  # two strings, one pole; 1.5 · 10 A is above 10.8 A
    ("cottage", "-TB1-FC4", "1 × 25 A gPV 600 V"),
    ("ranch", "-TB1-FC2…4", "6 × 20 A PV 600 V"),
    ("workshop", "-TB1-FC5", "C 16 A 4P 800 V Icn 6 kA not polarized suitable for isolation"),
    # nothing given: the least. 6 modules · 44 V = 264 V; one string: 1.5 · 10 A = 15 A (IEC 62548:2016 6.5)
    ("cottage", "-TB1-FC5", "In ≥ 15 A 2P Un ≥ 264 V polarized"),
    ("workshop", "-TB1-FA1", "Ucpv 600 V Up 2.2 kV"),
    ("cottage", "-TB1-FA2", "Ucpv 550 V"),  # chosen: the next above 528 V
    ("cottage", "-TB1-FA1", "Ucpv 550 V future"),
    ("workshop", "-TB1-RA1", "700 V 20 A"),
    ("cottage", "-TB1-RA1", ""),
    ("workshop", "-TB1-QB2", "750 V 63 A"),  # as given, not the least of 440 V and 40.1 A
    ("cottage", "-TB1-QB2", "Un ≥ 528 V In ≥ 25 A"),
    ("workshop", "-TB1-XD3", "Un ≥ 352 V In ≥ 13.4 A"),
    ("cottage", "-TB1-XD2", "Un ≥ 528 V In ≥ 25 A"),
    ("workshop", "-TB1-QA2", "650 V In ≥ 13.4 A operated at the gate"),
    ("workshop", "-TB1-BU2", "900 V alarm < 50 kΩ"),
    # 12 · 44 V = 528 V; 1.25 · 4 · 10 A; the other three strings send 1.25 · 3 · 10 A
    ("meadow", "-TB1-XD1", "Uoc 528 ≤ 800 V Isc 50 ≤ 80 A positive pole earthed"),
    # with optimisers the maker's 500 V, and 12 A of each string without the factor 1.25
    ("meadow", "-TB1-XD4", "Uoc 500 ≤ 800 V Isc 24 ≤ 80 A"),
    ("meadow", "-TB1-TA1…24", "24 × Nib P4 400 V, 12 A shuts the string down"),  # 2 strings of 12 modules
    ("meadow", "-TB1-RA1…4", "1200 V 20 A"),
    ("meadow", "-TB1-XD2…3", "2 × 2 in 1 1500 V 40 A"),
    ("meadow", "-TB1-FC2…3", "2 × 20 A gPV 900 V in the negative pole"),  # two strings, one pole
    ("meadow", "-TB1-QB2", "800 V 63 A DC-PV2 2P not lockable"),
    # IEC 60364-5-52 B.52.3: aluminium 25 mm², XLPE, in a duct 90 A · 0.9 as declared
    ("meadow", "-TB1-WD1", "AX 1 kV 2 × 25 mm² 50 m Iz 81 A"),
    ("cottage", "-TB1-BU1", "Un ≥ 528 V alarm ≥ 17.6 kΩ"),  # 528 V / 30 mA (IEC 62109-2 4.8.2)
]

NEIGHBOURS = [
    ("workshop", "-EZ1", "sawmill 12 kW, Ib 17.3 A existing"),  # 12 kW / (√3 · 400 V)
    ("workshop", "-EZ2", "parking bay Ib 20 A"),
    ("cottage", "-EZ1", "house 800 W, Ib 3.48 A existing"),  # 800 W / 230 V
    ("ranch", "-EZ1", "house Ib 60 A"),
    ("workshop", "-GB1", "store Fenwick B8 8 kWh, 5 kVA Ib 7.22 A switch room"),  # 5 kVA / (√3 · 400 V)
    ("cottage", "-GB1", "pack 6 kWh hall"),
    ("cottage", "-GB1-TA1", "2.5 kW hall"),
    # 20 kVA / (√3 · 400 V)
    ("workshop", "-GA2", "standby Brock G20 20 kVA, Ib 28.9 A four-pole change-over switch"),
]

DATA = [
    ("workshop", "-KF1", "Fenwick L1"),
    ("workshop", "-TF1", "existing"),
    ("workshop", "-TF2", ""),
    ("workshop", "-KF2", ""),
]

EARTHING = [
    ("workshop", "-WE1", "rod electrode 25 mm² Cu, 6 m RA 12 Ω"),
    ("workshop", "-WE3", "water pipe 16 mm² Cu, 5 m"),
    ("workshop", "-WE4", "module frames 10 mm² Cu, 18 m"),
    (
        "workshop",
        "-WE5",
        "lightning protection system 16 mm² Cu class II, 4 down-conductors separation to the array NOT kept",
    ),
    # IEC 62305-3: 16 mm² Cu; the electrode's length and resistance are not given, so they are not printed
    ("cottage", "-WE4", "lightning protection system 16 mm² Cu class III separation to the array kept"),
    ("cottage", "-WE1", "ring electrode 16 mm² Cu"),
    ("ranch", "-WE1", "rod electrode 4 AWG Cu, 3 m"),
    # type 1 and 2: 16 mm², type 2: 6 mm² (IEC 60364-5-53 534.4.10)
    ("workshop", "PE", "surge protection, DC and AC type 1+2: ≥ 16 mm² Cu type 2: ≥ 6 mm² Cu"),
    ("yard", "PE", "surge protection, AC type 2: ≥ 6 mm² Cu"),
]

LABELS = [
    *SUPPLY, *BOARDS, *PROTECTION, *SWITCHES_AND_METERS, *CABLES, *INVERTERS, *INPUTS, *STRINGS, *DC_DEVICES,
    *NEIGHBOURS, *DATA, *EARTHING,
]  # fmt: skip


@pytest.mark.parametrize(("spec", "designation", "text"), LABELS)
def test_beside_the_device_stands(spec: str, designation: str, text: str) -> None:
    assert drawing(spec).label(designation) == text


SPLIT_PHASE = "phases: 1, split_phase: true, voltage: 240 V"


@pytest.mark.parametrize(
    ("supply", "text"),
    [
        (SPLIT_PHASE, "120/240 V 1 ph, 3 wire 60 Hz fault 10 kA"),
        ("phases: 3, voltage: 208 V", "208Y/120 V 3 ph, 4 wire 60 Hz fault 10 kA"),
        ("phases: 1, voltage: 120 V", "120 V 1 ph, 2 wire 60 Hz fault 10 kA"),
        ("phases: 3, voltage: 240 V, neutral: not_distributed", "240 V 3 ph, 3 wire 60 Hz fault 10 kA"),
    ],
)
def test_a_supply_is_named_as_in_north_america(supply: str, text: str) -> None:
    changes = [(SPLIT_PHASE, supply)] if supply != SPLIT_PHASE else []
    if "120 V" in supply:
        changes.append(("rated_power: 7600 W, rated_voltage: 240 V", "rated_power: 3800 W, rated_voltage: 120 V"))
    if "neutral" in supply:  # a TN-C-S system has one
        changes.append(("earthing_system: TN-C-S", "earthing_system: IT"))
    assert drawing("ranch", "", *changes).label("-GA1").begins(text)


@pytest.mark.parametrize(
    ("designation", "text"),
    [
        (
            "-GA1",
            "3 ~ 50 Hz 230 V IT Ipf 2 kA, Ze 21 Ω assumed cable not given existing",
        ),  # IEC 61293: no N without a neutral
        ("-TB1-FC1", "C 20 A 3P Icn 6 kA"),
        ("-TB1-WD1", "N2XH-J 4 × 4 mm² 11 m Iz 40 A"),  # L1 L2 L3 PE; Table B.52.5 C, 3 loaded
        ("-TB1", "Perrin I6 6 kW, Ib 16 A built in: DC switch"),
        ("-EZ1-FB1", "C 16 A 2P type A 30 mA Icn 6 kA"),
    ],
)
def test_three_lines_without_a_neutral(cabin: Drawing, designation: str, text: str) -> None:
    assert cabin.label(designation) == text


@pytest.fixture(scope="module")
def cabin() -> Drawing:
    made = run.draw(run.check(Path(__file__).parents[1] / "designs/ordinary/no-cabin-it-230.yaml"))
    return Drawing(made.sheets, made.about)


@pytest.fixture(scope="module")
def barn() -> Drawing:
    made = run.draw(run.check(Path(__file__).parents[1] / "designs/ordinary/gb-barn-tt-on-pme.yaml"))
    return Drawing(made.sheets, made.about)


def test_main_bonding_of_another_building_stands_at_its_board(barn: Drawing) -> None:
    """Of the three conductors at the main terminal none is of the barn, whose own electrode has 90 ohm."""
    assert "TT, RA 90 Ω" in barn.frame("-UC2")
    assert "-WE4 water pipe 10 mm² Cu, 5 m, -WE5 steel frame 10 mm² Cu" in barn.frame("-UC2")
    rows = {row["Designation"]: row["From earthing terminal to"] for row in barn.rows("Earthing conductors")}
    assert (rows["-WE2"], rows["-WE4"]) == ("water pipe", "water pipe, at -UC2")


def test_a_limiter_of_the_feed_in_is_named_and_its_means_stand_in_the_schedule() -> None:
    meter = "      - {kind: meter, purpose: supply, current_max: 80 A, bidirectional: false}\n"
    sensor = "      - {kind: meter, purpose: feed_in_limit, id: watch}\n"
    limit = "feed_in_limit: {sensor: watch, inverters: [gate], fail_safe_time: 5 s, fail_safe_power: 0 W}"
    made = drawing(
        "cottage", "", (meter, meter + sensor), ("    type: Orrin H3\n", f"    type: Orrin H3\n    {limit}\n")
    )
    assert made.label("-TB1") == (
        "Orrin H3 3 kW, Ib 13 A feed-in limiter built in: DC surge protection type 2 hall existing"
    )
    means = "feed-in limiter: sensor -UC1-PG2, limits -TB2, -TB3, without sensor after 5 s to 0 kW"
    assert made.row("Equipment schedule", "-TB1")["Make, model; ratings"].endswith(means)


def test_a_number_stays_with_what_it_is() -> None:
    texts = [stroke.text for stroke in drawing("ranch").device("-GA1").strokes if isinstance(stroke, Text)]
    assert "No. BR55010000000000000000000000000042" in texts
    assert drawing("ranch").label("-GA1").endswith("feed-in ≤ 800 W, existing")


@pytest.mark.parametrize(
    ("spec", "text", "count"),
    [
        ("cottage", "functional earth", 1),  # the second input of -TB1
        ("workshop", "functional earth", 0),
    ],
)
def test_signs_of_earth_at_strings_and_inputs(spec: str, text: str, count: int) -> None:
    signs = [group for sheet in drawing(spec).sheets for group in sheet.groups if group.layer == "symbol"
             and _words(group) == [text]]  # fmt: skip
    assert len(signs) == count


@pytest.mark.parametrize(
    ("spec", "before", "behind", "in_frame"),
    [("workshop", "-FC1", "-UC1-PG1", False), ("cottage", "-UC1-PG1", "-UC1-QB1", True),
     ("ranch", "-GA1", "-UC1-PG1", False)],
)  # fmt: skip
def test_the_boundary_of_ownership_stands_behind_the_last_of_the_operator(
    spec: str, before: str, behind: str, in_frame: bool
) -> None:
    """The drawing runs from the modules on the left to the network on the right, or down to it."""
    sheet = drawing(spec)
    boundary = next(
        group for each in sheet.sheets for group in each.groups if {"← customer", "↑ customer"} & {*_words(group)}
    )
    at = boundary.at
    assert at
    first, last = sheet.device(behind).at, sheet.device(before).at
    assert first
    assert last
    assert first[0] < at[0] < last[0] or first[1] < at[1] < last[1]
    frames = [group for each in sheet.sheets for group in each.groups if group.layer == "enclosure"]
    outlines = [stroke.points for group in frames for stroke in group.strokes if isinstance(stroke, Polyline)]
    assert any(_is_within(at, outline) for outline in outlines) == in_frame


def _is_within(at: Point, outline: Sequence[Point]) -> bool:
    """Return whether a point is inside an outline: a line from it to the right meets that an odd number of times."""
    sides = zip(outline, (*outline[1:], outline[0]), strict=True)
    return sum((a[1] > at[1]) != (b[1] > at[1]) and a[0] > at[0] for a, b in sides) % 2 == 1


def _words(group: Group) -> list[str]:
    return [stroke.text for stroke in group.strokes if isinstance(stroke, Text)]


@pytest.mark.parametrize(
    ("spec", "designation", "caption"),
    [
        # ip = 1.7 · 8 kA = 13.6 kA (IEC 61439-1 Table 7: n = 1.7 above 5 kA up to 10 kA)
        ("workshop", "-UC1", "-UC1 main board, switch room: 125 A, Ik 8 kA, ip 13.6 kA"),
        # 50 A fuse + 14 A generation = 64 A, next 80 A. Ik: c = 1.1; X = 1.1 · 230.9 V / 8 kA + 30 m · 0.08 mΩ/m =
        # 34.2 mΩ, R = 30 m · 1.91 mΩ/m = 57.3 mΩ (IEC 60228, 16 mm² Al), Z = 66.7 mΩ, 1.1 · 230.9 V / Z = 3.81 kA;
        # n = 1.5: 5.71 kA
        ("workshop", "-UC2", "-UC2 annex board: 80 A, Ik 3.81 kA, ip 5.71 kA"),
        ("workshop", "-XD1", "-XD1 gable box, south roof (outdoors)"),
        ("cottage", "-UC1", "-UC1 main, hall: 63 A, Ik 6 kA, ip 10.2 kA"),  # 6 kA · 1.7
        ("yard", "-UC2", "-UC2 pit board, pit (outdoors): 400 A, Ik 7.5 kA, ip 12.7 kA*"),  # 7.5 kA · 1.7
    ],
)
def test_a_frame_says_what_it_is_and_where(spec: str, designation: str, caption: str) -> None:
    assert drawing(spec).frame(designation) == caption


@pytest.mark.parametrize(
    ("spec", "names"),
    [
        ("workshop", {"-TB1-GC1…3", "-TB1-GC4", "-TB2-GC1"}),
        ("cottage", {"-TB1-GC1…2", "-TB1-GC3", "-TB2-GC1", "-TB3-GC1", "-TB4-GC1"}),
    ],
)
def test_all_arrays_are_bonded_by_one_conductor_to_the_bar(spec: str, names: set[str]) -> None:
    (sheet,) = [each for each in drawing(spec).sheets if any(g.key == "earthing" for g in each.groups)]
    bonds = [g for g in sheet.groups if g.layer == "earth" and g.key.startswith("wire-")]
    ends = {stroke.points[0] for g in bonds for stroke in g.strokes if isinstance(stroke, Polyline)}
    assert {name for name in names if drawing(spec).device(name).at in ends} == names


def test_main_earthing_terminal_says_where_it_is() -> None:
    texts = drawing("workshop").texts()
    assert "-XE1 main earthing terminal, switch room" in texts


OPERATOR = [
    ("-TB1", "Orrin S10 10 kW 11 kVA, Ib 16 A cos φ 0.95 set to ≤ 9 kW built in: DC switch, AC surge protection type 2 "
             "switch room"),
    ("-UC1-PG2", "feed-in limit 80 A direct"),
    ("-KF1", "Fenwick L1"),
]  # fmt: skip

CREW = [
    ("-TB1", ("10 kW 11 kVA", "set to ≤ 9 kW", "addr. 3"), ("Ib",)),
    ("-TB1-XD1", ("Uoc 440 V",), ("Isc",)),
    ("-UC2-WD1", ("NYY-J 5 × 16 mm² 30 m duct 3, then tray",), ("Iz",)),
    ("-EZ2", ("parking bay",), ("Ib",)),
    ("-GA2", ("20 kVA", "four-pole change-over switch"), ("Ib",)),
    ("-TB1-QA2", ("operated at the gate",), ()),
    ("-TB2", ("on L2",), ("Ib",)),
    ("-TB1-FC2…4", ("6 × 16 A gPV 600 V",), ()),
    ("-TB1-QB3", ("800 V 50 A DC-PV2 4P",), ()),
    # what a device is rated by its maker is not computed
    ("-UC1-PG2", ("80 A direct",), ()),
    ("-TB1-BU1", ("40 A 4P",), ()),
    ("-TB1-FC1", ("32 A 3P", "Icu 16 kA"), ()),
    ("-TB1-FB1", ("40 A 4P", "type B S 300 mA"), ()),
    ("-UC1-FA1", ("Uc 320 V", "Up 1.3 kV"), ()),
    ("-TB1-QA1", ("25 A 4P",), ()),
    ("-TB1-RA1", ("700 V", "20 A"), ()),
]


@pytest.mark.parametrize(("designation", "text"), OPERATOR)
def test_a_network_operator_sees_no_addresses(designation: str, text: str) -> None:
    assert drawing("workshop", "operator").label(designation) == text


@pytest.mark.parametrize(("designation", "seen", "unseen"), CREW)
def test_a_crew_sees_no_computed_currents_but_the_way_of_a_cable(
    designation: str, seen: tuple[str, ...], unseen: tuple[str, ...]
) -> None:
    label = drawing("workshop", "crew").label(designation)
    assert [text for text in seen if text not in label] == []
    assert [text for text in unseen if text in label] == []


def test_a_crew_is_told_of_a_voltage_above_the_limit_of_its_inverter() -> None:
    assert drawing("cottage", "crew").label("-TB1-XD1").startswith("Uoc 528 > 500 V")


def test_every_device_of_the_workshop_is_among_the_facts() -> None:
    told = {designation for name, designation, _ in LABELS if name == "workshop"} | {"-UC1", "-UC2"}  # by their frames
    assert set(drawing("workshop").designations()) - told == set()


def test_each_data_line_of_the_workshop_has_its_name_at_it() -> None:
    """Three links and a chain: their names stand at the lines, not among what is told of a device."""
    groups = drawing("workshop").sheets[0].groups
    texts = [each.text for group in groups for each in group.strokes if isinstance(each, Text)]
    names = ("-WF1 RS-485 Modbus RTU", "Ethernet", "wireless")
    assert [texts.count(name) for name in names] == [1, 2, 1]


def test_a_branch_that_is_drawn_once_says_for_how_many_it_stands() -> None:
    """Five inverters of 50 kW by `count`, each with a circuit-breaker and a string: the first to the last are five."""
    assert [text for text in drawing("yard").texts() if re.match(r"\d+ × -", text)] == ["5 × -TB1…5-FC1"]
    assert {"5 × (1 string, 50 kW)", "= 5 strings, 250 kW"} <= set(drawing("yard").texts())
