"""The program as a whole, `sld check` and `sld explain`: help, streams, exit codes, and how it ends when it must."""

from __future__ import annotations

import json
import platform
import re
import signal
import subprocess
import sys
from pathlib import Path

import pytest
import typer
from command import FARM, HALL, ROOT, SCHOOL, SMALL, environment, new_process, process, sld

import sld as package
from sld.cli.terminal import coloured

HOUSE = {
    "check": "Check specs", "draw": "Draw the single-line diagram", "explain": "Explain how each rating",
    "keys": "Print the keys of a block", "schema": "Print the JSON Schema", "new": "Write a first spec",
}  # fmt: skip


@pytest.mark.parametrize("option", ["--help", "-h"])
def test_help_names_every_command_and_exit_code(option: str) -> None:
    result = sld(option)
    assert result.exit_code == 0
    text = " ".join(result.stdout.split())
    for name, title in HOUSE.items():
        assert re.search(rf"{name} {title}", text)
    assert "Exit codes: 0 nothing to report at or above --fail-on, 1 findings, 2 input that cannot be used" in text
    assert "3 a fault of the program" in text


@pytest.mark.parametrize("command", HOUSE)
def test_help_of_a_command_ends_well_and_shows_an_example(command: str) -> None:
    result = sld(command, "--help")
    assert result.exit_code == 0
    assert f"Example: sld {command}" in result.stdout


def test_version_names_tool_python_and_the_edition_of_every_table() -> None:
    first, second, *rest = (told := sld("--version").stdout).splitlines()
    assert first == f"sld {package.__version__}"
    assert second == f"Python {platform.python_version()}"
    assert "edition 2009" in next(each for each in rest if each.startswith("table ambient_factor: IEC 60364-5-52"))
    assert len(rest) == len(list((ROOT / "sld/tables").glob("*.csv")))
    result = new_process("--version")
    assert (result.returncode, result.stdout, result.stderr) == (0, told, "")


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_for_a_shell(shell: str) -> None:
    """The command-line library writes it; it is asked in the way that the library documents."""
    done = process(before="pass", _SLD_COMPLETE=f"source_{shell}")
    assert done.returncode == 0
    assert "_SLD_COMPLETE=complete_" in done.stdout.replace(f"complete_{shell}", "complete_")


@pytest.mark.parametrize(
    ("word", "line"),
    [
        ("mccb", "Breaker  ("),
        ("supply.transformer", "Supply transformer  (supply.transformer, "),
        ("inverters.roof.inputs[0]", "Input  (inverters.NAME.inputs[])"),
        ("Voc", "  open_circuit_voltage: required"),
        ("modules_in_series", "PV string  (inverters.NAME.inputs[].strings[])"),
    ],
)
def test_keys_of_a_block_or_a_word(word: str, line: str) -> None:
    result = sld("keys", word)
    assert result.exit_code == 0
    assert any(each.startswith(line) for each in result.stdout.splitlines())


def test_keys_without_a_block_and_of_an_unknown_one() -> None:
    assert "Module type                      types.modules.NAME" in sld("keys").stdout.splitlines()
    result = sld("keys", "inverterss")
    assert (result.exit_code, result.stderr) == (2, "there is no block or key inverterss: did you mean inverters?\n")


def test_schema_is_json_of_the_draft() -> None:
    written = json.loads(sld("schema").stdout)
    assert written["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert written["required"] == ["project", "site", "supply", "inverters"]


@pytest.mark.parametrize("arguments", [("chek",), ("check",), ("draw",), ("check", HALL, "--fail-on", "often")])
def test_a_command_line_that_is_wrong(arguments: tuple[object, ...]) -> None:
    result = sld(*arguments)
    assert (result.exit_code, result.stdout) == (2, "")
    assert "Traceback" not in result.stderr


@pytest.mark.parametrize(
    ("spec", "fail_on", "code"),
    [
        (HALL, "non-compliance", 0),
        (HALL, "advice", 0),
        (SCHOOL, "never", 0),
        (FARM, "danger", 1),
        (FARM, "non-compliance", 1),
        (FARM, "never", 0),
    ],
)
def test_exit_code_of_check(spec: Path, fail_on: str, code: int) -> None:
    assert sld("check", spec, "--fail-on", fail_on).exit_code == code


def test_the_worst_of_several_decides(tmp_path: Path) -> None:
    assert sld("check", HALL, FARM).exit_code == 1
    assert sld("check", tmp_path / "gone.yaml", HALL, FARM).exit_code == 2


def test_check_writes_no_file_and_talks_on_standard_output(tmp_path: Path) -> None:
    result = process("check", FARM, cwd=tmp_path)
    assert result.returncode == 1
    assert result.stderr == ""
    assert list(tmp_path.iterdir()) == []
    counted = result.stdout.splitlines()[-1]
    assert counted.startswith(f"{FARM}: ")
    told = len(re.findall(r"^\S+:\d+:\d+: danger ", result.stdout, flags=re.MULTILINE))
    assert told > 0
    assert f"{told} danger" in counted


def test_check_as_json() -> None:
    result = sld("check", HALL, FARM, "--format", "json")
    document = json.loads(result.stdout)
    assert document["schema"] == 1
    assert [each["spec"] for each in document["specs"]] == [str(HALL), str(FARM)]
    for each in document["specs"]:
        assert set(each) == {"spec", "usable", "findings", "counts", "ratings"}
        assert each["usable"] is True
        for finding in each["findings"]:
            assert set(finding) == {
                "code", "severity", "message", "remedy", "device", "file", "line", "column", "end_column", "path",
                "also", "compared", "accepted",
            }  # fmt: skip
            lines = Path(finding["file"]).read_text(encoding="utf-8").splitlines()
            assert 1 <= finding["line"] <= len(lines)
            assert 1 <= finding["column"] < finding["end_column"]
        for rating in each["ratings"]:
            assert set(rating) == {
                "device", "key", "symbol", "value", "unit", "formula", "inputs", "clause", "table_row", "assumptions"
            }  # fmt: skip
            assert isinstance(rating["value"], int | float)
    farm = document["specs"][1]
    assert any(finding["accepted"] for finding in farm["findings"])
    assert {finding["severity"] for finding in farm["findings"]} >= {"danger", "non-compliance", "assumption"}


def test_where_the_output_is_not_utf_8() -> None:
    ascii_only = "import sys; sys.stdout.reconfigure(encoding='ascii')"
    result = process("check", HALL, "--format", "json", before=ascii_only)
    assert (result.returncode, result.stdout.isascii()) == (0, True)
    assert json.loads(result.stdout) == json.loads(sld("check", HALL, "--format", "json").stdout)
    result = process("check", FARM, before=ascii_only)
    assert (result.returncode, result.stdout.isascii()) == (1, True)


class _Terminal:
    def isatty(self) -> bool:
        return True


def test_no_color_is_honoured(monkeypatch: pytest.MonkeyPatch) -> None:
    """NO_COLOR, "when present and not an empty string (regardless of its value)": no-color.org."""
    monkeypatch.delenv("NO_COLOR", raising=False)
    assert coloured(_Terminal())  # type: ignore[arg-type]
    monkeypatch.setenv("NO_COLOR", "")
    assert coloured(_Terminal())  # type: ignore[arg-type]
    monkeypatch.setenv("NO_COLOR", "0")
    assert not coloured(_Terminal())  # type: ignore[arg-type]


def test_no_colour_where_nobody_looks() -> None:
    assert "\x1b" not in sld("check", FARM).stdout


BROKEN = "import sld.run\ndef broken(*a, **k): raise {}\nsld.run.check = broken"


def test_a_fault_of_ours(tmp_path: Path) -> None:
    result = process("draw", HALL, "-o", tmp_path / "out", before=BROKEN.format("ZeroDivisionError('by nought')"))
    assert (result.returncode, result.stdout) == (3, "")
    assert "Traceback" not in result.stderr
    assert f"sld {package.__version__} failed: ZeroDivisionError: by nought" in result.stderr
    assert "fault of the program, not of the spec" in result.stderr
    assert not (tmp_path / "out").exists()
    traced = process("--trace", "check", HALL, before=BROKEN.format("ZeroDivisionError('by nought')"))
    assert traced.returncode == 3
    assert "Traceback" in traced.stderr


def test_an_interrupt_of_the_keyboard() -> None:
    result = process("check", HALL, before=BROKEN.format("KeyboardInterrupt"))
    assert result.returncode == 130
    assert "Traceback" not in result.stderr


def test_a_signal_in_the_middle_of_drawing_leaves_no_half_file(tmp_path: Path) -> None:
    """POSIX shells report 128 + 2 for a process that ends on SIGINT.

    The moment is certain: the child says that it draws and waits for its standard input, which ends after the signal
    was sent. It sets the handler itself, as the signal may be inherited as ignored.
    """
    (tmp_path / "x.yaml").write_text(SMALL, encoding="utf-8")
    code = (
        "import os, signal, sys, sld.run as run\n"
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "made = run.documents\n"
        "def slow(*a, **k):\n    print('ready', flush=True)\n    os.read(0, 1)\n    return made(*a, **k)\n"
        "run.documents = slow\n"
        "sys.argv = ['sld', 'draw', 'x.yaml', '-o', 'out']\nfrom sld.cli import main; main()"
    )
    with subprocess.Popen(
        [sys.executable, "-c", code], cwd=tmp_path, env=environment(), stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as running:  # fmt: skip
        assert running.stdin
        assert running.stdout
        assert running.stderr
        assert running.stdout.readline() == b"ready\n"
        running.send_signal(signal.SIGINT)
        running.stdin.close()
        told = running.stderr.read().decode()
        assert running.wait(60) == 130
    assert "Traceback" not in told
    assert not list((tmp_path / "out").glob("*"))


@pytest.mark.parametrize("arguments", [("explain",), ("check", str(HALL), "--format", "json"), ("--help",)])
def test_a_reader_that_goes_away_is_no_fault(arguments: tuple[str, ...]) -> None:
    """`sld explain | head -0`: nothing is told, and not exit code 3."""
    alone = "import os; reader, writer = os.pipe(); os.close(reader); os.dup2(writer, 1)"
    result = process(*arguments, before=alone)
    assert result.returncode in (1, 141)  # 1 where the command line library meets it first
    assert result.stderr == ""


def test_the_entry_point_is_the_same_program() -> None:
    assert isinstance(sys.modules["sld.cli.app"].app, typer.Typer)
    pyproject = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert re.search(r'^sld = "sld.cli:main"$', pyproject, re.MULTILINE)
