"""The symbol sheet shows every symbol once, and nothing on it touches anything else."""

from __future__ import annotations

from itertools import combinations

import pytest

from sld.gallery.symbols import symbols_page, symbols_sheet
from sld.sheet.ink import strokes_box
from sld.sheet.lint import lint
from sld.symbols.catalogue import Family, family, names
from sld.symbols.stroke import Text

FAMILY = pytest.mark.parametrize("family", [family("IEC"), family("ANSI")], ids=lambda each: each.name)


@FAMILY
def test_nothing_touches(family: Family) -> None:
    assert lint(symbols_sheet(family)) == []


@FAMILY
def test_symbols_with_their_wording_keep_apart(family: Family) -> None:
    boxes = {group.key: strokes_box(group.strokes) for group in symbols_sheet(family).groups if group.layer == "symbol"}
    assert len(boxes) == len(names())
    assert [(a, b) for a, b in combinations(boxes, 2) if boxes[a].meets(boxes[b])] == []


@FAMILY
def test_every_symbol_has_name_title_and_source(family: Family) -> None:
    groups = {group.key: group for group in symbols_sheet(family).groups}
    page = symbols_page()
    for name in names():
        words = " ".join(stroke.text for stroke in groups[f"symbol.{name}"].strokes if isinstance(stroke, Text))
        each = family.symbol(name)
        assert name in words
        assert str(each.title) in words
        assert each.source in words
        assert f"`{name}`" in page
        assert each.source in page
