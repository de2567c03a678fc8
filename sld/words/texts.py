"""The texts of a language, read from its PO file without a library: whoever draws needs nothing else of it.

Babel, which writes the file, takes ten times as long to read it; `tests/words/test_words_texts.py` holds both to the
same. Read is what gettext's manual says of PO files but for two things: a text that is marked fuzzy counts as
translated, and there are no octal and hexadecimal escapes. `python -m sld.words` writes neither.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from gettext import NullTranslations, c2py

__all__ = ["Texts"]

_ESCAPES = {"n": "\n", "t": "\t", "r": "\r"}
_PLURAL = re.compile(r"\bplural=(.*?);")
_ENGLISH_PLURAL = "n != 1"


class Texts(NullTranslations):
    """The texts of a language by the English ones; what is not translated, in all of its forms, is said in English."""

    def __init__(self, written: str) -> None:
        """Take the content of a PO file."""
        super().__init__()
        self._forms: dict[tuple[str, str], tuple[str, ...]] = {}
        for entry in _entries(written):
            forms = tuple([text for keyword, text in entry.items() if keyword.startswith("msgstr")])
            if all(forms):
                self._forms[entry.get("msgctxt", ""), entry["msgid"]] = forms
        header = self._forms.pop(("", ""), ("",))[0]
        rule = _PLURAL.search(header)
        self._form_of = c2py(rule[1] if rule else _ENGLISH_PLURAL)

    def gettext(self, message: str) -> str:
        """Return a text."""
        return self.pgettext("", message)

    def pgettext(self, context: str, message: str) -> str:
        """Return a text of a context."""
        forms = self._forms.get((context, message))
        return forms[0] if forms else message

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the form of a text for a count."""
        forms = self._forms.get(("", msgid1))
        if forms:
            return forms[self._form_of(n)]
        return msgid1 if n == 1 else msgid2


def _entries(written: str) -> Iterator[dict[str, str]]:
    """Yield the texts of each entry by keyword."""
    for block in written.replace('"\n"', "").split("\n\n"):  # a text may go on on further lines
        parted = [line.partition(" ") for line in block.splitlines() if line and line[0] != "#"]
        entry = {keyword: _unescaped(quoted.strip()[1:-1]) for keyword, _, quoted in parted}
        if "msgid" in entry:
            yield entry


def _unescaped(text: str) -> str:
    if "\\" not in text:
        return text
    return re.sub(r"\\(.)", lambda found: _ESCAPES.get(found[1], found[1]), text)
