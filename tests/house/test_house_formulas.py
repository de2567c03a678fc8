"""Formulas: each one serves a rating or a rule, none stands by itself."""

from __future__ import annotations

import ast

from package import modules

CALLERS = ("steps", "rules", "ratings")


def test_every_formula_is_called() -> None:
    """Call it from `sld/steps` or delete it with its test."""
    used: set[str] = set()
    for node in (node for module in modules() if module.room in CALLERS for node in module.nodes):
        if isinstance(node, ast.Name):
            used.add(node.id)
        elif isinstance(node, ast.Attribute):
            used.add(node.attr)
    formulas = {
        f"{module.name}.{node.name}"
        for module in modules()
        if module.room == "ratings"
        for node in module.tree.body
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")
    }
    assert len(formulas) > 100
    assert {each for each in formulas if each.rpartition(".")[2] not in used} == set()
