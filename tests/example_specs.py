"""The specs of `specs/`, each checked once and each of its documents drawn once for all tests that look at them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet

from sld import run
from sld.sheet.compose import Composition

__all__ = ["FEW", "READ", "READERS", "SAMPLED", "SPECS", "case", "checked", "document"]

SPECS = sorted((Path(__file__).parents[1] / "specs").glob("*.yaml"))

FEW = ("haus-ahorn", "upper-farm-faulty", "valley-school", "weir-house")
"""A German one, a faulty one, a large one and one with a backup output: the sample where each spec costs a second."""

READERS = ("full", "operator", "crew")


def case(*values: object, sampled: bool) -> ParameterSet:
    """Return a case that the default run takes, or leaves to `pytest -m whole`."""
    named = "-".join(each.stem if isinstance(each, Path) else str(each) for each in values)
    return pytest.param(*values, id=named, marks=[] if sampled else [pytest.mark.whole])


SAMPLED = [case(path, sampled=path.stem in FEW) for path in SPECS]
READ = [case(path, reader, sampled=reader == "full" or path.stem in FEW) for path in SPECS for reader in READERS]
"""Every spec with each reader: those who get a part of what the full reader gets are sampled."""


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
