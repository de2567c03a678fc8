"""What is told of a place has its number there: nothing is listed that the diagram does not point at."""

from __future__ import annotations

import pytest
from paperwork_cases import FAILING as OF_PAPERS
from rule_cases import FAILING
from systems import findings_of, rated

from sld.layout import by_device, diagram_of, numbered
from sld.layout.diagram.branch import branch


@pytest.mark.parametrize("code", ["DB04", "DB09", "DB16", "DC01", "EA01", "FA06", "ME04", "PW03", "SU08"])
def test_what_is_told_has_a_place_on_the_diagram(code: str) -> None:
    """Of a chain, a device, an input, the earth bar, a conductor to earth, the supply, the whole, a board."""
    case = next(each for each in (*FAILING, *OF_PAPERS) if each.code == code)
    system, ratings = rated(case.changes)
    found = numbered(system, findings_of(case.changes))
    diagram = diagram_of(system, ratings, by_device(found, system.root))
    places = [cell.flags for top in (*diagram.trees, *diagram.free) for cell in branch(top)]
    places += [diagram.earth.flags, *(tap.flags for tap in diagram.earth.taps)] if diagram.earth else []
    assert {number for flags in places for number in flags} == {flag.number for flag in found}
    assert code in {each.findings[0].code for each in found}
