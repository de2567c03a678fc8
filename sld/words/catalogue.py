"""Catalogues for those who keep them up to date: one PO file a language, read whole. Drawings read `Texts`."""

from __future__ import annotations

from pathlib import Path

from babel.messages.catalog import Catalog, Message
from babel.messages.pofile import read_po

__all__ = ["catalogue", "translated"]

FOLDER = Path(__file__).parent


def catalogue(code: str) -> Catalog:
    """Return the catalogue of a language as it stands in its file. Raises OSError."""
    with (FOLDER / f"{code}.po").open("rb") as stream:
        return read_po(stream, locale=code)


def translated(message: Message) -> bool:
    """Return whether a text of a catalogue is translated, in all of its plural forms."""
    forms = message.string if isinstance(message.string, tuple | list) else (message.string,)
    return bool(forms) and all(forms)
