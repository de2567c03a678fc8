"""Each way in which a block can have the wrong shape: one finding, at the right place, with what to write.

The blocks below are shaped like those of the spec: a block, a mapping of named types, lists in lists, and a list of
blocks told apart by `kind`.
"""

from __future__ import annotations

import datetime
from typing import Annotated, Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field, StringConstraints, model_validator
from pydantic_core import core_schema

from sld.finding import RULES, Finding
from sld.spec.complain import EXPLANATIONS, validate
from sld.spec.document import Spec
from sld.spec.fault import fault
from sld.spec.source import Source, read_text
from sld.spec.units import Quantity, Unit, Units


class Row(BaseModel):
    model_config = ConfigDict(
        extra="forbid",
        strict=True,
        frozen=True,
        allow_inf_nan=False,
        alias_generator=lambda name: name.removesuffix("_m"),
    )


class Fuse(Row):
    kind: Literal["fuse"]
    current: Annotated[float, Unit("A", exclusive_minimum=True, minimum=0, maximum=100)]
    poles: Literal[1, 2] = 2


class Cable(Row):
    kind: Literal["cable"]
    length_m: Annotated[float, Unit("m")] = Field(description="Length, one way.")
    section: Annotated[float, Unit("mm2")] | Literal["auto"] = "auto"
    buried: bool = False


class String(Row):
    label: str
    series: Annotated[int, Field(ge=1, le=40)]
    circuit: tuple[Annotated[Fuse | Cable, Field(discriminator="kind")], ...] = ()
    note: str | None = None


class Inverter(Row):
    id: Annotated[str, StringConstraints(pattern=r"^[A-Z]\w*$")]
    strings: Annotated[list[String], Field(min_length=1, max_length=2)]
    test_class: Literal["1", "2", "1+2"] = "2"

    @model_validator(mode="after")
    def labels_differ(self) -> Inverter:
        labels = [string.label for string in self.strings]
        if len(set(labels)) < len(labels):
            raise fault("two strings have the same label", "rename one of them", "strings")
        return self


class ModuleType(Row):
    power: Annotated[float, Unit("W")]
    coefficient: Annotated[Quantity, Units("%/K", "V/K")] | None = None


class Project(Row):
    name: Annotated[str, StringConstraints(min_length=1, max_length=10)]
    date: datetime.date | None = None
    factor: Annotated[float, Field(gt=0, lt=2)] = 1.0
    count: int = 1

    @model_validator(mode="after")
    def date_is_named(self) -> Project:
        if self.name == "late" and self.date is None:
            raise ValueError("a late project needs a date")
        return self


class Root(Row):
    project: Project
    types: dict[Annotated[str, StringConstraints(pattern=r"^[A-Z]")], ModuleType] = {}
    inverters: list[Inverter] = []


GOOD = """\
project:
  name: Roof
  date: 2026-01-31
types:
  M400: {power: 400 W, coefficient: -0.26 %/K}
inverters:
  - id: INV1
    test_class: "2"
    strings:
      - label: A
        series: 12
        circuit:
          - kind: fuse
            current: 15 A
            poles: 2
          - kind: cable
            length: 25 m
            buried: true
"""


def findings(text: str) -> tuple[Source, list[Finding]]:
    source = read_text(text, "roof.yaml")
    model, found = validate(Root, source)
    assert (model is None) == bool(found)
    return source, found


def test_a_good_text_gives_the_model() -> None:
    model, found = validate(Root, read_text(GOOD))
    assert found == []
    assert model is not None
    assert model.inverters[0].strings[0].circuit[1].model_dump()["length_m"] == 25.0


@pytest.mark.parametrize(
    ("old", "new", "code", "line", "column", "message", "remedy"),
    [
        ("label: A", "lable: A", "SP30", 10, 9, "unknown key `lable` in `inverters[0].strings[0]`", "write `label`"),
        ("label: A", "Label: A", "SP30", 10, 9, "unknown key `Label`", "write `label`"),
        ("length: 25 m", "length_m: 25 m", "SP30", 17, 13, "unknown key `length_m`", "write `length`"),
        ("poles: 2", "colour: red", "SP30", 15, 13, "unknown key `colour`", "keys not used here yet: `poles`"),
        (
            "series: 12",
            "series: 12\n        test_class: x",
            "SP30",
            12,
            9,
            "unknown key `test_class`",
            "of `inverters[0]`",
        ),
        (
            "  date: 2026-01-31",
            "  power: 1",
            "SP30",
            3,
            3,
            "unknown key `power` in `project`",
            "keys not used here yet",
        ),
        (
            "          - kind: cable\n            length: 25 m\n            buried: true\n",
            "          - {kind: cable, length: 2,5 m, buried: true}\n",
            "SP30",
            16,
            37,
            "unknown key `5 m`",
            "decimals with a point",
        ),
        ("types:", "tpyes:", "SP30", 4, 1, "unknown key `tpyes` in the top level", "write `types`"),
        (
            "            length: 25 m\n",
            "",
            "SP31",
            16,
            13,
            "key `length` is missing",
            "add `length:` (Length, one way)",
        ),
        ("  name: Roof\n", "", "SP31", 1, 1, "key `name` is missing in `project`", "add `name:`"),
        ('"2"', '"3"', "SP32", 8, 17, "expected 1, 2 or 1+2", "write one of"),
        ('"2"', "2", "SP32", 8, 17, "is the number 2", 'put it in quotes: "2"'),
        ("poles: 2", "poles: 3", "SP32", 15, 20, "expected 1 or 2", "write one of `1`, `2`"),
        ("poles: 2", 'poles: "2"', "SP32", 15, 20, "the text `2`", "without quotes"),
        ("kind: fuse", "kind: fues", "SP33", 13, 19, "unknown kind `fues`", "write `fuse`"),
        ("kind: fuse", "kind: lamp", "SP33", 13, 19, "unknown kind `lamp`", "one of `fuse`, `cable`"),
        ("kind: fuse", "knd: fuse", "SP30", 13, 13, "unknown key `knd`", "write `kind`"),
        ("- kind: fuse\n            current", "- current", "SP33", 13, 13, "entry 1 of", "`fuse`, `cable`"),
        ("25 m", "25 mm2", "SP35", 17, 21, "`25 mm2` is an area, expected a length in m", "write it in m"),
        ("25 m", "25,5 m", "SP35", 17, 21, "`25,5 m` is not a number", "write a decimal point instead of the comma"),
        ("25 m", "true", "SP35", 17, 21, "true is not a number", "write a number and its unit"),
        ("length: 25 m", "length:", "SP34", 17, 13, "`length` is empty", "leave the key out"),
        ("15 A", "0 A", "SP36", 14, 22, "more than 0 A", "check number, sign and unit"),
        ("15 A", "1 kA", "SP36", 14, 22, "at most 100 A", "check number, sign and unit"),
        ("-0.26 %/K", "-0.26", "SP35", 5, 37, "has no unit", "write the unit behind the number"),
        ("series: 12", "series: 0", "SP36", 11, 17, "`series` is 0, must be at least 1", "correct the number"),
        ("series: 12", "series: 41", "SP36", 11, 17, "must be at most 40", "correct the number"),
        (
            "series: 12",
            'series: "12"',
            "SP34",
            11,
            17,
            "the text `12`, expected a whole number",
            "write 12 without quotes",
        ),
        ("series: 12", "series: 010", "SP34", 11, 17, "the text `010`", "write 10 without the leading zero"),
        ("series: 12", "series: 12.5", "SP34", 11, 17, "the number 12.5, expected a whole number", "write the number"),
        ("series: 12", "series: true", "SP34", 11, 17, "`series` is true", "write the number"),
        ("buried: true", "buried: yes", "SP34", 18, 21, "the text `yes`, expected true or false", "write true"),
        ("buried: true", "buried: off", "SP34", 18, 21, "the text `off`", "write false"),
        ("buried: true", "buried: 1", "SP34", 18, 21, "the number 1", "write true or false"),
        ("buried: true", "section: 6 A", "SP35", 18, 22, "`6 A` is a current", "or `auto`"),
        ("buried: true", "section: atuo", "SP32", 18, 22, "the text `atuo`", "write `auto`"),
        ("label: A", "label: 1.10", "SP34", 10, 16, "the number 1.10, expected a text", 'put it in quotes: "1.10"'),
        ("label: A", "label: [A]", "SP34", 10, 16, "`label` is a list", "write one text"),
        ("name: Roof", "name: ''", "SP37", 2, 9, "`name` has 0 characters", "write a text"),
        ("name: Roof", "name: Roofs and more", "SP37", 2, 9, "must have at most 10", "at most 10"),
        (
            "name: Roof",
            "name: late\n  count: 2\n  factor: 3",
            "SP36",
            4,
            11,
            "`factor` is 3, must be less than 2",
            "correct the number",
        ),
        ("2026-01-31", "31.1.2026", "SP37", 3, 9, "expected a date", "YYYY-MM-DD"),
        ("2026-01-31", "2026-02-30", "SP37", 3, 9, "expected a date", "YYYY-MM-DD"),
        ("id: INV1", "id: inv1", "SP37", 7, 9, "`id` is `inv1`", "form"),
        ("M400:", "m400:", "SP37", 5, 3, "the name `m400` does not have the form", "another name"),
        (
            "  M400: {power: 400 W, coefficient: -0.26 %/K}",
            "  - M400",
            "SP34",
            4,
            1,
            "`types` is a list",
            "instead of each dash",
        ),
        (
            "M400: {power: 400 W, coefficient: -0.26 %/K}",
            "M400: 400",
            "SP34",
            5,
            9,
            "expected a block of keys",
            "write keys",
        ),
        (
            "          - kind: cable",
            "          - cable\n          - kind: cable",
            "SP34",
            16,
            13,
            "entry 2 of",
            "write keys",
        ),
    ],
)
def test_each_mistake_gives_one_finding(
    old: str, new: str, code: str, line: int, column: int, message: str, remedy: str
) -> None:
    assert old in GOOD
    text = GOOD.replace(old, new)
    source, found = findings(text)
    (finding,) = found
    span = source.locate(finding.at, finding.on_key)
    assert (finding.code, span.line, span.column) == (code, line, column)
    assert message in finding.message
    assert remedy in finding.remedy
    assert RULES[code].explanation


@pytest.mark.parametrize(
    ("text", "code", "line", "message", "remedy"),
    [
        ("project: {name: a}\ninverters: INV1\n", "SP34", 2, "`inverters` is the text `INV1`, expected a list", "`- `"),
        ("project: {name: a}\ninverters:\n  a: 1\n", "SP34", 2, "`inverters` is a block, expected a list", "`- `"),
        ("project: {name: a}\ninverters: [{id: A, strings: []}]\n", "SP37", 2, "0 entries", "at least one entry"),
        ("project: {name: a}\ninverters: [{id: A, strings: [1, 1, 1]}]\n", "SP37", 2, "3 entries", "at most 2"),
        ("types: {}\n", "SP31", 1, "key `project` is missing in the top level", "add `project:`"),
        ("project:\n  name: late\n", "SP38", 1, "a late project needs a date", "change"),
        ("project: {name: a, factor: 0}\n", "SP36", 1, "must be more than 0", "correct the number"),
        ("project: {name: a, factor: x}\n", "SP34", 1, "the text `x`, expected a number", "the number"),
        ("project: 5\n", "SP34", 1, "`project` is the number 5", "write keys"),
    ],
)
def test_mistakes_of_a_whole_block(text: str, code: str, line: int, message: str, remedy: str) -> None:
    source, found = findings(text)
    relevant = [each for each in found if each.code == code and "entry" not in each.message]
    (finding,) = relevant
    assert source.locate(finding.at, finding.on_key).line == line
    assert message in finding.message
    assert remedy in finding.remedy


def test_a_validator_points_at_the_key_it_names() -> None:
    again = "      - label: A\n        series: 3\n"
    source, (finding,) = findings(GOOD + again)
    assert (finding.code, source.locate(finding.at).line) == ("SP38", 9)
    assert (finding.message, finding.remedy) == ("two strings have the same label", "rename one of them")


def test_two_mistakes_come_in_the_order_of_the_text() -> None:
    text = GOOD.replace("series: 12", "series: x").replace("name: Roof", "nmae: Roof").replace("15 A", "15 m")
    source, found = findings(text)
    assert [source.locate(each.at, each.on_key).line for each in found] == [2, 11, 14]


def test_a_missing_key_is_still_told_beside_an_unrelated_unknown_one() -> None:
    _, found = findings("project: {colour: red}\n")
    assert sorted(each.code for each in found) == ["SP30", "SP31"]


def _error_types(schema: object) -> set[str]:
    """Return the error types that pydantic-core can give for the node types of a core schema."""
    by_node = {
        "str": {"string_type", "string_pattern_mismatch", "string_too_short", "string_too_long"},
        "int": {"int_type", "int_from_float", "greater_than", "greater_than_equal", "less_than", "less_than_equal"},
        "float": {"float_type", "finite_number", "greater_than", "greater_than_equal", "less_than", "less_than_equal"},
        "bool": {"bool_type"},
        "literal": {"literal_error"},
        "list": {"list_type", "too_short", "too_long"},
        "tuple": {"tuple_type", "too_short", "too_long"},
        "dict": {"dict_type", "too_short", "too_long"},
        "model": {"model_type", "missing", "extra_forbidden"},
        "tagged-union": {"union_tag_invalid", "union_tag_not_found", "model_attributes_type"},
        "date": {"date_type", "date_parsing", "date_from_datetime_parsing", "date_from_datetime_inexact"},
    }
    found: set[str] = set()
    if isinstance(schema, dict):
        found |= by_node.get(str(schema.get("type")), set())
        for value in schema.values():
            found |= _error_types(value)
    elif isinstance(schema, list | tuple):
        for value in schema:
            found |= _error_types(value)
    return found


@pytest.mark.parametrize("root", [Root, Spec])
def test_no_error_type_of_the_models_falls_back_to_words_that_are_not_ours(root: type[BaseModel]) -> None:
    root.model_rebuild(force=True)  # else it is built when it is first used
    possible = _error_types(root.__pydantic_core_schema__) | {"quantity_unit", "quantity_number", "quantity_range"}
    assert {"union_tag_invalid", "model_type", "string_pattern_mismatch"} <= possible
    assert sorted(possible - set(EXPLANATIONS)) == []


def test_every_error_type_that_is_told_exists() -> None:
    ours = {"quantity_unit", "quantity_number", "quantity_range", "quantity_size", "fault"}
    assert set(EXPLANATIONS) - ours <= set(core_schema.ErrorType.__args__)  # type: ignore[attr-defined]


def test_a_missing_word_is_asked_for_without_choosing_one() -> None:
    text = "project: {title: x}\nsite: {temperature_min: -5 °C, temperature_max: 30 °C}\nsupply: {phases: 1}\n"
    _, found = validate(Spec, read_text(text))
    (finding,) = [each for each in found if "earthing_system" in each.message]
    assert "one of `TN-S`, `TN-C-S`, `TT`, `IT`" in finding.remedy
    assert "`earthing_system: TN-S`" not in finding.remedy


MODULE_TYPE = """
project: {title: a roof}
site: {temperature_min: -10, temperature_max: 35}
supply: {earthing_system: TN-S}
types:
  modules:
    m:
      rated_power: 400
      open_circuit_voltage: 37
      short_circuit_current: 13.5
      mpp_voltage: 31
      mpp_current: 12.9
      current_coefficient: 0.05 %/K
      single_diode:
        photocurrent: 13.5 A
        saturation_current: 0.1 nA
        series_resistance: 0.2
        shunt_resistance: 500
        modified_ideality: 1.44
"""


@pytest.mark.parametrize(
    ("old", "new", "line", "message"),
    [
        ("0.05 %/K", "5 %/K", 13, "5 %/K"),
        ("0.05 %/K", "0.5 A/K", 13, "3.7 %/K"),
        ("photocurrent: 13.5 A", "photocurrent: 13.5 mA", 15, "far from the short-circuit current"),
        ("13.5 A", "1e28 A", 15, "too large to be meant"),
    ],
)
def test_a_slip_in_the_data_of_a_module_is_refused_at_its_place(old: str, new: str, line: int, message: str) -> None:
    source = read_text(MODULE_TYPE.replace(old, new))
    found = [each for each in validate(Spec, source)[1] if message in each.message]
    assert [source.locate(each.at).line for each in found] == [line]
