"""Loaded by the workers of a cluster in the tests: specs of some names end badly there, as on a bad day.

The process that the workers are copies of loads it too, and with it the program.
"""

from __future__ import annotations

import itertools
import os
import time
from pathlib import Path
from typing import Any

from ready_process import load

from sld import run

load()
_check = globals().get("_check", run.check)  # the library loads this twice, in the same place


def _spoilt(path: Path, **asked: Any) -> run.Checked:
    if path.name == "kills.yaml":
        os._exit(9)
    if path.name == "endless.yaml":
        for _ in itertools.repeat(None):
            time.sleep(0.01)
    return _check(path, **asked)


run.check = _spoilt
