"""What the title block and the revision table say, field by field, read off sheet 1 below the captions."""

from __future__ import annotations

import re

import pytest
from printed_sheet import checked, drawing

FIELDS = [
    ("workshop", "Site", "4 Weir Lane, Lowmere"),
    ("workshop", "Customer", "Weir joinery"),
    ("workshop", "Rule profile", "cautious; GB: EREC G98, G99, Issue 1"),
    ("workshop", "Title", "Weir workshop"),
    ("workshop", "Supplementary title", "South and west roof"),
    ("workshop", "Identification number", "WW-E-12"),
    ("workshop", "Document type", "Single-line diagram"),
    ("workshop", "Legal owner", "Lowmere works office"),
    ("workshop", "Creator", "drawing desk"),
    ("workshop", "Approval person", "chief engineer"),
    ("workshop", "Status", "for tender"),
    ("workshop", "Date of issue", "2026-03-09"),  # no date given: that of the newest revision
    ("workshop", "Rev.", "B"),  # the newest
    ("workshop", "Change", "Store added"),
    ("workshop", "Drawn", "PQ"),
    ("workshop", "Checked", "RS"),
    ("workshop", "Language", "en"),
    ("workshop", "Paper size", "A1"),
    # the cottage names no owner and no number of the drawing
    ("cottage", "Legal owner", "Alder drawing office"),
    ("cottage", "Identification number", "MC/3"),
    ("cottage", "Date of issue", "2026-01-20"),  # as given, whatever the newest revision says
    ("cottage", "Rev.", "1"),
    ("cottage", "Change", "Only one"),
    ("cottage", "Date", "2026-01-19"),  # the revision's own, since the drawing was issued on another day
    ("cottage", "Drawn", ""),
    ("ranch", "Rule profile", "NEC 690; US: NEC 2023, IEEE 1547-2018"),
    ("ranch", "Legal owner", "Bend works"),
    # what nobody said stays empty, to be filled in by hand
    *(("ranch", caption, "") for caption in ("Site", "Customer", "Creator", "Approval person", "Status")),
    *(("ranch", caption, "") for caption in ("Supplementary title", "Date of issue", "Rev.", "Change")),
    ("yard", "Identification number", ""),
    ("yard", "Creator", "drawing desk"),
]


@pytest.mark.parametrize(("spec", "caption", "value"), FIELDS)
def test_field(spec: str, caption: str, value: str) -> None:
    assert drawing(spec).field(caption) == value


@pytest.mark.parametrize(
    ("reader", "kind"),
    [("operator", "Single-line diagram for review"), ("crew", "Single-line diagram for wiring")],
)
def test_document_type_for_a_reader(reader: str, kind: str) -> None:
    assert drawing("workshop", reader).field("Document type") == kind


def test_sheets_are_counted() -> None:
    sheets = drawing("workshop").sheets
    assert len(sheets) > 1
    for number, sheet in enumerate(sheets, 1):
        texts = [stroke.text for group in sheet.groups for stroke in group.strokes if hasattr(stroke, "text")]
        assert f"{number} of {len(sheets)}" in texts


def test_earlier_revisions_with_who_drew_and_who_checked() -> None:
    assert drawing("workshop").revisions() == [
        {"Rev.": "A", "Change": "First issue", "Date": "2026-02-03", "Drawn": "KL", "Checked": "MN"},
    ]


@pytest.mark.parametrize("spec", ["cottage", "ranch"])
def test_no_table_of_revisions_where_there_is_no_earlier_one(spec: str) -> None:
    assert drawing(spec).revisions() == []


def test_box_for_a_stamp_where_it_is_asked_for() -> None:
    assert {"Reviewer's stamp", "Reviewer's remarks"} <= set(drawing("workshop").texts())
    assert "Reviewer's stamp" not in drawing("cottage").texts()


SEVERITIES = ("danger", "non-compliance", "advice")


@pytest.mark.parametrize("spec", ["workshop", "cottage", "ranch", "yard"])
def test_every_finding_is_counted_however_many_are_told_together(spec: str) -> None:
    """The open ones by severity, the worst first, then what was assumed, then those accepted."""
    found = checked(spec).findings
    words = [each.severity.word if each.accepted is None else "accepted" for each in found]
    order = (*SEVERITIES, "assumption", "accepted")
    told = [f"{count} {_several(word, count)}" for word in order if (count := words.count(word))]
    listed = drawing(spec).flagged("Findings").values()
    assert drawing(spec).field("Findings").partition(";")[0] == ", ".join(told)
    assert len(listed) <= sum(word in SEVERITIES for word in words)


def _several(word: str, count: int) -> str:
    return "assumptions" if word == "assumption" and count > 1 else word


@pytest.mark.parametrize(
    ("spec", "severities"),
    [
        ("workshop", (*SEVERITIES, "assumptions")),
        ("cottage", (*SEVERITIES, "assumptions", "accepted")),
        ("ranch", (*SEVERITIES[1:], "assumptions")),
    ],
)
def test_these_specs_have_findings_of(spec: str, severities: tuple[str, ...]) -> None:
    assert tuple(re.findall(r"\d+ ([a-z-]+)", drawing(spec).field("Findings"))) == severities


def test_what_the_files_say_about_themselves() -> None:
    """Author, keywords and date, for whoever looks for a file by them."""
    about = drawing("workshop").about
    assert about.author == "Alder drawing office"
    assert about.keywords == (
        "single-line diagram", "photovoltaic system", "WW-E-12", "WW/7", "Weir joinery", "4 Weir Lane, Lowmere",
        "LM 5501", "Lowmere network", "for tender",
    )  # fmt: skip
    assert about.date == "2026-03-09"
    ranch = drawing("ranch").about
    assert (ranch.author, ranch.date) == ("Bend works", "")
