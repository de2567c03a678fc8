"""`sld draw`: which files it writes, and that it writes nothing else and loses nothing."""

from __future__ import annotations

import os
import re
import shutil
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from command import FARM, HALL, ROOT, SCHOOL, SMALL, process, sld

from sld import run
from sld.files import RECORD_NAME, record_name
from sld.render import MissingCairo


def files(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, hidden ones too, but for the records."""
    found = {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    return {name: content for name, content in found.items() if RECORD_NAME not in name}


@pytest.fixture
def small(tmp_path: Path) -> Path:
    path = tmp_path / "specs" / "small.yaml"
    path.parent.mkdir()
    path.write_text(SMALL, encoding="utf-8")
    return path


@pytest.fixture
def out(tmp_path: Path) -> Path:
    return tmp_path / "new" / "out"


@pytest.mark.parametrize(
    ("formats", "endings"),
    [
        ("svg,pdf", {"svg", "pdf"}),
        ("dxf", {"dxf"}),
        (" STROKES , svg,svg", {"strokes", "svg"}),
        ("png", {"png"}),
        ("pdf", {"pdf"}),
    ],
)
def test_the_files_that_it_prints_are_written_and_no_others(
    small: Path, out: Path, formats: str, endings: set[str]
) -> None:
    before = files(small.parent)
    result = sld("draw", small, "-o", out, "--to", formats)
    assert result.exit_code == 0
    printed = result.stdout.splitlines()
    assert printed == sorted(set(printed), key=printed.index)
    assert {str(out / name) for name in files(out)} == set(printed)
    assert {name.rsplit(".")[-1] for name in printed} == endings
    assert files(small.parent) == before


@pytest.mark.parametrize(
    ("reader", "name"), [("crew", "small-crew"), ("operator", "small-operator"), ("full", "small")]
)
def test_the_drawing_for_each_reader_has_a_file_of_its_own(small: Path, out: Path, reader: str, name: str) -> None:
    assert sld("draw", small, "-o", out, "--to", "pdf", "--reader", reader).exit_code == 0
    assert set(files(out)) == {f"{name}.pdf"}


def test_each_document_has_files_of_its_own(small: Path, out: Path) -> None:
    result = sld("draw", small, "-o", out, "--to", "pdf", "--documents", " Calculation, drawing,drawing")
    assert result.exit_code == 0
    assert result.stdout.splitlines() == [str(out / "small-calculation.pdf"), str(out / "small.pdf")]
    assert sld("draw", small, "-o", out, "--to", "svg", "--documents", "calculation").exit_code == 0
    assert {"small-calculation.svg", "small-calculation-2.svg"} <= set(files(out))
    assert "small.svg" not in files(out)


def test_a_document_that_a_reader_has_no_use_for_is_told_of(small: Path, out: Path) -> None:
    result = sld("draw", small, "-o", out, "--to", "pdf", "--documents", "drawing,calculation", "--reader", "crew")
    assert result.exit_code == 2
    assert "no calculation is made for the reader crew" in result.stderr
    assert set(files(out)) == {"small-crew.pdf"}


@pytest.mark.parametrize("documents", ["plan", "drawing,plan", "", " , "])
def test_an_unknown_document_is_refused_before_anything_is_drawn(small: Path, out: Path, documents: str) -> None:
    result = sld("draw", small, "-o", out, "--documents", documents)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "--documents takes drawing, calculation" in result.stderr
    assert not out.exists()


def test_documents_of_two_specs_with_one_name_are_refused(small: Path, out: Path) -> None:
    other = small.with_name("small-calculation.yaml")
    other.write_bytes(small.read_bytes())
    assert sld("draw", small, other, "-o", out, "--to", "strokes").exit_code == 0
    result = sld("draw", small, other, "-o", out / "more", "--to", "strokes", "--documents", "drawing,calculation")
    assert result.exit_code == 2
    assert "would both be drawn to small-calculation.*" in result.stderr
    assert not (out / "more").exists()


def test_a_table_that_is_no_more_does_not_stay(small: Path, out: Path) -> None:
    """A spec that has lost its data bus: the earlier table would pass for one of the new drawing."""
    assert sld("draw", HALL, "-o", out, "--to", "csv").exit_code == 0
    assert "village-hall-data_bus.csv" in files(out)
    (out / "village-hall-strange.csv").write_bytes(b"mine")
    spec = small.with_name("village-hall.yaml")
    spec.write_bytes(small.read_bytes())
    record = (out / record_name("village-hall")).read_text()
    (out / record_name("village-hall")).write_text(
        record.replace(os.path.relpath(HALL, out), os.path.relpath(spec, out))
    )
    result = sld("draw", spec, "-o", out, "--to", "csv")
    assert result.exit_code == 0
    assert "village-hall-data_bus.csv: removed, a table of the earlier drawing" in result.stderr
    assert "village-hall-data_bus.csv" not in files(out)
    assert files(out)["village-hall-strange.csv"] == b"mine"


def test_each_table_is_a_csv_of_its_own(small: Path, out: Path) -> None:
    result = sld("draw", small, "-o", out, "--to", "csv", "--documents", "drawing,calculation")
    assert result.exit_code == 0
    assert {"small-equipment.csv", "small-calculation-inverters.csv", "small-calculation-system.csv"} <= set(files(out))
    assert all(content.startswith(b"\xef\xbb\xbf") for content in files(out).values())


@pytest.mark.parametrize(("dpi", "width"), [(36, 596), (200, 3308)])
def test_a_png_has_the_resolution_asked_for(small: Path, out: Path, dpi: int, width: int) -> None:
    """A3 is 420 mm wide (ISO 216), an inch 25.4 mm: 16.54 inches. PNG (ISO/IEC 15948) has the width at byte 16."""
    assert sld("draw", small, "-o", out, "--to", "png", "--dpi", dpi).exit_code == 0
    assert int.from_bytes(files(out)["small.png"][16:20]) == width


@pytest.mark.parametrize("dpi", [35, 301, "x"])
def test_a_resolution_out_of_range_is_refused(small: Path, out: Path, dpi: object) -> None:
    assert sld("draw", small, "-o", out, "--to", "png", "--dpi", dpi).exit_code == 2
    assert not out.exists()


def test_the_default_is_this_folder_as_svg_and_pdf(small: Path, tmp_path: Path) -> None:
    result = process("draw", small, cwd=tmp_path)
    assert result.returncode == 0
    assert {"small.svg", "small.pdf"} <= set(result.stdout.splitlines())
    assert (tmp_path / "small.pdf").read_bytes().startswith(b"%PDF")
    assert re.search(r"^small: A3 as asked: .* fits$", result.stderr, re.MULTILINE)


@pytest.mark.parametrize(
    ("spec", "options", "code"),
    [
        (HALL, (), 0),
        (FARM, (), 1),
        (FARM, ("--fail-on", "danger"), 1),
        (FARM, ("--fail-on", "never"), 0),
        (SCHOOL, ("--fail-on", "danger"), 0),
    ],
)
def test_exit_code(spec: Path, options: tuple[str, ...], code: int, out: Path) -> None:
    result = sld("draw", spec, "-o", out, "--to", "strokes", *options)
    assert result.exit_code == code
    assert files(out), "findings never stop the drawing"


def test_paper_goes_before_that_of_the_spec(small: Path, out: Path) -> None:
    assert sld("draw", small, "-o", out, "--to", "svg", "--paper", "A2").exit_code == 0
    # ISO 216: A2 is 420 mm x 594 mm
    assert set(re.findall(rb'width="(\d+)mm" height="(\d+)mm"', (out / "small.svg").read_bytes())) == {(b"594", b"420")}
    assert sld("draw", small, "-o", out, "--paper", "A7").exit_code == 2


def test_an_option_word_that_has_another_name_now_is_refused_with_it(small: Path, out: Path) -> None:
    result = sld("draw", small, "-o", out, "--to", "svg,txt")
    assert result.exit_code == 2
    assert "txt is called strokes now" in result.stderr


@pytest.mark.parametrize(
    ("old", "new"), [("cable_way: a", "cable_route"), ("fold_from: 3", "draw_once_from"), ("reading: full", "reader")]
)
def test_a_key_that_has_another_name_now_is_refused_with_it(old: str, new: str, small: Path) -> None:
    if old.startswith("cable_way"):
        text = SMALL.replace("modules_in_series: 8", f"modules_in_series: 8, {old}")
    else:
        text = f"{SMALL}drawing: {{{old}}}\n"
    small.write_text(text, encoding="utf-8")
    result = sld("check", small)
    assert result.exit_code == 2
    assert f"do: write `{new}`" in result.stdout


@pytest.mark.parametrize("formats", ["docx", "svg,docx", "", " , "])
def test_an_unknown_format_is_refused_before_anything_is_drawn(small: Path, out: Path, formats: str) -> None:
    result = sld("draw", small, "-o", out, "--to", formats)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "svg, pdf, png, html, dxf, strokes, csv" in result.stderr
    assert not out.exists()


def test_one_bad_spec_of_several(small: Path, out: Path) -> None:
    bad = small.with_name("bad.yaml")
    bad.write_text(SMALL.replace("phases: 1, voltage", "phase: 1, voltage"), encoding="utf-8")
    other = small.with_name("other.yaml")
    shutil.copy(small, other)
    result = sld("draw", small, bad, other, "-o", out, "--to", "svg")
    assert result.exit_code == 2
    assert {"small.svg", "other.svg"} <= set(files(out))
    assert not [name for name in files(out) if name.startswith("bad")]
    assert len(re.findall(r"^\S+:\d+:\d+: error", result.stderr, flags=re.MULTILINE)) == 1


@pytest.mark.parametrize(("first", "second"), [("a/x.yaml", "b/x.yaml"), ("x.yaml", "x.json"), ("x.yaml", "x-2.yaml")])
def test_specs_whose_files_would_overwrite_each_other(tmp_path: Path, out: Path, first: str, second: str) -> None:
    for name in (first, second):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(SMALL, encoding="utf-8")
    for pair in ((first, second), (second, first)):
        result = sld("draw", *(tmp_path / name for name in pair), "-o", out)
        assert (result.exit_code, result.stdout) == (2, "")
        assert "different folders" in result.stderr
    assert not out.exists()


def test_the_folder_is_a_file(small: Path, tmp_path: Path) -> None:
    place = tmp_path / "taken"
    place.write_text("mine", encoding="utf-8")
    result = sld("draw", small, "-o", place, "--to", "svg")
    assert (result.exit_code, result.stdout) == (2, "")
    assert f"{place}: cannot write" in result.stderr
    assert place.read_text(encoding="utf-8") == "mine"


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_that_may_not_be_written(small: Path, out: Path) -> None:
    out.mkdir(parents=True, mode=0o500)
    result = sld("draw", small, "-o", out, "--to", "svg")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "cannot write" in result.stderr


def test_a_full_disk_leaves_the_earlier_file_and_no_half_one(
    small: Path, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert sld("draw", small, "-o", out, "--to", "svg").exit_code == 0
    before = files(out)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    result = sld("draw", small, "-o", out, "--to", "svg", "--overwrite")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "No space left on device" in result.stderr
    assert files(out) == before


def test_without_cairo_nothing_of_the_set_is_replaced(small: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert sld("draw", small, "-o", out).exit_code == 0
    before = files(out)

    def missing(*_: object, **__: object) -> bytes:
        raise MissingCairo

    monkeypatch.setattr("sld.render.pdf", missing)
    monkeypatch.setattr("sld.render.png", missing)
    small.write_text(SMALL.replace("Mill Lane", "Hill Lane"), encoding="utf-8")
    result = sld("draw", small, "-o", out, "--to", "pdf,svg,png")
    assert (result.exit_code, result.stdout) == (2, "")
    assert files(out) == before
    assert result.stderr.count("sudo apt-get install -y libcairo2") == 1
    assert "--to svg goes without it" in result.stderr
    assert sld("draw", small, "-o", out, "--to", "svg").exit_code == 0
    assert files(out)["small.svg"] != before["small.svg"]


@pytest.mark.usefixtures("anew")
def test_without_ezdxf_the_line_to_type_is_told(small: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    result = sld("draw", small, "-o", out, "--to", "dxf,svg")
    assert (result.exit_code, result.stdout) == (2, "")
    assert not out.exists()
    assert f"{sys.executable} -m pip install 'ezdxf" in result.stderr


def shortened(monkeypatch: pytest.MonkeyPatch, count: int) -> None:
    """Let every drawing have the first so many sheets."""
    documents = run.documents

    def fewer(checked: run.Checked, names: list[str], **asked: str | None) -> object:
        made = documents(checked, names, **asked)
        return {name: replace(each, sheets=each.sheets[:count]) for name, each in made.items()}

    monkeypatch.setattr(run, "documents", fewer)


@pytest.mark.parametrize("format", ["svg", "strokes", "dxf"])
def test_sheets_of_a_longer_drawing_do_not_stay(out: Path, format: str, monkeypatch: pytest.MonkeyPatch) -> None:
    longer = sld("draw", HALL, "-o", out, "--to", format).stdout.splitlines()
    assert len(longer) > 1
    strange = {f"village-hall-99.{format}": b"<svg/>", f"village-hall-plan.{format}": b"sheet 3 of another"}
    strange |= {"village-hall-98.pdf": b"%PDF", f"other-2.{format}": Path(longer[1]).read_bytes()}
    strange |= {f"village-hall-97.{format}": Path(longer[0]).read_bytes()}  # sheet 1 of a spec `village-hall-97`
    for name, content in strange.items():
        (out / name).write_bytes(content)
    shortened(monkeypatch, 1)
    result = sld("draw", HALL, "-o", out, "--to", format, "--overwrite")
    assert set(files(out)) == {f"village-hall.{format}", *strange}
    assert {name: (out / name).read_bytes() for name in strange} == strange
    for gone in longer[1:]:
        assert f"{gone}: removed" in result.stderr
    assert "removed" not in sld("draw", HALL, "-o", out, "--to", format, "--overwrite").stderr


def test_a_picture_that_cannot_be_told_is_left_and_said(small: Path, out: Path) -> None:
    assert sld("draw", small, "-o", out, "--to", "png").exit_code == 0
    further = out / f"small-{len(list(out.glob('*.png'))) + 1}.png"
    further.write_bytes(b"\x89PNG")
    result = sld("draw", small, "-o", out, "--to", "png", "--overwrite")
    assert f"{further}: not part of this drawing" in result.stderr
    assert further.exists()


def test_the_help_names_what_there_is() -> None:
    text = " ".join(sld("draw", "--help").stdout.split())
    for word in (
        "--out",
        "--to",
        "--paper",
        "--reader",
        "--documents",
        "--dpi",
        "--fail-on",
        "--allow-outside",
        "svg, pdf, png, html, dxf, strokes, csv",
        "drawing, calculation",
        "A0",
        "never",
    ):
        assert word in text
    example = re.search(r"Example: sld (draw \S+)", text)
    assert example
    assert (ROOT / example[1].split()[1]).exists()


def test_the_former_word_for_a_reader_is_refused_and_the_present_one_named(small: Path, out: Path) -> None:
    asked = sld("draw", small, "-o", out, "--reading", "crew")
    assert (asked.exit_code, "--reader" in asked.output) == (2, True)
    small.write_text("drawing: {reading: crew}\n" + small.read_text(encoding="utf-8"), encoding="utf-8")
    given = sld("check", small)
    assert (given.exit_code, "write `reader`" in given.output) == (2, True)


def test_letters_that_the_font_lacks_are_refused_at_their_place(tmp_path: Path) -> None:
    spec = tmp_path / "house.yaml"
    spec.write_text(SMALL.replace("House", "家 House"), encoding="utf-8")
    result = sld("draw", spec, "-o", tmp_path / "out", "--to", "html")
    assert result.exit_code == 2
    assert f"{spec}:1:18: the font of the sheets has no 家, so nothing can be drawn for it" in result.stderr
    assert "house: nothing was written, as some text cannot be drawn" in result.stderr
    assert not list(tmp_path.glob("out/house*"))


def test_a_paper_to_print_on_is_told_of(small: Path, out: Path) -> None:
    result = sld("draw", small, "-o", out, "--to", "strokes", "--for-print", "A4")
    assert "small: laid out for A4, to be printed without reduction: text is 2.5 mm high" in result.stderr
    assert sld("draw", small, "-o", out, "--to", "strokes").stderr.count("small: A3 as asked") == 1  # another drawing
    both = sld("draw", small, "-o", out, "--paper", "A3", "--for-print", "A4")
    assert (both.exit_code, "give one of them" in both.stderr) == (2, True)
