"""The tour on the shipped one-inverter spec: from the file to sheets, and to the same bytes wherever it is walked."""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from functools import cache
from pathlib import Path

import pytest

from sld import run
from sld.finding import Severity
from sld.model.device import StringGroup
from sld.ratings.symbol import Symbol
from sld.sheet.compose import Composition

ROOT = Path(__file__).parents[1]
SPEC = ROOT / "specs" / "village-hall.yaml"

DESIGNATIONS = ["-GA1", "-UC1", "-TB1", "-TB1-FC1", "-TB1-FB1", "-TB1-WD1", "-TB1-QB1", "-TB1-GC1", "-TB1-GC2", "-WF1"]
"""By the owner of a circuit and the letters of IEC 81346-2: network, board, inverter with its protective devices,
cable, isolator and strings, data cable."""

UOC_MAX_V = 18 * 37.4 * (1 + 0.0026 * (25 + 14))
"""18 modules of 37.4 V at -14 °C and -0.26 %/K: 741.5 V, by hand from the spec's data sheet values."""


@cache
def walked() -> tuple[run.Checked, Composition]:
    checked = run.check(SPEC)
    return checked, run.draw(checked)


@cache
def written() -> dict[str, bytes]:
    drawing = walked()[1]
    return run.files(drawing.sheets, "hall", ("svg", "pdf", "strokes", "dxf"), about=drawing.about)


def test_the_check() -> None:
    checked, _ = walked()
    strings = list(checked.system.of(StringGroup))
    assert len(strings) == 2
    for string in strings:
        rating = checked.ratings.get(string.key, Symbol.UOC_MAX)
        assert rating
        assert rating.value == pytest.approx(UOC_MAX_V)
    assert checked.worst() in (None, Severity.ASSUMPTION, Severity.ADVICE)


def test_the_sheets() -> None:
    _, drawing = walked()
    assert [sheet.number for sheet in drawing.sheets] == list(range(1, len(drawing.sheets) + 1))
    assert (drawing.sheets[0].width_mm, drawing.sheets[0].height_mm) == (420, 297)  # A3 of ISO 216, lying
    assert drawing.paper == "A3"


def test_the_names_of_the_files() -> None:
    count = len(walked()[1].sheets)
    stems = ["hall", *(f"hall-{number}" for number in range(2, count + 1))]
    formats = ("svg", "strokes", "dxf")
    assert set(written()) == {f"{stem}.{format}" for stem in stems for format in formats} | {"hall.pdf"}
    assert run.files(walked()[1].sheets, "hall", ()) == {}


def test_every_svg_is_a_sheet_of_its_size() -> None:
    for sheet, name in zip(walked()[1].sheets, [name for name in written() if name.endswith(".svg")], strict=True):
        root = ElementTree.fromstring(written()[name])
        assert (root.get("width"), root.get("height")) == (f"{sheet.width_mm:g}mm", f"{sheet.height_mm:g}mm")


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The text of each page of the PDF, as another program finds it."""
    program = shutil.which("pdftotext")
    if program is None:
        pytest.skip("needs pdftotext (poppler-utils)")
    path = tmp_path_factory.mktemp("pdf") / "hall.pdf"
    path.write_bytes(written()["hall.pdf"])
    found = subprocess.run([program, "-layout", str(path), "-"], capture_output=True, text=True, check=True).stdout
    return found.split("\f")[:-1]


def test_the_pdf_has_a_page_for_each_sheet(pages: list[str]) -> None:
    assert len(pages) == len(walked()[1].sheets)


@pytest.mark.parametrize("designation", DESIGNATIONS)
def test_a_designation_is_found_in_the_diagram(pages: list[str], designation: str) -> None:
    assert re.search(rf"(?<!\S){re.escape(designation)}(?![^\s,])", pages[0])


def test_the_highest_dc_voltage_is_found(pages: list[str]) -> None:
    assert f"{UOC_MAX_V:.0f} V" in " ".join(pages[0].split())


def test_the_revision_and_title_are_found_on_every_page(pages: list[str]) -> None:
    """ISO 7200: revision index, identification number and title are fields of the title block of each sheet."""
    for page in pages:
        assert re.search(r"(?<!\S)B(?!\S)", page)
        assert "MV-HALL-01" in page
        assert "Merren village hall" in page
    assert "Feed-in limit added" in pages[0]


def test_what_the_pdf_says_of_itself(tmp_path: Path) -> None:
    """Title, owner, date of the newest revision and what the operator files it under, as the spec gives them."""
    program = shutil.which("pdfinfo")
    if program is None:
        pytest.skip("needs pdfinfo (poppler-utils)")
    path = tmp_path / "hall.pdf"
    path.write_bytes(written()["hall.pdf"])
    told = subprocess.run([program, "-isodates", str(path)], capture_output=True, text=True, check=True).stdout
    facts = dict(re.findall(r"^(\w+):\s+(.*)$", told, re.MULTILINE))
    assert facts["Title"] == "Merren village hall, Single-line diagram"
    assert facts["Author"] == "Merren valley works office"
    assert facts["CreationDate"] == facts["ModDate"] == "2026-04-14T00:00:00Z"
    assert {"MV-HALL-01", "MV 0042 7731", "Merren network"} <= set(facts["Keywords"].split(", "))


@pytest.mark.parametrize("asked", ["A2", "A0"])
def test_another_paper_than_that_of_the_spec(asked: str) -> None:
    assert run.draw(walked()[0], paper=asked).paper == asked


SUMS = """
import hashlib, sys
from pathlib import Path
from sld import run
drawing = run.draw(run.check(Path(sys.argv[1])))
made = run.files(drawing.sheets, "hall", ("svg", "pdf", "strokes", "dxf"), about=drawing.about)
for name, content in made.items():
    print(name, hashlib.sha256(content).hexdigest())
"""


def sums_elsewhere(folder: Path, **changes: str) -> list[str]:
    changed = {**os.environ, "PYTHONPATH": str(ROOT), **changes}
    spec = os.path.relpath(SPEC, folder)
    command = [sys.executable, "-c", SUMS, spec]
    done = subprocess.run(command, cwd=folder, env=changed, capture_output=True, text=True, check=True)
    return done.stdout.splitlines()


def test_the_same_bytes_anywhere(tmp_path: Path) -> None:
    """Neither the order of hashing nor the folder, the time zone, language or fonts of the machine are in the files."""
    fonts = tmp_path / "fonts.conf"
    fonts.write_text('<?xml version="1.0"?><fontconfig></fontconfig>', encoding="utf-8")
    here = [f"{name} {hashlib.sha256(content).hexdigest()}" for name, content in written().items()]
    elsewhere = {"TZ": "America/Adak", "LANG": "de_DE.UTF-8", "LC_ALL": "tr_TR.UTF-8", "FONTCONFIG_FILE": str(fonts)}
    assert sums_elsewhere(tmp_path, PYTHONHASHSEED="77", **elsewhere) == here
