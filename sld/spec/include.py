"""Types files: `include: [types.yaml]` at the top level puts their `types` under those of the spec."""

from __future__ import annotations

from pathlib import Path, PurePosixPath
from typing import Any

from sld.finding import SpecPath
from sld.spec.span import Span, Spot, UnusableText
from sld.spec.text import compose_block, decode, load

__all__ = ["find", "include"]


def _names(data: dict[str, Any], spots: dict[SpecPath, Spot]) -> list[tuple[str, Span]]:
    """Return the paths that are listed, with their places. Raises UnusableText."""
    listed = data.get("include")
    if listed is None:
        return []
    entries = listed if isinstance(listed, list) else [listed]
    if not isinstance(listed, list) or not all(isinstance(entry, str) and entry.strip() for entry in entries):
        span = spots[("include",)].span()
        raise UnusableText("SP20", "`include` is not a list of file names", "write `include: [types.yaml]`", span)
    return [(entry, spots[("include", index)].value) for index, entry in enumerate(entries)]


def find(entry: str, span: Span, folder: Path | None, allow_outside: bool) -> Path:
    """Return the file that an entry or a key names. Raises UnusableText where it is missing or outside the folder."""
    if folder is None:
        remedy = "read the spec from a file, or leave this out; types can stand in the spec itself"
        raise UnusableText("SP21", "a spec without a file of its own has no folder to look in", remedy, span)
    try:
        home, found = folder.resolve(), (folder / entry).resolve()
        missing = not found.is_file()
    except (OSError, ValueError, RuntimeError):
        raise UnusableText("SP21", f"`{entry}` is not a usable file name", "write a relative path", span) from None
    if not allow_outside and (PurePosixPath(entry).is_absolute() or not found.is_relative_to(home)):
        remedy = "copy it into the folder of the spec and write its relative path, or allow it with --allow-outside"
        raise UnusableText("SP22", f"`{entry}` is outside the folder of the spec", remedy, span)
    if missing:
        raise UnusableText("SP21", f"there is no file `{entry}`", f"it is looked for in {folder or '.'}", span)
    return found


def _merge(
    target: dict[str, Any], extra: dict[str, Any], spots: dict[SpecPath, Spot], new: dict[SpecPath, Spot]
) -> None:
    """Put the types of a file under those that are there by group. Raises UnusableText for a name that is taken."""
    for group, types in extra.items():
        path = ("types", group)
        if group not in target:
            target[group] = types
            continue
        mine = target[group]
        if not isinstance(mine, dict) or not isinstance(types, dict):
            first, second = spots[path].span(on_key=True), new[path].span(on_key=True)
            also = ((first, "with this"),)
            raise UnusableText("SP24", f"`{group}` cannot be merged", "write a block of types by name", second, also)
        for name, value in types.items():
            if name in mine:
                first = spots[(*path, name)].span(on_key=True)
                second = new[(*path, name)].span(on_key=True)
                also = ((first, "first defined here"),)
                raise UnusableText(
                    "SP24", f"type `{name}` is defined twice", "keep one, or rename the other", second, also
                )
            mine[name] = value


def _read_types(found: Path, shown: str, texts: dict[str, str]) -> tuple[dict[str, Any], dict[SpecPath, Spot]]:
    """Return the types of a file and their spots. Raises UnusableText."""
    texts[shown] = ""
    texts[shown] = decode(load(found, shown), shown)
    data, spots = compose_block(texts[shown], shown)
    for key in data:
        if key != "types":
            span = spots[(key,)].span(on_key=True)
            remedy = "leave the key out; a types file holds `types` only"
            raise UnusableText("SP23", f"an included file cannot hold `{key}`", remedy, span)
    types = data["types"]
    if not isinstance(types, dict):
        raise UnusableText(
            "SP23", "`types` is not a block", "write the groups of types under it", spots[("types",)].span()
        )
    return types, spots


def include(
    data: dict[str, Any],
    spots: dict[SpecPath, Spot],
    texts: dict[str, str],
    name: str,
    folder: Path | None,
    allow_outside: bool,
) -> None:
    """Merge the types files that `data` lists into `data`, `spots` and `texts`. Raises UnusableText."""
    seen: dict[Path, Span] = {}
    if folder is not None and name != "-":
        seen[Path(name).resolve()] = Span(name, 1, 1)
    for entry, span in _names(data, spots):
        found = find(entry, span, folder, allow_outside)
        if found in seen:
            also = ((seen[found], "the same file"),)
            raise UnusableText("SP25", f"`{entry}` is already part of this spec", "leave the entry out", span, also)
        seen[found] = span
        extra, new = _read_types(found, str((folder or Path()) / entry), texts)
        target = data.setdefault("types", {})
        if target is None:
            target = data["types"] = {}
        if not isinstance(target, dict):
            place = spots[("types",)].span()
            raise UnusableText("SP34", "`types` is not a block", "write the groups of types under it", place)
        _merge(target, extra, spots, new)
        for path, spot in new.items():
            if path:
                spots.setdefault(path, spot)
