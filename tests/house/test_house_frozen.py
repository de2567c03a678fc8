"""The data classes of the package are frozen by mypy, not when they run. Source: the house plan (frozen data)."""

from __future__ import annotations

import ast
import pickle
from dataclasses import dataclass as guarded
from dataclasses import replace as replaced
from typing import Any

import pytest
from package import modules

from sld.frozen import dataclass, replace

HANDED_OUT = "door"
OURS, THEIRS = ({f"{home}.{name}" for name in ("dataclass", "replace")} for home in ("sld.frozen", "dataclasses"))
SETTING = {"setattr", "__setattr__", "delattr", "__delattr__", "__set__", "__dict__"}


@dataclass(frozen=True, slots=True)
class Ours:
    """A value as the package makes them."""

    number: int
    word: str = "a"


@guarded(frozen=True, slots=True)
class Theirs:
    """The same as the library makes it."""

    number: int
    word: str = "a"


def test_they_are_all_made_here_and_what_is_handed_out_by_the_library() -> None:
    wrong = [
        f"{module.where} imports {name}"
        for module in modules()
        if module.room != "frozen"
        for name in module.imports
        if name in (OURS if module.room == HANDED_OUT else THEIRS)
    ]
    assert not wrong, "\n".join(wrong)


def test_nobody_sets_a_field_past_the_type_checker() -> None:
    wrong = [
        f"{module.where}:{node.lineno}"
        for module in modules()
        if module.room != "frozen"
        for node in module.nodes
        if isinstance(node, ast.Attribute | ast.Name)
        if (node.attr if isinstance(node, ast.Attribute) else node.id) in SETTING
    ]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("works", [replace, lambda value: pickle.loads(pickle.dumps(value))])
def test_a_value_is_what_the_library_makes_of_it(works: object) -> None:
    one = works(Ours(1))  # type: ignore[operator]
    assert one == Ours(1, "a") != Ours(2)
    assert hash(one) == hash(Ours(1)) == hash(Theirs(1))
    assert repr(one) == repr(Theirs(1)).replace("Theirs", "Ours")
    with pytest.raises(AttributeError):
        one.other = 1  # a class with slots takes no other field


def test_mypy_refuses_to_set_a_field() -> None:
    """mypy reports a comment that lets nothing pass: were the field not frozen for it, it would complain here."""
    one = Ours(1)
    one.number = 2  # type: ignore[misc]
    assert one != Ours(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A value that takes its fields by their names alone."""

    number: int
    word: str = "a"


@pytest.mark.parametrize("made", [Ours, Named])
@pytest.mark.parametrize("changes", [{}, {"number": 2}, {"word": "b", "number": 3}])
def test_a_value_with_others_of_its_fields_is_a_new_one(made: type[Ours | Named], changes: dict[str, Any]) -> None:
    one = made(number=1)
    other = replace(one, **changes)
    assert other == replaced(one, **changes) == made(**({"number": 1} | changes))
    assert other is not one == made(number=1)


@pytest.mark.parametrize("one", [Ours(1), Named(number=1)])
def test_no_field_is_made_up(one: Ours | Named) -> None:
    with pytest.raises((AttributeError, TypeError)):
        replace(one, other=1)  # type: ignore[call-arg]
