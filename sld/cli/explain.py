"""`sld explain`: how the ratings of a device came about, and what a code, a table or a key means."""

from __future__ import annotations

from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import line, say

if TYPE_CHECKING:
    from sld.finding import Rule

__all__ = ["explain"]

_ASKED = (
    "A code such as DC01, its family DC, a table such as capacity_iec60364, a key or block of the spec; or a spec. "
    "Left out, all codes are listed."
)
_DEVICE = "After a spec: a device by its designation on the drawing, -TB1-WD1, or its name. Left out, all are listed."


def explain(
    asked: Annotated[str | None, typer.Argument(metavar="WHAT", help=_ASKED)] = None,
    device: Annotated[str | None, typer.Argument(help=_DEVICE)] = None,
    allow_outside: Annotated[bool, typer.Option(help="Allow types files outside the spec's folder.")] = False,
) -> None:
    """Explain how each rating of a device came about, or what a code, a table or a key means.

    Example: sld explain specs/village-hall.yaml -TB1-WD1
    """
    if asked is not None and (device is not None or _is_file(asked)):
        from sld.cli.explained.devices import explain_spec

        return explain_spec(Path(asked), device, allow_outside=allow_outside)
    from sld.door.codes import FAMILIES, family_of, registered

    codes = registered()
    if asked is None:
        return _list(codes)
    word = asked.upper()
    members = [each for each in codes if family_of(each) == word]
    if found := [each for each in codes if each.code == word]:
        return _code(found[0])
    if members:
        line(FAMILIES.get(word, word))
        return _list(members)
    if _table(asked) or _key(asked):
        return None
    near = _nearest(asked, [each.code for each in codes])
    hint = f"did you mean {near}?" if near else "`sld explain` lists the codes, `sld keys` the blocks of a spec"
    say(f"there is no code, family, table, key or file {asked}: {hint}")
    raise typer.Exit(UNUSABLE)


def _is_file(asked: str) -> bool:
    return Path(asked).suffix.lower() in (".yaml", ".yml", ".json") or Path(asked).is_file()


def _list(codes: list[Rule]) -> None:
    for each in codes:
        line(f"{each.code:6} {each.title}")


def _code(found: Rule) -> None:
    from sld.spec.quote import severity_word

    line(f"{found.code} {found.title} ({severity_word(found)})")
    if found.clause:
        line(f"Source: {found.clause}")
    line()
    for text in found.explanation.split("\n"):
        line(text)


def _table(asked: str) -> bool:
    """Print a table with its source, and return whether there is one of this name."""
    from sld.cli.explained.tables import explain_table
    from sld.tables.table import all_tables

    for each in all_tables():
        if asked.casefold() in (each.name, each.cited.casefold()):
            explain_table(each)
            return True
    return False


def _key(asked: str) -> bool:
    """Print a block or key as `sld keys` does, and return whether there is one."""
    from sld.cli.keys import keys
    from sld.spec.language.found import blocks_called, keys_called

    if not blocks_called(asked) and not keys_called(asked):
        return False
    keys(asked)
    return True


def _nearest(asked: str, codes: list[str]) -> str:
    """Return the code, table or key that was probably meant, or nothing. `DC0l`: letters for digits are usual."""
    from sld.spec.language.found import near_words
    from sld.tables.table import all_tables

    code = asked[:2].upper() + asked[2:].upper().translate(str.maketrans("OIL", "011"))
    begun = [each for each in codes if each.startswith(code)] or get_close_matches(code, codes, 1, 0.5)
    tables = get_close_matches(asked.casefold(), [each.name for each in all_tables()], 1, 0.7)
    return next(iter((*begun, *tables)), "") or near_words(asked)
