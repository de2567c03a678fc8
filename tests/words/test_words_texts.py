"""The texts that drawings read from a catalogue: those that Babel reads, which also knows signs and dates by CLDR.

The reference is the library and its data (Unicode CLDR); the plural rule of Polish is that of gettext's manual.
"""

from __future__ import annotations

from datetime import date
from gettext import GNUTranslations
from io import BytesIO

import pytest
from babel import Locale
from babel.dates import format_date
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

from sld.words import known_languages, language
from sld.words.catalogue import FOLDER, catalogue
from sld.words.texts import Texts

LANGUAGE = pytest.mark.parametrize("code", known_languages()[1:])
COUNTS = [*range(130), 1000, 1001, 1_000_002]


def compiled(known: Catalog) -> GNUTranslations:
    """What the standard library says of a catalogue that Babel reads and compiles."""
    stream = BytesIO()
    write_mo(stream, known)
    stream.seek(0)
    return GNUTranslations(stream)


@LANGUAGE
def test_every_text_is_the_one_that_babel_reads(code: str) -> None:
    known = catalogue(code)
    read, reference = Texts((FOLDER / f"{code}.po").read_text(encoding="utf-8")), compiled(known)
    for message in filter(lambda each: each.id, known):
        if message.context:
            said = read.pgettext(message.context, message.id)
            assert said == reference.pgettext(message.context, message.id)
        elif isinstance(message.id, str):
            assert read.gettext(message.id) == reference.gettext(message.id)
        else:
            for count in COUNTS:
                assert read.ngettext(*message.id, count) == reference.ngettext(*message.id, count)


@LANGUAGE
def test_decimal_sign_and_date_are_those_of_cldr(code: str) -> None:
    assert language(code).number(0.25) == f"0{Locale(code).number_symbols['latn']['decimal']}25"
    for day in ("2026-03-09", "1999-12-31"):
        usual = format_date(date.fromisoformat(day), format="medium", locale=code)
        assert language(code).date(day) == usual
    assert language(code).date("soon") == "soon"


POLISH = r"""
# a comment
msgid ""
msgstr ""
"Language: pl\n"
"Content-Type: text/plain; charset=utf-8\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2);\n"

#: here.py
#, python-brace-format
msgid "{count} sheet"
msgid_plural "{count} sheets"
msgstr[0] "{count} arkusz"
msgstr[1] "{count} arkusze"
msgstr[2] "{count} arkuszy"

msgid "a \"quoted\" \\ word"
msgstr "\"cytat\" \\n\tb\"\n"

msgid ""
"a text that goes "
"on\""
msgstr ""
"dalej\""
"\"i dalej"

msgctxt "elsewhere"
msgid "a text"
msgstr "inny"

msgid "a text"
msgstr "tekst"

msgid "not translated"
msgstr ""
#~ msgid "gone"
#~ msgstr "nie ma"
"""


def test_every_form_of_writing_is_read_as_babel_reads_it() -> None:
    read, reference = Texts(POLISH), compiled(read_po(BytesIO(POLISH.encode()), locale="pl"))
    for count in COUNTS:
        said = read.ngettext("{count} sheet", "{count} sheets", count)
        assert said == reference.ngettext("{count} sheet", "{count} sheets", count)
    texts = ['a "quoted" \\ word', 'a text that goes on"', "a text", "not translated", "gone", "unknown"]
    assert [read.gettext(text) for text in texts] == [reference.gettext(text) for text in texts]
    assert [read.gettext(text) for text in texts[:2]] == ['"cytat" \\n\tb"\n', 'dalej""i dalej']
    assert (read.pgettext("elsewhere", "a text"), read.pgettext("nowhere", "a text")) == ("inny", "a text")


def test_a_catalogue_begun_says_all_in_english() -> None:
    stream, begun = BytesIO(), Catalog(locale="fr", fuzzy=False)
    begun.add("word")
    begun.add(("{count} word", "{count} words"))
    write_po(stream, begun)
    for written in (stream.getvalue().decode(), ""):
        read = Texts(written)
        assert read.gettext("word") == "word"
        assert [read.ngettext("{count} word", "{count} words", n) for n in (0, 1, 2)] == [
            "{count} words", "{count} word", "{count} words",
        ]  # fmt: skip
