"""The catalogues: whole, of today, and with the places for values of the English. No source: our own rule."""

from __future__ import annotations

import csv
import re
from collections import Counter
from pathlib import Path
from string import Formatter

import pytest
from babel.messages.catalog import Message

from sld.words import known_languages
from sld.words.__main__ import updated
from sld.words.catalogue import FOLDER, catalogue, translated
from sld.words.extraction import template
from sld.words.phrase import SOFT_HYPHEN

CODES = known_languages()[1:]
LANGUAGE = pytest.mark.parametrize("code", CODES)
TERMS = sorted(FOLDER.glob("terms_*.csv"))


def _messages(code: str) -> list[Message]:
    return [message for message in catalogue(code) if message.id]


def _forms(said: str | tuple[str, ...] | list[str]) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said)


def _translations(message: Message) -> list[str]:
    """Return the forms of a translation, none where there is none yet."""
    return [text for text in _forms(message.string) if text]


def _fields(text: str) -> Counter[str]:
    return Counter(name for _, name, _, _ in Formatter().parse(text) if name is not None)


def _marks(text: str) -> list[str]:
    """Return the words of the spec language in a text, which are the same in every language."""
    return sorted(text.split("`")[1::2])


def test_german_is_there() -> None:
    assert "de" in CODES


def test_texts_do_not_begin_or_end_in_the_middle_of_a_sentence() -> None:
    """What is glued to another piece cannot be translated; the word between the last two of a list is meant so."""
    loose = [
        text
        for message in template()
        for text in _forms(message.id)
        if text != text.strip() or text.startswith((",", ";", "."))
    ]
    assert loose == [" and "]


@LANGUAGE
def test_nothing_is_missing_or_left_over(code: str) -> None:
    there = {(message.context, message.id) for message in _messages(code)}
    asked = {(message.context, message.id) for message in template() if message.id}
    assert (sorted(map(str, asked - there)), sorted(map(str, there - asked))) == ([], [])


@LANGUAGE
def test_everything_is_translated(code: str) -> None:
    assert [message.id for message in _messages(code) if not translated(message)] == []


@LANGUAGE
def test_the_file_is_as_the_command_writes_it(code: str) -> None:
    assert (FOLDER / f"{code}.po").read_bytes() == updated(code)


@LANGUAGE
def test_plural_forms_are_complete(code: str) -> None:
    count = catalogue(code).num_plurals
    several = [message for message in _messages(code) if not isinstance(message.id, str)]
    assert several
    assert [message.id for message in several if len(_forms(message.string)) != count] == []


@LANGUAGE
def test_places_for_values_are_those_of_the_english(code: str) -> None:
    wrong = []
    for message in _messages(code):
        english = [_fields(text) for text in _forms(message.id)]
        for text in _translations(message):
            # a plural form may leave out the count that its word says
            wrong += [text] if not any(_fields(text) == each for each in english) else []
    assert wrong == []


@LANGUAGE
def test_words_of_the_spec_stay_as_they_are(code: str) -> None:
    wrong = [
        text
        for message in _messages(code)
        for text in _translations(message)
        if _marks(text) not in [_marks(english) for english in _forms(message.id)]
    ]
    assert wrong == []


@pytest.mark.parametrize("path", TERMS, ids=lambda path: path.stem)
def test_the_same_term_has_the_same_word(path: Path) -> None:
    """Each text that holds a term of the glossary, once longer terms in it are taken out, holds its word."""
    lines = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    words = {row["english"]: row["words"].split("|") for row in csv.DictReader(lines)}
    longest = sorted(words, key=len, reverse=True)
    wrong = []
    for message in _messages(path.stem.removeprefix("terms_")):
        for english, text in zip(_forms(message.id), _forms(message.string), strict=False):
            rest = re.sub("`[^`]*`|{[^}]*}", "", english).casefold()
            for term in longest:
                if term in rest:
                    rest = rest.replace(term, "\0")
                    if not any(word.casefold() in text.replace(SOFT_HYPHEN, "").casefold() for word in words[term]):
                        wrong.append(f"{term}: {english} -> {text}")
    assert wrong == []
