"""Several specs over several processes: the same files and lines as one after the other, whatever ends a process."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from command import FARM, HALL, SMALL, environment, process, sld

BAD = SMALL.replace("phases: 1, voltage", "phase: 1, voltage")


@pytest.fixture
def many(tmp_path: Path) -> Path:
    folder = tmp_path / "many"
    folder.mkdir()
    for number in range(6):
        title = SMALL.replace("Mill Lane", f"Mill Lane {number}")
        (folder / f"s{number}.yaml").write_text(BAD if number == 3 else title, encoding="utf-8")
    return folder


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.usefixtures("anew")
def test_processes_give_the_files_and_lines_of_one(many: Path, tmp_path: Path) -> None:
    found = []
    for jobs in (1, 3):
        result = sld("draw", many, "-o", tmp_path / "out", "--to", "svg,pdf,strokes", "--jobs", jobs)
        assert result.exit_code == 2
        found.append((result.stdout, result.stderr, contents(tmp_path / "out")))
        shutil.rmtree(tmp_path / "out")
    assert found[0] == found[1]
    assert len(found[0][2]) > 15


@pytest.mark.usefixtures("anew")
def test_a_check_as_json_is_the_same(many: Path) -> None:
    one, three = (sld("check", many, FARM, "--format", "json", "--jobs", jobs) for jobs in (1, 3))
    assert (one.exit_code, one.stdout, one.stderr) == (three.exit_code, three.stdout, three.stderr)
    assert [each["spec"] for each in json.loads(one.stdout)["specs"]] == [
        *(str(many / f"s{number}.yaml") for number in range(6)),
        str(FARM),
    ]


@pytest.mark.parametrize("jobs", ["0", "-1", "all"])
def test_a_number_of_processes_that_is_none(many: Path, jobs: str) -> None:
    assert sld("check", many, "--jobs", jobs).exit_code == 2


KILLED = """
import os, pathlib, sld.run
check = sld.run.check
def killed(path, **asked):
    if path.name in {names!r} and (path.name != "s1.yaml" or not pathlib.Path("tried").exists()):
        pathlib.Path("tried").touch()
        os.kill(os.getpid(), 9)
    return check(path, **asked)
sld.run.check = killed
"""


def test_a_process_that_is_killed_is_named_and_the_rest_is_done(many: Path, tmp_path: Path) -> None:
    """s2 and s4 kill their process each time."""
    result = process(
        "draw", many, "-o", "out", "--to", "strokes", "--jobs", "2", before=KILLED.format(names=("s2.yaml", "s4.yaml")),
        cwd=tmp_path,
    )  # fmt: skip
    assert result.returncode == 3
    assert {"s0.strokes", "s1.strokes", "s5.strokes"} <= set(contents(tmp_path / "out"))
    assert not {"s2.strokes", "s4.strokes"} & set(contents(tmp_path / "out"))
    *_, second, third, fourth, closing = result.stderr.splitlines()
    assert closing.partition("; ")[0] == "6 checked: 3 clean, 1 unusable, 2 killed"  # one may be drawn and not yet told
    assert second.startswith(f"{many / 's2.yaml'}: its process was killed")
    assert third.startswith(f"{many / 's3.yaml'}:3:")
    assert fourth.startswith(f"{many / 's4.yaml'}: its process was killed")
    assert "Traceback" not in result.stderr


def test_a_process_that_is_killed_once_is_tried_again(many: Path, tmp_path: Path) -> None:
    result = process("check", many, "--jobs", "2", before=KILLED.format(names=("s1.yaml",)), cwd=tmp_path)
    assert (tmp_path / "tried").exists()
    assert result.stderr.splitlines()[-1] == "6 checked: 5 clean, 1 unusable"


INTERRUPTED = """
import os, pathlib, signal, sys, time, sld.run as run
from concurrent.futures import Future
signal.signal(signal.SIGINT, signal.default_int_handler)
check, cancel, go = run.check, Future.cancel, pathlib.Path("go")
def waiting(path, **asked):
    if path.name != "s0.yaml" and not go.exists():
        os.write(1, b"waits\\n")
        while not go.exists():
            time.sleep(0.01)
    return check(path, **asked)
def cancelled(self):
    if stopped := cancel(self):
        go.touch()
    return stopped
run.check, Future.cancel = waiting, cancelled
sys.argv = ["sld", "draw", sys.argv[1], "-o", "out", "--to", "strokes", "--jobs", sys.argv[2]]
from sld.cli import main
main()
"""
"""All specs but the first wait until the command has been interrupted and cancels what no process has begun."""


@pytest.mark.parametrize("jobs", [1, 2])
def test_an_interrupt_names_what_is_left(many: Path, tmp_path: Path, jobs: int) -> None:
    """POSIX shells report 128 + 2 for a process that ends on SIGINT, which a terminal sends to all of its processes."""
    for number in range(6, 12):  # more than the processes of a pool have taken in advance
        shutil.copy(many / "s0.yaml", many / f"t{number}.yaml")
    with subprocess.Popen(
        [sys.executable, "-c", INTERRUPTED, many, str(jobs)], cwd=tmp_path, env=environment(), start_new_session=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    ) as running:  # fmt: skip
        assert running.stdout
        assert running.stderr
        lines = iter(running.stdout.readline, b"")
        for _ in range(jobs):
            assert b"waits\n" in lines
        os.killpg(running.pid, signal.SIGINT)
        told = running.stderr.read().decode()
        assert running.wait(60) == 130
    assert "Traceback" not in told
    done = int(told.splitlines()[-1].partition("interrupted: ")[2].partition(" of 12 specs are done")[0])
    assert jobs <= done < 12
    sheets = {name for name in contents(tmp_path / "out") if name.endswith(".strokes") and "-" not in name}
    assert {f"s{number}.strokes" for number in range(min(done, 6)) if number != 3} <= sheets


SUMMARY_KEYS = [
    "spec", "state", "danger", "non_compliance", "advice", "assumption", "accepted", "sheets", "seconds", "failure"
]  # fmt: skip


def test_the_summary_has_a_line_a_spec(many: Path, tmp_path: Path) -> None:
    path = tmp_path / "new" / "run.jsonl"
    result = sld("draw", many / "s3.yaml", HALL, FARM, "-o", tmp_path / "out", "--to", "svg", "--summary", path)
    assert result.exit_code == 2
    bad, hall, farm = (json.loads(line) for line in path.read_text(encoding="utf-8").splitlines())
    assert [list(each) for each in (bad, hall, farm)] == [SUMMARY_KEYS] * 3
    assert (bad["spec"], bad["state"], bad["danger"], bad["sheets"]) == (str(many / "s3.yaml"), "unusable", None, 0)
    assert bad["failure"].startswith(f"{many / 's3.yaml'}:3:")
    assert (hall["state"], hall["danger"], hall["failure"]) == ("clean", 0, None)
    assert hall["sheets"] == len(list((tmp_path / "out").glob("village-hall*.svg")))
    counts = json.loads(sld("check", FARM, "--format", "json").stdout)["specs"][0]["counts"]
    assert (farm["state"], {key: farm[key] for key in counts}) == ("with findings", counts)
    assert all(0 <= each["seconds"] < 60 for each in (bad, hall, farm))
    assert sld("check", HALL, "--summary", path).exit_code == 0
    assert len(path.read_text(encoding="utf-8").splitlines()) == 1


@pytest.mark.parametrize("content", [SMALL, '{"state": 1}\n', "null\n", "mine"])
def test_a_summary_replaces_no_other_file(many: Path, tmp_path: Path, content: str) -> None:
    path = tmp_path / "mine"
    path.write_text(content, encoding="utf-8")
    result = sld("check", many, "--summary", path)
    assert (result.exit_code, result.stdout) == (2, "")
    assert f"{path}: is there and not a summary" in result.stderr
    assert path.read_text(encoding="utf-8") == content


def test_a_summary_that_cannot_be_written_leaves_the_earlier_one(
    many: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "run.jsonl"
    assert sld("check", HALL, "--summary", path).exit_code == 0
    before = path.read_bytes()

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    result = sld("check", many / "s0.yaml", "--summary", path)
    assert result.exit_code == 2
    assert f"{path}: cannot write the summary: No space left on device" in result.stderr
    assert {each.name for each in tmp_path.iterdir()} == {"many", "run.jsonl"}
    assert path.read_bytes() == before
