"""Catalogues: the texts of a language by the English ones, one PO file a language."""

from __future__ import annotations

from gettext import GNUTranslations
from io import BytesIO
from pathlib import Path

from babel import Locale
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import write_mo
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


def translations(code: str) -> GNUTranslations:
    """Return the texts of a language; what is not translated is said in English. Raises OSError."""
    compiled = BytesIO()
    write_mo(compiled, catalogue(code))
    compiled.seek(0)
    return GNUTranslations(compiled)


def decimal_sign(code: str) -> str:
    """Return what stands before the decimals of a number."""
    symbols = Locale(code).number_symbols
    return str(symbols["latn"]["decimal"])
