"""A second run: a spec of which nothing has changed is not drawn again, and what came of it is told as before."""

from __future__ import annotations

import json
import os
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from command import FARM, ROOT, SMALL, sld

from sld.files import record_name

TYPES = "types:\n" + SMALL.split("types:\n")[1].split("inverters:\n  roof")[0]
LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="{}" height="20"/></svg>'
TOLD = "unchanged, its files are those of an earlier run"


@pytest.fixture
def spec(tmp_path: Path) -> Path:
    """A spec with a types file and a logo, drawn once."""
    folder = tmp_path / "specs"
    folder.mkdir()
    head, types, rest = SMALL.partition(TYPES)
    assert types
    text = "include: [types.yaml]\n" + head.replace("project: {", "project: {logo: logo.svg, ") + rest
    (folder / "x.yaml").write_text(text, encoding="utf-8")
    (folder / "types.yaml").write_text(TYPES, encoding="utf-8")
    (folder / "logo.svg").write_text(LOGO.format(40), encoding="utf-8")
    assert draw(folder / "x.yaml")[0]
    return folder / "x.yaml"


def draw(spec: Path, *more: object) -> tuple[bool, str]:
    """Draw a spec; return whether it was drawn, and the names of its files."""
    result = sld("draw", spec, "-o", spec.parents[1] / "out", "--to", "strokes,svg", *more)
    assert result.exit_code == 0, result.stderr
    return TOLD not in result.stderr, result.stdout


def contents(folder: Path) -> dict[str, tuple[bytes, int]]:
    return {path.name: (path.read_bytes(), path.stat().st_mtime_ns) for path in folder.rglob("*.*") if path.is_file()}


def test_nothing_is_written_and_the_same_files_are_named(spec: Path) -> None:
    out = spec.parents[1] / "out"
    _, named = draw(spec, "--overwrite")
    before = contents(out)
    drawn, again = draw(spec)
    assert not drawn
    assert sorted(again.splitlines()) == sorted(named.splitlines())
    assert contents(out) == before
    assert draw(spec, "--overwrite")[0]
    assert {name: content for name, (content, _) in contents(out).items()} == {
        name: content for name, (content, _) in before.items()
    }


def _written(name: str, old: str, new: str) -> Callable[[Path], None]:
    def change(folder: Path) -> None:
        path = folder / name
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")

    return change


@pytest.mark.parametrize(
    "change",
    [
        _written("specs/x.yaml", "Mill Lane", "Hill Lane"),
        _written("specs/x.yaml", "include: [", "include: [ "),
        _written("specs/types.yaml", "37.0 V", "37.1 V"),
        _written("specs/logo.svg", 'width="40"', 'width="30"'),
        _written(f"out/{record_name('x')}", '"made": "', '"made": "0'),
        lambda folder: (folder / "out/x-2.svg").unlink(),
        lambda folder: (folder / "out/x.strokes").unlink(),
        lambda folder: (folder / f"out/{record_name('x')}").unlink(),
    ],
)
def test_what_decides_on_the_files(spec: Path, change: Callable[[Path], None]) -> None:
    assert not draw(spec)[0]
    change(spec.parents[1])
    assert draw(spec)[0]
    assert not draw(spec)[0]


@pytest.mark.parametrize(
    "options", [("--paper", "A2"), ("--documents", "drawing,calculation"), ("--to", "dxf"),
                ("--reader", "full"), ("--allow-outside",)]
)  # fmt: skip
def test_what_is_asked_for_decides(spec: Path, options: tuple[str, ...]) -> None:
    assert not draw(spec)[0]
    assert draw(spec, *options)[0]
    assert not draw(spec, *options)[0]


def test_the_resolution_of_a_picture_decides(spec: Path) -> None:
    picture = ("--to", "png", "--dpi")
    assert draw(spec, *picture, "40")[0]
    assert not draw(spec, *picture, "40")[0]
    assert draw(spec, *picture, "50")[0]


def test_another_version_of_the_program_draws_again(spec: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sld.cli.draw.program", lambda: "another")
    assert draw(spec)[0]
    assert not draw(spec)[0]


def test_the_program_is_all_its_files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import sld as package
    from sld.cli.again import program

    copy = tmp_path / "sld"
    shutil.copytree(ROOT / "sld", copy, ignore=shutil.ignore_patterns("__pycache__"))
    before = program()
    monkeypatch.setattr(package, "__file__", str(copy / "__init__.py"))
    assert program() == before
    table = next((copy / "tables").glob("*.csv"))
    table.write_bytes(table.read_bytes() + b"\n")
    assert program() != before


def test_a_file_that_was_changed_by_hand_is_still_not_replaced(spec: Path) -> None:
    path = spec.parents[1] / "out" / "x.svg"
    path.write_text("mine", encoding="utf-8")
    result = sld("draw", spec, "-o", path.parent, "--to", "svg")
    assert (result.exit_code, "was changed since it was drawn" in result.stderr) == (2, True)
    assert path.read_text(encoding="utf-8") == "mine"


def test_findings_and_exit_code_are_those_of_the_first_run(tmp_path: Path) -> None:
    found = []
    for number in range(2):
        summary = tmp_path / f"{number}.jsonl"
        result = sld(
            "draw",
            ROOT / "specs" / "ford-barn.yaml",
            FARM,
            "-o",
            tmp_path / "out",
            "--to",
            "strokes",
            "--summary",
            summary,
        )
        assert result.exit_code == 1
        lines = [json.loads(line) for line in summary.read_text(encoding="utf-8").splitlines()]
        found.append([{key: value for key, value in each.items() if key != "seconds"} for each in lines])
    assert found[0] == found[1]
    assert result.stderr.endswith("2 checked: 1 clean, 1 with findings; 2 unchanged and not drawn again\n")
    counts = sld("check", FARM).stdout.splitlines()[-1].partition(": ")[2]
    assert re.search(rf"found then: {re.escape(counts)} \(sld check tells them\)", result.stderr)
    again = sld("draw", FARM, "-o", tmp_path / "out", "--to", "strokes", "--fail-on", "never")
    assert (again.exit_code, TOLD in again.stderr) == (0, True)


def test_a_spec_that_was_moved_with_its_drawings_is_known(spec: Path, tmp_path: Path) -> None:
    """The record holds paths as they are seen from its folder."""
    (tmp_path / "other").mkdir()
    for name in ("specs", "out"):
        os.rename(tmp_path / name, tmp_path / "other" / name)
    assert not draw(tmp_path / "other" / "specs" / "x.yaml")[0]
