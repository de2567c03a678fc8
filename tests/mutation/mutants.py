"""The mutants of one module: small faults, each made at one place of its syntax tree.

Mutated are operators, numbers, truth values, conditions, returned and yielded values, statements that are calls, and
the order of arguments. Not mutated are texts (messages, remedies, formulas, docstrings, keys), the number of digits of
a printed number, annotations, imports, decorators and `__all__`; nor is the order of classes, which means nothing.

Of modules that print, what picks a value is mutated too (`picked_values.py`), but no decimal number: those are lengths
on paper, which are judged by the rules of geometry.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from picked_values import PickedValues

__all__ = ["Mutant", "mutants_of"]

_COMPARED: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_COMPUTED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
}
_OPPOSITE = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
_ORDER_IS_NOTHING = {"min", "max", "hypot", "isinstance"}
_LONGEST = 90


@dataclass(frozen=True, slots=True)
class Mutant:
    """One fault: `owner` (a list or a node of the tree) gets `new` at `place`.

    function: the qualified name of the function it is in, empty at the head of the module. first_line: where that
    function begins. change: what was changed, as text.
    """

    line: int
    function: str
    first_line: int
    change: str
    owner: Any
    place: Any
    new: Any

    def put_in(self) -> None:
        """Change the tree; a tree takes one mutant in its life."""
        _set(self.owner, self.place, self.new)


def _set(owner: Any, place: Any, new: Any) -> None:
    if isinstance(owner, list):
        owner[place] = new
    else:
        setattr(owner, place, new)


def _get(owner: Any, place: Any) -> Any:
    return owner[place] if isinstance(owner, list) else getattr(owner, place)


def _difference(before: str, after: str) -> str:
    """Write a change; of long texts what is around the first difference."""
    before, after = " ".join(before.split()), " ".join(after.split())
    first = next((place for place, (old, new) in enumerate(zip(before, after, strict=False)) if old != new), 0)
    start = max(0, first - _LONGEST // 2) if max(len(before), len(after)) > _LONGEST else 0
    return " → ".join(_cut(text, start) for text in (before, after))


def _cut(text: str, start: int = 0) -> str:
    end = start + _LONGEST
    return f"{'…' if start else ''}{text[start:end]}{'…' if len(text) > end else ''}"


def mutants_of(tree: ast.Module, *, prints: bool = False) -> list[Mutant]:
    """Return the mutants of a module in the order of its lines. Equal changes of one function are numbered.

    prints: what the module does is print values, see above.
    """
    counts: dict[tuple[str, str], int] = {}
    found = []
    for mutant in _Walk(PickedValues(tree) if prints else None).mutants(tree):
        key = mutant.function, mutant.change
        counts[key] = counts.get(key, 0) + 1
        number = f" (#{counts[key]})" if counts[key] > 1 else ""
        found.append(Mutant(mutant.line, *key[:1], mutant.first_line, mutant.change + number, *_edit(mutant)))
    return found


def _edit(mutant: Mutant) -> tuple[Any, Any, Any]:
    return mutant.owner, mutant.place, mutant.new


class _Walk:
    """Goes through a tree and remembers the function it is in."""

    def __init__(self, picked: PickedValues | None) -> None:
        self._picked = picked
        self._names: list[str] = []
        self._first_lines = [0]

    def mutants(self, node: ast.AST) -> Iterator[Mutant]:
        if isinstance(node, ast.Import | ast.ImportFrom) or _is_export_list(node):
            return
        named = isinstance(node, ast.FunctionDef | ast.ClassDef)
        if named:
            self._names.append(node.name)
        if isinstance(node, ast.FunctionDef):
            self._first_lines.append(_first_line(node))
        for owner, place, new, shown in _edits(node):
            if not (self._picked and isinstance(new, ast.Constant) and isinstance(new.value, float)):
                yield self._mutant(node, owner, place, new, shown)
        if self._picked:
            yield from self._picked_mutants(node)
        for child in _inner(node):
            yield from self.mutants(child)
        if isinstance(node, ast.FunctionDef):
            self._first_lines.pop()
        if named:
            self._names.pop()

    def _picked_mutants(self, node: ast.AST) -> Iterator[Mutant]:
        assert self._picked
        for owner, place, new, change in self._picked.edits(node, self._first_lines[-1]):
            line = getattr(node, "lineno", 0)
            yield Mutant(line, ".".join(self._names), self._first_lines[-1], _cut(change), owner, place, new)

    def _mutant(self, node: ast.AST, owner: Any, place: Any, new: Any, shown: ast.AST) -> Mutant:
        before = ast.unparse(shown)
        old = _get(owner, place)
        _set(owner, place, new)
        after = ast.unparse(new if old is shown else shown)
        _set(owner, place, old)
        if isinstance(new, ast.Pass | ast.If):
            change = f"{_cut(' '.join(before.split()))} dropped"
        elif place == "args" and isinstance(node, ast.Call):
            left, right = (ast.unparse(each) for each, other in zip(node.args, new, strict=True) if each is not other)
            change = f"{_cut(ast.unparse(node.func))}: {_cut(left)} and {_cut(right)} swapped"
        else:
            change = _difference(before, after)
        line = getattr(old, "lineno", getattr(shown, "lineno", node.lineno if hasattr(node, "lineno") else 0))
        return Mutant(line, ".".join(self._names), self._first_lines[-1], change, owner, place, new)


def _first_line(node: ast.FunctionDef) -> int:
    """Return the line that a code object counts as its first: the decorator's where there is one."""
    return min([node.lineno, *(each.lineno for each in node.decorator_list)])


def _is_export_list(node: ast.AST) -> bool:
    return isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "__all__"


def _inner(node: ast.AST) -> Iterator[ast.AST]:
    """Yield the children that run: no annotations, decorators or base classes."""
    skipped = {"annotation", "returns", "decorator_list", "bases", "keywords"} if _declares(node) else set()
    for name, value in ast.iter_fields(node):
        if name in skipped:
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST):
                yield child


def _declares(node: ast.AST) -> bool:
    return isinstance(node, ast.FunctionDef | ast.ClassDef | ast.arg | ast.AnnAssign)


Edit = tuple[Any, Any, Any, ast.AST]
"""Owner, place, what comes there, and the node to show before and after."""


def _edits(node: ast.AST) -> Iterator[Edit]:
    yield from _operators(node)
    yield from _conditions(node)
    yield from _arguments(node)
    for name, value in ast.iter_fields(node):
        if isinstance(value, list):
            for place, child in enumerate(value):
                if not _is_for_printing(node, value, place):
                    yield from _replaced(node, value, place, child)
        elif isinstance(value, ast.AST) and name not in ("annotation", "returns") and not _names_digits(node):
            yield from _replaced(node, node, name, value)


_PRINTING_STANDS_AT = {"shown": 1, "amount": 2, "counted": 2}
"""Which argument is the number of digits of a printed number, or one that stands for a count put in when printed."""


def _is_for_printing(node: ast.AST, arguments: list[Any], place: int) -> bool:
    if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and arguments is node.args):
        return False
    return _PRINTING_STANDS_AT.get(node.func.id) == place


def _names_digits(node: ast.AST) -> bool:
    return isinstance(node, ast.keyword) and node.arg == "digits"


def _operators(node: ast.AST) -> Iterator[Edit]:
    if isinstance(node, ast.Compare):
        for place, operator in enumerate(node.ops):
            for other in _COMPARED[type(operator)]:
                yield node.ops, place, other(), node
    elif isinstance(node, ast.BinOp | ast.AugAssign) and type(node.op) in _COMPUTED:
        yield node, "op", _COMPUTED[type(node.op)](), node
    elif isinstance(node, ast.BoolOp):
        yield node, "op", ast.Or() if isinstance(node.op, ast.And) else ast.And(), node
    elif isinstance(node, ast.Name) and node.id in _OPPOSITE and isinstance(node.ctx, ast.Load):
        yield node, "id", _OPPOSITE[node.id], node


def _conditions(node: ast.AST) -> Iterator[Edit]:
    """Yield the negations of conditions that are neither comparisons nor negations; those are mutated themselves."""
    if isinstance(node, ast.If | ast.IfExp | ast.While):
        conditions: list[tuple[Any, Any]] = [(node, "test")]
    elif isinstance(node, ast.BoolOp):
        conditions = [(node.values, place) for place in range(len(node.values))]
    elif isinstance(node, ast.comprehension):
        conditions = [(node.ifs, place) for place in range(len(node.ifs))]
    else:
        return
    for owner, place in conditions:
        condition = _get(owner, place)
        if isinstance(condition, ast.Name | ast.Call | ast.Attribute | ast.Subscript | ast.NamedExpr):
            negated = ast.copy_location(ast.UnaryOp(ast.Not(), condition), condition)
            yield owner, place, ast.fix_missing_locations(negated), condition


def _arguments(node: ast.AST) -> Iterator[Edit]:
    if not isinstance(node, ast.Call) or ast.unparse(node.func) in _ORDER_IS_NOTHING:
        return
    for place, (left, right) in enumerate(pairwise(node.args)):
        if any(_is_text(each) or isinstance(each, ast.Starred) for each in (left, right)):
            continue
        if all(isinstance(each, ast.Name) and _is_class(each.id) for each in (left, right)):
            continue
        if ast.unparse(left) != ast.unparse(right):
            yield node, "args", [*node.args[:place], right, left, *node.args[place + 2 :]], node


def _is_class(name: str) -> bool:
    return name[:1].isupper() and not name.isupper()


def _is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


_SHOWN_WHOLE = (
    ast.expr | ast.keyword | ast.arguments | ast.Assign | ast.AnnAssign | ast.AugAssign | ast.Return | ast.comprehension
)


def _replaced(parent: ast.AST, owner: Any, place: Any, child: Any) -> Iterator[Edit]:
    """Yield what may stand in place of a child: another number, nothing where a call or a yield was, ..."""
    shown = parent if isinstance(child, ast.expr) and isinstance(parent, _SHOWN_WHOLE) else child
    for new in _instead_of(child):
        ast.copy_location(new, child)
        yield owner, place, ast.fix_missing_locations(new), shown


def _instead_of(child: Any) -> Iterator[ast.AST]:
    if isinstance(child, ast.Constant):
        yield from map(ast.Constant, _other_values(child.value))
    elif isinstance(child, ast.UnaryOp) and isinstance(child.op, ast.Not | ast.USub):
        yield child.operand
    elif isinstance(child, ast.Return) and child.value is not None and not isinstance(child.value, ast.Constant):
        yield ast.Return(ast.Constant(None))
    elif isinstance(child, ast.Expr) and isinstance(child.value, ast.Yield | ast.YieldFrom):
        # the function stays a generator
        yield ast.If(ast.Constant(False), [ast.Expr(ast.Yield())], [])
    elif isinstance(child, ast.Raise) or (isinstance(child, ast.Expr) and isinstance(child.value, ast.Call)):
        yield ast.Pass()
    elif isinstance(child, ast.Continue):
        yield ast.Break()
    elif isinstance(child, ast.Break):
        yield ast.Continue()


def _other_values(value: object) -> tuple[object, ...]:
    """Return a truth value's opposite, an integer's neighbours, a decimal number one per cent larger."""
    if isinstance(value, bool):
        return (not value,)
    if isinstance(value, int):
        return (value + 1, value - 1) if value > 0 else (value + 1,)
    if isinstance(value, float):
        return (value * 1.01 if value else 1.0,)
    return ()
