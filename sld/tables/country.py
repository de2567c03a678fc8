"""What countries ask for beside the standards of a rule profile: the notes of country_note.csv."""

from __future__ import annotations

from sld.tables.table import Row, table

__all__ = ["notes_of"]


def notes_of(country: str | None) -> tuple[Row, ...]:
    """Return the notes of a country by its code of two letters (ISO 3166-1), none for a country without.

    Columns: topic, building (any, building), from_v (array voltage in V from which it holds, or empty), text, clause.
    """
    return table("country_note").where(country=country) if country else ()
