"""Faults made by hand in what is printed: is each found by a test that judges meaning?

    python tests/mutation/hand_made.py            # all
    python tests/mutation/hand_made.py dash arc   # those whose name has one of the words

Such faults once went through all tests that read what is printed, and were seen by comparisons with stored output
alone. Here only tests of `tests/printed/`, `render/`, `sheet/` and of folding are asked; none of them compares with
stored output. Ends with 1 where a fault is not found, or where its place is no longer in the source. No part of the
test run.
"""

from __future__ import annotations

import ast
import importlib
import os
import sys
from collections.abc import Callable, Sequence

import pytest
from concerned_tests import ROOT, failing, for_module, prints
from hand_made_faults import FAULTS, Fault
from mutated_module import put_in_place

_LABELS = "sld/layout/diagram/labels.py"


class Session:
    """The plugin that takes the place of pytest's loop over the tests: a process for each fault."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self._faults = faults
        self.missed: list[str] = []

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        near = {fault: _near(fault.path, session.items) for fault in self._faults}
        asked = sorted({place for places in near.values() for place in places})
        wrong = _failing([session.items[place] for place in asked])
        print(*(f"left out, it fails without a fault: {each}" for each in sorted(wrong)), sep="\n")
        for fault, places in near.items():
            chosen = [session.items[place] for place in places]
            found = _found(fault, [each for each in chosen if each.nodeid not in wrong])
            print(f"{found or 'NOT FOUND'}: {fault.name} ({fault.path})", flush=True)
            self.missed += [] if found else [fault.name]
        return True


def _near(path: str, items: Sequence[pytest.Item]) -> list[int]:
    """Return the places of the tests that concern a module; of what folds those of the layout that fold too."""
    found = for_module(path if prints(path) else _LABELS, items)
    folds = path.startswith("sld/layout") and not prints(path)
    return found + [place for place, item in enumerate(items) if folds and "layout_fold" in item.nodeid]


def _found(fault: Fault, items: Sequence[pytest.Item]) -> str:
    """Return the test that finds a fault, nothing where none does."""
    source = (ROOT / fault.path).read_text(encoding="utf-8")
    if source.count(fault.right) != 1:
        print(f"{fault.path} has not once {fault.right!r}")
        return ""

    def put_in() -> None:
        module = importlib.import_module(fault.path.removesuffix(".py").replace("/", "."))
        put_in_place(module, ast.parse(source.replace(fault.right, fault.wrong)))

    return "".join(_failing(items, put_in, most=1))


def _failing(items: Sequence[pytest.Item], put_in: Callable[[], None] = lambda: None, most: int = 1000) -> set[str]:
    """Return the names of tests that fail, at most so many, in a process of its own, after something is put in."""
    reading, writing = os.pipe()
    if os.fork() == 0:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        put_in()
        for item, following in zip(items, [*items[1:], None], strict=True):
            if most and failing(item, following):
                os.write(writing, f"{item.nodeid}\n".encode())
                most -= 1
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, encoding="utf-8") as pipe:
        found = set(pipe.read().splitlines())
    os.wait()
    return found


def main(words: Sequence[str]) -> int:
    """Try the faults whose name has one of the words, all without; return the exit code."""
    session = Session([each for each in FAULTS if not words or any(word in each.name for word in words)])
    os.chdir(ROOT)
    sys.path.insert(0, str(ROOT))  # this tree, whatever is installed
    options = ["-s", "-q", "-o", "addopts=", "-p", "no:cacheprovider", "--no-summary"]
    pytest.main([*options, "tests/printed", "tests/render", "tests/layout", "tests/sheet"], [session])
    return 1 if session.missed else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
