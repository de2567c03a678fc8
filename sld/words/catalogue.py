"""Catalogues: the texts of a language by the English ones, one PO file a language."""

from __future__ import annotations

from collections.abc import Sequence
from gettext import NullTranslations, c2py
from pathlib import Path

from babel import Locale
from babel.messages.catalog import Catalog, Message
from babel.messages.pofile import read_po

__all__ = ["catalogue", "decimal_sign", "translated", "translations"]

FOLDER = Path(__file__).parent


def catalogue(code: str) -> Catalog:
    """Return the catalogue of a language as it stands in its file. Raises OSError."""
    with (FOLDER / f"{code}.po").open("rb") as stream:
        return read_po(stream, locale=code)


def translated(message: Message) -> bool:
    """Return whether a text of a catalogue is translated, in all of its plural forms."""
    forms = message.string if isinstance(message.string, tuple | list) else (message.string,)
    return bool(forms) and all(forms)


class _Translations(NullTranslations):
    """The texts of a catalogue as it was read: compiling it for `GNUTranslations` takes as long as reading it."""

    def __init__(self, of: Catalog) -> None:
        super().__init__()
        self._form_of = c2py(of.plural_expr)
        self._texts: dict[tuple[str, str], str] = {}
        self._counted: dict[str, Sequence[str]] = {}
        for each in of:
            if not each.id or each.fuzzy or not translated(each):
                continue
            if isinstance(each.id, str):
                self._texts[each.context or "", each.id] = str(each.string)
            else:
                self._counted[each.id[0]] = tuple(each.string or ())

    def gettext(self, message: str) -> str:
        return self.pgettext("", message)

    def pgettext(self, context: str, message: str) -> str:
        return self._texts.get((context, message), message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        forms = self._counted.get(msgid1)
        return forms[self._form_of(n)] if forms else super().ngettext(msgid1, msgid2, n)


def translations(code: str) -> NullTranslations:
    """Return the texts of a language; what is not translated is said in English. Raises OSError."""
    return _Translations(catalogue(code))


def decimal_sign(code: str) -> str:
    """Return what stands before the decimals of a number."""
    symbols = Locale(code).number_symbols
    return str(symbols["latn"]["decimal"])
