"""`sld keys`: what can be written in a block of the spec; without one, the list of blocks."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Annotated

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import line, say

if TYPE_CHECKING:
    from sld.spec.blocks.block import Block
    from sld.spec.language.found import KeyRow

__all__ = ["keys"]

_WIDTH = 100
_ASKED = "A block by its heading, kind or path, such as `breaker` or `types.modules`, or a key. Left out, all blocks."


def keys(block: Annotated[str | None, typer.Argument(help=_ASKED)] = None) -> None:
    """Print the keys of a block of the spec: what can be written, what is needed, and what each means.

    Example: sld keys inverters
    """
    from sld.spec.language.found import blocks_called, key_rows, keys_called, near_words

    if block is None:
        _all_blocks()
        return
    found = blocks_called(block)
    for each in found:
        _show_block(each, key_rows(each))
    if found:
        return
    called = keys_called(block)
    for key, blocks in called.items():
        for each in blocks:
            _where(each)
            for row in key_rows(each):
                if row.key == key:
                    _show_row(row)
            line()
    if not called:
        near = near_words(block)
        say(
            f"there is no block or key {block}: " + (f"did you mean {near}?" if near else "`sld keys` lists the blocks")
        )
        raise typer.Exit(UNUSABLE)


def _all_blocks() -> None:
    from sld.spec.language.blocks import places, title_of

    for block, paths in places().items():
        line(f"{title_of(block):32} {_paths(paths)}".rstrip())


def _paths(paths: list[str]) -> str:
    more = f" and {len(paths) - 2} more" if len(paths) > 3 else ""
    return ", ".join(filter(None, paths[:2] if more else paths)) + more


def _where(block: type[Block]) -> None:
    from sld.spec.language.blocks import places, title_of

    line(f"{title_of(block)}  ({_paths(places().get(block, [])) or 'top level'})")


def _show_block(block: type[Block], rows: list[KeyRow]) -> None:
    _where(block)
    for text in wrap(" ".join((block.__doc__ or "").split()), _WIDTH):
        line(text)
    line()
    for row in rows:
        _show_row(row)
    line()


def _show_row(row: KeyRow) -> None:
    line(f"  {row.key}: {row.default}")
    for text in (*wrap(row.form, _WIDTH - 6), *wrap(row.meaning, _WIDTH - 6)):
        line(f"      {text}")
