"""A further language is one catalogue and nothing else: packs bound in one that is made up have no English left.

`test_words_printed.py` looks at the documents one by one; here at what is made of all of them, the cover and the list
of what is asked for, at the page numbers, the bookmarks and the tables. No source: our own rule.
"""

from __future__ import annotations

import tomllib
from dataclasses import replace
from importlib import resources
from pathlib import Path
from unittest import mock

import pytest
import yaml
from spoken import MARKED, english, names_of, texts

from sld import run

ROOT = Path(__file__).parents[2] / "specs"
SPEC = ROOT / "orchard-lodge.yaml"


@pytest.fixture(scope="module")
def packs() -> dict[str, run.Pack]:
    checked = run.check(SPEC)
    project = checked.project.model_copy(update={"language": MARKED.code})
    with mock.patch("sld.model.system.language", return_value=MARKED):
        parts = tuple(part._replace(system=replace(part.system, project=project)) for part in checked.parts)
        return {purpose: run.pack(replace(checked, parts=parts), purpose) for purpose in ("notify", "handover")}


@pytest.mark.parametrize("purpose", ["notify", "handover"])
def test_no_english_is_left_in_a_pack(packs: dict[str, run.Pack], purpose: str) -> None:
    made = packs[purpose]
    files = [SPEC, ROOT / "types" / "merren-types.yaml"]
    read = [yaml.safe_load(each.read_text(encoding="utf-8")) for each in files]
    rules = tomllib.loads((resources.files("sld.grid") / "countries" / "GB.toml").read_text(encoding="utf-8"))
    names = [*names_of(read), *names_of(rules)]  # forms and publishers have names of their own
    said = [*texts(made.bound.sheets), made.bound.about.title, *(each.title for each in made.bound.chapters)]
    said += [cell for table in made.tables.values() for row in (table.headings, *table.cells) for cell in row]
    assert english(said, names) == {}
