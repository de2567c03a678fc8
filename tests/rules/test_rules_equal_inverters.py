"""Equal inverters of one block are rated and checked once; it comes to what each for itself comes to.

The rule cases with three of every inverter, and made-up specs: a few in the run, all with EXAMPLES=1 or more.
"""

from __future__ import annotations

import json
import os
from typing import Any

import pytest
from rule_limits import TOLD
from systems import BASE, changed
from test_rules import FAILING

from sld.model.build import build
from sld.rules import review
from sld.spec.document import Spec
from sld.spec.references import dangling
from sld.steps import rate

_EVERY = 1 if os.environ.get("EXAMPLES") else 24
_CASES = [(case.code, case.changes) for case in (*FAILING, *TOLD)][::_EVERY]


def _with_three(data: dict[str, Any]) -> Spec | None:
    """Return a spec with three of every inverter, None where the count does not go with something else in it."""
    for inverter in data["inverters"].values():
        inverter.setdefault("count", 3)
    try:
        spec = Spec.model_validate_json(json.dumps(data))
    except ValueError:
        return None
    return None if dangling(spec) or spec.further_supplies else spec


def compare(spec: Spec) -> int:
    """Hold a spec with equal inverters rated once to the same with each rated; return how many are rated once."""
    once, each = build(spec), build(spec, equal=False)
    assert not each.copies
    assert dict(once.devices) == dict(each.devices)
    assert list(once.devices) == list(each.devices)
    assert once.children == each.children
    assert once.assumptions == each.assumptions
    of_once, of_each = rate(once), rate(each)
    assert set(of_once.rated()) == set(of_each.rated())
    keys = ["", *each.devices]
    assert {key: of_once.of(key) for key in keys} == {key: of_each.of(key) for key in keys}
    unanswered = {(key, symbol) for key in keys for _, symbol in of_each.unanswered}
    for key, symbol in unanswered:
        why = of_once.unanswered.get((of_once.first(key), symbol))
        assert (why is None) == ((key, symbol) not in of_each.unanswered), (key, symbol)
    assert review(once, of_once) == review(each, of_each)
    return len(once.copies)


@pytest.mark.parametrize("changes", [changes for _, changes in _CASES], ids=[
    f"{code}-{number}" for number, (code, _) in enumerate(_CASES)
])  # fmt: skip
def test_equal_inverters_come_to_the_same_as_each_for_itself(changes: Any) -> None:
    try:
        spec = _with_three(changed(changes))
    except KeyError:
        pytest.skip("changes another base")
    if spec is None:
        pytest.skip("a name in it stands for one inverter")
    compare(spec)


def test_most_of_these_specs_have_equal_inverters() -> None:
    spec = _with_three(changed({}))
    assert spec is not None
    assert compare(spec) == 1


@pytest.mark.parametrize(
    ("of_one", "rated_once"),
    [
        ({"inverters.roof.count": 3}, 1),
        ({"inverters.roof.count": 1}, 0),
        ({"inverters.roof.count": 3, "data.chains.bus.devices.1.device": "roof-2"}, 0),
        ({"inverters.roof.count": 3, "batteries.store": {"inverter": "roof-3", "energy": "5 kWh"}}, 0),
        ({"inverters.roof.count": 3, "boards.main.designation": "-TB2"}, 1),
        ({"inverters.roof.count": 3, "boards.main.circuit.0.designation": "-TB2-FC1"}, 0),
    ],
)
def test_an_inverter_that_the_spec_speaks_of_is_equal_to_none(of_one: dict[str, Any], rated_once: int) -> None:
    spec = Spec.model_validate_json(json.dumps(changed(of_one)))
    assert not dangling(spec)
    assert compare(spec) == rated_once


def test_designations_of_copies_leave_out_what_the_spec_has_taken() -> None:
    spec = Spec.model_validate_json(
        json.dumps(changed({"inverters.roof.count": 3, "boards.main.designation": "-TB2"}, BASE))
    )
    names = [device.designation for device in build(spec).devices.values() if device.key.startswith("inverters.roof-")]
    assert {name.split("-")[1] for name in names} == {"TB1", "TB3", "TB4"}
