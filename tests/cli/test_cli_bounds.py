"""A spec without end, or one that fills the memory, is stopped and named; the rest is done, and files stay whole."""

from __future__ import annotations

import itertools
import os
import pty
import re
import signal
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import pytest
from command import SMALL, process, sld

from sld.cli.batch import deal
from sld.cli.bounds import Bounds, TooLong, within
from sld.cli.given import Given
from sld.cli.options import Run
from sld.cli.outcome import Outcome, State, Totals
from sld.files import Drawing, put

PLENTY = 12_000_000_000


def endless() -> None:
    for _ in itertools.repeat(None):
        pass


def filling() -> None:
    bytearray(PLENTY)  # which the system hands out without a page of it being there


def in_a_library() -> None:
    signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGALRM])
    time.sleep(30)


@dataclass
class Work:
    """What a command would do, in no time; at the second spec something that does not end well."""

    at_second: Callable[[], None]

    def __call__(self, given: Given) -> Outcome:
        if given.path.name == "s1.yaml":
            self.at_second()
        return Outcome(given.path, State.CLEAN, 0)


SPECS = [Given(Path(f"s{number}.yaml")) for number in range(3)]


@pytest.fixture
def three(tmp_path: Path) -> Path:
    folder = tmp_path / "three"
    folder.mkdir()
    for number in range(3):
        (folder / f"s{number}.yaml").write_text(SMALL, encoding="utf-8")
    return folder


@pytest.mark.parametrize("jobs", [1, 2])
@pytest.mark.parametrize(
    ("at_second", "bounds", "told"),
    [
        (endless, Bounds(time_s=0.3), "longer than 0.3 s; --seconds sets how long a spec may take"),
        (filling, Bounds(memory_mb=8000), "more than 8000 MB of memory; --megabytes sets how much a spec may take"),
    ],
)
def test_the_others_are_done(
    at_second: Callable[[], None], bounds: Bounds, told: str, jobs: int, capsys: pytest.CaptureFixture[str]
) -> None:
    assert deal(Work(at_second), SPECS, Totals(), Run(jobs, bounds, None)) == 3
    failure = f"s1.yaml: stopped, it took {told}"
    assert capsys.readouterr().err.splitlines() == [failure, failure, "3 checked: 2 clean, 1 stopped"]


def test_a_library_that_does_not_come_back_is_ended_with_its_process(capsys: pytest.CaptureFixture[str]) -> None:
    assert deal(Work(in_a_library), SPECS, Totals(), Run(2, Bounds(time_s=0.3), None)) == 3
    assert capsys.readouterr().err.splitlines()[-1] == "3 checked: 2 clean, 1 killed"


def test_a_spec_within_its_bounds_is_not_touched(three: Path) -> None:
    assert sld("check", three / "s0.yaml", "--seconds", "0", "--megabytes", "0").exit_code == 0
    assert sld("check", three / "s0.yaml", "--seconds", "-1").exit_code == 2


def busy(until_s: float) -> None:
    while time.perf_counter() < until_s:
        pass


@pytest.mark.parametrize("in_thread", [False, True])
def test_time_is_bound_in_any_thread(in_thread: bool) -> None:
    told: list[str] = []

    def work() -> None:
        try:
            with within(Bounds(time_s=0.05)):
                busy(time.perf_counter() + 20)
            told.append("done")
        except TooLong:
            told.append("stopped")
        with within(Bounds(time_s=0.05)):
            busy(time.perf_counter())
        busy(time.perf_counter() + 0.1)  # what comes later is not stopped
        told.append("later")

    if in_thread:
        thread = threading.Thread(target=work)
        thread.start()
        thread.join(30)
    else:
        work()
    assert told == ["stopped", "later"]


def test_a_stop_within_the_switch_of_files_waits_for_its_end(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    replace, count = os.replace, iter(range(100))

    def stopped(*names: Path) -> None:
        if next(count) == 1:
            raise TooLong
        replace(*names)

    monkeypatch.setattr(os, "replace", stopped)
    with pytest.raises(TooLong):
        put(tmp_path, Drawing("x", "../x.yaml"), {"x.strokes": b"1", "x-2.strokes": b"2"}, [])
    assert {path.name for path in tmp_path.glob("x*")} == {"x.strokes", "x-2.strokes"}


AS_A_TERMINAL = "import sys; sys.stderr = open(2, 'w', closefd=False)"
"""The stream that is there is one to a file."""


def _on_a_terminal(arguments: list[object], **changes: str) -> str:
    """Return what a command writes to standard error where that is a terminal."""
    ours, its = pty.openpty()
    process(*arguments, stderr=os.ttyname(its), before=AS_A_TERMINAL, **changes)
    os.close(its)
    told = b""
    with suppress(OSError):  # as Linux tells that nobody has it open any more
        while part := os.read(ours, 4096):
            told += part
    os.close(ours)
    return told.decode()


def test_a_terminal_shows_how_far_a_run_is(three: Path) -> None:
    (three / "s2.yaml").write_text("project: {title: T}\n", encoding="utf-8")
    told = _on_a_terminal(["check", three, "--jobs", "1"], TERM="xterm")
    assert [number for number in ("1/3", "2/3", "3/3") if number in told] == ["1/3", "2/3", "3/3"]
    last = re.split(r"\r\x1b\[K", told)[-1]  # what is left below the bar once it is cleared
    assert "3 checked: 2 clean, 1 unusable" in last
    assert "3/3" not in last


@pytest.mark.parametrize(("arguments", "term"), [((), "dumb"), (("s0.yaml",), "xterm")])
def test_there_is_no_bar_where_none_can_be_or_for_one_spec(three: Path, arguments: tuple[str, ...], term: str) -> None:
    assert "/3" not in _on_a_terminal(["check", three.joinpath(*arguments)], TERM=term)


def test_there_is_no_bar_in_a_file(three: Path) -> None:
    told = sld("check", three, "--jobs", "1").stderr
    assert "3 checked: 3 clean" in told
    assert "\r" not in told
    assert "1/3" not in told
