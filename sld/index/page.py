"""The page, written so that nothing of a spec can become an element or a program."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from html import escape
from pathlib import Path
from urllib.parse import unquote

from sld.frozen import dataclass

__all__ = ["MARK", "Entry", "item", "page"]

MARK = '<!DOCTYPE html>\n<html lang="en" data-made-by="sld index">'
"""How the page begins, by which it is known again."""

_CAUTION = (
    "Design aid: each drawing is to be checked by a person licensed for such work. Clean is no permission to build."
)

_FOLDER = Path(__file__).parent
_PICTURES = (".png", ".svg")
"""What a browser shows small, the lighter one first."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What the page says of a spec. files: relative addresses, the first sheet of a format first.

    counts: of findings, in words. codes: of findings. failure: why it is not done.
    """

    spec: str
    state: str
    title: str = ""
    counts: str = ""
    codes: tuple[str, ...] = ()
    files: tuple[str, ...] = ()
    failure: str = ""


def item(entry: Entry) -> str:
    """Return the element of a spec."""
    lines = [f'<li data-state="{escape(entry.state)}">']
    picture = next((each for end in _PICTURES for each in entry.files if each.endswith(end)), "")
    if picture:
        lines.append(f'<a href="{_address(picture)}"><img loading="lazy" src="{_address(picture)}" alt=""></a>')
    else:
        lines.append('<span class="none">no picture (SVG or PNG)</span>')
    lines.append(f"<h2>{_text(entry.title or entry.spec)}</h2>")
    lines.append(f'<p class="spec">{_text(entry.spec)}</p>')
    counts = f": {_text(entry.counts)}" if entry.counts else ""
    lines.append(f'<p class="state">{_text(entry.state)}{counts}</p>')
    if entry.codes:
        lines.append(f'<p class="codes">{_text(" ".join(entry.codes))}</p>')
    if entry.failure:
        lines.append(f'<p class="failure">{_text(entry.failure)}</p>')
    if entry.files:
        links = (f'<a href="{_address(each)}">{_text(unquote(each.rpartition("/")[2]))}</a>' for each in entry.files)
        lines.append(f'<p class="files">{" ".join(links)}</p>')
    return "\n".join([*lines, "</li>", ""])


def page(items: Iterable[str], states: Mapping[str, int], closing: str) -> Iterator[str]:
    """Yield the page piece by piece; the same items give the same text.

    states: how many specs are in each. closing: the line that closes the run.
    """
    css, program = _file("style.css"), _file("script.js")
    yield "\n".join(
        [
            MARK,
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{_policy(css, program)}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            '<meta name="referrer" content="no-referrer">',
            "<title>Drawings</title>",
            f"<style>{css}</style>",
            f"<script>{program}</script>",
            "</head>",
            "<body>",
            "<header>",
            "<h1>Drawings</h1>",
            f"<p>{_text(closing)}. {_CAUTION}</p>",
            '<form id="choice" role="search">',
            '<label>Search <input type="search" id="search" placeholder="name, title, code, file"></label>',
            "<fieldset><legend>State</legend>",
            *(
                f'<label><input type="checkbox" name="state" value="{escape(state)}" checked> '
                f"{_text(state)} ({count})</label>"
                for state, count in states.items()
            ),
            "</fieldset>",
            '<output id="shown"></output>',
            "</form>",
            "</header>",
            '<main><ul id="specs">',
            "",
        ]
    )
    yield from items
    yield '</ul>\n<button id="more" hidden>Show more</button></main>\n</body>\n</html>\n'


@lru_cache
def _file(name: str) -> str:
    return (_FOLDER / name).read_text(encoding="utf-8").strip()


def _policy(css: str, program: str) -> str:
    """Return the policy that lets the page run its own style and program, and load pictures (CSP level 2)."""

    def digest(text: str) -> str:
        return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode('utf-8')).digest()).decode('ascii')}'"

    return (
        f"default-src 'none'; style-src {digest(css)}; script-src {digest(program)}; img-src 'self' file:; "
        "base-uri 'none'; form-action 'none'"
    )


def _text(text: str) -> str:
    return escape(text, quote=False)


def _address(file: str) -> str:
    """Return an address as it is written; one with a colon in its first part is not taken for a scheme."""
    return escape(f"./{file}")
