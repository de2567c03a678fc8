"""`python -m sld.words [CODE]`: bring every catalogue up to date with the source; with a code, begin a new language."""

from __future__ import annotations

import re
import sys
from datetime import UTC, datetime
from io import BytesIO

from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

from sld.words.catalogue import FOLDER, catalogue, translated
from sld.words.extraction import template
from sld.words.language import known_languages

_NO_DATE = datetime(2000, 1, 1, tzinfo=UTC)
"""A catalogue that did not change has the same bytes on every day."""

_NAMED = 20
"""So many texts that are not translated are named; a new language has thousands."""


def updated(code: str) -> bytes:
    """Return the file of a language with the texts of today: new ones empty, those that are gone left out."""
    known = {(message.id, message.context): message.string for message in catalogue(code) if message.id}
    made = Catalog(
        locale=code, charset="utf-8", fuzzy=False, creation_date=_NO_DATE, revision_date=_NO_DATE, project="sld",
        version="all", last_translator="see the history", language_team="sld", msgid_bugs_address="none",
    )  # fmt: skip
    made.header_comment = f"# Texts of the drawings and documents: {code}. Kept up to date by `python -m sld.words`."
    for message in template():
        if message.id:
            string = known.get((message.id, message.context), "")
            made.add(message.id, string, message.locations, message.flags, context=message.context)
    stream = BytesIO()
    write_po(stream, made, width=116, sort_by_file=True, include_lineno=False)
    return stream.getvalue()


def main() -> None:
    """Write the catalogues and say what is not translated."""
    wrong = [code for code in sys.argv[1:] if not re.fullmatch("[a-z]{2}", code)]
    if wrong:
        sys.exit(f"{__doc__}\n{wrong[0]}: a language is named by its two letters, ISO 639-1")
    for code in sys.argv[1:]:
        (FOLDER / f"{code}.po").touch()
    for code in known_languages()[1:]:
        path = FOLDER / f"{code}.po"
        path.write_bytes(updated(code))
        missing = [message for message in catalogue(code) if message.id and not translated(message)]
        print(f"{path.name}: {len(catalogue(code))} texts, {len(missing)} not translated")
        for message in missing[:_NAMED]:
            english = message.id if isinstance(message.id, str) else message.id[0]
            print(f"  {english}  ({message.locations[0][0]})")


if __name__ == "__main__":
    main()
