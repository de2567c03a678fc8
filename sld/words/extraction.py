"""Which texts there are to translate: read from the source, and from the columns of tables that are printed.

The order is that of the rooms, so that a catalogue is grouped as the house is.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_file

from sld.words.cell import of_cell
from sld.words.phrase import Phrase

__all__ = ["KEYWORDS", "template"]

PACKAGE = Path(__file__).parent.parent

KEYWORDS: dict[str, tuple[int | tuple[int, str], ...] | None] = {
    "phrase": None,
    "phrase_in": ((1, "c"), 2),
    "counted": (1, 2),
}
"""Functions whose literal arguments are texts, as Babel takes them."""

PRINTED_COLUMNS: dict[str, tuple[str, ...]] = {
    "conductor_material": ("material",),
    "country_note": ("text", "clause"),
    "disconnection_time": ("circuit",),
    "earthing_conductor_buried": ("protection",),
    "en50618_capacity": ("arrangement",),
    "grouping_factor": ("arrangement",),
    "k_factor": ("use", "insulation", "section_range", "material"),
    "mounting_temperature_rise": ("mounting", "meaning", "source"),
    "profile_scope": ("text",),
    "profiles": ("profile", "rule", "clause"),
    "rcd_break_time": ("device",),
    "reactance": ("arrangement",),
    "spd_critical_length": ("premises", "meaning"),
    "standard_ratings": ("series",),
    "surge_current": ("lightning_protection_level",),
}
"""Columns of `sld/tables/NAME.csv` that are printed as they stand, the keys of its rows among them."""


@cache
def _texts_of_source() -> tuple[tuple[str, str | tuple[str, ...], str | None], ...]:
    """Return place, text or texts, and context of each phrase of the source, which is read once a process."""
    return tuple(
        (path.relative_to(PACKAGE.parent).as_posix(), text, context)
        for path in sorted(PACKAGE.rglob("*.py"))
        for _, text, _, context in extract_from_file("python", path, keywords=KEYWORDS)
    )


def _texts_of_tables() -> Iterator[tuple[str, str]]:
    """Yield place and text of the title and of each printed cell of a table, as far as they hold words."""
    for path in sorted((PACKAGE / "tables").glob("*.csv")):
        lines = path.read_text(encoding="utf-8").splitlines()
        front = dict(line[1:].split(":", 1) for line in lines if line.startswith("#"))
        front = {key.strip(): value.strip() for key, value in front.items()}
        cells = [front.get("short") or front["title"]]
        columns = PRINTED_COLUMNS.get(path.stem, ())
        for row in csv.DictReader(line for line in lines if not line.startswith("#")):
            cells += [row[column] for column in columns if column in row]
        cells += [front[column] for column in columns if column in front]
        for cell in dict.fromkeys(cells):
            said = of_cell(cell)
            if isinstance(said, Phrase):
                yield path.relative_to(PACKAGE.parent).as_posix(), said.text


def template() -> Catalog:
    """Return every text that is to be translated, with the files where it stands and no translation."""
    found = Catalog(charset="utf-8")
    for place, text, context in _texts_of_source():
        found.add(text, locations=[(place, 1)], context=context)
    for place, text in _texts_of_tables():
        found.add(text, locations=[(place, 1)])
    return found
