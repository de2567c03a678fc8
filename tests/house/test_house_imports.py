"""Imports run one way, and heavy or foreign libraries stay behind their fences. Source: the house plan."""

from __future__ import annotations

import subprocess
import sys

from package import ROOT, Module, modules

MAY_IMPORT = {
    "quantity": {"quantity"},
    "finding": {"quantity"},
    "wire_size": set(),
    "tables": {"quantity"},
    "spec": {"quantity", "finding", "wire_size", "picture"},
    "model": {"quantity", "finding", "spec"},
    "ratings": {"quantity", "tables", "wire_size"},
    "rate": {"quantity", "tables", "wire_size", "spec", "model", "ratings"},
    "rules": {"quantity", "finding", "tables", "spec", "model", "ratings", "rate"},
    "symbols": {"quantity"},
    "picture": set(),
    "layout": {"quantity", "finding", "tables", "spec", "model", "rate", "symbols"},
    "sheet": {"quantity", "finding", "tables", "model", "rate", "symbols", "layout", "picture"},
    "render": {"sheet", "symbols", "picture"},
}
"""What each room may import besides itself; `run`, `cli` and `gallery` stand after all of them and may import all."""

NARROW = {
    ("render", "sheet"): {"sld.sheet.sheet"},
    ("sheet", "spec"): {"sld.spec.blocks"},
    ("sheet", "rate"): {"sld.rate"},
    ("layout", "rate"): {"sld.rate"},
}
"""Where a room may import only some modules of another; a prefix covers what is below it."""

AFTER_ALL = {"run", "cli", "gallery", "__main__", "sld"}


def _covered(name: str, prefixes: set[str]) -> bool:
    return any(name == prefix or name.startswith(f"{prefix}.") for prefix in prefixes)


def _allowed(module: Module, name: str) -> bool:
    """Return whether a module may import a module of the package."""
    room = name.split(".")[1]
    narrow = NARROW.get((module.room, room))
    return _covered(name, narrow) if narrow else room in MAY_IMPORT[module.room] | {module.room}


def test_imports_run_one_way() -> None:
    wrong = [
        f"{module.where} imports {name}"
        for module in modules()
        if module.room not in AFTER_ALL
        for name in module.imports
        if name.startswith("sld.") and not _allowed(module, name)
    ]
    assert not wrong, "\n".join(wrong)


def test_only_the_rate_step_calls_the_formulas() -> None:
    """Rules and documents compare and print; they may use constants of `sld.ratings`, never compute with it."""
    wrong = [
        f"{module.where} imports {name}"
        for module in modules()
        if module.room not in {"sld", "ratings", "rate", "gallery"}
        for name in module.imports
        if name.startswith("sld.ratings.") and not name.rsplit(".", 1)[-1].isupper()
    ]
    assert not wrong, "\n".join(wrong)


FENCES = {
    "yaml": {"sld.spec"},
    "pydantic": {"sld.spec", "sld.gallery"},
    "pydantic_core": {"sld.spec"},
    "schemdraw": {"sld.symbols"},
    "cairocffi": {"sld.render", "sld.picture.drawing"},
    "cairosvg": {"sld.picture.drawing"},
    "defusedxml": {"sld.picture.permitted"},
    "PIL": {"sld.picture"},
    "ezdxf": {"sld.render.dxf"},
    "typer": {"sld.cli"},
    "fontTools": {"sld.symbols.typeface", "sld.symbols.glyph", "sld.render"},
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
    """Each module is imported into an interpreter that has seen no other module of its room, warnings as errors.

    Other rooms are kept: imports run one way, so that no circle leads through them; all but the register of the rules.
    One rule stands for all, because importing any of them imports all.
    """
    names = [module.name for module in modules() if not module.name.endswith("__main__")]
    names = [name for name in names if name.count(".") < 3 or not name.startswith("sld.rules.")]
    code = (
        "import importlib, sys\n"
        f"for name in {names!r}:\n"
        "    rooms = ['.'.join(name.split('.')[:2]), 'sld.finding']\n"
        "    for seen in [each for each in sys.modules if '.'.join(each.split('.')[:2]) in rooms]:\n"
        "        del sys.modules[seen]\n"
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
