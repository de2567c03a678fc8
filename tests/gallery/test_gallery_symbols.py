"""The symbol sheet shows every symbol once, and nothing on it touches anything else."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path
from typing import Any

import pytest

from sld import symbols
from sld.gallery.symbols import EXAMPLE, symbols_page, symbols_sheet
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


def test_the_example_of_the_page_draws_the_symbols_in_a_row(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert EXAMPLE in symbols_page()
    monkeypatch.chdir(tmp_path)
    known: dict[str, Any] = {}
    exec(EXAMPLE, known)
    assert (tmp_path / "row.svg").read_text().startswith("<svg")
    assert tuple(known["breaker"].absanchors["feed"]) == tuple(known["switch"].absanchors["supply"])


def test_every_symbol_is_an_element_with_its_pins_on_the_module() -> None:
    for made, name in symbols.element_names().items():
        for each in ("IEC", "ANSI"):
            element = getattr(symbols, made)(family=each)
            pins = dict(family(each).symbol(name).pins)
            assert set(element.anchors) == set(pins), made
            for pin, (x, y) in element.anchors.items():
                assert (2.5 * x, -2.5 * y) == pytest.approx(pins[pin]), made


def test_a_name_that_is_not_there_is_told_the_nearest() -> None:
    with pytest.raises(AttributeError, match="there is no symbol CircuitBraker; did you mean CircuitBreaker"):
        symbols.CircuitBraker  # noqa: B018
    with pytest.raises(KeyError, match="circuit_breaker"):
        symbols.as_element("circuit_braker")
