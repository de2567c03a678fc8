"""Equal inverters charted once come to the same sheets, stroke by stroke, as each charted, folded and listed."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from systems import BASE, REMOVED, changed

from sld import model, run
from sld.layout.diagram.equals import drawn_once
from sld.rules import review
from sld.spec import load_mapping
from sld.steps import rate

FIELD = {**BASE, "data": {}}
UNIT = "inverters.roof"
STRING = f"{UNIT}.inputs.0.strings.0"
BOXED = {"junction_boxes.jb": {}, f"{UNIT}.inputs.0.junction_box": "jb"}


def sheets(data: dict[str, Any], *, equal: bool) -> list[bytes]:
    """Return the sheets of a spec as strokes in text. equal: inverters that nothing tells apart are taken together."""
    source, spec = load_mapping(data)
    (system,) = model.systems(spec, source.grid_rules, equal=equal)
    ratings = rate(system)
    findings = review(system, ratings)
    checked = run.Checked(source, (run.Part(system, ratings, findings),), findings)
    found = list(run.files(run.draw(checked).sheets, "x", ("strokes",)).values())
    assert found, "no sheet says nothing"
    return found


def field(changes: dict[str, Any]) -> dict[str, Any]:
    return changed({f"{UNIT}.connected_to": "main", **changes}, copy.deepcopy(FIELD))


@pytest.mark.parametrize(
    ("changes", "groups"),
    [
        ({f"{UNIT}.count": 5}, 1),
        ({f"{UNIT}.count": 12, f"{UNIT}.circuit": REMOVED}, 1),  # what is assumed is said of all
        ({f"{UNIT}.count": 3}, 0),  # fewer than are drawn once
        ({f"{UNIT}.count": 3, "drawing.draw_once_from": 2}, 1),
        ({f"{UNIT}.count": 4, "drawing.unfold": True}, 0),
        ({f"{UNIT}.count": 5, **BOXED}, 1),
        ({f"{UNIT}.count": 5, "project.language": "de", **BOXED}, 1),
        ({f"{UNIT}.count": 5, "boards.main.designation": "-TB3"}, 0),  # its number is left out
        ({f"{UNIT}.count": 5, "inverters.shed": {**BASE["inverters"]["roof"], "connected_to": "main"}}, 0),
        ({f"{UNIT}.count": 5, "data": BASE["data"]}, 0),  # on a data chain
        ({f"{UNIT}.count": 5, f"{STRING}.count": 3, f"{UNIT}.inputs.0.circuit": REMOVED}, 1),
    ],
)
def test_the_sheets_are_the_same(changes: dict[str, Any], groups: int) -> None:
    data = field(changes)
    (system,) = model.systems(load_mapping(data)[1])
    assert len(drawn_once(system, {})) == groups
    assert sheets(data, equal=True) == sheets(data, equal=False)
