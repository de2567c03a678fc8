"""The logo that a spec names: where it may be, and what is told at its place where it cannot be used."""

from __future__ import annotations

from pathlib import Path

import pytest

from sld.picture import Picture
from sld.spec import Unusable, load

SPEC = """\
project:
  title: House
  logo: {logo}
site: {{temperature_min: -12 °C, temperature_max: 35 °C}}
supply: {{phases: 1, voltage: 230 V, earthing_system: TN-S}}
types:
  modules:
    M: {{rated_power: 400 W, open_circuit_voltage: 37.0 V, short_circuit_current: 13.7 A, mpp_voltage: 31.0 V,
        mpp_current: 12.9 A}}
  inverters:
    I: {{rated_power: 3 kW, phases: 1, dc_voltage_max: 600 V, mpp_voltage_min: 100 V, mpp_voltage_max: 520 V,
        inputs: [{{current_max: 16 A, short_circuit_current_max: 22 A}}]}}
inverters:
  roof: {{type: I, inputs: [{{strings: [{{module: M, modules_in_series: 8}}]}}]}}
"""
GOOD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><rect width="20" height="10" fill="#a33c00"/></svg>'
LIVELY = GOOD.replace("<rect", "<script>alert(1)</script><rect")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    home = tmp_path / "job"
    (home / "art").mkdir(parents=True)
    (home / "art" / "logo.svg").write_text(GOOD, encoding="utf-8")
    (home / "art" / "lively.svg").write_text(LIVELY, encoding="utf-8")
    (home / "note.txt").write_text("no picture", encoding="utf-8")
    (tmp_path / "outside.svg").write_text(GOOD, encoding="utf-8")
    (home / "art" / "link.svg").symlink_to(tmp_path / "outside.svg")
    return home


def spec(folder: Path, logo: str) -> Path:
    path = folder / "house.yaml"
    path.write_text(SPEC.format(logo=logo), encoding="utf-8")
    return path


def test_a_file_below_the_folder_of_the_spec_is_read(folder: Path) -> None:
    source, _ = load(spec(folder, "art/logo.svg"))
    assert isinstance(source.logo, Picture)
    assert source.logo.aspect_factor == 20 / 10
    dots = source.logo.rgb
    assert {dots[n : n + 3] for n in range(0, len(dots), 3)} == {bytes.fromhex("a33c00")}


@pytest.mark.parametrize(
    ("logo", "code", "message"),
    [
        ("none.png", "SP21", "no file `none.png`"),
        ("art", "SP21", "no file"),
        ("../outside.svg", "SP22", "outside"),
        ("art/link.svg", "SP22", "outside"),
        ("/etc/hostname", "SP22", "outside"),
        ("note.txt", "SP26", "neither a PNG nor an SVG"),
        ("art/lively.svg", "SP26", "script"),
    ],
)
def test_what_cannot_be_used_is_told_at_its_place(folder: Path, logo: str, code: str, message: str) -> None:
    with pytest.raises(Unusable) as told:
        load(spec(folder, logo))
    (finding,) = told.value.findings
    place = told.value.source.locate(finding.at)
    assert (finding.code, place.line, place.column) == (code, 3, 9)
    assert message in finding.message
    assert finding.remedy


def test_a_file_elsewhere_can_be_allowed(folder: Path) -> None:
    assert load(spec(folder, "../outside.svg"), allow_outside=True)[0].logo


def test_without_a_logo_there_is_none(folder: Path) -> None:
    path = spec(folder, "x")
    path.write_text(path.read_text(encoding="utf-8").replace("  logo: x\n", ""), encoding="utf-8")
    assert load(path)[0].logo is None
