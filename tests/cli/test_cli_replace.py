"""`sld draw` into a folder with files in it: what was read, and what is of another drawing, stays."""

from __future__ import annotations

import json
import os
import shutil
from io import BytesIO
from pathlib import Path

import pytest
from command import SMALL, process, sld
from PIL import Image

from sld.files import RECORD_NAME, record_name

FORMATS = "svg,pdf,png,dxf,strokes"
LOGO = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>'


def contents(folder: Path) -> dict[str, bytes]:
    found = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def spec(path: Path, text: str = SMALL) -> Path:
    path.parent.mkdir(exist_ok=True, parents=True)
    path.write_text(text, encoding="utf-8")
    return path


def assert_refused(folder: Path, told: str, *arguments: object) -> None:
    before = contents(folder)
    result = sld("draw", *arguments, "-o", folder)
    assert (result.exit_code, result.stdout) == (2, "")
    assert told in result.stderr
    assert "nothing was written" in result.stderr
    assert contents(folder) == before


def _png() -> bytes:
    out = BytesIO()
    Image.new("RGB", (40, 20)).save(out, "PNG")
    return out.getvalue()


@pytest.mark.parametrize("overwrite", [(), ("--overwrite",)])
@pytest.mark.parametrize(
    ("name", "inputs", "formats"),
    [
        ("roof.strokes", {}, "strokes"),
        ("roof.yaml", {"roof.svg": LOGO}, "svg"),
        ("roof.yaml", {"roof.png": _png()}, "strokes,png"),
        ("roof.yaml", {"roof-2.strokes": b"types: {}\n"}, "svg,strokes"),
    ],
)
def test_what_was_read_is_never_replaced(
    tmp_path: Path, name: str, inputs: dict[str, bytes], formats: str, overwrite: tuple[str, ...]
) -> None:
    text = SMALL
    for file, content in inputs.items():
        (tmp_path / file).write_bytes(content)
        text = f"include: [{file}]\n{text}" if content.startswith(b"types") else text.replace(
            "project: {", f"project: {{logo: {file}, "
        )  # fmt: skip
    path = spec(tmp_path / name, text)
    assert_refused(tmp_path, "is a file that the drawing is made from", path, "--to", formats, *overwrite)


@pytest.mark.parametrize("link", [os.link, os.symlink])
def test_what_was_read_is_known_under_another_name(tmp_path: Path, link: object) -> None:
    path = spec(tmp_path / "roof.yaml")
    (tmp_path / "out").mkdir()
    link(path, tmp_path / "out" / "roof.svg")  # type: ignore[operator]
    assert_refused(tmp_path / "out", "is a file that the drawing is made from", path, "--to", "svg", "--overwrite")


def test_another_spec_of_the_same_run_is_an_input_too(tmp_path: Path) -> None:
    first, second = spec(tmp_path / "b.yaml"), spec(tmp_path / "b-operator.strokes")
    result = sld("draw", first, second, "--reader", "operator", "-o", tmp_path, "--to", "strokes", "--overwrite")
    assert result.exit_code == 2
    assert f"{second}: is a file that the drawing is made from" in result.stderr
    assert second.read_text(encoding="utf-8") == SMALL
    assert (tmp_path / "b-operator-operator.strokes").exists()


def test_the_logo_of_another_spec_of_the_run_is_an_input_too(tmp_path: Path) -> None:
    (tmp_path / "y.svg").write_bytes(LOGO)
    first = spec(tmp_path / "x.yaml", SMALL.replace("project: {", "project: {logo: y.svg, "))
    second = spec(tmp_path / "y.yaml")
    result = sld("draw", first, second, "-o", tmp_path, "--to", "svg", "--overwrite", "--jobs", "1")
    assert result.exit_code == 2
    assert f"{tmp_path / 'y.svg'}: is a file that another drawing here is made from" in result.stderr
    assert (tmp_path / "y.svg").read_bytes() == LOGO


OTHERS = {
    "a sheet of one is another": ("x-2.yaml", (), "x.yaml", (), "x-2"),
    "the drawing for a reader of one is another": (
        "x-operator.yaml",
        (),
        "x.yaml",
        ("--reader", "operator"),
        "x-operator",
    ),
    "the other way round": ("x.yaml", ("--reader", "operator"), "x-operator.yaml", (), "x-operator"),
    "another folder": ("a/x.yaml", (), "b/x.yaml", (), "x"),
}


@pytest.mark.parametrize(("first", "asked", "second", "then", "name"), OTHERS.values(), ids=OTHERS)
def test_a_file_of_another_drawing_is_not_replaced(
    tmp_path: Path, first: str, asked: tuple[str, ...], second: str, then: tuple[str, ...], name: str
) -> None:
    out, to = tmp_path / "out", "strokes"
    one, other = spec(tmp_path / first), spec(tmp_path / second, SMALL.replace("Mill Lane", "Hill Lane"))
    assert sld("draw", one, "-o", out, "--to", to, *asked).exit_code == 0
    assert_refused(out, f"{out / name}.{to}: is of the drawing {name} of {tmp_path / first}", other, "--to", to, *then)
    before = contents(out)
    assert sld("draw", other, "-o", out, "--to", to, "--overwrite", *then).exit_code == 0
    assert contents(out)[f"{name}.{to}"] != before[f"{name}.{to}"]


@pytest.mark.usefixtures("anew")
def test_the_same_drawing_is_replaced_and_gives_the_same_bytes(tmp_path: Path) -> None:
    out = tmp_path / "out"
    path = spec(tmp_path / "x.yaml")
    assert sld("draw", path, "-o", out, "--to", FORMATS).exit_code == 0
    before = contents(out)
    assert str(tmp_path) not in before[record_name("x")].decode()
    for again in (path, tmp_path / "out" / ".." / "x.yaml"):
        assert sld("draw", again, "-o", out, "--to", FORMATS).exit_code == 0
        assert contents(out) == before


def test_formats_are_switched_each_for_itself(tmp_path: Path) -> None:
    out = tmp_path / "out"
    path = spec(tmp_path / "x.yaml")
    assert sld("draw", path, "-o", out, "--to", "svg").exit_code == 0
    before = contents(out)
    assert sld("draw", path, "-o", out, "--to", "pdf").exit_code == 0
    now = contents(out)
    assert set(now) == {*before, "x.pdf"}
    assert {name: now[name] for name in before if name != record_name("x")} == {
        name: content for name, content in before.items() if name != record_name("x")
    }
    assert set(json.loads(now[record_name("x")])["files"]) == set(now) - {record_name("x")}


def test_a_format_that_was_not_drawn_again_is_said(tmp_path: Path) -> None:
    out = tmp_path / "out"
    path = spec(tmp_path / "x.yaml")
    told = f"{out / 'x'}: its files in pdf, strokes are of an earlier drawing"
    assert told not in sld("draw", path, "-o", out, "--to", "svg,pdf,strokes").stderr
    assert told not in sld("draw", path, "-o", out, "--to", "svg").stderr
    spec(path, SMALL.replace("Mill Lane", "Hill Lane"))
    assert told in sld("draw", path, "-o", out, "--to", "svg").stderr
    assert "earlier drawing" not in sld("draw", path, "-o", out, "--to", "svg,pdf,strokes").stderr


def test_without_a_record_a_drawing_is_known_by_its_marks(tmp_path: Path) -> None:
    """As those are that were drawn before there was a record."""
    out = tmp_path / "out"
    path = spec(tmp_path / "x.yaml")
    assert sld("draw", path, "-o", out, "--to", FORMATS).exit_code == 0
    before = contents(out)
    shutil.rmtree(out / RECORD_NAME)
    assert sld("draw", path, "-o", out, "--to", FORMATS).exit_code == 0
    assert contents(out) == before


def test_without_a_record_the_first_sheet_of_another_is_known_by_its_mark(tmp_path: Path) -> None:
    out = tmp_path / "out"
    one, other = spec(tmp_path / "x-2.yaml"), spec(tmp_path / "x.yaml")
    assert sld("draw", one, "-o", out, "--to", "svg").exit_code == 0
    shutil.rmtree(out / RECORD_NAME)
    assert_refused(out, f"{out / 'x-2.svg'}: is not known as a file of this drawing", other, "--to", "svg")


@pytest.mark.parametrize("to", ["svg", "pdf", "png", "dxf", "strokes"])
def test_a_file_of_unknown_origin_is_not_replaced(tmp_path: Path, to: str) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / f"x.{to}").write_bytes(b"mine")
    path = spec(tmp_path / "x.yaml")
    assert_refused(out, f"{out / 'x'}.{to}: is not known as a file of this drawing", path, "--to", to)
    assert sld("draw", path, "-o", out, "--to", to, "--overwrite").exit_code == 0
    assert contents(out)[f"x.{to}"] != b"mine"
    (out / f"x.{to}").write_bytes(b"mine again")
    assert_refused(out, "was changed since it was drawn", path, "--to", to)


def test_a_folder_in_the_place_of_a_file(tmp_path: Path) -> None:
    out = tmp_path / "out"
    (out / "x.svg").mkdir(parents=True)
    assert_refused(out, f"{out / 'x.svg'}: is a folder", spec(tmp_path / "x.yaml"), "--to", "svg", "--overwrite")


def test_a_name_as_long_as_a_name_may_be(tmp_path: Path) -> None:
    """255 bytes on the usual file systems of Linux: `.yaml` takes five of them, `-4.svg` of the last sheet six."""
    out = tmp_path / "out"
    most = os.pathconf(tmp_path, "PC_NAME_MAX")
    longest = spec(tmp_path / ("x" * (most - 6) + ".yaml"))
    assert sld("draw", longest, "-o", out, "--to", "svg").exit_code == 0
    assert f"{longest.stem}-2.svg" in contents(out)
    before = contents(out)
    result = sld("draw", spec(tmp_path / ("x" * (most - 5) + ".yaml")), "-o", out, "--to", "pdf,svg")
    assert (result.exit_code, result.stdout) == (2, "")
    assert "File name too long" in result.stderr
    assert contents(out) == before


def test_what_is_drawn_does_not_depend_on_the_folder_it_is_drawn_from(tmp_path: Path) -> None:
    """Another working folder, another way to write the path: the same files and the same record."""
    spec(tmp_path / "specs" / "x.yaml")
    found = []
    for cwd, path, out in ((tmp_path, "specs/x.yaml", "out"), (tmp_path / "specs", "x.yaml", "../out")):
        assert process("draw", path, "-o", out, "--to", "strokes", cwd=cwd).returncode == 0
        found.append(contents(tmp_path / "out"))
    assert found[0] == found[1]
