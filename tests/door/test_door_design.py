"""A design by `sld.load`: the same from file, text and mapping; its ratings by the names that are printed."""

from __future__ import annotations

import pickle
from dataclasses import FrozenInstanceError
from pathlib import Path
from typing import Any, get_args

import pytest
import yaml

import sld
from sld.door.design import Paper, Reader
from sld.sheet.lint import lint
from sld.spec.blocks.project import Drawing as DrawingBlock

ROOT = Path(__file__).resolve().parents[2]
HALL = ROOT / "specs" / "village-hall.yaml"
PAGE = (ROOT / "gallery" / "spec-reference.md").read_text(encoding="utf-8")
SMALL = PAGE.split("```yaml\n")[1].split("```")[0]
"""The smallest useful spec of the reference: quantities there are texts or bare numbers, so any YAML reader does."""

UOC_MAX_V = 18 * 37.4 * (1 + 0.0026 * (25 + 14))
"""18 modules of 37.4 V at -14 °C and -0.26 %/K, by hand from the data sheet values of the spec."""


@pytest.fixture(scope="module")
def hall() -> sld.Design:
    return sld.load(HALL)


def test_file_text_and_mapping_give_the_same(tmp_path: Path) -> None:
    path = tmp_path / "small.yaml"
    path.write_text(SMALL, encoding="utf-8")
    designs = [sld.load(path), sld.load(str(path)), sld.load(text=SMALL), sld.load(text=SMALL.encode())]
    designs.append(sld.load(yaml.safe_load(SMALL)))
    first = designs[0]
    assert len(first.designations) > 5
    for each in designs[1:]:
        assert each.designations == first.designations
        assert list(each.checked.ratings) == list(first.checked.ratings)
        assert [str(told.message) for told in each.findings] == [str(told.message) for told in first.findings]


def test_a_rating_by_the_names_that_are_printed(hall: sld.Design) -> None:
    rating = hall.rating("-TB1-GC1", "Uoc,max")
    assert rating.value == pytest.approx(UOC_MAX_V)
    assert rating.unit == "V"
    assert hall.rating("-TB1-GC1", sld.Symbol.UOC_MAX) is rating
    assert rating in hall.ratings("-TB1-GC1")


def test_every_rating_is_found_by_what_is_printed(hall: sld.Design) -> None:
    """Where two of a device are printed alike, the one whose symbol it is comes first."""
    for device in ("", *hall.designations):
        for rating in hall.ratings(device):
            assert str(hall.rating(device, str(rating.symbol)).symbol) == str(rating.symbol)


def test_ratings_of_the_whole_system(hall: sld.Design) -> None:
    assert hall.rating("", "N").value == 36  # two strings of 18 modules
    assert hall.rating("", "Pdc").value == pytest.approx(36 * 410)


def test_the_device_of_a_finding(hall: sld.Design) -> None:
    finding = next(each for each in hall.findings if each.device)
    assert hall.designation(finding) in hall.designations
    assert hall.ratings(finding.device) == hall.ratings(hall.designation(finding))


def test_each_string_of_a_group_is_found() -> None:
    depot = sld.load(ROOT / "specs" / "ferry-depot.yaml")
    group = next(each for each in depot.checked.system.devices.values() if len(getattr(each, "designations", ())) > 1)
    names: tuple[str, ...] = getattr(group, "designations")  # noqa: B009
    assert [depot.ratings(name) for name in names] == [depot.ratings(group.key)] * len(names)


@pytest.mark.parametrize(
    ("device", "symbol", "told"),
    [
        ("-TB1-WD9", "Iz", ["no device -TB1-WD9", "-TB1-WD1"]),
        ("-tb1-wd1", "Iz", ["no device -tb1-wd1", "nearest: -TB1-WD1"]),
        ("-TB1-WD1", "iz", ["no rating iz of -TB1-WD1", "nearest: Iz"]),
        ("-TB1-WD1", "frequency", ["no rating frequency", "there are Iexport, Ib,"]),
        ("-TB1-WD1", sld.Symbol.UOC_MAX, ["no rating Uoc,max of -TB1-WD1"]),
        ("", "Iz", ["no rating Iz of the whole system"]),
    ],
)
def test_a_wrong_name_is_told_with_the_nearest(
    device: str, symbol: str | sld.Symbol, told: list[str], hall: sld.Design
) -> None:
    with pytest.raises(LookupError) as caught:
        hall.rating(device, symbol)
    assert all(part in str(caught.value) for part in told), str(caught.value)


def test_a_value_that_no_table_has_is_told_with_its_reason() -> None:
    """3 MW on one phase of 230 V are 13 043 A, more than any circuit-breaker for a board is made for."""
    huge = sld.load(text=SMALL.replace("rated_power: 3 kW", "rated_power: 3 MW"))
    breaker = next(each for each in huge.designations if each.endswith("-FC1") and each.count("-") == 2)
    for symbol in ("In", sld.Symbol.IN):
        with pytest.raises(LookupError, match=f"there is no In of {breaker}: no MCB rating reaches 13043 A"):
            huge.rating(breaker, symbol)


def test_findings_are_told_as_the_command_tells_them() -> None:
    faulty = sld.load(ROOT / "specs" / "upper-farm-faulty.yaml")
    worst = max(faulty.findings, key=lambda each: each.severity)
    assert worst.severity is faulty.worst is sld.Severity.DANGER
    place = faulty.place(worst)
    assert faulty.quoted(worst).startswith(f"{place}: danger {worst.code} {worst.message}\n")
    assert all(f"{faulty.place(each)}: " in faulty.quoted() for each in faulty.findings)


def test_input_that_cannot_be_used_is_told_with_its_place(tmp_path: Path) -> None:
    with pytest.raises(sld.Unusable) as caught:
        sld.load(text=SMALL.replace("modules_in_series", "modules_in_serie"))
    line = next(number for number, text in enumerate(SMALL.splitlines(), 1) if "modules_in_series" in text)
    (finding,) = caught.value.findings
    assert str(caught.value.place(finding)).startswith(f"<text>:{line}:")
    assert "write `modules_in_series`" in caught.value.quoted()
    again = pickle.loads(pickle.dumps(caught.value))  # as from a pool of processes
    assert (str(again), again.quoted()) == (str(caught.value), caught.value.quoted())
    with pytest.raises(sld.Unusable, match=r"none\.yaml:1:1: SP01"):
        sld.load(tmp_path / "none.yaml")


@pytest.mark.parametrize(
    ("given", "kind"),
    [
        ({}, TypeError),
        ({"spec": HALL, "text": SMALL}, TypeError),
        ({"text": SMALL, "allow_outside": True}, TypeError),
        ({"spec": SMALL}, ValueError),
    ],
)
def test_a_call_that_says_nothing_is_refused(given: dict[str, Any], kind: type[Exception]) -> None:
    with pytest.raises(kind):
        sld.load(**given)


def test_a_design_is_frozen_and_short_to_print(hall: sld.Design) -> None:
    with pytest.raises(FrozenInstanceError):
        hall.path = None  # type: ignore[misc]
    assert repr(hall).startswith("<Design ")
    assert len(repr(hall)) < 200


def test_paper_and_reader_are_those_of_the_spec(hall: sld.Design) -> None:
    fields = DrawingBlock.model_fields
    assert get_args(Paper) == get_args(fields["paper"].annotation)
    assert get_args(Reader) == get_args(fields["reader"].annotation)
    with pytest.raises(ValueError, match="paper is one of A4, A3"):
        hall.draw(paper="B5")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="reader is one of full, operator, crew"):
        hall.draw(reader="owner")  # type: ignore[arg-type]


def test_with_several_supply_points_each_is_asked_by_its_network() -> None:
    farm = sld.load("tests/printed/twin.yaml")
    assert [farm.rating(each, "Pac").value for each in ("-GA1", "-GA2")] == [3000, 3000]
    assert farm.rating("-TB2", "Ib").value == pytest.approx(3000 / 3**0.5 / 400)
    assert farm.rating("-WE5", "S").value > 0
    with pytest.raises(LookupError, match="-GA1, -GA2"):
        farm.ratings()
    assert farm.draw().sheets


@pytest.mark.parametrize("printed", ["A4", "A3"])
def test_what_is_printed_on_a_smaller_paper_is_laid_out_for_it(hall: sld.Design, printed: Paper) -> None:
    # ISO 216: A4 is 210 mm x 297 mm, A3 297 mm x 420 mm. The lint holds ordinary letters to 2.5 mm (ISO 3098)
    sides = {"A4": (210.0, 297.0), "A3": (297.0, 420.0)}[printed]
    sheets = hall.draw(for_print=printed).sheets
    assert {tuple(sorted((sheet.width_mm, sheet.height_mm))) for sheet in sheets} == {sides}
    assert [lint(sheet) for sheet in sheets] == [[]] * len(sheets)


def test_a_house_with_one_inverter_stands_on_a4() -> None:
    page = Path("gallery/spec-reference.md").read_text(encoding="utf-8")
    house = sld.load(text=page.split("```yaml\n")[1].split("```")[0])
    drawing = house.draw(paper="A4")
    assert {tuple(sorted((sheet.width_mm, sheet.height_mm))) for sheet in drawing.sheets} == {(210.0, 297.0)}
    assert [lint(sheet) for sheet in drawing.sheets] == [[]] * len(drawing.sheets)
    with pytest.raises(ValueError, match="two sizes of the same sheets"):
        house.draw(paper="A3", for_print="A4")
