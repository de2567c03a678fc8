"""`sld new`: what it writes can be checked and drawn, says what is an example, and costs no file that was there."""

from __future__ import annotations

from pathlib import Path

import pytest
from command import sld

import sld as package
from sld.cli import new as command
from sld.finding import Severity
from sld.spec.language.draft import EARTHING_SYSTEMS, POWER, Answers, draft

COUNTRIES = (None, "GB", "DE", "US", "AU", "FR")
OPEN_QUESTIONS = {"DC45", "DC50", "EA13", "FA06", "FA03", "AC62"}
"""What a draft leaves open: what the NEC asks of the array, metal pipes, resistance of an electrode, loop impedance,
the interface protection of a plant of 50 kW."""


@pytest.mark.parametrize("country", COUNTRIES)
@pytest.mark.parametrize("earthing", EARTHING_SYSTEMS)
def test_every_answer_gives_a_spec_that_can_be_used(earthing: str, country: str | None) -> None:
    for phases, power_w, meter in ((1, 1500.0, False), (1, 3680.0, True), (3, 10_000.0, True), (3, 50_000.0, False)):
        answers = Answers(phases, earthing, country, power_w, meter=meter)
        design = package.load(text=draft(answers))
        worse = {each.code for each in design.findings if each.severity >= Severity.NON_COMPLIANCE}
        assert worse <= OPEN_QUESTIONS
        assert not [each.code for each in design.findings if each.severity is Severity.DANGER]


def test_what_was_answered_stands_there_and_every_other_number_is_called_an_example() -> None:
    text = draft(Answers(3, "TN-C-S", "DE", 8000, (9, 11), "Larkline 410", "Ostrand 8", True))
    assert {"  phases: 3", "  earthing_system: TN-C-S", "  country: DE", "    type: Ostrand 8"} <= set(
        text.splitlines()
    )
    assert "modules_in_series: 9" in text
    assert "modules_in_series: 11" in text
    answered = ("phases:", "rated_power: 8000 W", "modules_in_series", "Larkline 410:", "Ostrand 8")
    for line in text.splitlines():
        if any(sign.isdigit() for sign in line.split("#")[0]) and not any(each in line for each in answered):
            assert "# example: " in line


def test_without_a_terminal_the_usual_answers_are_taken(tmp_path: Path) -> None:
    path = tmp_path / "new.yaml"
    result = sld("new", path)
    assert (result.exit_code, result.stdout) == (0, f"{path}: written; next: sld check {path}\n")
    assert path.read_text(encoding="utf-8") == draft(Answers())
    assert sld("check", path).exit_code == 0


def test_a_file_that_is_there_stays(tmp_path: Path) -> None:
    path = tmp_path / "mine.yaml"
    path.write_text("mine")
    result = sld("new", path)
    assert (result.exit_code, path.read_text()) == (2, "mine")
    assert "is there already and stays as it is" in result.stderr
    assert sld("new", tmp_path / "no" / "folder.yaml").exit_code == 2


@pytest.mark.parametrize(
    ("option", "value", "told"),
    [
        ("--phases", "2", "phases are 1 or 3, not 2"),
        ("--earthing", "TN", "there is no earthing system TN: one of TN-S, TN-C-S"),
        ("--country", "QQ", "there is no country QQ in ISO 3166-1"),
        ("--power", "10 A", "expected an active power in W"),
        ("--power", "1 MW", "is out of range, must be at most 50000 W"),
        ("--strings", "12;12", "strings are numbers of modules such as 12,12, not 12;12"),
        ("--module", " ", "a name of a type is one line"),
    ],
)
def test_an_answer_that_cannot_be_used(option: str, value: str, told: str, tmp_path: Path) -> None:
    path = tmp_path / "new.yaml"
    result = sld("new", path, option, value)
    assert result.exit_code == 2
    assert told in result.stderr
    assert not path.exists()


def test_on_a_terminal_it_asks_until_the_answer_can_be_used(monkeypatch: pytest.MonkeyPatch) -> None:
    typed = iter(["two", "1"])
    monkeypatch.setattr(command, "can_ask", lambda: True)
    monkeypatch.setattr(command.typer, "prompt", lambda question, default: next(typed))
    assert command._answer(None, "Phases", 3, command._phases) == 1


def test_bounds_of_the_power() -> None:
    assert (POWER.minimum, POWER.maximum) == (100, 50_000)
