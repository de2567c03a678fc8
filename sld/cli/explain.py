"""`sld explain`: what a code means; without one, the list of codes."""

from __future__ import annotations

from difflib import get_close_matches
from typing import Annotated

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import line, say

__all__ = ["explain"]


def explain(
    code: Annotated[str | None, typer.Argument(help="A code such as DC01; left out, all codes are listed.")] = None,
) -> None:
    """Explain the code of a finding, or list every code with its title.

    Example: sld explain DC01
    """
    import sld.model.assumed
    import sld.rules
    import sld.spec.references  # noqa: F401 - filling the registry is what these imports are for
    from sld.finding import RULES
    from sld.spec.quote import severity_word

    if code is None:
        for each in sorted(RULES.values(), key=lambda rule: rule.code):
            line(f"{each.code:6} {each.title}")
        return
    found = RULES.get(code.upper())
    if found is None:
        near = _nearest(code, sorted(RULES))
        hint = f"did you mean {near}?" if near else "`sld explain` lists them"
        say(f"there is no code {code}: {hint}")
        raise typer.Exit(UNUSABLE)
    line(f"{found.code} {found.title} ({severity_word(found)})")
    if found.clause:
        line(f"Source: {found.clause}")
    line()
    for text in found.explanation.split("\n"):
        line(text)


def _nearest(code: str, known: list[str]) -> str:
    """Return the code that was probably meant, or nothing. Letters for digits are the usual slip: `DC0l`."""
    asked = code[:2].upper() + code[2:].upper().translate(str.maketrans("OIL", "011"))
    begun = [each for each in known if each.startswith(asked)]
    return (begun or get_close_matches(asked, known, 1, 0.5) or [""])[0]
