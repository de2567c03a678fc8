"""A run that is killed at any point leaves the old set or the new one, at the latest after the next run."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from sld.files import RECORD_NAME, Drawing, Refused, put, record_name
from sld.files.switch import STAGE_NAME

ROOT = Path(__file__).parents[2]
DRAWING, OTHER = Drawing("x", "../x.yaml"), Drawing("y", "../y.yaml")
OLD = {f"x{sheet}.strokes": f"sheet {number} old".encode() for number, sheet in enumerate(("", "-2", "-3", "-4"), 1)}
NEW = {f"x{sheet}.strokes": f"sheet {number} new".encode() for number, sheet in enumerate(("", "-2"), 1)}

KILLED = """
import os, pathlib, shutil, sys
from sld.files import Drawing, put
left = int(sys.argv[2])
def counted(call):
    def first(*a, **k):
        global left
        left -= 1
        if left < 0:
            os._exit(9)
        return call(*a, **k)
    return first
os.replace, os.unlink, os.mkdir = counted(os.replace), counted(os.unlink), counted(os.mkdir)
pathlib.Path.write_bytes = counted(pathlib.Path.write_bytes)
pathlib.Path.unlink, shutil.rmtree = counted(pathlib.Path.unlink), counted(shutil.rmtree)
new = {"x.strokes": b"sheet 1 new", "x-2.strokes": b"sheet 2 new"}
put(pathlib.Path(sys.argv[1]), Drawing("x", "../x.yaml"), new, [])
print(left)
"""


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.name != RECORD_NAME}


def killed(folder: Path, after: int) -> int:
    """Draw the new set in a process that ends at once after so many changes; return its exit code."""
    return subprocess.run(
        [sys.executable, "-c", KILLED, folder, str(after)], cwd=ROOT, capture_output=True, check=False
    ).returncode


def test_a_run_killed_at_any_point(tmp_path: Path) -> None:
    found = []
    for after in range(100):
        folder = tmp_path / str(after)
        put(folder, DRAWING, OLD, [])
        code = killed(folder, after)
        told = put(folder, OTHER, {"y.strokes": b"sheet 1 y"}, [])
        assert not (folder / STAGE_NAME).exists()
        now = contents(folder)
        assert now.pop("y.strokes") == b"sheet 1 y"
        assert now in (OLD, NEW), f"after {after}"
        found.append(now == NEW)
        assert ("an earlier run was stopped" in "".join(told)) <= (now == NEW)
        put(folder, DRAWING, OLD, [])  # the record is whole too: nothing is refused
        assert contents(folder) == {**OLD, "y.strokes": b"sheet 1 y"}
        if code == 0:
            break
    assert code == 0
    assert len(found) > 8
    assert found == sorted(found)
    assert {False, True} == set(found)


def test_an_interrupt_within_the_switch_waits_for_its_end(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(tmp_path, DRAWING, OLD, [])
    replace, count = os.replace, iter(range(100))

    def interrupted(*names: Path) -> None:
        if next(count) == 2:
            raise KeyboardInterrupt
        replace(*names)

    monkeypatch.setattr(os, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        put(tmp_path, DRAWING, NEW, [])
    assert contents(tmp_path) == NEW


def test_an_error_in_writing_leaves_all_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(tmp_path, DRAWING, OLD, [])
    before = (tmp_path / record_name("x")).read_bytes()
    write, count = Path.write_bytes, iter(range(100))

    def full(path: Path, content: bytes) -> int:
        if next(count) == 1:
            raise OSError(28, "No space left on device")
        return write(path, content)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space"):
        put(tmp_path, DRAWING, NEW, [])
    assert contents(tmp_path) == OLD
    assert (tmp_path / record_name("x")).read_bytes() == before


@pytest.mark.parametrize("name", ["../stolen", "/tmp/stolen", "a/b"])
def test_a_list_that_leads_out_of_the_folder_is_not_followed(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "out"
    stage = folder / STAGE_NAME
    stage.mkdir(parents=True)
    kept = tmp_path / "stolen"
    kept.write_bytes(b"kept")
    (stage / "0").write_bytes(b"new")
    (stage / "list.json").write_text(f'{{"moves": [["0", "{name}"], ["1", "z"]], "removed": ["{name}"]}}')
    put(folder, DRAWING, NEW, [])
    assert kept.read_bytes() == b"kept"
    assert contents(folder) == NEW


def test_files_have_the_rights_of_new_files(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        put(tmp_path / "out", DRAWING, NEW, [])
    finally:
        os.umask(before)
    assert {path.stat().st_mode & 0o777 for path in (tmp_path / "out").rglob("*.*") if path.is_file()} == {0o640}


AT_ONCE = """
import pathlib, sys
from sld.files import Drawing, Refused, put
folder, name, count = pathlib.Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
sheets = [name, *(f"{name}-{n}" for n in range(2, count + 1))]
sys.stdin.read()
for turn in range(40):
    try:
        put(folder, Drawing(name, name), {f"{each}.strokes": f"{name} {turn}".encode() for each in sheets}, [])
        print("put")
    except Refused:
        print("refused")
"""


def test_runs_into_one_folder_at_once(tmp_path: Path) -> None:
    """Sheet 2 of one drawing has the name of the other: whichever comes first stays, and each set is whole."""
    asked = [("x", 3), ("x-2", 1), ("y", 2), ("x", 3), ("x-2", 1), ("y", 2)]
    running = [
        subprocess.Popen(
            [sys.executable, "-c", AT_ONCE, tmp_path, name, str(count)], cwd=ROOT, text=True, stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
        )
        for name, count in asked
    ]  # fmt: skip
    for each in running:
        assert each.stdin
        each.stdin.close()
    told = {name: set() for name, _ in asked}
    for (name, _), each in zip(asked, running, strict=True):
        assert each.stdout
        told[name] |= set(each.stdout.read().split())
        assert each.wait(60) == 0
        each.stdout.close()
    assert told["y"] == {"put"}
    assert sorted([told["x"], told["x-2"]], key=str) == [{"put"}, {"refused"}]
    now = contents(tmp_path)
    first = "x" if told["x"] == {"put"} else "x-2"
    assert set(now) == {f"{first}.strokes", "y.strokes", "y-2.strokes"} | (
        {"x-2.strokes", "x-3.strokes"} if first == "x" else set()
    )
    assert {now[name] for name in now if name.startswith("x")} == {f"{first} 39".encode()}


@pytest.mark.parametrize(
    "record", [b"", b"{", b"[]", b'{"schema": 2, "made": {}, "files": {"x.strokes": 5}}', b'{"schema": 99}']
)
def test_a_record_that_is_not_understood_is_said(tmp_path: Path, record: bytes) -> None:
    new = {"x.strokes": b"sheet 1 new"}
    put(tmp_path, DRAWING, new, [])
    before = (tmp_path / record_name("x")).read_bytes()
    (tmp_path / record_name("x")).write_bytes(record)
    assert "not understood" in "".join(put(tmp_path, DRAWING, new, []))
    assert (tmp_path / record_name("x")).read_bytes() == before
    (tmp_path / record_name("x")).write_bytes(record)
    with pytest.raises(Refused):
        put(tmp_path, OTHER, {"x.strokes": b"sheet 1 y"}, [])


def test_one_more_drawing_costs_the_same_however_many_are_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Counted, as times depend on the machine: what is asked of the system for the first drawing and for the 30th."""
    asked = []
    for name in ("lstat", "stat", "replace", "listdir", "scandir"):
        call = getattr(os, name)
        monkeypatch.setattr(os, name, lambda *a, _call=call, **k: asked.append(1) or _call(*a, **k))
    counts = []
    for number in range(30):
        asked.clear()
        put(
            tmp_path,
            Drawing(f"d{number}", f"../d{number}.yaml"),
            {f"d{number}.strokes": b"1", f"d{number}.svg": b"2"},
            [],
        )
        counts.append(len(asked))
    assert counts[0] > 0
    assert len(set(counts[1:])) == 1


def test_a_file_that_another_drawing_has_taken_is_no_more_of_the_first(tmp_path: Path) -> None:
    """Sheet 2 of x over the drawing x-2, as asked: x-2 then is refused as what it is, not as changed by hand."""
    first, second = Drawing("x-2", "../x-2.yaml"), Drawing("x", "../x.yaml")
    put(tmp_path, first, {"x-2.strokes": b"first", "x-2.pdf": b"first"}, [])
    put(tmp_path, second, {"x.strokes": b"1", "x-2.strokes": b"2"}, [], overwrite=True)
    with pytest.raises(Refused, match=r"x-2.strokes: is of the drawing x of"):
        put(tmp_path, first, {"x-2.strokes": b"first", "x-2.pdf": b"again"}, [])
    put(tmp_path, first, {"x-2.pdf": b"again"}, [])
