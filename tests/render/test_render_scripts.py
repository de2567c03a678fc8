"""Hebrew, Arabic and what the font lacks: in the order of reading, or refused with the reason."""

from __future__ import annotations

import sys
import xml.etree.ElementTree as ElementTree

import pytest
from drawn_sheets import sheet

from sld import run
from sld.render import MissingScripts, UnknownLetters, pdf, readable, svg
from sld.symbols import script
from sld.symbols.script import in_order, joined_up, runs_left, starts_right
from sld.symbols.typeface import missing, printable, text_width_mm

SVG = "{http://www.w3.org/2000/svg}"

# Unicode Standard Annex 9, worked out by hand from the rules that are named beside each
ORDER = (
    ("House 5", "House 5"),
    ("שלום", "םולש"),  # L2: one run at level 1 is reversed
    ("בית 25", "25 תיב"),  # W2, L2: a European number keeps its own order
    ("25 בית", "תיב 25"),  # P2, P3: the first strong letter decides, so the number stands at the right
    ("plan בית 25", "plan 25 תיב"),  # N1: between Hebrew and a number that follows it
    ("בית (אב)", "(בא) תיב"),  # L4: brackets are mirrored where they run to the left
    ("בית [(א)]", "[(א)] תיב"),
    ("<(א)> (b) גג", "גג (b) <(א)>"),
    ("house (בית) 5", "house (תיב) 5"),  # N0: a pair of brackets takes the direction around it
)


@pytest.mark.parametrize(("read", "stands"), ORDER)
def test_letters_stand_as_they_are_read(read: str, stands: str) -> None:
    pytest.importorskip("bidi", reason="needs python-bidi: pip install '.[scripts]'")
    assert in_order(read) == stands


# Unicode Standard, chapter 9, and the names of its presentation forms B
JOINED = (
    ("باب", "\ufe91\ufe8e\ufe8f"),  # BEH INITIAL, ALEF FINAL, BEH ISOLATED
    ("لا", "\ufefb"),  # the ligature of LAM and ALEF, which is required
    ("بيت", "\ufe91\ufef4\ufe96"),  # BEH INITIAL, YEH MEDIAL, TEH FINAL
    # Persian: MEEM INITIAL, FARSI YEH FINAL, a joiner, KHAH INITIAL, WAW FINAL, ALEF ISOLATED, HEH INITIAL, MEEM FINAL
    ("\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645", "\ufee3\ufbfd\u200c\ufea7\ufeee\ufe8d\ufeeb\ufee2"),
    ("בית A1", "בית A1"),
)


@pytest.mark.parametrize(("read", "drawn"), JOINED)
def test_arabic_letters_are_joined_once(read: str, drawn: str) -> None:
    pytest.importorskip("arabic_reshaper", reason="needs arabic-reshaper: pip install '.[scripts]'")
    assert joined_up(read) == printable(read) == printable(printable(read)) == drawn
    assert missing(drawn) == ""
    assert text_width_mm(read) == text_width_mm(drawn)


@pytest.mark.parametrize(
    ("line", "left", "right"),
    [("House", False, False), ("25", False, False), ("House בית", True, False), ("5 بيت A", True, True)],
)
def test_direction_of_a_line(line: str, left: bool, right: bool) -> None:
    assert (runs_left(line), starts_right(line)) == (left, right)


def test_a_viewer_is_told_where_the_line_begins() -> None:
    # SVG 2, section 11.10: with direction rtl the anchor `end` is the left end of the text
    hebrew, latin = ElementTree.fromstring(svg(sheet(texts=("בית 25", "House")))).findall(f".//{SVG}text")
    assert (hebrew.text, hebrew.get("direction"), hebrew.get("text-anchor")) == ("בית 25", "rtl", "end")
    assert (latin.get("direction"), latin.get("text-anchor")) == (None, None)


def test_letters_that_the_font_lacks_are_refused() -> None:
    with pytest.raises(UnknownLetters, match=r"no 家 屋, .*write this text in letters that it has: Latin") as caught:
        run.files((sheet(texts=("家屋 A", "House")),), "house", ("svg",))
    assert caught.value.letters == "家屋"


def test_without_the_libraries_nothing_stands_in_the_wrong_order(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(script, "find_spec", lambda name: None)
    script.known.cache_clear()
    monkeypatch.setitem(sys.modules, "bidi", None)
    drawn = (sheet(texts=("בית 25",)),)
    try:
        readable((sheet(texts=("House",)),))
        with pytest.raises(MissingScripts, match=r"python-bidi .*wrong order: .* -m pip install 'python-bidi"):
            readable(drawn)
        with pytest.raises(MissingScripts):
            pdf(drawn)
    finally:
        script.known.cache_clear()
