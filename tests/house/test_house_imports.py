"""Imports run one way, and heavy or foreign libraries stay behind their fences. Source: the house plan."""

from __future__ import annotations

import re
import subprocess
import sys
from graphlib import TopologicalSorter

from package import ROOT, Module, modules

MAY_IMPORT = {
    "frozen": set(),
    "number": set(),
    "words": {"number"},
    "quantity": {"quantity"},
    "citation": set(),
    "finding": {"quantity"},
    "wire_size": set(),
    "tables": {"citation"},
    "grid": set(),
    "spec": {"quantity", "finding", "wire_size", "picture", "grid"},
    "model": {"quantity", "citation", "finding", "spec", "grid"},
    "ratings": {"quantity", "citation", "tables", "wire_size"},
    "steps": {"quantity", "citation", "tables", "wire_size", "spec", "model", "ratings", "grid"},
    "rules": {"quantity", "finding", "tables", "spec", "model", "ratings", "steps", "grid"},
    "symbols": {"quantity"},
    "picture": set(),
    "readers": set(),
    "layout": {"quantity", "citation", "finding", "tables", "spec", "model", "ratings", "steps", "symbols", "readers"},
    "documents": {
        "quantity",
        "citation",
        "finding",
        "tables",
        "spec",
        "model",
        "ratings",
        "steps",
        "layout",
        "readers",
        "grid",
    },
    "rows": {"documents"},
    "sheet": {"documents", "rows", "layout", "symbols", "picture"},
    "render": {"sheet", "symbols", "picture", "rows"},
    "pack": {
        "quantity",
        "finding",
        "tables",
        "spec",
        "grid",
        "model",
        "steps",
        "readers",
        "documents",
        "rows",
        "sheet",
    },
    "webpage": {"quantity", "finding", "model", "steps", "documents", "sheet", "render"},
    "files": set(),
    "datasheets": {"spec"},
    "index": set(),
    "report": {"finding", "spec"},
}
"""What each may import besides itself, `frozen`, `number`, `words`; `run`, `door`, `cli`, `gallery` come after all."""

NARROW = {
    ("render", "sheet"): {"sld.sheet.sheet"},
    ("documents", "spec"): {"sld.spec.blocks"},
    ("layout", "steps"): {"sld.steps"},
    ("pack", "spec"): {"sld.spec.blocks"},
    ("documents", "ratings"): {"sld.ratings.symbol"},
    ("layout", "ratings"): {"sld.ratings.symbol"},
}
"""Where a room may import only some modules of another; a prefix covers what is below it."""

AFTER_ALL = {"run", "door", "cli", "gallery", "__main__", "sld"}


def _covered(name: str, prefixes: set[str]) -> bool:
    return any(name == prefix or name.startswith(f"{prefix}.") for prefix in prefixes)


def _allowed(module: Module, name: str) -> bool:
    """Return whether a module may import a module of the package."""
    room = name.split(".")[1]
    everywhere = {"frozen"} if module.room in ("number", "words") else {"frozen", "number", "words"}
    narrow = NARROW.get((module.room, room))
    return _covered(name, narrow) if narrow else room in MAY_IMPORT[module.room] | {module.room} | everywhere


def test_imports_run_one_way() -> None:
    wrong = [
        f"{module.where} imports {name}"
        for module in modules()
        if module.room not in AFTER_ALL
        for name in module.imports
        if name.startswith("sld.") and not _allowed(module, name)
    ]
    assert not wrong, "\n".join(wrong)


def test_only_the_steps_call_the_formulas() -> None:
    """Rules and documents compare and print; they may use constants and symbols of `sld.ratings`, never compute."""
    symbols = {"sld.ratings.symbol.Symbol", "sld.ratings.symbol.Word"}
    wrong = [
        f"{module.where} imports {name}"
        for module in modules()
        if module.room not in {"sld", "ratings", "steps", "gallery"}
        for name in module.imports
        if name.startswith("sld.ratings.") and name not in symbols and not name.rsplit(".", 1)[-1].isupper()
    ]
    assert not wrong, "\n".join(wrong)


FENCES = {
    "yaml": {"sld.spec"},
    "pydantic": {"sld.spec", "sld.grid"},
    "pydantic_core": {"sld.spec"},
    "schemdraw": {"sld.symbols"},
    "cairocffi": {"sld.render", "sld.picture.drawing"},
    "cairosvg": {"sld.picture.drawing"},
    "defusedxml": {"sld.picture.permitted"},
    "PIL": {"sld.picture", "sld.gallery.drawings"},
    "babel": {"sld.words"},
    "fontTools": {"sld.picture.lettering"},
    "ezdxf": {"sld.render.dxf"},
    "openpyxl": {"sld.render.xlsx"},
    "typer": {"sld.cli", "sld.gallery.commands"},
    "distributed": {"sld.cli.cluster"},
}
STANDARD = set(sys.stdlib_module_names)


def test_no_fence_is_stale() -> None:
    """Every room that is named is there, and every library is used in each place that it is allowed in."""
    rooms = {module.room for module in modules()}
    assert set(MAY_IMPORT) | AFTER_ALL == rooms
    used = {(name.split(".")[0], module.name) for module in modules() for name in module.imports}
    unused = [
        f"{library} in {place}"
        for library, places in FENCES.items()
        for place in sorted(places)
        if not any(library == name and _covered(module, {place}) for name, module in used)
    ]
    assert not unused


def test_every_room_stands_in_the_table_for_developers() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = {room for room in set(MAY_IMPORT) | AFTER_ALL if re.search(rf"\| .*`sld/{room}[/.`]", text)}
    assert (set(MAY_IMPORT) | AFTER_ALL) - named <= {"__main__", "run", "sld", "wire_size"}


def test_libraries_stay_behind_their_fences() -> None:
    wrong = []
    for module in modules():
        for name in module.imports:
            library = name.split(".")[0]
            if library == "sld" or library in STANDARD:
                continue
            if library not in FENCES:
                wrong.append(f"{module.where} imports {library}, which is not a library of the project")
            elif not _covered(module.name, FENCES[library]):
                wrong.append(f"{module.where} imports {library}")
    assert not wrong, "\n".join(wrong)


def _python(code: str) -> str:
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code], capture_output=True, text=True, cwd=ROOT, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_every_module_imports_first() -> None:
    """No circle leads through what modules import when they are read, the packages that an import runs included.

    Then each module can be the first that is imported. What a function imports, and what is for type checking alone,
    comes too late for a circle.
    """
    names = {module.name for module in modules()}
    sorter: TopologicalSorter[str] = TopologicalSorter()
    for module in modules():
        own = {*_packages(module.name), module.name}
        imported = {name if name in names else name.rpartition(".")[0] for name in module.imported_when_read}
        imported = {name for name in imported if name.split(".")[0] == "sld"}
        assert imported <= names, f"{module.where} imports {imported - names}"
        sorter.add(module.name, *imported, *(name for each in imported for name in _packages(each) if name not in own))
    sorter.prepare()  # CycleError names the circle


def _packages(name: str) -> list[str]:
    """Return the packages around a module, which are read before it."""
    parts = name.split(".")
    return [".".join(parts[:count]) for count in range(1, len(parts))]


def test_every_module_can_be_imported_and_every_package_first() -> None:
    """Warnings are errors. What registers itself by being found in its folder is in no list of imports."""
    names = [module.name for module in modules() if not module.name.endswith("__main__")]
    packages = [module.name for module in modules() if module.path.stem == "__init__"]
    code = (
        "import importlib, sys\n"
        f"for name in {packages!r}:\n"
        "    rooms = ['.'.join(name.split('.')[:2]), 'sld.finding']\n"
        "    for seen in [each for each in sys.modules if '.'.join(each.split('.')[:2]) in rooms]:\n"
        "        del sys.modules[seen]\n"
        "    importlib.import_module(name)\n"
        f"for name in {names!r}:\n"
        "    importlib.import_module(name)\n"
    )
    _python(code)


def test_checking_a_spec_needs_no_drawing_library() -> None:
    """What a check loads, in an interpreter of its own: the spec reader is in it, so the check did run."""
    spec = ROOT / "specs" / "village-hall.yaml"
    code = (
        "import sys\nfrom pathlib import Path\nimport sld.run\n"
        f"sld.run.check(Path({str(spec)!r}))\n"
        "print(*sorted({name.split('.')[0] for name in sys.modules}))"
    )
    loaded = set(_python(code).split())
    assert {"sld", "yaml", "pydantic"} <= loaded
    assert not loaded & {"schemdraw", "cairosvg", "cairocffi", "PIL", "fontTools", "ezdxf", "matplotlib"}
