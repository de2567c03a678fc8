"""What countries ask for beside the standards of a rule profile: the notes of country_note.csv."""

from __future__ import annotations

from sld.tables.table import Row, table

__all__ = ["notes_of"]


_HOME_OF_THE_NEC = "US"


def notes_of(country: str | None, follows_nec: bool = False) -> tuple[Row, ...]:
    """Return the notes of a country by its code of two letters (ISO 3166-1), none for a country without.

    follows_nec: the rule profile follows the National Electrical Code, whose notes then hold in every country.

    Columns: topic, building (any, building), from_v (array voltage in V from which it holds, or empty), text, clause.
    """
    notes = table("country_note").where(country=country) if country else ()
    if not follows_nec or country == _HOME_OF_THE_NEC:
        return notes
    of_code = (note for note in table("country_note").where(country=_HOME_OF_THE_NEC) if "NEC" in note["clause"])
    return (*notes, *of_code)
