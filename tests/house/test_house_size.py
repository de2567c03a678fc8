"""Modules and functions small enough to be read. Source: the house plan, own convention."""

from __future__ import annotations

import ast
from statistics import median

import pytest
from package import Module, modules

MODULE_LINES = 400
FUNCTION_LINES = 60
MEDIAN_LINES = 130

LONGER: dict[str, str] = {}
"""Functions or modules that may be longer, each with the reason."""


def _lines(module: Module) -> int:
    return len(module.path.read_text(encoding="utf-8").splitlines())


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.name)
def test_a_module_is_at_most_400_lines(module: Module) -> None:
    if module.name not in LONGER:
        assert _lines(module) <= MODULE_LINES


def test_most_modules_are_short() -> None:
    assert median(_lines(module) for module in modules()) <= MEDIAN_LINES


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.name)
def test_a_function_is_at_most_60_lines(module: Module) -> None:
    long = {
        f"{module.name}.{node.name}": node.end_lineno - node.lineno + 1
        for node in ast.walk(module.tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno is not None
        if node.end_lineno - node.lineno + 1 > FUNCTION_LINES and f"{module.name}.{node.name}" not in LONGER
    }
    assert not long
