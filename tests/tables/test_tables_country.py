"""The notes of countries: who has some, from which voltage, each with its source."""

from __future__ import annotations

import pytest

from sld.tables.country import notes_of
from sld.tables.table import table


def test_arc_faults_in_the_united_states() -> None:
    # https://www.tests.com/practice/MasterElectrician-Test2-2014NEC: 690.11, from 80 V on buildings
    (arc,) = [note for note in notes_of("US") if note["topic"] == "arc fault"]
    assert (arc.number("from_v"), arc["building"], arc["clause"]) == (80, "building", "NEC 690.11")


@pytest.mark.parametrize("words", ["30 s", "30 V outside", "305 mm", "80 V inside"])
def test_shutdown_in_the_united_states(words: str) -> None:
    # https://blog.askbonbon.com/posts/quick-reference-for-installing-rapid-shutdown/: NEC 690.12
    (shutdown,) = [note for note in notes_of("US") if note["topic"] == "rapid shutdown"]
    assert words in shutdown["text"]


@pytest.mark.parametrize("country", ["NO", "ZZ", None])
def test_a_country_without_notes_has_none(country: str | None) -> None:
    assert notes_of(country) == ()


@pytest.mark.parametrize("note", list(table("country_note")), ids=lambda note: f"{note['country']} {note['topic']}")
def test_every_note_says_where_it_is_from(note) -> None:
    assert note["text"]
    assert note["clause"]
    assert note["building"] in ("any", "building")
    assert note.status == "from memory" or note.source.startswith("http")


@pytest.mark.parametrize("country", ["MX", "US", None])
def test_the_notes_of_the_national_electrical_code_hold_where_the_profile_follows_it_and_once(country) -> None:
    topics = [note["topic"] for note in notes_of(country, follows_nec=True)]
    assert sorted(topics) == ["arc fault", "connectors", "dwelling voltage", "ground fault", "rapid shutdown"]
