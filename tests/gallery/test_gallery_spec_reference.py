"""Whoever writes a spec from the page alone writes a valid one: its examples, keys and units are the reader's."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml
from pydantic import ConfigDict, TypeAdapter, ValidationError

from sld import run
from sld.gallery.fragments import fragments
from sld.gallery.spec_intro import SMALLEST, UNITS
from sld.gallery.spec_reference import SPECS, spec_reference
from sld.spec import load
from sld.spec.blocks.block import Block
from sld.spec.language.blocks import fields_by_key, own_fields, places, shared_bases, title_of
from sld.spec.language.forms import form
from sld.spec.measure import _UNITS, known
from sld.spec.scalar import plain

PAGE = spec_reference()
EXAMPLES = re.findall(r"```yaml\n(.*?)```", PAGE, flags=re.DOTALL)
KEYS = [(block, key) for block in places() for key in fields_by_key(block)]


def written(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "example.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_smallest_spec_is_short_and_can_be_drawn(tmp_path: Path) -> None:
    assert EXAMPLES[0] == SMALLEST
    assert SMALLEST.count("\n") <= 40
    sheets = run.draw(run.check(written(tmp_path, SMALLEST))).sheets
    assert b"House on Mill Lane" in run.files(sheets, "smallest", ("svg",))["smallest.svg"]


@pytest.mark.parametrize("example", EXAMPLES[1:], ids=[text.split(":")[0] for text in EXAMPLES[1:]])
def test_examples_can_be_added_to_the_smallest_spec(tmp_path: Path, example: str) -> None:
    joined = SMALLEST
    if "boards:" in example:  # with more than one board an inverter says where it is connected
        joined = joined.replace("    type: Small 3\n", "    type: Small 3\n    connected_to: main\n")
    run.check(written(tmp_path, joined + example))


def test_accepted_assumption_of_the_page_is_accepted(tmp_path: Path) -> None:
    example = next(text for text in EXAMPLES if text.startswith("accept:"))
    found = run.check(written(tmp_path, SMALLEST + example)).findings
    assert [each.at for each in found if each.accepted] == [("inverters", "roof", "inputs", 0)]


def test_every_block_has_a_section_with_every_key() -> None:
    sections = dict(re.findall(r"^### (.+?)\n(.*?)(?=^##|\Z)", PAGE, flags=re.MULTILINE | re.DOTALL))
    differing = {}
    for block in places():
        text = "".join(sections[title_of(each)] for each in (block, *shared_bases(block)))
        told = set(re.findall(r"^\| `(\w+)` \|", text, flags=re.MULTILINE))
        if told != set(fields_by_key(block)):
            differing[block.__name__] = told ^ set(fields_by_key(block))
    assert differing == {}


def shown_values(block: type[Block], key: str) -> list[str]:
    """Return the values that the form of a key shows: its example, or all its words."""
    field = fields_by_key(block)[key]
    text = form(field.annotation, field.metadata, title_of)
    return [] if "`kind`" in text or "of the form" in text else re.findall(r"`([^`]+)`", text)


def test_values_shown_are_accepted() -> None:
    refused = []
    for block, key in KEYS:
        field = fields_by_key(block)[key]
        values = shown_values(block, key)
        adapter = TypeAdapter(field.rebuild_annotation(), config=ConfigDict(strict=True)) if values else None
        is_list = "list of" in form(field.annotation, field.metadata, title_of)
        for shown in values:
            value = shown.strip('"') if shown.startswith('"') else plain(shown)
            try:
                adapter.validate_python([value] if is_list else value)
            except ValidationError as error:
                refused.append(f"{block.__name__}.{key}: {error}")
    assert refused == []


def test_every_kind_of_quantity_is_in_the_table_of_units() -> None:
    listed = {known(group.split()[0])[0] for group in UNITS}
    used = [unit for words in re.findall(r"quantity in ([^,|]+),", PAGE) for unit in words.split(" or ")]
    assert len(used) > 100
    assert {known(unit)[0] for unit in used} == listed


@pytest.mark.parametrize("group", UNITS)
def test_units_of_a_group_measure_the_same_and_none_is_missing(group: str) -> None:
    words = group.split()
    measured = known(words[0])[0]
    assert {known(word)[0] for word in words} == {measured}
    simple = {unit for unit, (base, _) in _UNITS.items() if (base,) == measured}
    assert simple <= set(words)


def test_shared_keys_are_told_once() -> None:
    for block in places():
        shared = {key for base in shared_bases(block) for key in fields_by_key(base)}
        assert not shared & set(own_fields(block))


FRAGMENTS = fragments((path.name, load(path)[0].data) for path in sorted(SPECS.glob("*.yaml")))


def test_every_block_has_a_worked_fragment_and_a_place_in_contents_and_index() -> None:
    assert set(FRAGMENTS) == set(places())
    assert sum(not each.source for each in FRAGMENTS.values()) <= 8
    contents = PAGE[PAGE.index("## Contents") : PAGE.index("## Blocks")]
    index = PAGE[PAGE.index("## Index of keys") :]
    for block in places():
        assert f"[{title_of(block)}](#" in contents
    for key in {key for block in places() for key in own_fields(block)}:
        assert f"- `{key}`: " in index


@pytest.mark.parametrize("block", FRAGMENTS, ids=title_of)
def test_a_fragment_is_read_as_its_block(block: type[Block]) -> None:
    """As it is printed, by a YAML library, at the path that it is printed at; most stand so in a checked spec."""
    fragment = FRAGMENTS[block]
    text = "\n".join(fragment.lines())
    assert f"~~~yaml\n{text}\n~~~" in PAGE
    read = yaml.load(text, yaml.BaseLoader)
    for step in fragment.path:
        read = read[step] if isinstance(step, str) else read[0]
    assert read == as_texts(fragment.data)
    block.model_validate(dict(fragment.data))


def as_texts(data: Any) -> Any:
    """Return data as a loader gives it that makes texts of all scalars."""
    if isinstance(data, Mapping):
        return {str(key): as_texts(value) for key, value in data.items()} or ""
    if isinstance(data, list):
        return [as_texts(value) for value in data]
    return str(data).lower() if isinstance(data, bool) else str(data)
