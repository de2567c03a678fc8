"""The data classes of the package are frozen by mypy, not when they run. Source: the house plan (frozen data)."""

from __future__ import annotations

import ast
import copy
import pickle
from dataclasses import dataclass as guarded
from dataclasses import field
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


WORKS = [replace, copy.copy, copy.deepcopy, lambda value: pickle.loads(pickle.dumps(value))]


@pytest.mark.parametrize("works", WORKS)
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


class Bare:
    """What has no slots: whatever is below it could keep any name."""


@dataclass(frozen=True, slots=True)
class BelowBare(Bare):
    """A value that could keep a field that is made up."""

    number: int
    word: str = "a"


@dataclass(frozen=True, slots=True)
class Backwards:
    """A value that takes its fields in an order of its own."""

    number: int
    word: str

    def __init__(self, word: str, number: int) -> None:
        self.number, self.word = number, word  # type: ignore[misc]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Backwards) and other.number == self.number


@dataclass(frozen=True, slots=True)
class Keeping:
    """A value with a field that is not handed over, and does not count."""

    number: int
    seen: list[int] = field(default_factory=list, init=False, repr=False, compare=False)


@dataclass(frozen=True, slots=True)
class Further(Ours):
    """A value with a field more than what it is made from."""

    more: int = 3


def test_no_field_is_made_up_below_a_class_without_slots() -> None:
    with pytest.raises(TypeError):
        replace(BelowBare(1), other=1)  # type: ignore[call-arg]


def test_a_class_that_is_made_in_its_own_way_is_replaced_by_names() -> None:
    assert replace(Backwards("b", 1), number=2).word == "b"


def test_a_class_with_its_own_equality_is_hashed_by_its_fields() -> None:
    assert hash(Backwards("b", 1)) == hash(Theirs(1, "b"))


def test_what_is_not_handed_over_neither_counts_nor_is_kept_nor_replaced() -> None:
    one = Keeping(1)
    one.seen.append(1)
    assert one == Keeping(1)
    assert hash(one) == hash(Keeping(1))
    assert repr(one) == "Keeping(number=1)"
    assert replace(one, number=2).seen == []
    with pytest.raises(ValueError, match="seen"):
        replace(one, seen=[2])


def test_a_class_made_from_another_has_the_fields_of_both_and_equals_no_value_of_it() -> None:
    one = Further(1)
    assert one != Ours(1)
    assert one != Further(1, more=4)
    assert hash(one) == hash((1, "a", 3))
    assert repr(one) == "Further(number=1, word='a', more=3)"
    assert replace(one, word="b") == Further(1, "b")
    match one:
        case Further(number, word, more):
            assert (number, word, more) == (1, "a", 3)
        case _:
            pytest.fail("a data class is matched by its fields in their order")


def test_what_can_change_has_no_hash() -> None:
    @dataclass(slots=True)
    class Open:
        number: int

    assert Open(1) == Open(1)
    with pytest.raises(TypeError, match="unhashable"):
        hash(Open(1))
