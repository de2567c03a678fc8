"""The package as text: every module with its syntax tree, read once for the tests of the house."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "sld"


@dataclass(frozen=True)
class Module:
    """One module: its dotted name, its room (`sld.rate.faults` is of the room `rate`) and its syntax tree."""

    name: str
    path: Path
    tree: ast.Module

    @property
    def room(self) -> str:
        parts = self.name.split(".")
        return parts[1] if len(parts) > 1 else "sld"

    @property
    def where(self) -> str:
        return self.path.relative_to(ROOT).as_posix()

    def imports(self) -> Iterator[tuple[str, bool]]:
        """Yield each imported module's dotted name and whether the import is for type checking alone."""
        typing_only = {
            id(inner)
            for node in ast.walk(self.tree)
            if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test)
            for inner in ast.walk(node)
        }
        for node in ast.walk(self.tree):
            if isinstance(node, ast.Import):
                for alias in node.names:
                    yield alias.name, id(node) in typing_only
            elif isinstance(node, ast.ImportFrom):
                assert node.level == 0, f"{self.where}: a relative import"
                for alias in node.names:
                    yield f"{node.module}.{alias.name}", id(node) in typing_only


@cache
def modules() -> tuple[Module, ...]:
    """Return every module of the package, in the order of their paths."""
    found = []
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found.append(Module(name, path, ast.parse(path.read_text(encoding="utf-8"))))
    return tuple(found)
