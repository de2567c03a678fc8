"""`sld pack` into a folder: whole or not at all, over nobody else's files."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from command import SMALL, process, sld

from sld.files import RECORD_NAME

pytest.importorskip("openpyxl")

DIE = """
import os
import sys
from pathlib import Path
left = {left}
def counted(call):
    def first(*a, **k):
        global left
        left -= 1
        if left < 0:
            os._exit(9)
        return call(*a, **k)
    return first
os.replace = counted(os.replace)
Path.write_bytes = counted(Path.write_bytes)
"""


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file() and path.name != RECORD_NAME}


@pytest.fixture
def spec(tmp_path: Path) -> Path:
    path = tmp_path / "roof.yaml"
    path.write_text(SMALL, encoding="utf-8")
    return path


@pytest.mark.usefixtures("anew")
def test_one_spec_into_the_folder_and_the_same_bytes_again(spec: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert sld("pack", spec, "--for", "notify", "-o", out).exit_code in (0, 1)
    first = contents(out)
    assert {"roof-notify.pdf", "roof-notify.xlsx", "manifest.json", "roof-notify-equipment.csv"} <= set(first)
    assert sld("pack", spec, "--for", "notify", "-o", out).exit_code in (0, 1)
    assert contents(out) == first


UNCHANGED = "unchanged, its files are those of an earlier run"


def test_an_unchanged_spec_is_not_packed_again(spec: Path, tmp_path: Path) -> None:
    """Not even a file's time changes, and it is told as the first time; what decides on the files packs it again."""
    out = tmp_path / "out"
    words = ("pack", spec, "--for", "notify", "-o", out, "--no-xlsx")
    first = sld(*words)
    times = {path.name: path.stat().st_mtime_ns for path in out.iterdir()}
    again = sld(*words)
    assert UNCHANGED in again.stderr
    assert sorted(again.stdout.splitlines()) == sorted(first.stdout.splitlines())
    assert (again.exit_code, {path.name: path.stat().st_mtime_ns for path in out.iterdir()}) == (first.exit_code, times)
    for change in (
        lambda: spec.write_text(SMALL.replace("Mill Lane", "Hill Lane"), encoding="utf-8"),
        lambda: (out / "roof-notify-equipment.csv").unlink(),
        lambda: (out / "manifest.json").unlink(),
    ):
        change()
        assert UNCHANGED not in sld(*words).stderr
        assert UNCHANGED in sld(*words).stderr
    assert UNCHANGED not in sld(*words, "--overwrite").stderr
    assert UNCHANGED not in sld(*words, "--allow-outside").stderr


def test_the_xlsx_is_made_where_it_was_not(spec: Path, tmp_path: Path) -> None:
    words = ("pack", spec, "--for", "notify", "-o", tmp_path / "out")
    sld(*words, "--no-xlsx")
    assert UNCHANGED not in sld(*words).stderr
    assert (tmp_path / "out" / "roof-notify.xlsx").is_file()
    assert UNCHANGED in sld(*words, "--xlsx").stderr


@pytest.mark.parametrize(("option", "code"), [((), (0, 1)), (("--xlsx",), (2,)), (("--no-xlsx",), (0, 1))])
def test_without_the_library_of_xlsx(
    spec: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, option: tuple[str, ...], code: tuple[int, ...]
) -> None:
    """It is an extra: everything else is written, and what is missing is said; asked for, it is an error."""
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    result = sld("pack", spec, "--for", "notify", "-o", tmp_path / "out", *option)
    assert result.exit_code in code
    assert ("openpyxl" in result.stderr) == (option != ("--no-xlsx",))
    assert (tmp_path / "out" / "roof-notify.pdf").exists() == (option != ("--xlsx",))
    assert not (tmp_path / "out" / "roof-notify.xlsx").exists()


def test_another_pack_is_not_replaced(spec: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    sld("pack", spec, "--for", "notify", "-o", out, "--no-xlsx")
    before = contents(out)
    result = sld("pack", spec, "--for", "build", "-o", out, "--no-xlsx")
    assert result.exit_code == 2
    assert "manifest.json: is of the drawing roof-notify" in result.stderr
    assert contents(out) == before


def test_several_specs_have_a_folder_each(spec: Path, tmp_path: Path) -> None:
    (tmp_path / "barn.yaml").write_text(SMALL, encoding="utf-8")
    out = tmp_path / "out"
    sld("pack", spec, tmp_path / "barn.yaml", "--for", "notify", "-o", out, "--jobs", "1", "--no-xlsx")
    assert sorted(path.name for path in out.iterdir()) == ["barn", "roof"]
    assert (out / "barn" / "manifest.json").is_file()


def test_what_cannot_be_used_leaves_the_old_pack(spec: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    sld("pack", spec, "--for", "notify", "-o", out, "--no-xlsx")
    before = contents(out)
    spec.write_text(SMALL.replace("phases: 1", "phases: 2"), encoding="utf-8")
    assert sld("pack", spec, "--for", "notify", "-o", out, "--no-xlsx").exit_code == 2
    assert contents(out) == before


@pytest.mark.parametrize("left", [3])
def test_a_killed_run_leaves_the_old_pack_or_the_new_one(spec: Path, tmp_path: Path, left: int) -> None:
    """One of the points; `prove_packs.py` kills at each of them."""
    out = tmp_path / "out"
    words = ("pack", spec, "--for", "notify", "-o", out, "--no-xlsx")
    sld(*words)
    old = contents(out)
    spec.write_text(SMALL.replace("House on Mill Lane", "House on Mill Road"), encoding="utf-8")
    assert process(*words, before=DIE.format(left=left)).returncode in (0, 9)
    killed = contents(out)
    sld(*words)
    new = contents(out)
    assert new["manifest.json"] != old["manifest.json"]
    assert killed == old or left > 10, "nothing is changed before all is written"
    assert not (out / ".sld-new").exists()
