"""The package as text: every module with its syntax tree, read once for the tests of the house.

A test of the house looks at all modules and lists every offender: one case a module would say one thing 500 times.
"""

from __future__ import annotations

import ast
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "sld"


@dataclass(frozen=True)
class Module:
    """One module: its dotted name, its room (`sld.steps.faults` is of `steps`), its text and its syntax tree."""

    name: str
    path: Path
    text: str
    tree: ast.Module

    @property
    def room(self) -> str:
        parts = self.name.split(".")
        return parts[1] if len(parts) > 1 else "sld"

    @property
    def where(self) -> str:
        return self.path.relative_to(ROOT).as_posix()

    @cached_property
    def nodes(self) -> tuple[ast.AST, ...]:
        """Every node of the syntax tree."""
        return tuple(ast.walk(self.tree))

    @cached_property
    def imports(self) -> tuple[str, ...]:
        """The dotted names that are imported, those for type checking alone too."""
        return tuple(name for node in self.nodes for name in self._imported_by(node))

    @cached_property
    def imported_when_read(self) -> tuple[str, ...]:
        """The dotted names that are imported while the module is read: not in a function, not for type checking."""
        found: list[str] = []
        waiting: list[ast.AST] = [self.tree]
        while waiting:
            node = waiting.pop()
            found += self._imported_by(node)
            if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
                waiting += node.orelse
            elif not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda):
                waiting += ast.iter_child_nodes(node)
        return tuple(found)

    def _imported_by(self, node: ast.AST) -> list[str]:
        if isinstance(node, ast.Import):
            return [alias.name for alias in node.names]
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{self.where}: a relative import"
            return [f"{node.module}.{alias.name}" for alias in node.names]
        return []


@cache
def modules() -> tuple[Module, ...]:
    """Return every module of the package, in the order of their paths."""
    found = []
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        text = path.read_text(encoding="utf-8")
        found.append(Module(name, path, text, ast.parse(text)))
    return tuple(found)
