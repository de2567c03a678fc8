"""Symbols turned down: pins in one line downwards, texts level and clear of every line, in either family."""

from __future__ import annotations

from itertools import pairwise

import pytest

from sld.sheet.ink import outline
from sld.sheet.lint.grid import segment_meets_box
from sld.symbols.catalogue import FAMILIES, family, names
from sld.symbols.glyph import glyph_box
from sld.symbols.stroke import Box, Text

NEVER_TURNED = {
    "continued_data": "a mark of a data cable",
    "energy_manager": "stands among the data devices",
    "insulation_monitor": "on the direct-current side",
    "logger": "stands among the data devices",
    "communication_module": "stands among the data devices",
    "router": "stands among the data devices",
}
"""Their words are as wide as the bodies; no way to the supply has them."""

TURNED = [(each, name) for each in FAMILIES for name in names() if name not in NEVER_TURNED]


@pytest.mark.parametrize(("of", "name"), TURNED)
def test_no_line_runs_through_a_turned_text(of: str, name: str) -> None:
    symbol = family(of).turned(name)
    lines = [
        (stroke.width_mm / 2, ends)
        for stroke in symbol.strokes
        if not isinstance(stroke, Text)
        for ends in pairwise(outline(stroke))
    ]
    for box in boxes(of, name):
        assert [ends for half_mm, ends in lines if segment_meets_box(*ends, box.grown(0.08 + half_mm))] == []


@pytest.mark.parametrize(("of", "name"), TURNED)
def test_texts_of_a_turned_symbol_are_apart_and_stay(of: str, name: str) -> None:
    found = boxes(of, name)
    assert not any(one.meets(other) for number, one in enumerate(found) for other in found[:number])
    level = family(of).symbol(name)
    texts = [stroke.text for stroke in level.strokes if isinstance(stroke, Text)]
    assert texts == [stroke.text for stroke in family(of).turned(name).strokes if isinstance(stroke, Text)]


@pytest.mark.parametrize("name", ["circuit_breaker", "fuse", "rcbo", "rcd", "meter", "switch_disconnector"])
def test_what_led_to_the_right_leads_down(name: str) -> None:
    pins, level = (dict(each.pins) for each in (family("IEC").turned(name), family("IEC").symbol(name)))
    assert pins["feed"] == (0.0, 0.0)
    assert pins["supply"] == (0.0, level["supply"][0])


def test_data_terminals_of_a_meter_turn_to_its_left() -> None:
    pins = dict(family("IEC").turned("meter").pins)
    assert max(pins[name][0] for name in ("data", "data2")) < 0.0


def boxes(of: str, name: str) -> list[Box]:
    texts = [stroke for stroke in family(of).turned(name).strokes if isinstance(stroke, Text)]
    return [box for text in texts if (box := glyph_box(text))]
