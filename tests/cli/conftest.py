"""What is the same for all commands of a test run: the program, and how a spec is checked and drawn."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import pytest
from command import SPECS

from sld import render, run
from sld.cli.again import program
from sld.pack.pack import Pack
from sld.sheet.compose import Composition
from sld.sheet.sheet import Sheet


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
        monkeypatch.setattr(run, "pack", _pack)
        for name, once in _RENDERED.items():
            monkeypatch.setattr(render, name, once)


_CHECK, _DOCUMENTS, _PACK = run.check, run.documents, run.pack
_checked: dict[object, run.Checked] = {}
_drawn: dict[object, Composition] = {}
_packed: dict[object, Pack] = {}
_written: dict[object, tuple[tuple[Sheet, ...], Any]] = {}


def _check(path: Path, **asked: Any) -> run.Checked:
    """Check a spec, one of `specs/` once."""
    if path.parent != SPECS:
        return _CHECK(path, **asked)
    key = path, *asked.items()
    if key not in _checked:
        _checked[key] = _CHECK(path, **asked)
    return _checked[key]


def _text(checked: run.Checked) -> tuple[object, ...]:
    """Return all that a drawing is made from."""
    source = checked.source
    texts = [(Path(name).name, text) for name, text in source.texts.items()]
    return source.text, *texts, repr(source.logo), repr(checked.drawing)


def _documents(checked: run.Checked, names: Iterable[str], **asked: str | None) -> dict[str, Composition]:
    """Put documents on sheets, those of one text once."""
    of = *_text(checked), *sorted(asked.items())
    made = {}
    for name in names:
        if (of, name) not in _drawn:
            _drawn[of, name] = _DOCUMENTS(checked, (name,), **asked)[name]
        made[name] = _drawn[of, name]
    return made


def _pack(checked: run.Checked, purpose: str, **asked: str | None) -> Pack:
    """Bind documents, those of one text once."""
    key = *_text(checked), purpose, *asked.items()
    if key not in _packed:
        _packed[key] = _PACK(checked, purpose, **asked)
    return _packed[key]


def _once(name: str) -> Callable[..., Any]:
    """Return a renderer that writes the same sheets once."""
    write = getattr(render, name)

    def once(drawn: Sheet | tuple[Sheet, ...], *asked: object) -> Any:
        sheets = drawn if isinstance(drawn, tuple) else (drawn,)
        key = name, *map(id, sheets), repr(asked)
        if key not in _written:
            _written[key] = sheets, write(drawn, *asked)  # the sheets are kept, and so their numbers
        return _written[key][1]

    return once


_RENDERED = {name: _once(name) for name in ("svg", "pdf", "png", "dxf", "text")}
