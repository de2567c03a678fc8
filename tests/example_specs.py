"""The specs of `specs/`, each checked once and each of its documents drawn once for all tests that look at them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from sld import run
from sld.sheet.compose import Composition

__all__ = ["SPECS", "checked", "document"]

SPECS = sorted((Path(__file__).parents[1] / "specs").glob("*.yaml"))


@cache
def checked(path: Path) -> run.Checked:
    """Return a spec that was read, rated and reviewed, in English whatever language it is in."""
    found = run.check(path)
    english = found.project.model_copy(update={"language": "en"})
    parts = tuple(part._replace(system=replace(part.system, project=english)) for part in found.parts)
    return replace(found, parts=parts) if found.project.language != "en" else found


def document(path: Path, name: str, reader: str | None = None) -> Composition:
    """Return a document of a spec, for another reader than the spec asks for where one is given."""
    return _document(path, name, reader or checked(path).drawing.reader)


@cache
def _document(path: Path, name: str, reader: str) -> Composition:
    return run.documents(checked(path), (name,), reader=reader)[name]
