"""Numbers of the warning flags: equal findings of equal devices share one, assumptions have none."""

from __future__ import annotations

from pathlib import Path

from sld import run
from sld.finding import Finding, Severity
from sld.layout.diagram.flags import by_device, numbered

SCHOOL = run.check(Path(__file__).parents[2] / "specs" / "valley-school.yaml")


def finding(inverter: int, code: str = "AC04", severity: Severity = Severity.ADVICE, number: str = "96 %") -> Finding:
    message = f"circuit-breaker -TB{inverter}-FC1 is loaded to {number}"
    return Finding(code, severity, message, "use a larger one", (), f"inverters.inv{inverter}.circuit.0")


def test_equal_findings_of_equal_devices_share_a_number() -> None:
    flags = numbered(SCHOOL.system, [finding(1), finding(2), finding(3)])
    assert [flag.number for flag in flags] == [1]
    assert len(flags[0].findings) == 3
    assert by_device(flags) == {f"inverters.inv{number}.circuit.0": (1,) for number in (1, 2, 3)}


def test_other_values_codes_and_severities_are_told_apart() -> None:
    found = [finding(1), finding(2, number="97 %"), finding(3, code="AC05")]
    assert [flag.number for flag in numbered(SCHOOL.system, found)] == [1, 2, 3]


def test_assumptions_have_no_flag() -> None:
    assert numbered(SCHOOL.system, [finding(1, severity=Severity.ASSUMPTION)]) == ()


def test_numbers_of_three_digits_are_only_listed() -> None:
    flags = numbered(SCHOOL.system, [finding(1, number=f"{percent} %") for percent in range(101)])
    assert [flag.number for flag in flags][-1] == 101
    assert by_device(flags)["inverters.inv1.circuit.0"] == tuple(range(1, 100))
