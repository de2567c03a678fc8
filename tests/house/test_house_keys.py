"""Keys of the spec language: none is accepted and then forgotten. Every one is drawn, at two values or without it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from every_key import HOUSE, Case, cases, text_keys, with_block
from own_font import own_font

from sld import run
from sld.documents.registry import KINDS
from sld.documents.section import Form, Table
from sld.layout import numbered
from sld.rows import rows
from sld.sheet.sheet import Sheet
from sld.spec import Unusable
from sld.spec.blocks.battery_circuit import BATTERY_BLOCKS
from sld.spec.blocks.block import Block, Wired
from sld.spec.blocks.installed import Installed
from sld.spec.language.blocks import AC_DEVICES, DC_DEVICES, STRING_DEVICES, fields_by_key, places
from sld.symbols.stroke import Text

VIEWS = (
    ("drawing", "full"), ("particulars", "full"), ("upkeep", "full"), ("papers", "full"), ("drawing", "operator"),
    ("drawing", "crew"), ("calculation", "full"),
)  # fmt: skip
"""Documents and for whom they are made; but for the drawing they are the same for all their readers."""

UNSEEN = {
    "SingleDiode.series_resistance": "a row of a module database has all five parameters, and no current flows in an "
    "open circuit: it cannot change the voltage that the others give",
    "Drawing.font": "letters that the font of the sheets lacks come from it, and without it such a spec is refused",
}
"""Keys that change nothing on any sheet, each with the reason."""


_REPLACED = 'by = "Merren"\n[[replace]]\nentry = "procedures.connect_and_notify"\nreason = "its own"\ndays = 14\n'


class Drawings:
    """Drawings of specs that are data, each made once."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._checked: dict[str, run.Checked | None] = {}
        self._listed: dict[tuple[str, str, str], object] = {}
        self._drawn: dict[tuple[str, str, str], tuple[Sheet, ...]] = {}
        logo = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><path d="M0 0H4V4Z"/></svg>'
        (folder / "logo.svg").write_text(logo, encoding="utf-8")
        (folder / "own.ttf").write_bytes(own_font({"家": 1000}))
        (folder / "net.toml").write_text(_REPLACED, encoding="utf-8")
        (folder / "more.yaml").write_text(json.dumps({"types": HOUSE["types"]}), encoding="utf-8")

    def told(self, data: dict[str, Any]) -> object:
        """Return what is told about a spec, None where it is refused. The findings are printed for every reader."""
        checked = self._check(data)
        return checked and [(each.code, each.message, each.remedy, each.accepted) for each in checked.findings]

    def listed(self, data: dict[str, Any], document: str, reader: str) -> object:
        """Return what the tables of a document say, which costs a fifth of a drawing; the page and the CSV of a table
        hold the same cells, see `tests/documents/test_documents_rows.py`."""
        key = (json.dumps(data), document, reader)
        if key not in self._listed:
            self._listed[key] = self._list(data, document, reader)
        return self._listed[key]

    def _list(self, data: dict[str, Any], document: str, reader: str) -> object:
        checked = self._check(data)
        if checked is None:
            return None
        system = checked.system
        asked = system.drawing if "reader" in data.get("drawing", {}) else system.drawing.model_copy(
            update={"reader": reader}
        )  # fmt: skip
        flags = numbered(system, checked.findings)
        made = KINDS[document].make(replace(system, drawing=asked), checked.ratings, checked.findings, flags)
        return [rows(each, made.language) for each in made.sections if isinstance(each, Table | Form)]

    def seen(self, data: dict[str, Any], document: str, reader: str) -> object:
        """Return what a reader sees: strokes and hover texts, size, title, colours and language; None where refused."""
        return [
            (
                sheet.width_mm, sheet.height_mm, sheet.title, sheet.description, sheet.language, sheet.colour,
                sheet.pictures, [(group.title, group.strokes) for group in sheet.groups],
            )
            for sheet in self.sheets(data, document, reader)
        ]  # fmt: skip

    def sheets(self, data: dict[str, Any], document: str, reader: str) -> tuple[Sheet, ...]:
        """Return the sheets of a spec, none where it is refused."""
        key, checked = (json.dumps(data), document, reader), self._check(data)
        if key not in self._drawn:
            own = reader if "reader" not in data.get("drawing", {}) else None
            made = run.documents(checked, (document,), reader=own) if checked else {}
            self._drawn[key] = made[document].sheets if made else ()
        return self._drawn[key]

    def _check(self, data: dict[str, Any]) -> run.Checked | None:
        text = json.dumps(data)
        if text not in self._checked:
            path = self._folder / "house.json"
            path.write_text(text, encoding="utf-8")
            try:
                self._checked[text] = run.check(path)
            except Unusable:
                self._checked[text] = None
        return self._checked[text]


@pytest.fixture(scope="module")
def drawings(tmp_path_factory: pytest.TempPathFactory) -> Drawings:
    return Drawings(tmp_path_factory.mktemp("keys"))


def _alike(drawings: Drawings, specs: tuple[dict[str, Any], ...]) -> bool:
    """Return whether two of the specs look the same to every reader. What is made fastest is compared first."""
    return any(
        drawings.told(one) == drawings.told(other)
        and all(drawings.listed(one, *view) == drawings.listed(other, *view) for view in VIEWS)
        and all(drawings.seen(one, *view) == drawings.seen(other, *view) for view in VIEWS)
        for one, other in combinations(specs, 2)
    )


SHARED = {*fields_by_key(Installed), *fields_by_key(Wired)}
"""Keys that devices have from a class in common: one way leads from each to the sheets, whatever the device is."""

_SIDES = [
    [each for each in side if issubclass(each, Installed)]
    for side in (AC_DEVICES, (*DC_DEVICES, *STRING_DEVICES), BATTERY_BLOCKS)
]
TRIED = {each for side in _SIDES for each in (side[0], side[-1])}
"""Devices at which the shared keys are tried: the first and the last of the AC side, the DC side and the battery."""


def _left_out(block: type[Block]) -> bool:
    """Return whether the default run leaves the shared keys of a block to others."""
    return issubclass(block, Installed) and block not in TRIED


def _forgotten(tried: Iterable[Case], drawings: Drawings) -> list[str]:
    """Return the names of the keys that change nothing that a reader sees."""
    forgotten = []
    for case in tried:
        assert all(drawings.told(spec) is not None for spec in case.specs), f"{case.name}: the spec is refused"
        if _alike(drawings, case.specs if len(case.specs) > 1 else (case.base, *case.specs)):
            forgotten.append(case.name)
    return forgotten


def _shared(case: Case) -> bool:
    return case.name.partition(".")[2] in SHARED


@pytest.mark.parametrize("block", list(places()), ids=lambda block: block.__name__)
def test_every_key_changes_what_a_reader_sees(block: type[Block], drawings: Drawings) -> None:
    """A key that changes nothing is a promise that nobody keeps: compute with it, print it, or refuse it.

    Of several values, such as the options of a key, no two may look alike; one value must differ from none.
    """
    tried = (case for case in cases(block) if not (_left_out(block) and _shared(case)))
    assert _forgotten(tried, drawings) == [name for name in UNSEEN if name.startswith(f"{block.__name__}.")]


@pytest.mark.whole
@pytest.mark.parametrize("block", [each for each in places() if _left_out(each)], ids=lambda block: block.__name__)
def test_keys_that_devices_share_change_what_a_reader_sees_at_each(block: type[Block], drawings: Drawings) -> None:
    assert _forgotten((case for case in cases(block) if _shared(case)), drawings) == []


def _printed(sheets: tuple[Sheet, ...]) -> Iterator[str]:
    for sheet in sheets:
        yield sheet.title
        for group in sheet.groups:
            yield group.title
            yield from (stroke.text for stroke in group.strokes if isinstance(stroke, Text))


@pytest.mark.parametrize("block", [each for each in places() if text_keys(each)], ids=lambda block: block.__name__)
def test_every_text_is_printed(block: type[Block], drawings: Drawings) -> None:
    data, here = with_block(block)
    marks = text_keys(block)
    here |= marks
    assert drawings.told(data) is not None, "the spec is refused"
    for view in VIEWS:
        words = "\n".join(_printed(drawings.sheets(data, *view))) if marks else ""
        marks = {key: mark for key, mark in marks.items() if mark not in words}
    assert marks == {}
