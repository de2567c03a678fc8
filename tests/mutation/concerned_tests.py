"""Which tests concern a module, and which of them a function of it.

A module of `sld/ratings/` is the matter of `tests/ratings/` alone. A rule in `sld/rules/FAMILY/` is that of
`tests/rules/` and `tests/steps/`, but of the tests that are named after rules only of its own (`[DC12-7]`). The other
modules of `sld/rules/` are the matter of `tests/rules/`, but for the in-depth tests of the rules, and of
`tests/steps/`. Within that, a function is tried with the tests that were seen to call it; the head of a module with
all.
"""

from __future__ import annotations

import re
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from types import FrameType
from typing import Any

import pytest
from _pytest.runner import runtestprotocol

__all__ = ["ROOT", "Calls", "code_of", "failing", "folders_of", "for_function", "for_module", "watched"]

ROOT = Path(__file__).resolve().parents[2]

_RULE_FILE = re.compile(r"sld/rules/[a-z_]+/([a-z]+\d+)_\w+\.py")
_NAMED_AFTER = re.compile(r"\b([A-Z]{2,3}\d\d)\b")

_DEEP = "test_rules_in_depth.py"  # each case four times more: for the rules themselves

Calls = dict[tuple[str, int], set[int]]
"""File and first line of a function -> places of the tests that call it."""


def code_of(path: str) -> str:
    """Return the code of the rule in a file (`DC12`), empty for a file without one."""
    found = _RULE_FILE.fullmatch(path)
    return found.group(1).upper() if found else ""


def folders_of(path: str) -> tuple[str, ...]:
    """Return the folders of the tests that concern a module or a folder of modules."""
    return ("tests/ratings",) if path.startswith("sld/ratings") else ("tests/rules", "tests/steps")


def for_module(path: str, items: Sequence[pytest.Item]) -> list[int]:
    """Return the places of the tests that concern a module: those named after it or its rule first, then the others."""
    folders = tuple(f"{folder}/" for folder in folders_of(path))
    near = [place for place, item in enumerate(items) if item.nodeid.startswith(folders)]
    code, own_file = code_of(path), f"_{Path(path).stem}.py"
    if not code:
        shared = [place for place in near if _DEEP not in items[place].nodeid]
        return sorted(shared, key=lambda place: not items[place].nodeid.partition("::")[0].endswith(own_file))
    named = {place: _NAMED_AFTER.findall(items[place].nodeid.partition("[")[2]) for place in near}
    return [place for place in near if code in named[place]] + [place for place in near if not named[place]]


def for_function(path: str, first_line: int, concerned: Sequence[int], calls: Calls) -> list[int]:
    """Return those of the concerned tests that call a function.

    For the head of a module (first line 0) all of them, those first that call any of its functions: a test may read a
    value without a call.
    """
    seen: set[int] = set()
    for (where, line), places in calls.items():
        if where == path and first_line in (0, line):
            seen |= places
    callers = [place for place in concerned if place in seen]
    return callers if first_line else callers + [place for place in concerned if place not in seen]


def failing(item: pytest.Item, following: pytest.Item | None) -> bool:
    """Run one test and return whether it fails."""
    return any(report.failed for report in runtestprotocol(item, log=False, nextitem=following))


def watched(items: Sequence[pytest.Item], places: Sequence[int]) -> tuple[Calls, list[float], list[str]]:
    """Run tests and return which functions of ratings and rules each calls, its seconds, and the names of failing ones.

    A function that runs inside another's call counts as called; so does a generator that is resumed.
    """
    calls: Calls = {}
    seconds = [0.0] * len(items)
    wrong = []
    watched_files = {str(ROOT / "sld" / room): f"sld/{room}" for room in ("ratings", "rules")}
    names: dict[str, str] = {}

    def relative(file: str) -> str:
        if file not in names:
            names[file] = Path(file).relative_to(ROOT).as_posix() if file.startswith(tuple(watched_files)) else ""
        return names[file]

    for order, place in enumerate(places):

        def note(frame: FrameType, event: str, _argument: Any, place: int = place) -> None:
            code = frame.f_code
            if event == "call" and (file := relative(code.co_filename)):
                calls.setdefault((file, code.co_firstlineno), set()).add(place)

        following = items[places[order + 1]] if order + 1 < len(places) else None
        started = time.process_time()
        sys.setprofile(note)
        if failing(items[place], following):
            wrong.append(items[place].nodeid)
        sys.setprofile(None)
        seconds[place] = time.process_time() - started
    return calls, seconds, wrong
