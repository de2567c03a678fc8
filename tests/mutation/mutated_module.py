"""Putting a mutated syntax tree in the place of a module that others have imported already."""

from __future__ import annotations

import ast
import sys
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from sld.finding import RULES

__all__ = ["put_in_place"]

_ROOT = str(Path(__file__).resolve().parents[2])


def put_in_place(module: ModuleType, tree: ast.Module) -> None:
    """Give the functions of a module the code of the tree, and its names the values of the tree.

    The functions stay the same objects, so that every importer calls the mutated code. A value that another module of
    the project imported by name is replaced there too. Meant for a process that ends after the tests.
    """
    fresh = _executed(module, tree)
    kept = _kept(module, fresh)
    for name, new in fresh.items():
        old = module.__dict__.get(name)
        if id(new) in kept:
            _take_over(kept[id(new)], new)
        elif hasattr(new, "registry") and hasattr(old, "registry"):
            _replace_registered(old.registry, new.registry)
        elif hasattr(new, "__wrapped__") and hasattr(old, "cache_clear"):
            _replace_code(old.__wrapped__, new.__wrapped__)
            old.cache_clear()
        elif isinstance(new, FunctionType) and isinstance(old, FunctionType):
            _replace_code(old, new)
        elif isinstance(new, type) and isinstance(old, type) and new.__module__ == module.__name__:
            _replace_methods(old, new)
        elif not name.startswith("__") and not isinstance(new, FunctionType | ModuleType | type):
            _replace_value(module, name, old, _with_kept(new, kept))


def _executed(module: ModuleType, tree: ast.Module) -> dict[str, Any]:
    """Run the module anew in a namespace of its own. A rule that it registers again keeps its place and its check."""
    fresh: dict[str, Any] = {key: module.__dict__[key] for key in ("__name__", "__file__", "__package__")}
    if hasattr(module, "__path__"):
        fresh["__path__"] = module.__path__
    known = dict(RULES)
    RULES.clear()
    exec(compile(tree, str(module.__file__), "exec"), fresh)
    anew = {code: replace(rule, check=known[code].check) for code, rule in RULES.items()}
    RULES.clear()
    RULES.update(known | anew)
    return fresh


def _kept(module: ModuleType, fresh: Mapping[str, Any]) -> dict[int, Any]:
    """Return, by the identity of what would take its place, each value of the module that is told by its identity.

    Rows and tables of other modules hold such a value too (a kind of device, a role), so it stays the same object.
    """
    pairs = ((module.__dict__.get(name), new) for name, new in fresh.items())
    return {
        id(new): old
        for old, new in pairs
        if is_dataclass(new) and not isinstance(new, type) and type(new) is type(old) and _is_itself_alone(new)
    }


def _is_itself_alone(value: object) -> bool:
    return type(value).__eq__ is object.__eq__


def _take_over(old: Any, new: Any) -> None:
    for each in fields(new):
        object.__setattr__(old, each.name, getattr(new, each.name))


def _with_kept(value: Any, kept: Mapping[int, Any]) -> Any:
    """Return a value of the module with what is kept in the place of what was made anew."""
    if type(value) in (tuple, list, set, frozenset):
        return type(value)(kept.get(id(each), each) for each in value)
    if type(value) is dict:
        return {kept.get(id(key), key): kept.get(id(each), each) for key, each in value.items()}
    return value


def _replace_registered(old: Mapping[type, Any], new: Mapping[type, Any]) -> None:
    """Give the functions of a single dispatch their new code, each by the class that it is for.

    A class of the module itself is another one in the new registry, and known by its name.
    """
    by_name = {each.__qualname__: function for each, function in new.items()}
    for each, function in old.items():
        _replace_code(function, by_name[each.__qualname__])


def _replace_code(old: FunctionType, new: FunctionType) -> None:
    if old.__module__ == new.__module__:
        old.__code__, old.__defaults__, old.__kwdefaults__ = new.__code__, new.__defaults__, new.__kwdefaults__


def _replace_methods(old: type, new: type) -> None:
    for name, value in vars(new).items():
        before = vars(old).get(name)
        if name == "__init__" and name in vars(old):
            # made by `dataclass`: default values are in its closure, which a function cannot exchange
            setattr(old, name, value)
            continue
        if isinstance(value, property) and isinstance(before, property):
            value, before = value.fget, before.fget
        if isinstance(value, classmethod | staticmethod) and isinstance(before, classmethod | staticmethod):
            value, before = value.__func__, before.__func__
        if isinstance(value, FunctionType) and isinstance(before, FunctionType) and not value.__closure__:
            _replace_code(before, value)


def _replace_value(module: ModuleType, name: str, old: object, new: object) -> None:
    for other in list(sys.modules.values()):
        if str(getattr(other, "__file__", "")).startswith(_ROOT) and vars(other).get(name) is old:
            setattr(other, name, new)
    setattr(module, name, new)
