"""Formulas: each one serves a rating or a rule, none stands by itself."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

import pytest

import sld.ratings

PACKAGE = Path(sld.ratings.__file__).parents[1]
CALLERS = ("rate", "rules", "ratings")
EXEMPT: set[str] = set()
"""Formulas whose callers are still to come; the set is to become empty."""


@cache
def names_used() -> frozenset[str]:
    """The names and attributes that the callers of formulas read."""
    found: set[str] = set()
    for room in CALLERS:
        for path in sorted((PACKAGE / room).rglob("*.py")):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Name):
                    found.add(node.id)
                elif isinstance(node, ast.Attribute):
                    found.add(node.attr)
    return frozenset(found)


def formulas() -> list[str]:
    found = []
    for path in sorted((PACKAGE / "ratings").glob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        functions = [node.name for node in tree.body if isinstance(node, ast.FunctionDef)]
        found += [f"{path.stem}.{name}" for name in functions if not name.startswith("_")]
    return found


@pytest.mark.parametrize("formula", [each for each in formulas() if each not in EXEMPT])
def test_every_formula_is_called(formula: str) -> None:
    assert formula.partition(".")[2] in names_used(), "call it from `sld/rate` or delete it with its test"
