"""What reaches the terminal: no spec, file name or argument can forge it, and it may be full or closed."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from command import ROOT, SMALL, environment, process, sld

FORGED = "x\\nroof.yaml: nothing found\\r\\u200F\\u2028."
HIDDEN = "\r\x1b\u200f\u2028"


def accepted(folder: Path) -> Path:
    """The small spec with an acceptance that would like to say that there is nothing."""
    path = folder / "small.yaml"
    entry = f'{{code: FA02, at: inverters.roof, reason: "{FORGED}", role: "{FORGED}", date: 2026-01-31}}'
    path.write_text(f"{SMALL}accept: [{entry}]\n", encoding="utf-8")
    return path


@pytest.mark.parametrize("command", ["check", "draw"])
def test_a_spec_cannot_forge_what_is_told(command: str, tmp_path: Path) -> None:
    spec = accepted(tmp_path)
    result = sld(command, spec, *(("-o", tmp_path / "out", "--to", "strokes") if command == "draw" else ()))
    told = result.stdout + result.stderr
    assert r"\r\u200f\u2028" in told
    assert not any(sign in told for sign in HIDDEN)
    assert "roof.yaml: nothing found" not in told.splitlines()


def test_json_has_no_such_character_either(tmp_path: Path) -> None:
    written = sld("check", accepted(tmp_path), "--format", "json").stdout
    assert not any(sign in written for sign in HIDDEN)
    assert any("\u200f" in str(finding) or "\u2028" in str(finding) for finding in _findings(written))


def _findings(written: str) -> list[object]:
    (document,) = json.loads(written)["specs"]
    return [part for finding in document["findings"] if finding["accepted"] for part in finding["accepted"].values()]


@pytest.mark.parametrize(
    "arguments",
    [
        ("check", "a\nb: nothing found\x1b[2J\u202e.yaml"),
        ("check", "--fo\nb: nothing found\x1b[2J\u202e"),
        ("che\nb: nothing found\x1b[2J\u202e",),
        ("explain", "a\nb: nothing found\x1b[2J\u202e"),
        ("draw", "x.yaml", "--to", "a\nb: nothing found\x1b[2j\u202e"),
        ("check", "x.yaml", "--fail-on", "a\nb: nothing found\x1b[2J\u202e"),
    ],
)
def test_an_argument_cannot_forge_what_is_told(arguments: tuple[str, ...]) -> None:
    result = sld(*arguments)
    assert result.exit_code == 2
    told = result.stdout + result.stderr
    assert r"b: nothing found\x1b[2J\u202e".lower() in told.lower()
    assert not any(line.startswith("b: ") for line in told.splitlines())
    assert not any(sign in told for sign in HIDDEN)


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="there is no device that is always full")
@pytest.mark.parametrize("arguments", [("explain",), ("check", "specs/village-hall.yaml"), ("--help",), ("--version",)])
def test_a_full_output_is_told_in_one_line_and_is_no_fault(arguments: tuple[str, ...]) -> None:
    result = process(*arguments, stdout="/dev/full")
    assert result.returncode == 2
    assert len(result.stderr.splitlines()) == 1
    assert "cannot write to standard output" in result.stderr
    assert "No space left on device" in result.stderr


@pytest.mark.parametrize("command", ["explain", "check specs/village-hall.yaml", "check x.yaml --format json"])
def test_a_closed_output_is_told_in_one_line_and_is_no_fault(command: str) -> None:
    shell = ["sh", "-c", f'exec "$0" -m sld {command} >&-', sys.executable]
    done = subprocess.run(shell, cwd=ROOT, env=environment(), stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2
    assert done.stderr == "sld: cannot write to standard output: it is closed; what was to be told there is lost\n"


def test_chatter_does_not_go_to_the_output_where_there_is_no_place_for_it(tmp_path: Path) -> None:
    (tmp_path / "x.yaml").write_text(SMALL, encoding="utf-8")
    shell = ["sh", "-c", 'exec "$0" -m sld draw x.yaml --to pdf 2>&-', sys.executable]
    done = subprocess.run(shell, cwd=tmp_path, env=environment(), stdout=subprocess.PIPE, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, "x.pdf\n")


FAULTY = (
    "import sld.run as run\ncheck = run.check\n"
    "def faulty(path, *a, **k):\n"
    "    if 'bad' in str(path): raise ZeroDivisionError('by\\x1bnought')\n"
    "    return check(path, *a, **k)\n"
    "run.check = faulty"
)
FAULTY_DRAWING = FAULTY.replace("check", "documents").replace("str(path)", "path.source.path")


@pytest.fixture
def three(tmp_path: Path) -> Path:
    for name in ("a", "bad", "c"):
        (tmp_path / f"{name}.yaml").write_text(SMALL, encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize("before", [FAULTY, FAULTY_DRAWING], ids=["in checking", "in drawing"])
def test_a_fault_names_its_spec_and_the_rest_is_drawn(three: Path, before: str) -> None:
    result = process("draw", "a.yaml", "bad.yaml", "c.yaml", "--to", "pdf", before=before, cwd=three)
    assert result.returncode == 3
    assert result.stdout.splitlines() == ["a.pdf", "c.pdf"]
    assert "Traceback" not in result.stderr
    (told,) = [line for line in result.stderr.splitlines() if "failed:" in line]
    assert told.startswith("bad.yaml: sld ")
    assert r"ZeroDivisionError: by\x1bnought" in told
    assert result.stderr.count("fault of the program, not of the spec") == 1
    assert sorted(path.name for path in three.glob("*.pdf")) == ["a.pdf", "c.pdf"]


def test_a_fault_leaves_the_check_of_the_rest(three: Path) -> None:
    result = process("--trace", "check", "bad.yaml", "a.yaml", before=FAULTY, cwd=three)
    assert result.returncode == 3
    assert result.stdout.splitlines()[-1].startswith("a.yaml: ")
    assert "Traceback" in result.stderr


def test_a_fault_as_json(three: Path) -> None:
    result = process("check", "a.yaml", "bad.yaml", "c.yaml", "--format", "json", before=FAULTY, cwd=three)
    assert result.returncode == 3
    first, bad, last = json.loads(result.stdout)["specs"]
    assert (first["usable"], last["usable"], len(first["ratings"]) > 3) == (True, True, True)
    assert {key: bad[key] for key in ("spec", "usable", "findings")} == {
        "spec": "bad.yaml", "usable": False, "findings": []
    }  # fmt: skip
    assert "ZeroDivisionError" in bad["fault"]
    assert "fault" not in first


def test_what_json_cannot_say_is_a_fault_at_its_spec(three: Path) -> None:
    """RFC 8259, section 6: infinity and NaN are no numbers of JSON."""
    endless = (
        "import sld.cli.check as module\nwrite = module.document_of\n"
        "def endless(path, result):\n"
        "    return {**write(path, result), **({'value': float('inf')} if 'bad' in str(path) else {})}\n"
        "module.document_of = endless"
    )
    result = process("check", "bad.yaml", "a.yaml", "--format", "json", before=endless, cwd=three)
    assert result.returncode == 3
    assert "Infinity" not in result.stdout
    assert ["fault" in each for each in json.loads(result.stdout)["specs"]] == [True, False]


def test_an_interrupt_ends_the_batch(three: Path) -> None:
    interrupted = FAULTY.replace("ZeroDivisionError('by\\x1bnought')", "KeyboardInterrupt")
    result = process("draw", "bad.yaml", "c.yaml", "--to", "pdf", "--jobs", "1", before=interrupted, cwd=three)
    assert (result.returncode, result.stdout) == (130, "")
