"""Cautions, notes, assumptions, findings and their flags, and the texts for pointers and screen readers."""

from __future__ import annotations

import re

import pytest
from printed_sheet import checked, drawing

from sld.documents.drawing.notes import basis

ON_A_BUILDING = (("building: ground_mounted", "building: dwelling"),)

# IEC 60364-7-712 712.514: a notice of all sources of supply (from memory)
SOURCES = [
    (
        "workshop",
        "several sources of supply. Isolate the public supply, every inverter, every battery and every generator",
    ),
    ("cottage", "several sources of supply. Isolate the public supply, every inverter and every battery before work;"),
    ("ranch", "two sources of supply. Isolate the public supply and every inverter before work;"),
    ("yard", "two sources of supply. Isolate the public supply and every inverter before work;"),
]


@pytest.mark.parametrize(("spec", "text"), SOURCES)
def test_the_first_caution_names_every_source(spec: str, text: str) -> None:
    assert drawing(spec).paragraphs("Cautions")[0].startswith(f"WARNING: {text}")


@pytest.mark.parametrize("spec", ["workshop", "cottage", "ranch", "yard"])
@pytest.mark.parametrize("reader", ["", "operator", "crew"])
def test_cautions_are_there_for_every_reader(spec: str, reader: str) -> None:
    text = " ".join(drawing(spec, reader).paragraphs("Cautions"))
    for caution in ("DC conductors stay live in daylight", "not switches: do not open them under load", "Design aid",
                    "person licensed for such work"):  # fmt: skip
        assert caution in text


WORKSHOP = [
    "Rule profile: cautious. Air -15 to 40 °C, mounting roof tilted, other building, 1.5 lightning flashes to ground a "
    "km² and year, ground 15 °C, soil 1.2 K·m/W, irradiance on the rear 10 %. Places: switch room in main hall 30 °C; "
    "yard outdoors; south roof outdoors. Earthing system TN-S.",
    "Designer: Alder drawing office, planning desk, 2 Alder Row, 0100 200, plan@alder.example.",
    "Installer: Hazel fitting shop.",
    "System installed 2026-05-04, commissioned 2026-05-11.",
    "Project reference: WW/7.",
    "Network operator: Lowmere network.",
    "Earthing: test link beside the bar.",
    "Country: GB.",
    "Battery side of -GB1: isolation and protection of its direct current are not in this drawing and were not "
    "checked; see the maker's manual.",
    "Network setting of the inverters: Lowmere 7.",
    "Wireless: -TF1 to -TF2.",
]

COTTAGE = [
    "Rule profile: cautious. Air -15 to 40 °C, mounting free standing, ground mounted. Places: outdoor shed outdoors. "
    "Earthing system TT.",
    "Designer: Alder drawing office.",
    "System commissioned 2026-06-01.",
    "Interface protection is built into -TB1.",
    "Interface protection is taken to be built into -TB2…4; not stated.",
]

NOTES = [
    *(("workshop", text) for text in WORKSHOP),
    *(("cottage", text) for text in COTTAGE),
    ("yard", "Interface protection is built into -TB1…5."),
    ("yard", "Interface protection is taken to be built into -TB6; not stated."),
    ("ranch", "Country: US."),
    (
        "ranch",
        "Rule in US: Detection and interruption of DC ground faults with indication (NEC 2023 690.41(B), from memory).",
    ),
    (
        "ranch",
        "Rule in US: Mated DC connectors are of one type and make or documented as intermateable (NEC 690.33(C)).",
    ),
]


@pytest.mark.parametrize(("spec", "text"), NOTES)
def test_note(spec: str, text: str) -> None:
    assert text in drawing(spec).paragraphs("Notes")


@pytest.mark.parametrize(
    ("spec", "words"),
    [
        ("ranch", "on or in buildings"),  # the array stands on the ground
        ("ranch", "Interface protection is taken"),  # the type says it
        ("cottage", "Project reference"),  # it is the identification number already
        ("cottage", "Network operator"),
        ("cottage", "Installer"),
        ("cottage", "installed"),
        ("cottage", "Wireless"),
        ("cottage", "Country"),
        ("yard", "Battery side"),
        ("workshop", "Interface protection is"),  # it has a device of its own
        ("workshop", "This reading"),
        ("workshop", "Paper:"),  # the size that is asked for
    ],
)
def test_no_note_of(spec: str, words: str) -> None:
    assert not [text for text in drawing(spec).paragraphs("Notes") if words in text]


@pytest.mark.parametrize("topic", ["DC arc-fault protection for PV circuits", "Shutdown of the array's conductors"])
def test_notes_for_buildings_are_on_those_of_buildings(topic: str) -> None:
    assert [
        text
        for text in drawing("ranch", "", *ON_A_BUILDING).paragraphs("Notes")
        if text.startswith(f"Rule in US: {topic}")
    ]
    assert not [text for text in drawing("ranch").paragraphs("Notes") if text.startswith(f"Rule in US: {topic}")]


def test_what_a_profile_leaves_open_is_said() -> None:
    (text,) = [text for text in drawing("ranch").paragraphs("Notes") if text.startswith("Profile NEC 690: ")]
    assert "surge protection (Article 242) not computed" in text
    assert not [text for text in drawing("workshop").paragraphs("Notes") if text.startswith("Profile cautious")]


@pytest.mark.parametrize(
    ("reader", "text"),
    [("operator", "terminals, routes, torques and the data bus are left out"),
     ("crew", "computed currents and limits at the symbols and the formulas behind the ratings are left out")],
)  # fmt: skip
def test_what_is_left_out_for_a_reader_is_said(reader: str, text: str) -> None:
    assert [each for each in drawing("workshop", reader).paragraphs("Notes") if text in each]


def test_another_paper_than_asked_is_said() -> None:
    small = drawing("workshop", "", ("paper: A1", "paper: A4"))
    assert small.field("Paper size") != "A4"
    assert [text for text in small.paragraphs("Notes") if re.match(r"Paper: A\d instead of A4", text)]


ASSUMED = [
    ("workshop", "copper cable with PVC insulation (-TB2-WD1)"),
    ("workshop", "solar cable to EN 50618, 3 places (-TB2-WD2, -TB1-WD2…4, -TB1-WD5)"),
    ("workshop", "a DC isolator at input 1 of west (-TB2-XD1)"),
    ("workshop", "the network operator's part ends behind the service fuse (-GA1)"),
    ("cottage", "bonding of the module frames to the main earthing terminal"),
    ("yard", "a main earthing terminal with an earth electrode and bonded module frames"),
]


@pytest.mark.parametrize(("spec", "text"), ASSUMED)
def test_assumption(spec: str, text: str) -> None:
    assert text in drawing(spec).paragraphs("Assumptions")


@pytest.mark.parametrize(
    ("spec", "text"),
    [
        ("cottage", "cell 25 K above the air for the mounting: pole or open structure with air all round (Tc,max)"),
        ("yard", "current transformers with 5 A secondary (Isn)"),
    ],
)
def test_taken_in_formulas(spec: str, text: str) -> None:
    assert text in drawing(spec).paragraphs("Taken in formulas")


@pytest.mark.parametrize("title", ["Assumptions", "Taken in formulas"])
def test_nothing_is_assumed_twice(title: str) -> None:
    paragraphs = drawing("workshop").paragraphs(title)
    assert len(paragraphs) == len(set(paragraphs)) > 1


FINDINGS = [
    ("workshop", "AC10", "danger", "RCBO -TB2-FB1 is for one direction of power, and generation"),
    ("workshop", "AC43*", "non-compliance", "contactor -TB1-QA1 is rated 25 A, below the 32 A"),
    # 2 · 9.4 A · 25 m · 6.49 Ω/km / 264 V
    ("workshop", "DC24", "advice", "input -TB1-XD2 loses 1.16 % of its voltage along the cables"),
    ("cottage", "AC11*", "non-compliance", "inverter -TB2 has no AC isolator in its circuit; likewise -TB3, -TB4"),
]


@pytest.mark.parametrize(("spec", "code", "severity", "text"), FINDINGS)
def test_finding(spec: str, code: str, severity: str, text: str) -> None:
    (row,) = [row for row in drawing(spec).flagged("Findings").values() if text in row]
    assert row.startswith(f"{code} {severity}: {text}")
    assert " Remedy: " in row


def test_an_accepted_finding_says_who_when_and_why() -> None:
    (row,) = drawing("cottage").flagged("Accepted deviations").values()
    assert row == (
        "DC01* danger: string -TB1-GC1…2 reaches 528 V at -15 °C, above the 500 V of the inverter "
        "accepted by chief engineer on 2026-01-18: never colder than two degrees here"
    )
    assert not [text for text in drawing("cottage").flagged("Findings").values() if text.startswith("DC01")]


@pytest.mark.parametrize("spec", ["workshop", "cottage", "ranch", "yard"])
def test_the_flag_of_a_finding_stands_at_its_device(spec: str) -> None:
    sheet = drawing(spec)
    told = {**sheet.flagged("Findings"), **sheet.flagged("Accepted deviations")}
    devices = {*sheet.designations(), "-WE3"}  # the frames' conductor, which has no symbol at the bar
    placed = 0
    for number, text in told.items():
        named = devices & set(re.findall(r"(?<!\S)(-[A-Z]{2}[0-9A-Z…-]*)", text.split(" Remedy: ")[0]))
        if named and "board -" not in text:  # whose finding may stand at its frame
            assert any(number in sheet.flags(each) for each in named), text
            placed += 1
    assert placed


def test_flags_are_numbered_from_one_worst_first() -> None:
    told = drawing("workshop").flagged("Findings")
    assert list(told) == [str(number) for number in range(1, len(told) + 1)]
    order = [("danger", "non-compliance", "advice").index(text.split()[1].rstrip(":")) for text in told.values()]
    assert order == sorted(order)


HOVER = [
    ("workshop", "-UC1-QB1", "-UC1-QB1 main switch Thornby S100"),
    ("workshop", "-TB1-QB1", "-TB1-QB1 isolator gable switch"),
    ("workshop", "-GB1", "-GB1 battery Fenwick B8"),
    ("workshop", "-UC1", "-UC1 board main board"),
    ("workshop", "-TB1-XD1", "-TB1-XD1 input"),
    ("workshop", "-TB1-XD1", "Uoc,max = 440 V = N·Uoc·(1 + β/100·(Tmin - 25)) | N = 10; Uoc = 40 V; β = -0.25 %/K; "
                             "Tmin = -15 °C | IEC 62548:2016 7.2"),
    ("workshop", "-TB1-QB3", "-TB1-QB3 DC isolator"),
    ("yard", "-TB1…5", "drawn once for 5, likewise: -TB2, -TB3, -TB4, -TB5"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "designation", "line"), HOVER)
def test_a_pointer_on_a_device_reads(spec: str, designation: str, line: str) -> None:
    lines = drawing(spec).hover(designation).split("\n")
    assert [each for each in lines if each.startswith(line)]
    if line.startswith(designation):
        assert lines[0] == line


@pytest.mark.parametrize("spec", ["workshop", "yard"])
def test_a_pointer_reads_eight_lines_at_most(spec: str) -> None:
    titles = [group.title for sheet in drawing(spec).sheets for group in sheet.groups if group.layer == "symbol"]
    assert max(title.count("\n") + 1 for title in titles) in range(6, 9)


@pytest.mark.parametrize("spec", ["workshop", "cottage"])
def test_a_pointer_on_a_flag_reads_its_finding(spec: str) -> None:
    told = {**drawing(spec).flagged("Findings"), **drawing(spec).flagged("Accepted deviations")}
    hover = drawing(spec).hover_of_flags()
    assert set(hover) == set(told)
    for number, text in hover.items():
        message, remedy = text.split("\n")
        assert told[number].startswith(message)
        assert remedy in told[number] or "accepted by" in told[number]


def test_the_sheet_in_words() -> None:
    """For readers who cannot see it: what it is of, how many modules, strings and inverters, what is on the way."""
    sheets = drawing("workshop").sheets
    assert sheets[0].title == f"Weir workshop, Single-line diagram, sheet 1 of {len(sheets)}"
    text = sheets[0].description
    # 47 · 310 W
    assert text.startswith(
        "Single-line diagram of Weir workshop. 47 PV modules, 5 strings, 14.6 kWp, 2 inverters. Three-phase supply of "
        "400 V, earthing system TN-S. On the way: "
    )
    named = {name: int(number) for number, name in re.findall(r"(?:: |, )(\d+) ([^,.]+)", text)}
    assert {"DC isolators": 3, "circuit-breakers": 3, "meters": 3, "RCBO": 1, "main switch": 1}.items() <= named.items()
    assert "1 inverter. Single-phase supply of 240 V" in drawing("ranch").sheets[0].description


def test_what_is_planned_is_told_apart_in_words() -> None:
    """As the power beside it, the counts are of what is there: 24 + 6 + 2 modules; one more is planned."""
    assert (
        "Moor cottage. 32 PV modules, 5 strings, 9.92 kWp, 3 inverters. Planned besides: 1 PV module, 1 string, "
        "1 inverter."
    ) in drawing("cottage").sheets[0].description


def test_later_sheets_are_told_by_what_is_on_them() -> None:
    assert "Data bus and links" in drawing("workshop").sheets[1].description


@pytest.mark.parametrize(
    ("spec", "titles"),
    [
        ("workshop", ["Summary", "Cautions", "Findings", "Notes", "Cable schedule", "Equipment schedule",
                      "Earthing conductors"]),
        ("cottage", ["Cautions", "Findings", "Accepted deviations", "Assumptions", "String schedule"]),
    ],
)  # fmt: skip
def test_what_is_to_be_acted_on_comes_first(spec: str, titles: list[str]) -> None:
    """Summary, cautions and findings before what explains them, schedules last."""
    told = drawing(spec).titles()
    assert [title for title in told if title in titles] == titles


@pytest.mark.parametrize(
    ("said", "told"),
    [(", overhead: true", ["Overhead supply."]),
     (", overhead: true, direct_strokes: true", ["Overhead supply, exposed to direct strokes."])],
)  # fmt: skip
def test_a_supply_by_an_overhead_line_is_noted(said: str, told: list[str]) -> None:
    change = "earthing_system: TT,", f"earthing_system: TT{said},"
    notes = map(str, basis(checked("cottage", change).system).paragraphs)
    assert [note for note in notes if note.startswith("Overhead")] == told


@pytest.mark.parametrize("said", ["rural", "suburban", "urban"])
def test_the_surroundings_are_told_as_they_are_said(said: str) -> None:
    change = "  lightning_density: 1.5 /km2/yr", f"  surroundings: {said}\n  lightning_density: 1.5 /km2/yr"
    (site,) = [text for text in map(str, basis(checked("workshop", change).system).paragraphs) if "mounting" in text]
    assert f"km² and year, {said}, ground 15 °C" in site
