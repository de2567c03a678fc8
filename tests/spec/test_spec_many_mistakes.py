"""Thousands of mistakes in one file: a hundred told, the rest counted, in time that grows as the file does."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from sld import spec
from sld.spec import Unusable
from sld.spec.source import read_text

HEAD = """project: {title: a roof}
site: {temperature_min: -10, temperature_max: 30}
supply: {earthing_system: TN-S}
types:
  modules:
    m: {rated_power: 400, open_circuit_voltage: 37, short_circuit_current: 13.5, mpp_voltage: 31, mpp_current: 12.9}
  inverters:
    t:
      {rated_power: 4 kW, phases: 1, dc_voltage_max: 600, mpp_voltage_min: 100, mpp_voltage_max: 500,
       inputs: [{current_max: 16, short_circuit_current_max: 20}]}
"""
UNIT = "{{type: {type}, inputs: [{{strings: [{{module: m, modules_in_series: 9}}]}}]}}\n"
ROOF = "inverters:\n  roof: " + UNIT.format(type="t")

MANY = {
    "unknown key at the top": ("", "k{n}: 1\n", "unknown key `k"),
    "misspelt key": ("loads:\n", "  l{n}: {{pwoer: 1}}\n", "unknown key `pwoer`"),
    "wrong unit": ("loads:\n", "  l{n}: {{power: 1 m}}\n", "is a length"),
    "unknown kind": ("boards:\n  b:\n    circuit:\n", "    - {{kind: braeker}}\n", "unknown kind `braeker`"),
    "empty entry": ("accept:\n", "- \n", "is empty"),
}


def refused(text: str, folder: Path) -> tuple[Unusable, float]:
    path = folder / "spec.yaml"
    path.write_text(text, encoding="utf-8")
    begin = time.process_time()
    with pytest.raises(Unusable) as caught:
        spec.load(path)
    return caught.value, time.process_time() - begin


@pytest.mark.parametrize("name", MANY)
def test_a_hundred_are_told_and_the_rest_counted(name: str, tmp_path: Path) -> None:
    begin, line, message = MANY[name]
    found, seconds = refused(HEAD + ROOF + begin + "".join(line.format(n=n) for n in range(4000)), tmp_path)
    assert len(found.findings) == 101
    assert message in str(found.findings[0].message)
    assert found.findings[-1].message == "and 3,900 more mistakes from here on"
    first, last = (found.source.locate(each.at).line for each in (found.findings[0], found.findings[-1]))
    assert last == first + 100
    assert seconds < 4  # 8 to 27 s when each mistake was looked into; usually 0.3 s


def test_names_that_are_not_defined_are_told_alike(tmp_path: Path) -> None:
    lines = "".join(f"  i{n}: {UNIT.format(type='tt')}" for n in range(4000))
    found, seconds = refused(HEAD + "inverters:\n" + lines, tmp_path)
    assert len(found.findings) == 101
    assert "there is no inverter type `tt`" in str(found.findings[0].message)
    assert found.findings[-1].message == "and 3,900 more mistakes from here on"
    assert seconds < 6


def test_each_file_has_its_hundred(tmp_path: Path) -> None:
    (tmp_path / "types.yaml").write_text("types:\n  cables:\n" + "".join(f"    c{n}: 1\n" for n in range(150)))
    text = "include: [types.yaml]\n" + HEAD + ROOF + "loads:\n" + "".join(f"  l{n}: 1\n" for n in range(120))
    found, _ = refused(text, tmp_path)
    more = [each for each in found.findings if each.code == "SP40"]
    assert [each.message for each in more] == [f"and {n} more mistakes from here on" for n in (20, 50)]
    assert [Path(found.source.locate(each.at).file).name for each in more] == ["spec.yaml", "types.yaml"]


def test_400_000_empty_entries_cost_little(tmp_path: Path) -> None:
    """They took 3 GB; no spec has a tenth of so many values."""
    found, seconds = refused("accept:\n" + "- \n" * 400_000, tmp_path)
    assert [each.code for each in found.findings] == ["SP02"]
    assert "100,000 values" in str(found.findings[0].message)
    assert found.source.locate(found.findings[0].at).line > 99_000
    assert seconds < 8


@pytest.mark.parametrize(
    "text",
    [
        "loads: {a: {power: %s}}" % ("9" * 5000),
        "loads: {a: {power: '%s'}}" % ("9," * 5000),
        "loads: {a: {power: '1 %s'}}" % ("m " * 5000),
        "loads: {a: {%s: 1}}" % ("k" * 900),
        "loads: {%s: {pwr: 1}}" % ("k" * 900),
        "supply2: %s" % ("x" * 5000),
        "accept: [{code: %s}]" % ("x" * 5000),
        "boards: {b: {circuit: [{kind: %s}]}}" % ("x" * 5000),
        "boards: {b: {fed_from: %s}}" % ("x " * 190),
        "drawing: {paper: '%s'}" % ("x`" * 5000),
    ],
)
def test_no_value_is_quoted_at_length(text: str, tmp_path: Path) -> None:
    found, _ = refused(HEAD + ROOF + text + "\n", tmp_path)
    for each in found.findings:
        for said in (str(each.message), str(each.remedy)):
            assert len(said) <= 601
            assert max(map(len, said.split("`")[1::2]), default=0) <= 81, said
            assert max(map(len, said.split())) <= 83, said


def test_a_control_character_is_shown_in_its_line(tmp_path: Path) -> None:
    """A place in the text, although that was not taken for text."""
    found, _ = refused("loads: {a\x07b: {}}\n", tmp_path)
    place = found.source.locate(found.findings[0].at)
    assert found.source.lines(place.file)[place.line - 1][place.column - 1] == "\x07"
    assert read_text(HEAD).lines("-")[0] == "project: {title: a roof}"
