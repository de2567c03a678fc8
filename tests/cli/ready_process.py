"""A process that has the whole program loaded, and for each command divides: the copy runs it as a new process would.

Started as a program it reads commands, one a line as JSON, and answers each with the exit code. A new process loads for
most of a second; a copy of one that is loaded is there at once, has streams, folder and environment of its own, and
ends as any other. What is decided while Python starts, such as a stream that is closed, needs a new one.
"""

from __future__ import annotations

import atexit
import gc
import json
import os
import subprocess
import sys
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

__all__ = ["load", "run_in_copy"]

ROOT = Path(__file__).parents[2]


def run_in_copy(
    words: list[str], before: str, cwd: Path, changes: dict[str, str], stdout: str = "", stderr: str = ""
) -> subprocess.CompletedProcess[str]:
    """Run a command in a copy of the process that is ready.

    before: Python that runs first. changes: of the environment. stdout, stderr: devices to write to in its place.
    """
    ready = _ready()
    assert ready.stdin
    assert ready.stdout
    with TemporaryDirectory() as folder:
        out, told = stdout or f"{folder}/out", stderr or f"{folder}/told"
        asked = {"words": words, "before": before, "cwd": str(cwd), "changes": changes, "out": out, "told": told}
        ready.stdin.write(json.dumps(asked) + "\n")
        ready.stdin.flush()
        code = int(ready.stdout.readline())
        printed, said = (
            "" if at else Path(to).read_text(encoding="utf-8") for at, to in ((stdout, out), (stderr, told))
        )
        return subprocess.CompletedProcess(words, code, printed, said)


@cache
def _ready() -> subprocess.Popen[str]:
    """Start the process that is ready; it ends when the tests end and with them its standard input."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"}
    ready = subprocess.Popen(
        [sys.executable, __file__], env=environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    atexit.register(ready.communicate)
    return ready


@cache
def load() -> None:
    """Check and draw once, so that all is loaded that a command needs."""
    from sld import run
    from sld.cli import app

    checked = run.check(ROOT / "specs" / "village-hall.yaml")
    sheets = run.draw(checked).sheets
    assert app
    run.files(sheets, "x", ("svg", "pdf", "strokes"))


def _divide() -> dict[str, Any] | None:
    """Answer commands; return one in the copy that is to run it, None where there are no more."""
    while asked := sys.stdin.readline():
        if (child := os.fork()) == 0:
            return json.loads(asked)  # type: ignore[no-any-return]
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        os.write(1, f"{code}\n".encode())
    return None


def _run(asked: dict[str, Any]) -> None:
    streams = ((0, os.devnull, os.O_RDONLY), *((n, asked[key], os.O_WRONLY | os.O_CREAT) for n, key in STREAMS))
    for number, path, flags in streams:
        os.dup2(os.open(path, flags), number)
    os.chdir(asked["cwd"])
    os.environ.update(asked["changes"])
    sys.argv = ["sld", *asked["words"]]
    exec(asked["before"], {})

    from sld.cli import main

    main()


STREAMS = ((1, "out"), (2, "told"))

if __name__ == "__main__":
    load()
    gc.collect()
    gc.freeze()
    if command := _divide():
        _run(command)
