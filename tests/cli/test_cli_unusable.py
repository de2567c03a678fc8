"""Input that cannot be used: one located message, exit code 2, and every earlier file as it was."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from command import SMALL, process, sld

LOCATED = re.compile(r"^(?P<file>.+?):(?P<line>\d+):(?P<column>\d+): error (?P<code>SP\d\d) ", re.MULTILINE)


def place(text: str, part: str) -> tuple[int, int]:
    """Line and column, counted from 1, of a piece of text."""
    before = text[: text.index(part)]
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1


def spoilt(old: str, new: str, at: str = "") -> tuple[str, tuple[int, int]]:
    """The small spec with a mistake, and the place of the mistake."""
    assert SMALL.count(old) == 1
    text = SMALL.replace(old, new)
    return text, place(text, at or new)


MISTAKES = {
    "a misspelt key": spoilt("modules_in_series: 8", "modules_in_serie: 8"),
    "a wrong unit": spoilt("rated_power: 3 kW", "rated_power: 3 kA", "3 kA"),
    "no unit that can be read": spoilt("voltage: 230 V", "voltage: about 230", "about"),
    "a type that is not there": spoilt("type: Small 3", "type: Small 4", "Small 4"),
    "a key given twice": spoilt("    type: Small 3\n", "    type: Small 3\n    type: Small 5\n", "type: Small 5"),
    "a tab": spoilt("    type: Small 3", "\ttype: Small 3", "\ttype"),
    "a bracket left open": (SMALL.replace("8}]", "8]"), (24, 59)),
    "a word where a number is due": spoilt("phases: 1, voltage", "phases: one, voltage", "one"),
    "an empty file": ("", (1, 1)),
    "a comment only": ("# nothing\n", (1, 1)),
    "a list": ("- a\n- b\n", (1, 1)),
    "a text": ("hello\n", (1, 1)),
}


BUS = "data:\n  devices: {log: {kind: logger}}\n  chains: {bus: {devices: [{device: log}, {device: box}]}}\n"


def added(text: str, at: str, counted: bool = False) -> tuple[str, tuple[int, int]]:
    """The small spec with blocks that fit the form but not each other, and the place of the mistake."""
    whole = (SMALL.replace("    type: Small 3", "    count: 2\n    type: Small 3") if counted else SMALL) + text
    return whole, place(whole, at)


CONTRADICTIONS = {
    "a battery at two inverters": added("batteries:\n  b: {inverter: roof}\n", "roof}", counted=True),
    "a name that is a path": added(
        "  roof.inputs.0: {type: Small 3, inputs: [{strings: [{module: Plain 400, modules_in_series: 8}]}]}\n",
        "roof.inputs.0",
    ),
    "a data cable to a box": added(f"junction_boxes: {{box: {{}}}}\n{BUS}", "box}]"),
    "a chain to refer to": added(BUS.replace("{bus: {", "{bus: {id: box, "), "id: box"),
    "an earth terminal to refer to": added(f"earthing: {{id: box}}\n{BUS}", "id: box"),
    "a ring of boards": added(
        "    connected_to: m\nboards:\n  m: {}\n  a: {fed_from: b}\n  b: {fed_from: a}\n", "b}\n"
    ),
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder `out` with an earlier drawing in it."""
    (tmp_path / "x.yaml").write_text(SMALL, encoding="utf-8")
    assert sld("draw", tmp_path / "x.yaml", "-o", tmp_path / "out", "--to", "strokes").exit_code == 0
    return tmp_path


def contents(folder: Path) -> dict[str, bytes]:
    found = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def assert_refused(folder: Path, spec: Path, at: tuple[int, int]) -> None:
    before = contents(folder / "out")
    result = sld("draw", spec, "-o", folder / "out", "--to", "strokes")
    assert (result.exit_code, result.stdout) == (2, "")
    (message,) = LOCATED.finditer(result.stderr)
    assert message["file"] == str(spec)
    assert (int(message["line"]), int(message["column"])) == at
    assert "Traceback" not in result.stderr
    assert "   do: " in result.stderr
    assert contents(folder / "out") == before


@pytest.mark.parametrize("text_and_place", (MISTAKES | CONTRADICTIONS).values(), ids=MISTAKES | CONTRADICTIONS)
def test_a_mistake_is_told_once_with_its_place(folder: Path, text_and_place: tuple[str, tuple[int, int]]) -> None:
    text, at = text_and_place
    spec = folder / "x.yaml"
    spec.write_text(text, encoding="utf-8")
    assert_refused(folder, spec, at)


def test_a_name_that_is_given_twice(folder: Path) -> None:
    text = SMALL + "loads:\n  roof: {power: 1 kW}\n"
    spec = folder / "x.yaml"
    spec.write_text(text, encoding="utf-8")
    told = sld("draw", spec, "-o", folder / "out").stderr
    (message,) = LOCATED.finditer(told)
    (also,) = re.findall(r"also: .+?:(\d+):\d+: first given here", told)
    assert {int(message["line"]), int(also)} == {place(text, "roof:\n")[0], place(text, "roof: {")[0]}


def test_two_mistakes_are_told_at_once(folder: Path) -> None:
    spec = folder / "x.yaml"
    spec.write_text(SMALL.replace("3 kW", "3 kA").replace("in_series: 8", "in_series: many"), encoding="utf-8")
    result = sld("check", spec)
    assert [int(line) for _, line, _, _ in LOCATED.findall(result.stdout)] == [
        place(SMALL, "3 kW")[0], place(SMALL, "in_series: 8")[0]
    ]  # fmt: skip


BYTES: dict[str, bytes] = {
    "a picture": b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR",
    "zeros": bytes(64),
    "Latin-1": "project: {title: Müller}".encode("latin-1"),
    "UTF-16": SMALL.encode("utf-16"),
    "a program": b"\x7fELF\x02\x01\x01\x00",
    "three megabytes": b"#" * 3_000_000,
}


@pytest.mark.parametrize("content", BYTES.values(), ids=BYTES)
def test_what_is_no_text(folder: Path, content: bytes) -> None:
    spec = folder / "x.yaml"
    spec.write_bytes(content)
    result = sld("draw", spec, "-o", folder / "out")
    assert (result.exit_code, result.stdout) == (2, "")
    (message,) = LOCATED.finditer(result.stderr)
    assert int(message["line"]) == 1


def _secret(path: Path) -> None:
    if os.geteuid() == 0:
        pytest.skip("root may read everything")
    path.chmod(0)


@pytest.mark.parametrize("spoil", [Path.unlink, _secret], ids=["no file", "unreadable"])
def test_what_cannot_be_read(folder: Path, spoil: Callable[[Path], None]) -> None:
    spec = folder / "x.yaml"
    spoil(spec)
    assert_refused(folder, spec, (1, 1))


def test_a_pipe_or_a_device_is_refused_and_not_waited_for(folder: Path) -> None:
    pipe = folder / "pipe.yaml"
    os.mkfifo(pipe)
    for spec in (pipe, Path("/dev/zero")):
        result = process("check", spec)
        assert result.returncode == 2
        (message,) = LOCATED.finditer(result.stdout)
        assert (message["file"], message["code"]) == (str(spec), "SP01")
        assert "pipe or device, not a file" in result.stdout


def test_a_file_name_that_is_no_text(folder: Path) -> None:
    """Names of files are bytes on Linux; one that is not UTF-8 is printed with escapes."""
    spec = folder / os.fsdecode(b"\xff.yaml")
    spec.write_text("", encoding="utf-8")
    result = process("check", spec)
    assert result.returncode == 2
    assert "error SP05" in result.stdout
    assert result.stderr == ""


def test_an_include_that_is_missing_or_outside(folder: Path) -> None:
    spec = folder / "x.yaml"
    outside = folder.parent / f"{folder.name}-types.yaml"
    outside.write_text("types: {}\n", encoding="utf-8")
    for entry, code in (("gone.yaml", "SP21"), (f"../{outside.name}", "SP22")):
        spec.write_text(f"include: [{entry}]\n{SMALL}", encoding="utf-8")
        (found,) = LOCATED.finditer(sld("check", spec).stdout)
        assert (found["code"], found["line"], found["column"]) == (code, "1", "11")
    assert sld("check", spec, "--allow-outside").exit_code == 0
    outside.unlink()


def test_the_message_in_a_process_of_its_own(folder: Path) -> None:
    """Nothing on standard output, the message on standard error, and no temporary file."""
    spec = folder / "x.yaml"
    spec.write_text(SMALL.replace("3 kW", "3 kA"), encoding="utf-8")
    before = contents(folder / "out")
    result = process("draw", spec, "-o", folder / "out")
    assert (result.returncode, result.stdout) == (2, "")
    assert len(LOCATED.findall(result.stderr)) == 1
    assert contents(folder / "out") == before


def test_the_mistake_as_json(folder: Path) -> None:
    spec = folder / "x.yaml"
    spec.write_text(SMALL.replace("3 kW", "3 kA"), encoding="utf-8")
    result = sld("check", spec, "--format", "json")
    assert result.exit_code == 2
    (document,) = json.loads(result.stdout)["specs"]
    assert (document["spec"], document["usable"]) == (str(spec), False)
    (finding,) = document["findings"]
    line, column = place(SMALL, "3 kW")
    assert (finding["severity"], finding["line"], finding["column"]) == ("error", line, column)
    assert finding["end_column"] == column + len("3 kA")
