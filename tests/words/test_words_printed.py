"""All that is printed comes through a phrase: drawn in a language that marks its texts, no plain English is left.

What has no marks must be a name of the spec, a letter symbol or a proper name. And no text is made before the page:
while specs are checked and drawn nothing asks for the English of a phrase; one in an f-string, in `str()` or in a join
would be English in every language. No source: our own rule.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from unittest import mock

import pytest
import yaml
from example_specs import FEW, READERS, SAMPLED, SPECS, case
from spoken import MARKED, checked, drawn, english, marked, names_of, names_of_grid, texts

from sld.sheet.lint import lint
from sld.sheet.worded import plain
from sld.symbols.typeface import missing
from sld.words import Language, amount, counted, language, phrase, sequence, verbatim
from sld.words.extraction import template

MARKED_FOR = [
    case(path, reader, sampled=path.stem in FEW and (reader == "full" or path.stem == FEW[1]))
    for path in SPECS
    for reader in READERS
]
"""A few specs for the full reader, one of them for those who get a part of that: each is laid out for these marks."""


def _names(path: Path) -> Iterable[str]:
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    included = [yaml.safe_load((path.parent / each).read_text(encoding="utf-8")) for each in data.get("include", [])]
    return [*names_of([data, *included]), *names_of_grid(checked(path).parts[0].system)]


def test_marks_are_seen_and_values_left_alone() -> None:
    assert marked("{cable} carries {{x}} A") == "{cable} ćãŕŕĩẽş {{ẋ}} A"
    assert english(["ćãŕŕĩẽş RCDş", "barn board", "to earth"], ["Barn", "barn"]) == {
        "board": "barn board",
        "earth": "to earth",
    }


def test_the_font_has_every_mark_and_every_letter_of_a_text() -> None:
    said = [text for message in template() for text in ([message.id] if isinstance(message.id, str) else message.id)]
    assert missing("".join(map(marked, said)).replace("\n", "")) == ""


class SaidTooEarlyError(AssertionError):
    """Somebody asked for the English of what is still to be said."""


@pytest.fixture
def no_english() -> Iterator[None]:
    def refuse(said: object) -> str:
        raise SaidTooEarlyError(repr(said))

    spoken = {base for said in (phrase("x"), amount(1, "A")) for base in type(said).__mro__ if "__str__" in vars(base)}
    (base,) = spoken - {object}
    with mock.patch.object(base, "__str__", refuse):
        yield


@pytest.mark.usefixtures("no_english")
@pytest.mark.parametrize(
    "said", [phrase("string"), counted("{count} string", "{count} strings", 2), sequence(["a"]), verbatim("a")],
    ids=lambda said: type(said).__name__,
)  # fmt: skip
def test_too_early_is_seen(said: object) -> None:
    for make in (str, "{}".format, lambda what: f"{what}", lambda what: "%s" % what):  # noqa: UP031
        with pytest.raises(SaidTooEarlyError):
            make(said)


@pytest.mark.usefixtures("no_english")
@pytest.mark.parametrize(("path", "reader"), MARKED_FOR)
def test_what_is_printed_comes_through_phrases_and_its_words_are_chosen_on_the_page(
    path: Path, reader: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Keys of the spec in a remedy are no English either; they are marked here to be told from it."""
    for module in ("sld.sheet.worded", "sld.sheet.hovered", "sld.words.plain"):
        monkeypatch.setattr(f"{module}.plain", _marking_keys)
    assert english(texts(drawn(path, MARKED, reader)), _names(path)) == {}


def _marking_keys(text: str, speaker: Language) -> str:
    return plain(re.sub("`[^`]*`", lambda key: marked(key[0]), text), speaker)


@pytest.mark.parametrize("path", SAMPLED)
def test_german_sheets_have_no_defect(path: Path) -> None:
    sheets = drawn(path, language("de"), "full")
    assert [(sheet.number, defect.message) for sheet in sheets for defect in lint(sheet)] == []
    assert {sheet.language for sheet in sheets} == {"de"}
