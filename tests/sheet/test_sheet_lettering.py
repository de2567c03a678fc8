"""Wrapping by true widths. The width of a line comes from the font's own table (see tests/symbols)."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sld.sheet.lettering import ELLIPSIS, divided, fitted, shortened, wrap
from sld.symbols.glyph import glyph_box
from sld.symbols.stroke import Text
from sld.symbols.typeface import PITCH, printable, text_width_mm
from sld.words.phrase import SOFT_HYPHEN

WORDS = st.text(st.sampled_from("abcWM 0123456789-/×²Ω%.\n "), max_size=120)
WIDTHS = st.floats(8.0, 120.0)


@given(WORDS, WIDTHS, st.sampled_from([1.8, 2.5, 3.5]))
def test_no_line_is_wider_than_the_column_and_no_letter_is_lost(text: str, width_mm: float, height_mm: float) -> None:
    lines = wrap(text, width_mm, height_mm)
    for line in lines:
        assert text_width_mm(line, height_mm) <= width_mm or len(line) == 1
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(WORDS, WIDTHS)
def test_words_are_cut_only_where_one_alone_is_too_wide(text: str, width_mm: float) -> None:
    words = text.split()
    if all(text_width_mm(word) + 0.31 <= width_mm for word in words):
        assert " ".join(wrap(text, width_mm)).split() == words


def test_a_word_that_is_too_wide_is_cut_behind_a_hyphen_that_is_near_its_beginning() -> None:
    assert wrap("Non-compliance, told", text_width_mm("Non-complian") + 1.0) == ("Non-", "compliance,", "told")


@given(st.text(max_size=60), WIDTHS, st.integers(1, 3))
def test_what_is_fitted_fits_and_shows_when_it_is_cut(text: str, width_mm: float, count: int) -> None:
    lines = fitted(text, width_mm, 2.5, count)
    assert len(lines) <= count
    assert all(text_width_mm(line) <= width_mm or len(line) == 1 for line in lines)
    if len(wrap(text, width_mm)) > count:
        assert lines[-1].endswith(ELLIPSIS)


@given(st.text(max_size=60))
def test_printable_leaves_no_control_character(text: str) -> None:
    assert not any(unicodedata.category(char) in {"Cc", "Cs"} for char in printable(text))
    assert printable(printable(text)) == printable(text)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("ab\u202ecd\u202c", "ab\\u202ecd\\u202c"),
        ("\u2066x\u2069 \u200b", "\\u2066x\\u2069 \\u200b"),
        ("so\u00adlar \u200e\u200f", "solar "),  # a hyphen and marks that stand for nothing by themselves
        ("a\u200cb\u200dc", "a\u200cb\u200dc"),  # Persian needs the joiners
        ("a\nb\tc\x1b[31m", "a b c [31m"),
        ("e\u0301", "é"),
    ],
)
def test_what_is_not_seen_is_shown_or_gone(text: str, shown: str) -> None:
    """The general category Cf of the Unicode Standard, section 23.2 and 23.3 (layout controls)."""
    assert printable(text) == shown


@pytest.mark.parametrize(
    ("text", "apart"),
    [
        ("a cable of 25 m", "25"),  # a number without its unit is misread
        ("protected by 16 A", "16"),
        ("to IEC 60364-7-712", "IEC"),
    ],
)
def test_number_and_unit_stay_together(text: str, apart: str) -> None:
    width_mm = text_width_mm(text) - 1.0
    assert not wrap(text, width_mm)[0].endswith(apart)


@pytest.mark.parametrize(("text", "expected"), [("", ("",)), ("a\nb", ("a", "b")), ("  a   b ", ("a b",))])
def test_line_feeds_and_blanks(text: str, expected: tuple[str, ...]) -> None:
    assert wrap(text, 50.0) == expected


def test_shortened_keeps_what_fits() -> None:
    assert shortened("Short", 50.0) == "Short"
    cut = shortened("A title that is much too long for its field", 30.0)
    assert cut.startswith("A title")
    assert cut.endswith(ELLIPSIS)
    assert text_width_mm(cut) <= 30.0
    assert shortened("Wide", 0.1) == ELLIPSIS


@pytest.mark.parametrize("unit", ["VA", "kVA", "kWp", "mm²", "AWG", "°C"])
def test_a_unit_stays_with_its_number(unit: str) -> None:
    """However narrow the room: "10" never ends a line whose next one begins with the unit."""
    lines = wrap(f"Some words before 10 {unit} and some behind it", 16.0)
    assert any(f"10 {unit}" in line for line in lines)


def test_a_long_word_costs_no_more_than_its_length() -> None:
    assert len(wrap("x" * 20_000, 30.0)) > 1000


@pytest.mark.parametrize("text", ["水车巷", "縦書き", "ที่", "Ägypten", "jÖg"])
def test_two_lines_do_not_touch(text: str) -> None:
    """Also of what the font lacks, which a browser takes from another."""
    above, below = (glyph_box(Text((10, y), text, 2.5)) for y in (10, 10 + PITCH * 2.5))
    assert above
    assert below
    assert not above.meets(below)


DIVIDED = [  # text with ~ for a soft hyphen, width in mm, lines; widths of the words from the font's own table
    ("Überspannungs~schutzgerät, Typ 2", 80.0, ("Überspannungsschutzgerät, Typ 2",)),
    ("Überspannungs~schutzgerät, Typ 2", 45.0, ("Überspannungsschutzgerät,", "Typ 2")),
    ("Überspannungs~schutzgerät, Typ 2", 30.0, ("Überspannungs-", "schutzgerät, Typ 2")),
    ("Sicherungs~last~trennschalter", 28.0, ("Sicherungslast-", "trennschalter")),
    ("Sicherungs~last~trennschalter", 22.0, ("Sicherungs-", "last-", "trennschalter")),
    ("Fehlerstrom-/Leitungs~schutzschalter", 45.0, ("Fehlerstrom-/Leitungs-", "schutzschalter")),
    ("Erdung und Potential~ausgleich", 30.0, ("Erdung und", "Potentialausgleich")),
    ("no such sign", 80.0, ("no such sign",)),
]


@pytest.mark.parametrize(("text", "width_mm", "lines"), DIVIDED)
def test_a_word_wider_than_a_line_is_divided_where_its_catalogue_allows(
    text: str, width_mm: float, lines: tuple[str, ...]
) -> None:
    """At its joints, in as few parts as there may be; a hyphen stands nowhere but at the end of a line."""
    assert wrap(divided(text.replace("~", SOFT_HYPHEN), width_mm), width_mm) == lines


@pytest.mark.parametrize("width_mm", [10.0, 16.0, 20.0, 24.0])
def test_a_word_with_a_part_wider_than_a_line_is_cut_as_any_other(width_mm: float) -> None:
    """Else what is left of a part, and its hyphen, would stand within a line."""
    text = f"Überspannungs{SOFT_HYPHEN}schutzgerät, Typ 2"
    assert divided(text, width_mm) == text.replace(SOFT_HYPHEN, "")
