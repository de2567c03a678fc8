"""Faults in what picks a printed value: another attribute, rating or constant, two values, cells or lines exchanged.

A value is exchanged for one that is picked in the same way elsewhere in the module, so that the fault is one that
somebody could make: the attribute of the same name's object in the same function, the constant that stands at the same
place of another call of the same function.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any

__all__ = ["PickedValues"]

Edit = tuple[Any, Any, Any, str]
"""Owner, place, what comes there, and the change in words."""


class PickedValues:
    """What a module picks values by: attributes by function and object, constants by called function and place."""

    def __init__(self, tree: ast.Module) -> None:
        self._attributes: dict[tuple[int, str], list[str]] = {}
        self._arguments: dict[tuple[str, int], list[str]] = {}
        for function in [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]:
            first_line = min([function.lineno, *(each.lineno for each in function.decorator_list)])
            for node in ast.walk(function):
                if _picks_attribute(node):
                    _add(self._attributes.setdefault((first_line, node.value.id), []), node.attr)
        for call in [node for node in ast.walk(tree) if isinstance(node, ast.Call)]:
            for place, argument in enumerate(call.args):
                if _is_constant(argument):
                    _add(self._arguments.setdefault((ast.unparse(call.func), place), []), ast.unparse(argument))

    def edits(self, node: ast.AST, first_line: int) -> Iterator[Edit]:
        """Yield the faults at one node. first_line: of the function it is in."""
        if _picks_attribute(node):
            other = _next(self._attributes.get((first_line, node.value.id), []), node.attr)
            if other:
                yield node, "attr", other, f"{ast.unparse(node)} → {node.value.id}.{other}"
        elif isinstance(node, ast.Call):
            yield from self._calls(node)
        elif isinstance(node, ast.Dict):
            for place in _exchangeable(node.values):
                yield node, "values", _exchanged(node.values, place), f"values of {_pair(node.keys, place)} swapped"
        elif isinstance(node, ast.List | ast.Tuple) and isinstance(node.ctx, ast.Load):
            for place in _exchangeable(node.elts):
                yield node, "elts", _exchanged(node.elts, place), f"{_pair(node.elts, place)} exchanged"
            for place in range(len(node.elts)) if isinstance(node, ast.List) and len(node.elts) > 1 else ():
                rest = [*node.elts[:place], *node.elts[place + 1 :]]
                yield node, "elts", rest, f"{ast.unparse(node.elts[place])} left out"
        elif isinstance(node, ast.JoinedStr):
            yield from _written(node)

    def _calls(self, node: ast.Call) -> Iterator[Edit]:
        name = ast.unparse(node.func)
        for place, argument in enumerate(node.args):
            if _is_constant(argument):
                other = _next(self._arguments[name, place], ast.unparse(argument))
                if other:
                    new = ast.copy_location(ast.parse(other, mode="eval").body, argument)
                    yield node.args, place, new, f"{name}: {ast.unparse(argument)} → {other}"
        values = [keyword.value for keyword in node.keywords]
        for place in _exchangeable(values):
            changed = _exchanged(values, place)
            new = [ast.keyword(each.arg, value) for each, value in zip(node.keywords, changed, strict=True)]
            names = " and ".join(f"{each.arg}" for each in node.keywords[place : place + 2])
            yield node, "keywords", new, f"{name}: {names} swapped"


def _picks_attribute(node: Any) -> bool:
    """Return whether a node reads an attribute of a named value that is no module and no class."""
    return (
        isinstance(node, ast.Attribute)
        and isinstance(node.ctx, ast.Load)
        and isinstance(node.value, ast.Name)
        and node.value.id not in ("self", "ast", "math")
        and not node.value.id[:1].isupper()
    )


def _is_constant(node: ast.AST) -> bool:
    """Return whether an argument is a text or the name of a constant."""
    if isinstance(node, ast.Constant):
        return isinstance(node.value, str)
    return isinstance(node, ast.Name) and node.id.isupper() and len(node.id) > 1


def _add(found: list[str], name: str) -> None:
    if name not in found:
        found.append(name)


def _next(found: Sequence[str], name: str) -> str:
    """Return the one after a name, round about; nothing where there is no other."""
    if len(found) < 2 or name not in found:
        return ""
    return found[(found.index(name) + 1) % len(found)]


def _exchangeable(nodes: Sequence[ast.expr]) -> Iterator[int]:
    """Yield the places of neighbours that differ and of which not both are numbers or classes."""
    for place, (left, right) in enumerate(pairwise(nodes)):
        plain = [_is_plain(left), _is_plain(right)]
        if not all(plain) and ast.unparse(left) != ast.unparse(right):
            yield place


def _is_plain(node: ast.expr) -> bool:
    is_class = isinstance(node, ast.Name) and node.id[:1].isupper() and not node.id.isupper()
    return is_class or (isinstance(node, ast.Constant) and not isinstance(node.value, str))


def _exchanged(nodes: Sequence[Any], place: int) -> list[Any]:
    return [*nodes[:place], nodes[place + 1], nodes[place], *nodes[place + 2 :]]


def _pair(nodes: Sequence[ast.expr | None], place: int) -> str:
    return " and ".join(ast.unparse(node) if node else "**" for node in nodes[place : place + 2])


def _written(node: ast.JoinedStr) -> Iterator[Edit]:
    """Yield the exchanges of values that are neighbours in one text."""
    values = [each for each in node.values if isinstance(each, ast.FormattedValue)]
    for left, right in pairwise(values):
        if ast.unparse(left.value) == ast.unparse(right.value):
            continue
        new = [right if each is left else left if each is right else each for each in node.values]
        change = f"{ast.unparse(left.value)} and {ast.unparse(right.value)} exchanged in a text"
        yield node, "values", new, change
