"""Modules and functions small enough to be read. Source: the house plan, own convention."""

from __future__ import annotations

import ast
from statistics import median

from package import modules

MODULE_LINES = 400
FUNCTION_LINES = 60
MEDIAN_LINES = 130

LONGER: dict[str, str] = {}
"""Functions or modules that may be longer, each with the reason."""


LINES = {module.name: len(module.text.splitlines()) for module in modules()}


def test_a_module_is_at_most_400_lines() -> None:
    assert {name: lines for name, lines in LINES.items() if lines > MODULE_LINES and name not in LONGER} == {}


def test_most_modules_are_short() -> None:
    assert median(LINES.values()) <= MEDIAN_LINES


def test_a_function_is_at_most_60_lines() -> None:
    long = {
        f"{module.name}.{node.name}": node.end_lineno - node.lineno + 1
        for module in modules()
        for node in module.nodes
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno is not None
        if node.end_lineno - node.lineno + 1 > FUNCTION_LINES and f"{module.name}.{node.name}" not in LONGER
    }
    assert long == {}
