"""Faults in what picks a printed value: another attribute, rating or constant, two values, cells or lines exchanged.

A value is exchanged for one that is picked in the same way elsewhere in the module, so that the fault is one that
somebody could make: the attribute of the same name's object in the same function, the constant that stands at the same
place of another call of the same function, the next member of the same enumeration. A phrase is exchanged for one that
has the same places for values, the one for the many, the role of a line for one that other readers see or do not see,
and how a cell is known for another way to know it.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Container, Iterator, Sequence
from itertools import pairwise
from typing import Any

__all__ = ["PickedValues"]

Edit = tuple[Any, Any, Any, str]
"""Owner, place, what comes there, and the change in words."""


_PHRASES = {"phrase": 0, "phrase_in": 1}
"""Which argument of these is a sentence with places for values."""

_KNOWN_OTHERWISE = {"given": "computed", "computed": "given"}
_SEEN_BY_SOME = ("ROUTE", "ADDRESS", "COMPUTED", "LIMIT")


class PickedValues:
    """What a module picks values by: attributes by function and object, constants by called function and place.

    Sentences count as constants of the same place where they have the same places for values.
    """

    def __init__(self, tree: ast.Module) -> None:
        self._attributes: dict[tuple[int, str], list[str]] = {}
        self._arguments: dict[tuple[str, int, str], list[str]] = {}
        self._members: dict[str, list[str]] = {}
        for function in [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]:
            first_line = min([function.lineno, *(each.lineno for each in function.decorator_list)])
            for node in ast.walk(function):
                if _picks_attribute(node):
                    _add(self._attributes.setdefault((first_line, node.value.id), []), node.attr)
        for call in [node for node in ast.walk(tree) if isinstance(node, ast.Call)]:
            for place, argument in enumerate(call.args):
                if _is_constant(argument):
                    _add(self._arguments.setdefault(_place(call, place), []), ast.unparse(argument))
        self._cells = {
            alias.name
            for node in ast.walk(tree)
            if isinstance(node, ast.ImportFrom) and node.module == "sld.documents.cell"
            for alias in node.names
        }
        for node in filter(_is_member, ast.walk(tree)):
            _add(self._members.setdefault(node.value.id, []), node.attr)  # type: ignore[attr-defined]

    def edits(self, node: ast.AST, first_line: int) -> Iterator[Edit]:
        """Yield the faults at one node. first_line: of the function it is in."""
        if _picks_attribute(node):
            other = _next(self._attributes.get((first_line, node.value.id), []), node.attr)
            if other:
                yield node, "attr", other, f"{ast.unparse(node)} → {node.value.id}.{other}"
        elif _is_member(node):
            other = _other_member(self._members[node.value.id], node)  # type: ignore[attr-defined]
            if other:
                yield node, "attr", other, f"{ast.unparse(node)} → {other}"
        elif isinstance(node, ast.Call):
            yield from self._calls(node)
            yield from _otherwise(node, self._cells)
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
                other = _next(self._arguments[_place(node, place)], ast.unparse(argument))
                if other:
                    new = ast.copy_location(ast.parse(other, mode="eval").body, argument)
                    yield node.args, place, new, f"{name}: {ast.unparse(argument)} → {other}"
        values = [keyword.value for keyword in node.keywords]
        for place in _exchangeable(values):
            changed = _exchanged(values, place)
            new = [ast.keyword(each.arg, value) for each, value in zip(node.keywords, changed, strict=True)]
            names = " and ".join(f"{each.arg}" for each in node.keywords[place : place + 2])
            yield node, "keywords", new, f"{name}: {names} swapped"


def _place(call: ast.Call, place: int) -> tuple[str, int, str]:
    """Return by what a constant argument is put beside others; sentences by their places for values too."""
    name, argument = ast.unparse(call.func), call.args[place]
    if _PHRASES.get(name) == place and isinstance(argument, ast.Constant):
        return name, place, " ".join(sorted(re.findall(r"{(\w+)}", str(argument.value))))
    return name, place, ""


def _is_member(node: ast.AST) -> bool:
    """Return whether a node is a member of an enumeration: `Role.RATED`."""
    return (
        isinstance(node, ast.Attribute)
        and isinstance(node.ctx, ast.Load)
        and isinstance(node.value, ast.Name)
        and node.value.id[:1].isupper()
        and node.attr.isupper()
    )


def _other_member(members: Sequence[str], node: Any) -> str:
    """Return another member; of roles and states one that makes a difference to somebody, whatever the module uses."""
    if node.value.id == "Role":
        return "RATED" if node.attr in _SEEN_BY_SOME else "COMPUTED"
    if node.value.id == "State":
        return "BLANK" if node.attr == "GIVEN" else "GIVEN"
    return _next(members, node.attr)


def _otherwise(node: ast.Call, cells: Container[str]) -> Iterator[Edit]:
    """Yield the one for the many, and a cell that is known in another way. cells: which ways the module knows."""
    name = ast.unparse(node.func)
    if name == "counted" and len(node.args) > 1 and not isinstance(node.args[1], ast.Starred):
        yield node, "args", [node.args[1], node.args[0], *node.args[2:]], "counted: one and many exchanged"
    if name in cells and _KNOWN_OTHERWISE.get(name, "") in cells:
        other = ast.copy_location(ast.Name(_KNOWN_OTHERWISE[name], ast.Load()), node.func)
        yield node, "func", other, f"{_start(node)} → {_KNOWN_OTHERWISE[name]}"


def _start(node: ast.Call) -> str:
    return f"{ast.unparse(node.func)}({', '.join(map(ast.unparse, node.args))})"[:60]


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
