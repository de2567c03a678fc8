"""The layout: what, then where, then on which sheet; the passes in one listed order. Source: the house plan."""

from __future__ import annotations

import ast
import importlib
import re

import pytest
from package import Module, modules

from sld.layout.passes import PASSES

MAY_IMPORT = {
    "diagram": {"diagram"},
    "plan": {"diagram"},
    "passes": {"diagram", "plan", "passes"},
    "parts": {"diagram", "plan", "passes", "parts"},
    "stacked": {"plan", "passes"},
    "boundary": {"diagram", "plan"},
}
"""What each part of the layout may import of it; the door `sld.layout` stands after all of them."""

SHARED = {"grid", "lower_edge", "measured", "skyline"}
"""What several passes measure with, and what they have measured; no passes themselves."""

LAYOUT = [module for module in modules() if module.name.startswith("sld.layout.")]
STEPS = [module for module in LAYOUT if module.name.startswith("sld.layout.passes.")]


CHOOSE_WORDS = {
    "sld.layout.diagram.wrapping": "lines are broken at a width",
    "sld.layout.diagram.filling": "lines are put together to a width",
    "sld.layout.diagram.low": "lines are measured",
    "sld.layout.passes.lettering": "lines are measured",
    "sld.layout.passes.lanes": "captions are measured",
    "sld.layout.passes.turned": "captions are measured",
    "sld.layout.parts.alike": "texts of equal size are found",
}
"""Where what is to be said becomes text: nowhere before, so that no text is ever looked into."""

LOOK_INTO_NAMES = {"sld.layout.diagram.ranges": "designations are counted up"}


def test_words_are_chosen_last() -> None:
    asked = {
        module.name
        for module in LAYOUT
        for node in module.nodes
        if isinstance(node, ast.Attribute) and node.attr in ("say", "said", "typeset")
        if isinstance(node.ctx, ast.Load) and _is_called(module, node)
    }
    assert asked == set(CHOOSE_WORDS)


def _is_called(module: Module, attribute: ast.Attribute) -> bool:
    return any(isinstance(node, ast.Call) and node.func is attribute for node in module.nodes)


def test_no_text_is_searched() -> None:
    assert {module.name for module in LAYOUT if "re" in module.imports} == set(LOOK_INTO_NAMES)


def _layout_imports(module: Module) -> list[list[str]]:
    return [name.split(".")[2:] for name in module.imports if name.startswith("sld.layout.")]


def test_layout_knows_nothing_later() -> None:
    wrong = [
        f"{module.where} imports {'.'.join(name)}"
        for module in LAYOUT
        for name in _layout_imports(module)
        if name[0] not in MAY_IMPORT[module.name.split(".")[2]]
    ]
    assert wrong == []


def test_every_pass_is_listed() -> None:
    assert {module.name.split(".")[3] for module in STEPS} == {*PASSES, *SHARED, "arrange"}


@pytest.mark.parametrize("number", range(len(PASSES)), ids=PASSES)
def test_pass_knows_no_later_pass_and_says_what_holds(number: int) -> None:
    name = PASSES[number]
    module = next(each for each in STEPS if each.name == f"sld.layout.passes.{name}")
    used = {each[1] for each in _layout_imports(module) if each[0] == "passes"}
    assert used <= {*PASSES[:number], *SHARED}
    text = importlib.import_module(module.name).__doc__ or ""
    assert "Before: " in text
    assert "After: " in text


def test_the_tour_calls_the_passes_in_their_order() -> None:
    """Its calls stand in the order of `PASSES`; lanes ask for frames, cables for ports, columns for distances."""
    text = next(each for each in STEPS if each.name == "sld.layout.passes.arrange").path.read_text(encoding="utf-8")
    body = text[text.index("def arrange") :]
    calls = {
        name: min(_called(body)[word] for word in words)
        for name, words in _imported(text).items()
        if name in PASSES and words
    }
    assert sorted(calls, key=calls.__getitem__) == [name for name in PASSES if name in calls]
    assert set(PASSES) - set(calls) == {"frame_members", "ports", "beside", "free_cells"}


def _called(text: str) -> dict[str, int]:
    """Return where each function is called first, or handed on with the arguments that it will be called with."""
    found: dict[str, int] = {}
    for call in re.finditer(r"(?<= )\w+(?=\()|(?<= partial\()\w+(?=,)", text):
        found.setdefault(call[0], call.start())
    return found


def _imported(text: str) -> dict[str, list[str]]:
    """Return the functions that the tour imports of each pass."""
    found: dict[str, list[str]] = {}
    for line in text.splitlines():
        if line.startswith("from sld.layout.passes."):
            module, names = line.removeprefix("from sld.layout.passes.").split(" import ")
            found[module] = [name for name in names.split(", ") if name.islower() and name in _called(text)]
    return found
