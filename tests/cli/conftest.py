"""What is the same for all commands of a test run: the program, and how a spec is checked and drawn."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest
from command import SPECS

from sld import run
from sld.cli.again import program
from sld.sheet.compose import Composition


@pytest.fixture(scope="session")
def digest() -> str:
    return program()


@pytest.fixture
def anew() -> None:
    """Ask for it where a test is about drawing again: nothing is taken from what was drawn before."""


@pytest.fixture(autouse=True)
def _the_same_is_made_once(digest: str, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """A command reads every file of the program for its digest; here they are read once. And what is the same in each
    command, those of `specs/` checked and a spec with the same text drawn, is made once: in this process, but
    where a test asks for several."""
    monkeypatch.setattr("sld.cli.draw.program", lambda: digest)
    monkeypatch.setattr("sld.cli.batch._cores", lambda: 1)
    if "anew" not in request.fixturenames:
        monkeypatch.setattr(run, "check", _check)
        monkeypatch.setattr(run, "documents", _documents)


_CHECK, _DOCUMENTS = run.check, run.documents
_checked: dict[object, run.Checked] = {}
_drawn: dict[object, Composition] = {}


def _check(path: Path, **asked: Any) -> run.Checked:
    """Check a spec, one of `specs/` once."""
    if path.parent != SPECS:
        return _CHECK(path, **asked)
    key = path, *asked.items()
    if key not in _checked:
        _checked[key] = _CHECK(path, **asked)
    return _checked[key]


def _documents(checked: run.Checked, names: Iterable[str], **asked: str | None) -> dict[str, Composition]:
    """Put documents on sheets, those of one text once."""
    source = checked.source
    texts = [(Path(name).name, text) for name, text in source.texts.items()]
    of = source.text, *texts, repr(source.logo), repr(checked.drawing), *sorted(asked.items())
    made = {}
    for name in names:
        if (of, name) not in _drawn:
            _drawn[of, name] = _DOCUMENTS(checked, (name,), **asked)[name]
        made[name] = _drawn[of, name]
    return made
