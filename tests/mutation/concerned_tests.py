"""Which tests concern a module, and which of them a function of it.

A module of `sld/ratings/` is the matter of `tests/ratings/` alone. A rule in `sld/rules/FAMILY/` is that of
`tests/rules/` and `tests/steps/`, but of the tests that are named after rules only of its own (`[DC12-7]`). The other
modules of `sld/rules/` are the matter of `tests/rules/`, but for the in-depth tests of the rules, and of
`tests/steps/`; those of `sld/model/` are that of `tests/model/` first. Within that, a function is tried with the
tests that were seen to call it; the head of a module with all.

A module that prints (`PRINTING`) is the matter of `tests/printed/`, of which all are tried: a drawing is made once and
read by many tests, so that who calls a function says nothing. Of the rooms beside, those tests are tried too that are
named after the module. What tests draw is checked before, in the process that all mutants begin from (`prepare`).
"""

from __future__ import annotations

import importlib
import re
import sys
import time
from collections.abc import Sequence
from functools import _lru_cache_wrapper
from pathlib import Path
from types import FrameType
from typing import Any

import pytest
from _pytest.runner import runtestprotocol

__all__ = [
    "PRINTING", "ROOT", "Calls", "code_of", "failing", "folders_of", "for_function", "for_module", "prepare", "prints",
    "watched",
]  # fmt: skip

ROOT = Path(__file__).resolve().parents[2]

PRINTING = (
    "sld/documents",
    "sld/layout/diagram/apparatus.py",
    "sld/layout/diagram/bus_words.py",
    "sld/layout/diagram/chart.py",
    "sld/layout/diagram/earth_bar.py",
    "sld/layout/diagram/flags.py",
    "sld/layout/diagram/labels.py",
    "sld/layout/diagram/line.py",
    "sld/layout/diagram/ranges.py",
    "sld/layout/diagram/reader.py",
    "sld/layout/diagram/symbol_of.py",
    "sld/layout/diagram/wrapping.py",
    "sld/readers.py",
    "sld/render",
    "sld/rows.py",
    "sld/sheet/assemble.py",
    "sld/sheet/conductor.py",
    "sld/sheet/hovered.py",
    "sld/sheet/index.py",
    "sld/sheet/ink.py",
    "sld/sheet/legend.py",
    "sld/sheet/listings",
    "sld/sheet/title_block.py",
    "sld/sheet/worded.py",
)
"""The modules, and folders of them, that choose and write what is printed. A module that is moved is entered here."""

_PRINTED = ("tests/printed", "tests/render", "tests/documents", "tests/layout", "tests/sheet")
_DRAWN_SLOWLY = ("test_browser_lint.py", "test_render_agreement.py", "test_render_picture.py", "other_process")

_RULE_FILE = re.compile(r"sld/rules/[a-z_]+/([a-z]+\d+)_\w+\.py")
_NAMED_AFTER = re.compile(r"\b([A-Z]{2,3}\d\d)(?!\d)")

_DEEP = "test_rules_in_depth.py"  # each case four times more: for the rules themselves

Calls = dict[tuple[str, int], set[int]]
"""File and first line of a function -> places of the tests that call it."""

_WATCHED = ("model", "ratings", "rules", "steps", "layout/diagram", "layout/passes")


def code_of(path: str) -> str:
    """Return the code of the rule in a file (`DC12`), empty for a file without one."""
    found = _RULE_FILE.fullmatch(path)
    return found.group(1).upper() if found else ""


def folders_of(path: str) -> tuple[str, ...]:
    """Return the folders of the tests that concern a module or a folder of modules."""
    if prints(path):
        return _PRINTED
    if path.startswith("sld/layout"):
        return ("tests/layout",)
    if path.startswith("sld/model"):
        return ("tests/model", "tests/rules", "tests/steps")
    return ("tests/ratings",) if path.startswith("sld/ratings") else ("tests/rules", "tests/steps")


def prints(path: str) -> bool:
    """Return whether a module is one that prints."""
    return any(path == each or path.startswith(f"{each}/") for each in PRINTING)


def prepare(paths: Sequence[str]) -> None:
    """Import all, and have the specs of `tests/printed/` checked, where one of the paths prints."""
    if not any(map(prints, paths)):
        return
    for path in sorted((ROOT / "sld").rglob("*.py")):
        if path.name != "__main__.py":
            importlib.import_module(".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"))
    if printed_sheet := sys.modules.get("printed_sheet"):
        for spec in printed_sheet.SPECS:
            printed_sheet.checked(spec)


def for_module(path: str, items: Sequence[pytest.Item]) -> list[int]:
    """Return the places of the tests that concern a module: those named after it or its rule first, then the others."""
    if prints(path):
        return _for_printing(path, items)
    folders = tuple(f"{folder}/" for folder in folders_of(path))
    near = [place for place, item in enumerate(items) if item.nodeid.startswith(folders)]
    code, own_file = code_of(path), f"_{Path(path).stem}.py"
    if not code:
        shared = [place for place in near if _DEEP not in items[place].nodeid]
        return sorted(shared, key=lambda place: not items[place].nodeid.partition("::")[0].endswith(own_file))
    named = {place: _NAMED_AFTER.findall(items[place].nodeid.partition("[")[2]) for place in near}
    return [place for place in near if code in named[place]] + [place for place in near if not named[place]]


def _for_printing(path: str, items: Sequence[pytest.Item]) -> list[int]:
    """Return those of `tests/printed/`; for a renderer those of the ink and of its room, of the slow ones its own."""
    renders = path.startswith("sld/render")
    near = [place for place, item in enumerate(items) if item.nodeid.startswith(_PRINTED)]
    if not renders:
        found = [place for place in near if _reads_print(items[place].nodeid) or _is_named_after(path, items[place])]
        if path.startswith("sld/documents/calculation"):
            found = [place for place in found if re.search("_(calculation|states)", items[place].nodeid)]
        return sorted(found, key=lambda place: _when(path, items[place].nodeid))
    found = [place for place in near if "_ink" in items[place].nodeid or "/render/" in items[place].nodeid]
    own = f"_{Path(path).stem}"
    found = [
        place
        for place in found
        if own in items[place].nodeid or not any(slow in items[place].nodeid for slow in _DRAWN_SLOWLY)
    ]
    return sorted(found, key=lambda place: own not in items[place].nodeid)


def _reads_print(nodeid: str) -> bool:
    return "/printed/" in nodeid and "_ink" not in nodeid


def _is_named_after(path: str, item: pytest.Item) -> bool:
    """Return whether a test of the room of a module bears the module's name, or that of what judges its folder."""
    names = Path(path).stem, *_JUDGED_IN.get(Path(path).parent.name, ())
    named = any(f"_{name}.py" in item.nodeid for name in names)
    return named and Path(path).parts[1] == Path(item.nodeid).parts[1]


_JUDGED_IN = {
    "listings": ("flow",),
    **{kind: (kind, "read") for kind in ("notices", "particulars", "papers", "procedure", "settings", "switching")},
    "calculation": ("calculation",),
    "completeness": ("asked", "read"),
    "upkeep": ("upkeep", "read"),
}
"""In which tests of its room a folder of modules is judged."""


_READ_IN = {"apparatus": "labels", "symbol_of": "symbols", "title": "title_block", "review": "summary"}
"""In which tests of `tests/printed/` what a module prints is read, where they are not named after it."""


def _when(path: str, nodeid: str) -> tuple[bool, int]:
    """Return the place of a test: first those that read what the module prints, then by what its drawing costs."""
    stem = Path(path).stem
    return f"_{_READ_IN.get(stem, stem)}.py" not in nodeid, _drawn_when(nodeid)


def _drawn_when(nodeid: str) -> int:
    """Return the place of a test in the order of what its drawing costs, the cheapest first."""
    spec = re.search(r"\b(ranch|yard|workshop|cottage)\b", nodeid.partition("[")[2])
    return ("ranch", "yard", "workshop", "cottage").index(spec[1]) if spec else 4


def for_function(path: str, first_line: int, concerned: Sequence[int], calls: Calls) -> list[int]:
    """Return those of the concerned tests that call a function.

    For the head of a module (first line 0) all of them, those first that call any of its functions: a test may read a
    value without a call.
    """
    if prints(path):
        return list(concerned)
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

    A function that runs inside another's call counts as called; so does a generator that is resumed. Tests of what is
    printed are not watched, see above, but for those of the layout.
    """
    calls: Calls = {}
    seconds = [0.0] * len(items)
    wrong = []
    watched_files = {str(ROOT / "sld" / room): f"sld/{room}" for room in _WATCHED}
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
        calls_are_noted = not items[place].nodeid.startswith(_PRINTED) or items[place].nodeid.startswith("tests/layout")
        if calls_are_noted and not items[place].nodeid.startswith("tests/ratings"):  # these keep no call of a formula
            _forget_what_tests_keep()
        started = time.process_time()
        if calls_are_noted:
            sys.setprofile(note)
        if failing(items[place], following):
            wrong.append(items[place].nodeid)
        sys.setprofile(None)
        seconds[place] = time.process_time() - started
    return calls, seconds, wrong


def _forget_what_tests_keep() -> None:
    """Empty the caches of the modules of the tests, so that each test calls all that it judges."""
    for module in list(sys.modules.values()):
        if str(getattr(module, "__file__", "")).startswith(str(ROOT / "tests")):
            for value in vars(module).values():
                if isinstance(value, _lru_cache_wrapper):
                    value.cache_clear()
