"""Names: every float says its unit, public things say what they are, and the words printed are fit to be printed."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache

from package import PACKAGE, Module, modules

UNITS = {
    "_v": "volt",
    "_a": "ampere",
    "_ka": "kiloampere",
    "_nm": "newton metre",
    "_ma": "milliampere",
    "_w": "watt",
    "_va": "voltampere",
    "_wh": "watt-hour",
    "_ohm": "ohm",
    "_ohm_per_km": "ohm a kilometre",
    "_hz": "hertz",
    "_bd": "baud",
    "_m": "metre",
    "_mm": "millimetre",
    "_mm2": "square millimetre",
    "_c": "degree Celsius",
    "_percent": "percent",
    "_per_km2_year": "flashes a square kilometre and year",
    "_deg": "degree of angle",
    "_kg": "kilogram",
    "_s": "second",
    "_ms": "millisecond",
    "_ev": "electronvolt",
    "_factor": "a plain factor",
}

NO_UNIT_IN_THE_NAME = {
    "sld.quantity.Given.value": "its unit is the field beside it",
    "sld.quantity.Rating.value": "its unit is the field beside it",
    "sld.words.phrase.Amount.value": "its unit is the field beside it",
    "sld.spec.units.Quantity.value": "its unit is the field beside it",
    "sld.spec.units.Unit.minimum": "in the unit of the field it bounds",
    "sld.spec.units.Unit.maximum": "in the unit of the field it bounds",
    "sld.spec.blocks.inverter.InverterType.power_factor_min": "power factor, a plain number",
    "sld.spec.blocks.inverter.InverterBus.unit_load": "unit loads of TIA-485",
    "sld.grid.entry.Condition.limit": "its unit is the field beside it",
    "sld.grid.entry.Differing.limit": "in the unit of the condition that it differs from",
    "sld.grid.settings.Setting.value": "its unit is the field beside it",
    "sld.grid.decide.Facts.values": "the quantity says the unit",
    "sld.rules.grid_limit.GridLimit.value": "the quantity that is asked for says the unit",
    "sld.ratings.cable_section.VoltageDemand.cos_phi": "power factor, a plain number",
}
"""Float fields whose name need not end in a unit, each with the reason."""


def _classes(module: Module) -> Iterator[ast.ClassDef]:
    return (node for node in module.nodes if isinstance(node, ast.ClassDef))


@cache
def _float_aliases() -> frozenset[str]:
    """Return the names that stand for a float with a unit, such as `Metres = Annotated[float, Unit("m")]`."""
    return frozenset(
        target.id
        for module in modules()
        for node in module.tree.body
        if isinstance(node, ast.Assign) and ast.unparse(node.value).startswith("Annotated[float")
        for target in node.targets
        if isinstance(target, ast.Name)
    )


def _float_fields(module: Module) -> Iterator[tuple[str, str]]:
    """Yield the dotted name and the attribute of every class field whose type is or holds a float."""
    for owner in _classes(module):
        for field in owner.body:
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
                words = set(re.findall(r"\w+", ast.unparse(field.annotation)))
                if "float" in words or words & _float_aliases():
                    yield f"{module.name}.{owner.name}.{field.target.id}", field.target.id


FIELDS = [found for module in modules() for found in _float_fields(module)]


def test_there_are_float_fields() -> None:
    assert len(FIELDS) > 100


def test_every_float_field_ends_in_its_unit() -> None:
    """In which unit is it? Neither an exception nor a unit is stale."""
    silent = {dotted for dotted, attribute in FIELDS if not any(attribute.endswith(suffix) for suffix in UNITS)}
    assert silent == set(NO_UNIT_IN_THE_NAME)
    assert all(any(attribute.endswith(suffix) for _, attribute in FIELDS) for suffix in UNITS)


def _public(module: Module) -> Iterator[tuple[str, ast.ClassDef | ast.FunctionDef]]:
    """Yield public classes, functions and methods; what is inside a function is nobody's interface."""
    stack: list[tuple[str, list[ast.stmt]]] = [(module.name, module.tree.body)]
    while stack:
        prefix, body = stack.pop()
        for node in body:
            if isinstance(node, ast.ClassDef | ast.FunctionDef) and not node.name.startswith("_"):
                yield f"{prefix}.{node.name}", node
                if isinstance(node, ast.ClassDef):
                    stack.append((f"{prefix}.{node.name}", node.body))


def _is_overload(node: ast.ClassDef | ast.FunctionDef) -> bool:
    return any("overload" in ast.unparse(mark) for mark in node.decorator_list)


def test_public_things_say_what_they_are() -> None:
    silent = [module.where for module in modules() if module.tree.body and not ast.get_docstring(module.tree)]
    silent += [
        name
        for module in modules()
        for name, node in _public(module)
        if not ast.get_docstring(node) and not _is_overload(node)
    ]
    assert not silent, f"no docstring: {', '.join(silent)}"


def test_no_module_is_a_drawer_for_everything() -> None:
    drawers = {"helpers", "helper", "utils", "util", "common", "misc", "manager", "base", "core"}
    assert [module.where for module in modules() if module.path.stem in drawers] == []


FORBIDDEN = re.compile(r"\b(safe|safely|unsafe|safety|approved?|approves|certif(?:y|ied|ies))\b", re.IGNORECASE)

ALLOWED_PHRASES = {
    "Approval person, printed in the title block.": "field of ISO 7200, left to a person to fill in",
    "approved_by": "the same field's name",
    "Approved by": "the same field's caption",
}
"""Texts in which such a word may stand, each with the reason."""


def _texts(module: Module) -> Iterator[tuple[int, str]]:
    """Yield the string literals of a module, docstrings left out."""
    docstrings = {
        id(node.body[0].value)
        for node in module.nodes
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    for node in module.nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docstrings:
            yield node.lineno, node.value


def test_no_text_promises_what_a_drawing_cannot() -> None:
    """A design is checked, flagged, within a limit or beyond it; only people approve, and nothing is called safe."""
    wrong = [
        f"{module.where}:{line}: {text!r}"
        for module in modules()
        for line, text in _texts(module)
        if FORBIDDEN.search(text) and text not in ALLOWED_PHRASES
    ]
    assert not wrong, "\n".join(wrong)


def test_every_table_says_where_it_is_from() -> None:
    wrong = []
    for path in sorted((PACKAGE / "tables").glob("*.csv")):
        lines = path.read_text(encoding="utf-8").splitlines()
        head = [line.removeprefix("#").strip() for line in lines if line.startswith("#") and ": " in line]
        front = dict(line.split(": ", 1) for line in head)
        wrong += [f"{path.name} has no {key}" for key in ("title", "source", "status", "unit") if key not in front]
        if front.get("status") not in {"seen", "from memory"}:
            wrong.append(f"{path.name}: status {front.get('status')}")
    assert not wrong, "\n".join(wrong)
