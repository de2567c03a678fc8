"""The front page of the gallery: what there is, and each drawing as a picture."""

from __future__ import annotations

from collections.abc import Iterable

from sld.gallery.drawings import Drawing
from sld.gallery.markdown import GENERATED, plain

__all__ = ["index"]

_TOP = """# Gallery

- [Guide](guide.md): from nothing to the documents of a system
- [Commands](commands.md): what each takes, with an example
- [Python](python.md): the same from a script or a notebook
- [What changed](changes.md): from version to version
- [Spec language](spec-reference.md): every block and key
- [Findings](rules.md): every code, what it means and where it comes from
- [Findings for machines](findings.md): the forms in which a check is written, with the schema of the JSON
- [Tables](tables.md): the published values that are used, with their sources
- [Grid rules](grid-rules.md): what each country asks for at the network, a page a country
- [Symbols](symbols.md): every graphical symbol, and how to place one in a drawing of your own

The drawings below are made from the files in [specs](../specs) as they are. Makes, models and places are invented. A
drawing shows what its spec says and what was calculated from it; it does not replace local rules or the judgement of
a licensed person. Of each drawing sheet 1 is kept here; `sld draw specs/NAME.yaml -o out` makes all sheets.
"""


def index(drawings: Iterable[Drawing]) -> str:
    """Return the page."""
    lines = [GENERATED, "", _TOP]
    for each in drawings:
        sheets = f"[sheet 1]({each.sheet}) of {each.sheets_count} (SVG)"
        lines += [
            f"## {plain(each.title)}",
            "",
            f"[{each.spec}](../specs/{each.spec}); {sheets}. Findings: {each.counted}.",
            "",
            f"[![Sheet 1 of {plain(each.title)}]({each.picture})]({each.sheet})",
            "",
        ]
    return "\n".join(lines)
