"""`sld explain`: what a code, a family, a table or a key means, and how each rating of a device came about."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from command import FARM, HALL, ROOT, SCHOOL, sld

CODE = re.compile(r"([A-Z]{2,3}\d\d) +(\S.*)")


def test_explain_lists_every_code_and_explains_each() -> None:
    lines = sld("explain").stdout.splitlines()
    listed = [CODE.fullmatch(line) for line in lines]
    assert all(listed)
    codes = [match[1] for match in listed if match]
    assert codes == sorted(set(codes))
    assert len(codes) > 100
    rules = {path.name.split("_")[0].upper() for path in (ROOT / "sld" / "rules").glob("*/[a-z]*_*.py")}
    assert rules <= set(codes)
    for match in listed:
        assert match
        result = sld("explain", match[1])
        assert result.exit_code == 0
        head, *rest = result.stdout.splitlines()
        assert head.startswith(f"{match[1]} {match[2]} (")
        assert len(" ".join(rest)) > 40, match[1]


def test_every_code_that_is_printed_can_be_explained() -> None:
    printed = set(re.findall(r"why: sld explain (\S+)", sld("check", FARM, SCHOOL, HALL).stdout))
    assert len(printed) > 10
    for code in printed:
        assert sld("explain", code).exit_code == 0


@pytest.mark.parametrize(
    ("asked", "told"), [("DC0l", "did you mean DC01?"), ("sp3", "did you mean SP30?"), ("nonsense", "lists the codes")]
)
def test_explain_of_an_unknown_code_gives_the_nearest(asked: str, told: str) -> None:
    result = sld("explain", asked)
    assert (result.exit_code, result.stdout) == (2, "")
    assert told in result.stderr
    assert sld("explain", "dc01").stdout == sld("explain", "DC01").stdout


def explained(*asked: object) -> str:
    """Return what is printed, runs of spaces and line breaks as one space."""
    result = sld("explain", *asked)
    assert (result.exit_code, result.stderr) == (0, "")
    return " ".join(result.stdout.split())


def test_how_a_section_came_about() -> None:
    """IEC 60364-5-52:2009 Table B.52.4, method C, copper, PVC: 1.5 mm² carries 17.5 A, 2.5 mm² 24 A. In is 20 A."""
    told = explained(HALL, "-TB1-WD1")
    assert told.startswith(f"-TB1-WD1 cable {HALL}:58:9 ")
    assert "S cross-sectional area: 2.5 mm² (chosen) Formula smallest S with Iz ≥ I,needed" in told
    assert "Governed by current" in told
    assert "Passed over 1.5 mm²: Iz = 17.5 A, below I,needed" in told
    assert "Iz current-carrying capacity as installed: 24 A (computed) Formula It · Ca · Cg" in told
    assert "Assumed AC cables not grouped with other circuits" in told


CHOSEN = [
    # device, symbol and value of the hall, what its series has below; the series as in `sld explain standard_ratings`
    ("-TB1-QB1", "In rated current: 20 A (chosen)", "Passed over 16 A: below 20 A"),
    ("-TB1-QB2", "Ie rated operational current: 20 A (chosen)", "Passed over 16 A: below 17.4 A"),
    ("-TB1-FA1", "Ucpv maximum continuous operating voltage for PV: 800 V (chosen)", "Passed over 720 V: below 741 V"),
]


@pytest.mark.parametrize(("device", "value", "passed_over"), CHOSEN)
def test_what_was_passed_over(device: str, value: str, passed_over: str) -> None:
    told = explained(HALL, device)
    assert value in told
    assert passed_over in told


def test_every_device_of_a_spec_is_listed_and_explained() -> None:
    listed = sld("explain", HALL).stdout.splitlines()
    assert len(listed) > 20
    assert any(re.fullmatch(rf"-TB1-WD1 +cable +{re.escape(str(HALL))}:58:9", line) for line in listed)
    assert any(re.match(r"-WE1 +earth conductor, foundation electrode ", line) for line in listed)
    for line in listed:
        assert explained(HALL, line.split()[0]).startswith(line.split()[0])


SAME = [
    (HALL, "hall", "-TB1 inverter"),  # by its name in the spec
    (HALL, "main board", "-UC1 board"),  # by the name that is printed
    (HALL, "inverters.hall", "-TB1 inverter"),
    (SCHOOL, "-TB1-FC3", "-TB1-FC2…4 string fuse"),  # one of several that are drawn once
    (FARM, "-TB1-QB2", "-TB1-QB2 DC isolator not in the spec, assumed"),
]


@pytest.mark.parametrize(("spec", "asked", "begins"), SAME)
def test_a_device_by_its_names(spec: Path, asked: str, begins: str) -> None:
    assert explained(spec, asked).startswith(begins)


def test_findings_stand_with_their_device() -> None:
    found = re.findall(r"danger (DC\d\d)", sld("check", FARM).stdout)
    assert found
    assert f"danger {found[0]}" in "".join(
        explained(FARM, name) for name in ("-TB1", "-TB1-XD1", "-TB1-GC1", "-TB1-QB1")
    )


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ((HALL, "-TB9"), "there is no device -TB9; the nearest: -TB1"),
        ((HALL, "cable"), "2 devices are called cable: -TB1-WD2, -TB1-WD3"),
        (("nix.yaml",), "cannot read the file"),
        (("capacity_iec6036",), "did you mean capacity_iec60364?"),
        (("open_circuit_volts",), "did you mean open_circuit_voltage?"),
    ],
)
def test_what_cannot_be_explained(asked: tuple[object, ...], told: str) -> None:
    result = sld("explain", *asked)
    assert (result.exit_code, result.stdout) == (2, "")
    assert told in result.stderr


def test_a_family_a_table_and_a_key() -> None:
    assert sld("explain", "ea").stdout.splitlines()[:2] == [
        "Earthing and bonding",
        "EA01   earthing conductor too small",
    ]
    table = sld("explain", "capacity_iec60364").stdout
    assert "source: " in table
    assert "status: " in table
    assert sld("explain", "open_circuit_voltage").stdout == sld("keys", "open_circuit_voltage").stdout
