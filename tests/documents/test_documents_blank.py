"""What is left out of a spec is a blank cell, and nothing else changes: each key of the paperwork taken out by itself.

In the run with one spec; `python tests/documents/test_documents_blank.py NAME...` does it with others.
"""

from __future__ import annotations

import copy
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from sld import layout, run
from sld.documents.cell import Cell, State
from sld.documents.registry import KINDS
from sld.documents.section import Form, Table
from sld.spec import Unusable
from sld.words import ENGLISH

SPECS = Path(__file__).parents[2] / "specs"
PAPERWORK = {
    "notification", "upkeep", "documents", "designer", "installer", "parties", "certificates", "mounting",
    "discharge_time", "switching_on", "serial_numbers", "serial_number", "firmware", "network_settings", "tilt",
    "azimuth", "ct_lines", "contracted_power", "supply_point", "operator", "address", "customer", "reference",
}  # fmt: skip
"""Keys of which nothing is computed, with all that is below them."""

OTHERS = {"drawing", "calculation", "findings", "procedure", "settings", "switching", "notices"}
"""Documents that tell of what is missing in words of their own: notes, findings, things to do."""

Way = tuple[str | int, ...]
Place = tuple[str, str, int, int]


def ways(data: Any, way: Way = (), inside: bool = False) -> Iterator[Way]:
    """Yield the way to each value of the paperwork that is no mapping and no list of mappings."""
    items = data.items() if isinstance(data, dict) else enumerate(data)
    for key, value in items:
        below = inside or (key in PAPERWORK and way != ("site",))
        if isinstance(value, dict) or (isinstance(value, list) and any(isinstance(each, dict) for each in value)):
            yield from ways(value, (*way, key), below)
        elif below and isinstance(data, dict):
            yield (*way, key)


def without(data: Any, way: Way) -> Any:
    changed = copy.deepcopy(data)
    here = changed
    for step in way[:-1]:
        here = here[step]
    del here[way[-1]]
    return changed


def whole(name: str) -> Any:
    """A spec with its types, as one mapping."""
    data = yaml.safe_load((SPECS / f"{name}.yaml").read_text(encoding="utf-8"))
    for each in data.pop("include", []):
        for group, types in yaml.safe_load((SPECS / each).read_text(encoding="utf-8"))["types"].items():
            data["types"][group] = {**types, **data["types"].get(group, {})}
    return dates_as_text(data)


def dates_as_text(data: Any) -> Any:
    """Dates as a spec has them: YAML makes values of its own of them."""
    if isinstance(data, dict):
        return {key: dates_as_text(value) for key, value in data.items()}
    if isinstance(data, list):
        return [dates_as_text(each) for each in data]
    return data if data is None or isinstance(data, bool | int | float | str) else str(data)


def cells(data: Any) -> dict[Place, Cell]:
    """Every cell of every document but those that tell in words of their own."""
    checked = run.check_mapping(data)
    flags = layout.numbered(checked.system, checked.findings)
    found: dict[Place, Cell] = {}
    for name, kind in KINDS.items():
        if name not in OTHERS:
            for section in kind.make(checked.system, checked.ratings, checked.findings, flags).sections:
                rows = section.rows if isinstance(section, Table) else ()
                rows = tuple((cell,) for _, cell in section.fields) if isinstance(section, Form) else rows
                found |= {
                    (name, section.name, n, place): cell for n, row in enumerate(rows) for place, cell in enumerate(row)
                }
    return found


def words(cell: Cell) -> set[str]:
    return {word.strip(",;.") for word in ENGLISH.say(cell).split()}


def wrong(before: dict[Place, Cell], after: dict[Place, Cell]) -> Iterator[str]:
    """Yield what became of a cell other than a blank or the same with parts left out."""
    if before.keys() != after.keys():
        yield f"other cells: {sorted(before.keys() ^ after.keys())}"
    for place in before.keys() & after.keys():
        old, new = before[place], after[place]
        shorter = words(new) < words(old)
        if new != old and new.state is not State.BLANK and not shorter:
            yield f"{place}: {ENGLISH.say(old)!r} became {ENGLISH.say(new)!r}"


def every_blank(data: Any, step: int = 1) -> tuple[int, list[str]]:
    """Return how many keys could be taken out, and what was wrong with the cells then. step: one in so many is."""
    before, count, found = cells(data), 0, []
    for way in [*ways(data)][::step]:
        if (way[0], way[-1]) == ("documents", "of"):  # it then answers for no type, and a row asks for one that does
            continue
        try:
            after = cells(without(data, way))
        except Unusable:  # a required key
            continue
        count += 1
        if after == before:
            found.append(f"{way}: no cell has it")
        found += [f"{way}: {each}" for each in wrong(before, after)]
    return count, found


@pytest.mark.parametrize("step", [3, pytest.param(1, marks=pytest.mark.whole)])
def test_a_key_that_is_left_out_blanks_its_cells_and_changes_no_other(step: int) -> None:
    count, found = every_blank(whole("orchard-lodge"), step)
    assert found == []
    assert count > 60 // step


if __name__ == "__main__":
    for each in sys.argv[1:]:
        print(each, *every_blank(whole(each)), sep="\n")
