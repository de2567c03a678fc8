"""A few hundred changed specs; by hand many thousands (`fuzz.py`). And that the judgement sees what it is there for."""

from __future__ import annotations

import itertools
import json
from pathlib import Path
from random import Random

import fuzz
import pytest
from judgement import judged
from spec_changes import changed, places

from sld import steps
from sld.spec.source import read
from sld.words import Language

ROOT = Path(__file__).parents[2]
VILLAGE = json.dumps({**read(ROOT / "specs" / "village-hall.yaml").data, "include": []})


@pytest.mark.parametrize("count", [20, pytest.param(240, marks=pytest.mark.whole)])
def test_changed_specs_leave_no_fault(count: int) -> None:
    report = fuzz.run_fuzz(count, seed_number=1, draw_one_in=10)
    assert report.outcomes.total() == count
    assert report.outcomes["drawn"] >= 1
    assert report.outcomes["checked"] >= count // 10
    assert not report.faults, report


def test_a_seed_gives_the_same_specs() -> None:
    data = json.loads(VILLAGE)
    one, two, other = (changed(data, Random(seed)) for seed in (5, 5, 6))
    assert one == two != other
    assert json.loads(VILLAGE) == data


@pytest.mark.parametrize("wrong", [ZeroDivisionError("by nothing"), MemoryError(), RecursionError()])
def test_an_exception_is_a_fault(wrong: Exception, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def rate(system: object) -> None:
        raise wrong

    monkeypatch.setattr(steps, "rate", rate)
    outcome, ((kind, _),) = judged(VILLAGE, tmp_path, drawn=False)
    assert outcome == "crashed"
    assert kind.startswith(f"traceback {type(wrong).__name__} in run.py:")


def test_a_number_that_is_too_long_is_a_fault(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Language, "number", lambda self, value, digits=3: "1234567890.123")
    outcome, faults = judged(VILLAGE, tmp_path, drawn=True)
    assert outcome == "drawn"
    assert "long number" in {kind for kind, _ in faults}


def test_a_spec_that_takes_too_long_and_a_worker_that_dies_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def slow(text: str, folder: Path, *, drawn: bool) -> tuple[str, list[tuple[str, str]]]:
        if drawn:
            raise SystemExit(7)
        for _ in itertools.repeat(None):
            pass
        return "checked", []

    monkeypatch.setattr(fuzz, "judged", slow)
    report = fuzz.run_fuzz(2, draw_one_in=2, bounds=fuzz.Bounds(seconds=0.2))
    assert set(report.faults) == {"longer than 0.2 s", "worker ended with 7"}


def test_a_case_is_made_smaller(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def told(text: str, folder: Path, *, drawn: bool) -> tuple[str, list[tuple[str, str]]]:
        return "checked", [("kind", "what")] if '"rated_power"' in text else []

    monkeypatch.setattr(fuzz, "judged", told)
    smaller = json.loads(fuzz.smaller(VILLAGE, "kind", tmp_path))
    assert len(list(places(smaller))) <= 5
