"""The page of the spec language: an introduction, and every block with its keys, made from the blocks themselves."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from sld.gallery.fragments import Fragment, fragments
from sld.gallery.markdown import GENERATED, plain, slug, table_lines
from sld.gallery.spec_intro import INTRO, unit_rows
from sld.spec import load
from sld.spec.blocks.block import Block
from sld.spec.language.blocks import (
    AC_DEVICES,
    DC_DEVICES,
    SHARED,
    STRING_DEVICES,
    own_fields,
    places,
    shared_bases,
    title_of,
)
from sld.spec.language.forms import default, form

__all__ = ["spec_reference"]

SPECS = Path(__file__).resolve().parents[2] / "specs"

_WORDS = {"kind": "Says which device this is."}
"""Meanings of keys that explain themselves where they stand in the code."""

_HEADS = ("Key", "Form", "Default", "Meaning")


def _link(block: type[Block]) -> str:
    title = title_of(block)
    return f"[{title}](#{slug(title)})"


def _section(block: type[Block], paths: Iterable[str], fragment: Fragment | None) -> list[str]:
    """Return the section of one block: what it is, where it stands, its keys, and how somebody wrote it."""
    lines = [f"### {title_of(block)}", "", *(plain(line.strip()) for line in (block.__doc__ or "").splitlines()), ""]
    standing = [f"`{path}`" for path in paths if path]
    if standing:
        lines += [f"At {', '.join(standing)}.", ""]
    rows = [
        (
            f"`{key}`",
            form(field.annotation, field.metadata, _link),
            default(field),
            plain(field.description or _WORDS[key]),
        )
        for key, field in own_fields(block).items()
    ]
    if rows:
        lines += table_lines(_HEADS, rows)
    bases = shared_bases(block)
    if bases:
        also = "Further keys: those" if rows else "Keys: those"
        lines += [f"{also} of {' and of '.join(_link(base) for base in bases)}.", ""]
    if fragment is not None:
        of = f"From [{fragment.source}](../specs/{fragment.source}):" if fragment.source else "For example:"
        lines += [of, "", "~~~yaml", *fragment.lines(), "~~~", ""]
    return lines


def _index(found: Iterable[type[Block]]) -> list[str]:
    """Return every key in alphabetical order with the blocks that have it as their own."""
    blocks: dict[str, list[type[Block]]] = {}
    for block in found:
        for key in own_fields(block):
            blocks.setdefault(key, []).append(block)
    return [f"- `{key}`: {', '.join(map(_link, blocks[key]))}" for key in sorted(blocks)]


def spec_reference(specs: Path = SPECS) -> str:
    """Return the page. specs: the folder that its fragments are taken from. Raises Unusable for one of them."""
    found = places()
    worked = fragments((path.name, load(path)[0].data) for path in sorted(specs.glob("*.yaml")))
    of_strings = [block for block in STRING_DEVICES if block not in DC_DEVICES]
    devices = {*AC_DEVICES, *DC_DEVICES, *of_strings}
    parts: tuple[tuple[str, Sequence[type[Block]]], ...] = (
        ("Blocks", [block for block in found if block not in devices]),
        ("AC devices and cables", AC_DEVICES),
        ("DC devices and cables", DC_DEVICES),
        ("Devices of strings alone", of_strings),
        ("Keys that devices share", SHARED),
    )
    lines = [GENERATED, "", INTRO, *table_lines(("Kind", "Units"), unit_rows()), "## Contents", ""]
    for title, blocks in parts:
        lines.append(f"- [{title}](#{slug(title)}): {', '.join(map(_link, blocks))}")
    lines += ["- [Index of keys](#index-of-keys)", ""]
    for title, blocks in parts:
        lines += [f"## {title}", ""]
        for block in blocks:
            lines += _section(block, found.get(block, ()), worked.get(block))
    return "\n".join([*lines, "## Index of keys", "", *_index((*found, *SHARED)), ""])
