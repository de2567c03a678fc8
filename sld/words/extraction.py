"""Which texts there are to translate: read from the source, and from the columns of tables that are printed.

The order is that of the rooms, so that a catalogue is grouped as the house is.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_file

__all__ = ["KEYWORDS", "template"]

PACKAGE = Path(__file__).parent.parent

KEYWORDS: dict[str, tuple[int | tuple[int, str], ...] | None] = {
    "phrase": None,
    "phrase_in": ((1, "c"), 2),
    "counted": (1, 2),
}
"""Functions whose literal arguments are texts, as Babel takes them."""

PRINTED_COLUMNS: dict[str, tuple[str, ...]] = {}
"""Columns of `sld/tables/NAME.csv` that are printed as they stand."""


def _texts_of_source() -> Iterator[tuple[str, str, str | tuple[str, ...], str | None]]:
    """Yield room, place, text or texts, and context of each phrase of the source."""
    for path in sorted(PACKAGE.rglob("*.py")):
        place = path.relative_to(PACKAGE.parent).as_posix()
        for _, text, _, context in extract_from_file("python", path, keywords=KEYWORDS):
            yield str(path.parent.relative_to(PACKAGE)), place, text, context


def _texts_of_tables() -> Iterator[tuple[str, str]]:
    """Yield place and text of each printed cell of a table."""
    for name, columns in PRINTED_COLUMNS.items():
        path = PACKAGE / "tables" / f"{name}.csv"
        lines = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
        for row in csv.DictReader(lines):
            for column in columns:
                if row[column]:
                    yield path.relative_to(PACKAGE.parent).as_posix(), row[column]


def template() -> Catalog:
    """Return every text that is to be translated, with the files where it stands and no translation."""
    found = Catalog(charset="utf-8")
    for _, place, text, context in _texts_of_source():
        found.add(text, locations=[(place, 1)], context=context)
    for place, text in _texts_of_tables():
        found.add(text, locations=[(place, 1)])
    return found
