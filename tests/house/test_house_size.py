"""Modules and functions small enough to be read. Source: the house plan, own convention."""

from __future__ import annotations

import ast
from statistics import median

from package import modules

MODULE_LINES = 400
FUNCTION_LINES = 60
MEDIAN_LINES = 130
ARGUMENTS = 6
MOST_ARGUMENTS = 18

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


MORE_ARGUMENTS = {
    "sld.ratings": "a formula takes plain numbers, as the standard prints it; a value around them would hide them",
    "sld.symbols.registry.graphic": "the keywords of a decorator that enters one row of the catalogue",
    "sld.cli.check.check": "each option of a command is an argument for the library that reads the command line",
    "sld.cli.draw.draw": "as of check",
    "sld.cli.new.new": "as of check",
    "sld.cli.pack.pack": "as of check",
    "sld.cli.watch.watch": "as of check",
}
"""Functions, or rooms of functions, that may take more than six arguments (at most eighteen), each with the reason."""


def _arguments(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    taken = node.args
    names = [each.arg for each in (*taken.posonlyargs, *taken.args, *taken.kwonlyargs)]
    return len([name for name in names if name not in ("self", "cls")])


MANY = [
    (f"{module.name}.{node.name}", _arguments(node))
    for module in modules()
    for node in module.nodes
    if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and _arguments(node) > ARGUMENTS
]
"""Functions with many arguments, and how many."""


def _may_take_more(name: str) -> set[str]:
    return {place for place in MORE_ARGUMENTS if name == place or name.startswith(f"{place}.")}


def test_a_function_takes_at_most_six_arguments() -> None:
    assert [(name, count) for name, count in MANY if not _may_take_more(name) or count > MOST_ARGUMENTS] == []
    assert {place for name, _ in MANY for place in _may_take_more(name)} == set(MORE_ARGUMENTS), "one is not needed"
