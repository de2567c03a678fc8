"""The index of a run: over no other file, told before the first spec where it cannot be, the same after a re-run."""

from __future__ import annotations

from pathlib import Path

import pytest
from command import SMALL, sld


@pytest.fixture
def two(tmp_path: Path) -> Path:
    for name in ("hall", "barn"):
        (tmp_path / "two").mkdir(exist_ok=True)
        (tmp_path / "two" / f"{name}.yaml").write_text(SMALL.replace("Mill", name), encoding="utf-8")
    return tmp_path / "two"


def test_an_unchanged_run_says_the_same(two: Path, tmp_path: Path) -> None:
    page, pages = tmp_path / "new" / "all.html", []
    for jobs in (1, 2, 1):
        assert (
            sld("draw", two, "-o", tmp_path / "out", "--to", "strokes,svg", "--jobs", jobs, "--index", page).exit_code
            == 0
        )
        pages.append(page.read_text(encoding="utf-8"))
        assert {each.name for each in page.parent.iterdir()} == {"all.html"}
    assert '"./../out/barn.svg"' in pages[0]
    assert "<h2>House on barn Lane</h2>" in pages[0]
    assert pages[1].replace("; 2 unchanged and not drawn again", "") == pages[0]
    assert pages[2] == pages[1]


@pytest.mark.parametrize("content", [b"mine", b"<!DOCTYPE html>\n<html lang='en'>", SMALL.encode()])
def test_another_file_is_not_replaced(two: Path, tmp_path: Path, content: bytes) -> None:
    page = tmp_path / "all.html"
    page.write_bytes(content)
    result = sld("draw", two, "-o", tmp_path / "out", "--index", page)
    assert (result.exit_code, result.stdout) == (2, "")
    assert f"{page}: is there and not an index; give another file to --index" in result.stderr
    assert page.read_bytes() == content


def test_a_file_that_this_run_draws_is_not_replaced(two: Path, tmp_path: Path) -> None:
    page = tmp_path / "out" / "hall.html"
    result = sld("draw", two, "-o", tmp_path / "out", "--to", "html", "--jobs", 1, "--index", page)
    assert result.exit_code == 2
    assert f"{page}: cannot write the index: is there and not an index" in result.stderr
    assert b"sld index" not in page.read_bytes()[:100]


@pytest.mark.parametrize("option", ["--index", "--summary"])
def test_a_place_that_cannot_be_written_is_told_before_the_first_spec(two: Path, tmp_path: Path, option: str) -> None:
    (tmp_path / "file").write_bytes(b"")
    result = sld("draw", two, "-o", tmp_path / "out", option, tmp_path / "file" / "all")
    assert (result.exit_code, result.stdout) == (2, "")
    assert f"{tmp_path / 'file' / 'all'}: " in result.stderr
    assert not (tmp_path / "out").exists()


def test_a_disk_that_is_full_costs_the_index_alone(two: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from sld.cli.index import Index

    def full(self: Index, outcome: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Index, "add", full)
    page, lines = tmp_path / "all.html", tmp_path / "run.jsonl"
    result = sld("draw", two, "-o", tmp_path / "out", "--to", "strokes", "--index", page, "--summary", lines)
    assert result.exit_code == 2
    assert result.stderr.count(f"{page}: cannot write the index: No space left on device") == 1
    assert len(lines.read_text(encoding="utf-8").splitlines()) == 2
    assert {each.name for each in tmp_path.iterdir()} == {"two", "out", "run.jsonl"}


def test_one_file_for_both_is_refused(two: Path, tmp_path: Path) -> None:
    result = sld("draw", two, "-o", tmp_path / "out", "--index", tmp_path / "x", "--summary", tmp_path / "x")
    assert result.exit_code == 2
    assert "is asked for twice" in result.stderr
    assert {each.name for each in tmp_path.iterdir()} == {"two"}
