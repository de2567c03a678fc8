"""All that is printed comes through a phrase: drawn in a language that marks its texts, no plain English is left.

What has no marks must be a name of the spec, a letter symbol or a proper name. No source: our own rule.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

import pytest
import yaml
from spoken import MARKED, SPECS, drawn, english, marked, names_of, texts

from sld.sheet.lint import lint
from sld.sheet.worded import plain
from sld.symbols.typeface import missing
from sld.words import Language, language
from sld.words.extraction import template


def _names(path: Path) -> Iterable[str]:
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    included = [yaml.safe_load((path.parent / each).read_text(encoding="utf-8")) for each in data.get("include", [])]
    return names_of([data, *included])


def test_marks_are_seen_and_values_left_alone() -> None:
    assert marked("{cable} carries {{x}} A") == "{cable} ćãŕŕĩẽş {{ẋ}} A"
    assert english(["ćãŕŕĩẽş RCDş", "barn board", "to earth"], ["Barn", "barn"]) == {
        "board": "barn board",
        "earth": "to earth",
    }


def test_the_font_has_every_mark_and_every_letter_of_a_text() -> None:
    said = [text for message in template() for text in ([message.id] if isinstance(message.id, str) else message.id)]
    assert missing("".join(map(marked, said)).replace("\n", "")) == ""


@pytest.mark.parametrize("reader", ["full", "operator", "crew"])
@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_what_is_printed_comes_through_phrases(path: Path, reader: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Keys of the spec in a remedy are no English either; they are marked here to be told from it."""
    for module in ("sld.sheet.worded", "sld.sheet.hovered", "sld.words.plain"):
        monkeypatch.setattr(f"{module}.plain", _marking_keys)
    assert english(texts(drawn(path, MARKED, reader)), _names(path)) == {}


def _marking_keys(text: str, speaker: Language) -> str:
    return plain(re.sub("`[^`]*`", lambda key: marked(key[0]), text), speaker)


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_german_sheets_have_no_defect(path: Path) -> None:
    sheets = drawn(path, language("de"), "full")
    assert [(sheet.number, defect.message) for sheet in sheets for defect in lint(sheet)] == []
    assert {sheet.language for sheet in sheets} == {"de"}
