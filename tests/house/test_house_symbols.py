"""Every letter symbol that something asks for is made by some formula or step, and every one in the table is used."""

from __future__ import annotations

import ast

import pytest
from package import Module, modules

from sld.ratings.symbol import Symbol, Word

TABLE = "sld.ratings.symbol"
ASKED_BY = {"get", "value", "word", "stated", "unanswered"}
"""What looks a rating up, or says why there is none; `Ledger.word` with four arguments keeps a word."""


def _named(node: ast.AST, enum: str) -> str | None:
    """Return the name of the constant that a node is, None for another node."""
    if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == enum:
        return node.attr
    return None


def _is_look_up(node: ast.AST) -> bool:
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        return node.func.attr in ASKED_BY and len(node.args) < 4
    return isinstance(node, ast.Subscript)


def _asked(module: Module, enum: str) -> set[str]:
    """Return the constants that a module looks up by name."""
    asking = [node for node in module.nodes if _is_look_up(node)]
    return {name for each in asking for node in ast.walk(each) if (name := _named(node, enum))}


def _made(module: Module, enum: str) -> set[str]:
    """Return the constants that a formula or step names otherwise than in a look-up."""
    if module.room not in {"ratings", "steps"} or module.name == TABLE:
        return set()
    inside = {id(node) for each in module.nodes if _is_look_up(each) for node in ast.walk(each)}
    return {name for node in module.nodes if id(node) not in inside and (name := _named(node, enum))}


@pytest.mark.parametrize("enum", [Symbol, Word])
def test_what_is_asked_for_is_made(enum: type[Symbol] | type[Word]) -> None:
    made = {name for module in modules() for name in _made(module, enum.__name__)}
    wrong = [
        f"{module.where} asks for {enum.__name__}.{name}, which nothing makes"
        for module in modules()
        if module.room not in {"ratings", "steps"}
        for name in sorted(_asked(module, enum.__name__) - made)
    ]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("enum", [Symbol, Word])
def test_the_table_holds_nothing_else(enum: type[Symbol] | type[Word]) -> None:
    table = next(module for module in modules() if module.name == TABLE)
    used = {name for module in modules() for node in module.nodes if (name := _named(node, enum.__name__))}
    assert set(enum.__members__) - used == set(), f"{table.where} lists what nothing makes"


def test_no_rating_is_made_or_asked_for_by_a_loose_text() -> None:
    """A typing error in a text would silence whatever asks for it; a constant that is not there fails at import."""
    wrong = []
    for module in modules():
        for node in module.nodes:
            if not isinstance(node, ast.Call) or not node.args:
                continue
            name = node.func.id if isinstance(node.func, ast.Name) else ""
            if name in {"Rating", "specified"} and isinstance(node.args[0], ast.Constant | ast.JoinedStr):
                wrong.append(f"{module.where}:{node.lineno}")
            wrong += [
                f"{module.where}:{node.lineno}"
                for each in node.keywords
                if each.arg == "symbol"
                and isinstance(each.value, ast.JoinedStr)
                and module.room in {"ratings", "steps"}
            ]
    assert not wrong
