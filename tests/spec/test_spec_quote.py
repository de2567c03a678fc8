"""The text of a finding: whole, readable on a terminal, and the same facts as plain data."""

from __future__ import annotations

import json
import re

import pytest

from sld.finding import Acceptance, Finding, Severity
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.spec.quote import as_json, quote, short
from sld.spec.source import Unusable, read_text

TEXT = "loads:\n  main:\n    lable: Main\n"
PATH = ("loads", "main", "lable")
FINDING = Finding("SP30", Severity.DANGER, "unknown key `lable`", "write `label`", PATH, on_key=True)


def carets(text: str) -> tuple[str, str]:
    """Return the quoted line and the line of carets, both without the margin."""
    lines = text.split("\n")
    (index,) = [number for number, line in enumerate(lines) if line.strip().startswith("|")]
    return lines[index - 1].split(" | ", 1)[1], lines[index].split(" | ", 1)[1]


def test_the_whole_text() -> None:
    assert quote(read_text(TEXT, "roof.yaml"), FINDING).split("\n") == [
        "roof.yaml:3:5: error SP30 unknown key `lable`",
        "    2 |   main:",
        "    3 |     lable: Main",
        "      |     ^^^^^",
        "   do: write `label`",
        "   why: sld explain SP30",
    ]


def test_one_line_is_what_editors_parse() -> None:
    assert short(read_text(TEXT, "roof.yaml"), FINDING) == "roof.yaml:3:5: error SP30 unknown key `lable`"


@pytest.mark.parametrize("severity", list(Severity))
def test_the_finding_of_a_rule_has_the_word_of_its_severity(severity: Severity) -> None:
    finding = Finding("DC101", severity, "message", "", ("loads",))
    assert f": {severity.word} DC101 message" in quote(read_text(TEXT), finding)
    assert "do:" not in quote(read_text(TEXT), finding)


def test_other_places_and_the_acceptance_follow() -> None:
    finding = Finding(
        "DC101",
        Severity.ADVICE,
        "message",
        "remedy",
        (),
        also=((("loads", "main"), "the other end"),),
        accepted=Acceptance("agreed on site", "designer", "2026-01-31"),
    )
    lines = quote(read_text(TEXT, "r.yaml"), finding).split("\n")
    assert lines[1:] == [
        "   also: r.yaml:2:3: the other end",
        "   do: remedy",
        "   accepted: agreed on site (designer, 2026-01-31)",
        "   why: sld explain DC101",
    ]


def test_a_tab_is_copied_into_the_line_of_carets() -> None:
    source = read_text('{\n\t"a":\t{"b": 5}}\n')
    line, under = carets(quote(source, Finding("SP36", Severity.DANGER, "m", "", ("a", "b"))))
    assert line == '\t"a":\t{"b": 5}}'
    assert under == "\t    \t      ^"


def test_wide_characters_take_two_columns() -> None:
    # East Asian Width W of Unicode annex 11: each of these takes two columns of a terminal.
    source = read_text("{名前: 太陽, b: 5}\n")
    line, under = carets(quote(source, Finding("SP36", Severity.DANGER, "m", "", ("名前",))))
    assert line == "{名前: 太陽, b: 5}"
    assert under == " " * 7 + "^^^^"


@pytest.mark.parametrize("before", [0, 50, 500])
def test_a_long_line_is_cut_around_the_place(before: int) -> None:
    text = f"{{a: {'x' * before}, key: wrong, c: {'y' * 500}}}"
    source = read_text(text)
    line, under = carets(quote(source, Finding("SP36", Severity.DANGER, "m", "", ("key",))))
    assert len(line) <= 102
    assert [sign for sign, mark in zip(line, under, strict=False) if mark == "^"] == list("wrong")


def test_a_text_cannot_steer_the_terminal() -> None:
    with pytest.raises(Unusable) as caught:
        read_text("a: x\x1b[2J\nb: 1\n")
    shown = quote(caught.value.source, caught.value.findings[0])
    assert "\x1b" not in shown
    assert "a: x\\x1b[2J" in shown


def test_the_carets_stand_under_a_value_made_visible() -> None:
    source = read_text("{a: 'x\u200fy', b: '\u200f', c: 5}\n")
    line, under = carets(quote(source, Finding("SP36", Severity.DANGER, "m", "", ("b",))))
    assert line == r"{a: 'x\u200fy', b: '\u200f', c: 5}"
    assert [sign for sign, mark in zip(line, under, strict=False) if mark == "^"] == list(r"'\u200f'")


def test_colour_changes_nothing_but_colour() -> None:
    source = read_text(TEXT, "roof.yaml")
    coloured = quote(source, FINDING, colour=True)
    assert "\x1b[31m" in coloured
    assert re.sub("\x1b\\[[0-9]+m", "", coloured) == quote(source, FINDING)


def test_an_unusable_text_is_quoted_where_reading_stopped() -> None:
    with pytest.raises(Unusable) as caught:
        read_text("a: 1\nb: [1, 2\nc: 3\n", "roof.yaml")
    lines = quote(caught.value.source, caught.value.findings[0]).split("\n")
    assert lines[0].startswith("roof.yaml:2:4: error SP09")
    assert lines[2:4] == ["    2 | b: [1, 2", "      |    ^"]
    assert lines[4] == "   also: roof.yaml:3:2: and this does not belong inside"
    assert as_json(caught.value.source, caught.value.findings[0])["path"] == []


def test_the_plain_data_has_the_same_facts() -> None:
    rating = Rating(Symbol.UOC_MAX, 812.0, "V", "n Uoc", (), "a clause")
    finding = Finding("DC101", Severity.DANGER, "m", "r", ("loads", "main"), "-T1", compared=(rating,))
    data = as_json(read_text(TEXT, "roof.yaml"), finding)
    assert json.loads(json.dumps(data)) == {
        "code": "DC101",
        "severity": "danger",
        "message": "m",
        "remedy": "r",
        "device": "-T1",
        "file": "roof.yaml",
        "line": 2,
        "column": 3,
        "end_column": 7,
        "path": ["loads", "main"],
        "also": [],
        "compared": [{"symbol": "Uoc,max", "value": 812.0, "unit": "V"}],
        "accepted": None,
    }
