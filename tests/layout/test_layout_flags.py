"""Numbers of the warning flags: equal findings of equal devices share one, assumptions have none."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from example_specs import checked, document

from sld import run
from sld.finding import Finding, Severity
from sld.layout.diagram.flags import by_device, numbered
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.words import Sayable, amount, phrase, sequence, verbatim

SCHOOL = run.check(Path(__file__).parents[2] / "specs" / "valley-school.yaml")


def finding(
    inverter: int, code: str = "AC04", severity: Severity = Severity.ADVICE, number: Sayable | str = "96 %"
) -> Finding:
    device = sequence([phrase("circuit-breaker"), f"-TB{inverter}-FC1"], " ")
    message = phrase("{device} is loaded to {number}", device=device, number=number)
    return Finding(code, severity, message, phrase("use a larger one"), (), f"inverters.inv{inverter}.circuit.0")


def loaded(percent: float, why: str) -> Rating:
    return Rating(Symbol.IB, percent, "%", "100 · Ib / In", (Given("of", why),), "common practice")


def test_equal_findings_of_equal_devices_share_a_number() -> None:
    flags = numbered(SCHOOL.system, [finding(1), finding(2), finding(3)])
    assert [flag.number for flag in flags] == [1]
    assert len(flags[0].findings) == 3
    assert by_device(flags) == {f"inverters.inv{number}.circuit.0": (1,) for number in (1, 2, 3)}


def test_other_values_codes_and_severities_are_told_apart() -> None:
    found = [finding(1), finding(2, number="97 %"), finding(3, code="AC05")]
    assert [flag.number for flag in numbered(SCHOOL.system, found)] == [1, 2, 3]


@pytest.mark.parametrize(
    ("one", "other", "flags_count"),
    [
        (amount(96.01, "%"), amount(96.04, "%"), 1),
        (amount(96, "%"), amount(97, "%"), 1),
        (amount(96, "%"), amount(97, "A"), 2),
        (loaded(96, "the first"), loaded(96, "the second"), 1),
        (loaded(96, "the first"), loaded(97, "the first"), 1),
        (verbatim("-TB1-WD1"), verbatim("-TB2-WD1"), 1),
        (verbatim("-TB1-WD1"), verbatim("-TB2-WD2"), 2),
        (phrase("a name"), phrase("another name"), 2),
    ],
)
def test_what_is_written_alike_but_for_values_and_own_designations_is_one_thing(
    one: Sayable, other: Sayable, flags_count: int
) -> None:
    assert len(numbered(SCHOOL.system, [finding(1, number=one), finding(2, number=other)])) == flags_count


@pytest.mark.parametrize(
    ("one", "other", "flags_count"),
    [
        (loaded(96, "the first"), loaded(96, "the second"), 1),
        (loaded(96, "the first"), loaded(97, "the first"), 1),
        (verbatim("-TB1-WD1"), verbatim("-TB2-WD1"), 2),
    ],
)
def test_remedies_are_one_where_they_are_written_alike(one: Sayable, other: Sayable, flags_count: int) -> None:
    told = [replace(finding(1), remedy=phrase("less than {value}", value=value)) for value in (one, other)]
    assert len(numbered(SCHOOL.system, told)) == flags_count


TOLD = [  # what each device breaks, what can flow there; how many causes
    ([(50, 75.2), (50, 54.6)], ["breaks 50 kA, below 54.6…75.2 kA"]),
    ([(50, 54.6), (50, 75.2), (50, 60)], ["breaks 50 kA, below 54.6…75.2 kA"]),
    ([(50, 75.2), (25, 54.6)], ["breaks 50 kA, below 75.2 kA", "breaks 25 kA, below 54.6 kA"]),
    ([(50, 75.2), (25, 75.2)], ["breaks 25…50 kA, below 75.2 kA"]),
    ([(50, 75.2), (25, 75.2), (50, 60)], ["breaks 25…50 kA, below 75.2 kA", "breaks 50 kA, below 60 kA"]),
]


@pytest.mark.parametrize(("values", "expected"), TOLD)
def test_of_two_values_one_is_common_to_all_that_share_a_number(
    values: list[tuple[float, float]], expected: list[str]
) -> None:
    found = [
        replace(
            finding(inverter),
            message=phrase("breaks {has}, below {flows}", has=amount(has, "kA"), flows=amount(flows, "kA")),
        )
        for inverter, (has, flows) in enumerate(values, start=1)
    ]
    assert [str(flag.message) for flag in numbered(SCHOOL.system, found)] == expected


def test_devices_of_other_kinds_have_flags_of_their_own() -> None:
    cable = replace(finding(2), device="inverters.inv2.circuit.1")
    assert len(numbered(SCHOOL.system, [finding(1), cable])) == 2


def test_assumptions_have_no_flag() -> None:
    assert numbered(SCHOOL.system, [finding(1, severity=Severity.ASSUMPTION)]) == ()


def test_numbers_of_three_digits_are_only_listed() -> None:
    flags = numbered(SCHOOL.system, [finding(1, number=verbatim(f"{percent} %")) for percent in range(101)])
    assert [flag.number for flag in flags][-1] == 101
    assert by_device(flags)["inverters.inv1.circuit.0"] == tuple(range(1, 100))


def test_equal_devices_without_an_answer_share_a_number() -> None:
    text = """
project: {title: Field}
inverters:
  roof: {type: I, count: 2, circuit: [{kind: breaker}],
         inputs: [{strings: [{module: M, modules_in_series: 18}]}]}
site: {temperature_min: -10 °C, temperature_max: 35 °C}
supply: {phases: 3, earthing_system: TN-S}
types:
  modules:
    M: {rated_power: 400 W, open_circuit_voltage: 37 V, short_circuit_current: 13 A, mpp_voltage: 31 V,
        mpp_current: 12 A, voltage_coefficient: -0.26 %/K}
  inverters:
    I: {rated_power: 100 kW, phases: 3, current_max: 150 A, dc_voltage_max: 1000 V, mpp_voltage_min: 200 V,
        mpp_voltage_max: 900 V, inputs: [{current_max: 30 A, short_circuit_current_max: 40 A, strings_max: 2}]}
"""  # no miniature circuit-breaker is made for 150 A
    checked = run.check_text(text)
    unanswered = [
        flag for flag in numbered(checked.system, checked.findings) if "-FC1 has no In" in str(flag.findings[0].message)
    ]
    assert [len(flag.findings) for flag in unanswered] == [2]


def test_every_number_has_its_flag_at_a_place() -> None:
    """Upper farm has 45 of them, one of a data chain: it stands at the logger, where the chain begins."""
    path = Path(__file__).parents[2] / "specs" / "upper-farm-faulty.yaml"
    placed = {flag.number: flag.key for each in document(path, "drawing").diagrams for flag in each.plan.flags}
    numbers = {each.number: each.findings[0] for each in numbered(checked(path).system, checked(path).findings)}
    assert set(placed) == set(numbers)
    (of_chain,) = [number for number, told in numbers.items() if told.code == "DB09"]
    assert placed[of_chain] == "data.devices.log"
