"""The title block says by which profile and which grid rules, in which edition, a drawing was made; nothing is cut."""

from __future__ import annotations

import pytest
from test_documents_procedure import spec

from sld import run
from sld.documents.title import title
from sld.grid import country, known
from sld.sheet.title_block import title_block_strokes
from sld.symbols.stroke import Box, Text

PROFILES = {"GB": "BS 7671", "AU": "AS/NZS 5033", "NZ": "AS/NZS 5033", "US": "NEC 690"}


@pytest.mark.parametrize("code", known())
def test_profile_and_grid_rules_stand_whole_in_the_title_block(code: str) -> None:
    checked = run.check_mapping({**spec(code), "profile": PROFILES.get(code, "IEC 60364-7-712")})
    strokes = title_block_strokes(title(checked.system, ()), Box(10, 10, 200, 287), 1, 1, "A4")
    texts = [stroke.text for stroke in strokes if isinstance(stroke, Text)]
    assert not [text for text in texts if text.endswith("…")]
    assert f"{code}: {country(code).book}".replace(" ", "") in "".join(texts).replace(" ", "")


@pytest.mark.parametrize(
    ("code", "book"),
    [
        ("DE", "VDE-AR-N 4105, 2018-11"),
        ("US", "NEC 2023, IEEE 1547-2018"),
        ("NL", "Netcode elektriciteit, NEN 1010:2020"),
        ("AT", "TOR Erzeuger Typ A"),
    ],
)
def test_no_book_is_named_twice(code: str, book: str) -> None:
    assert country(code).book == book
