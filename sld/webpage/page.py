"""The page: HTML with the sheets inside, written so that nothing of a spec can become an element or a program."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Iterator, Sequence
from functools import lru_cache
from html import escape
from pathlib import Path

from sld.finding import Finding, tally
from sld.frozen import dataclass
from sld.model.system import System
from sld.render import anchors, inline_svg, letters, style
from sld.sheet.sheet import Sheet
from sld.steps import Ratings
from sld.webpage.told import TellPlace, Told, devices, findings
from sld.words import phrase

__all__ = ["Live", "page", "without_sheets"]

_LESS_MM = 0.2
"""What a sheet is printed lower than its paper, so that no rounding takes a second page for it."""

_FOLDER = Path(__file__).parent

_CAUTION = phrase(
    "Design aid. All of it is to be checked by a person licensed for such work, against the local rules, the network "
    "operator's conditions and the makers' manuals."
)
_WORDS = {
    "sheets": phrase("Sheets"),
    "sheet": phrase("Sheet"),
    "closer": phrase("Closer"),
    "further": phrase("Further away"),
    "whole": phrase("Whole sheet"),
    "search": phrase("Search for a designation or a name"),
    "none": phrase("Nothing of that name"),
    "findings": phrase("Findings"),
    "devices": phrase("Devices"),
    "undrawn": phrase("not drawn by itself"),
    "numbers": phrase("Numbers of the device"),
    "choose": phrase("Choose a device on the sheet, or search for it."),
    "accepted": phrase("accepted"),
    "remedy": phrase("Remedy"),
    "keys": phrase("Arrows move the sheet, + and - bring it closer and further away, 0 shows the whole sheet."),
}


@dataclass(frozen=True, slots=True)
class Live:
    """What the page of a running program has more: where it asks for changes, and what keeps the spec from being used.

    feed: the address of the changes, on the same server. errors: findings as text.
    """

    feed: str
    errors: tuple[str, ...] = ()


def _no_place(finding: Finding) -> str:
    return ""


def page(
    sheets: Sequence[Sheet],
    parts: Sequence[tuple[System, Ratings]],
    found: Sequence[Finding],
    tell_place: TellPlace = _no_place,
    live: Live | None = None,
) -> bytes:
    """Return the page as UTF-8; the same sheets give the same bytes.

    parts: what stands behind each supply point. found: all findings. tell_place: returns the line of the spec that a
    finding is about. live: for a page that follows a file.
    """
    system, places = parts[0][0], dict[str, str]()
    for sheet in sheets:
        places |= anchors(sheet)  # an overview comes before the sheet that has the device itself
    css = f"{_file('style.css')}\n{_paper_rules(sheets)}\n{style(letters(sheets), sheets)}"
    say = system.language.say
    words = {name: say(said) for name, said in _WORDS.items()}
    told = findings([each for each, _ in parts], found, places, tell_place)
    data = devices(parts, places) | {"words": words}
    body = [
        *_head(system, sheets, words),
        *(_errors(live) if live else ()),
        *_sheets(sheets, words),
        '<div id="beside">',
        *_findings(told, found, system, words),
        "</div>",
        f'<script type="application/json" id="data">{_data(data)}</script>',
    ]
    return _document(system.project.title, system.language.code, css, ("script.js",), body, live)


def without_sheets(title: str, live: Live) -> bytes:
    """Return the page of a spec that was not drawn yet: what keeps it from being used, until it changes."""
    body = [f"<header><h1>{_text(title)}</h1></header>", *_errors(live)]
    return _document(title, "en", _file("style.css"), (), body, live)


def _document(
    title: str, language: str, css: str, scripts: tuple[str, ...], body: Sequence[str], live: Live | None
) -> bytes:
    """Return the page with its head and its programs. scripts: files beside this one, besides that of a live page."""
    programs = [_file(each) for each in (*scripts, *(["follow.js"] if live else []))]
    lines = [
        "<!DOCTYPE html>",
        f'<html lang="{escape(language)}">',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_policy(css, programs, live)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        *([f'<meta name="feed" content="{escape(live.feed)}">'] if live else []),
        f"<title>{_text(title)}</title>",
        f"<style>{css}</style>",
        "</head>",
        "<body>",
        *body,
        *(f"<script>{each}</script>" for each in programs),
        "</body>",
        "</html>",
        "",
    ]
    return "\n".join(lines).encode("utf-8")


@lru_cache
def _file(name: str) -> str:
    return (_FOLDER / name).read_text(encoding="utf-8").strip()


def _policy(css: str, programs: Sequence[str], live: Live | None) -> str:
    """Return the policy that lets the page run its own style and program and nothing else (CSP level 2)."""

    def digest(text: str) -> str:
        return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode('utf-8')).digest()).decode('ascii')}'"

    own = "; connect-src 'self'" if live else ""
    return (
        f"default-src 'none'; style-src {digest(css)}; script-src {' '.join(map(digest, programs))}; img-src data:; "
        f"font-src data:; base-uri 'none'; form-action 'none'{own}"
    )


def _text(text: str) -> str:
    return escape(text, quote=False)


def _data(data: object) -> str:
    """Return data as JSON that cannot end the element it stands in."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _paper_rules(sheets: Sequence[Sheet]) -> str:
    """Return the rules that print each sheet on paper of its own size."""
    sizes = sorted({(each.width_mm, each.height_mm) for each in sheets})
    return "".join(
        f"@page p{at}{{size:{width:g}mm {height:g}mm;margin:0}}.p{at}{{page:p{at}}}"
        f"@media print{{.p{at} svg{{height:{height - _LESS_MM:g}mm!important}}}}"
        for at, (width, height) in enumerate(sizes)
    )


def _head(system: System, sheets: Sequence[Sheet], words: dict[str, str]) -> Iterator[str]:
    yield "<header>"
    yield f"<h1>{_text(system.project.title)}</h1>"
    yield f'<p class="caution">{_text(system.language.say(_CAUTION))}</p>'
    yield f'<nav aria-label="{escape(words["sheets"])}"><ul>'
    for each in sheets:
        about = each.description.split(";")[0]
        name = f"{_text(words['sheet'])} {each.number}"
        yield f'<li><a href="#sheet-{each.number}" title="{escape(about)}">{name}</a></li>'
    yield "</ul></nav>"
    yield "</header>"


def _sheets(sheets: Sequence[Sheet], words: dict[str, str]) -> Iterator[str]:
    sizes = sorted({(each.width_mm, each.height_mm) for each in sheets})
    yield "<main>"
    for each in sheets:
        at = sizes.index((each.width_mm, each.height_mm))
        label = escape(f"{words['sheet']} {each.number}")
        yield f'<section class="sheet p{at}" id="sheet-{each.number}" aria-label="{label}">'
        yield inline_svg(each)
        yield "</section>"
    yield "</main>"


def _errors(live: Live) -> Iterator[str]:
    yield '<div id="errors" role="alert">'
    yield from (f"<pre>{_text(each)}</pre>" for each in live.errors)
    yield "</div>"


def _findings(told: Sequence[Told], found: Sequence[Finding], system: System, words: dict[str, str]) -> Iterator[str]:
    count = tally(found).phrase
    yield '<section id="findings" aria-labelledby="findings-head">'
    yield f'<h2 id="findings-head">{_text(words["findings"])}: {_text(system.language.say(count))}</h2>'
    yield "<ol>"
    for each in told:
        kind = "accepted" if each.accepted else each.severity
        link = ""
        if each.designation:
            target = f' href="#{escape(each.anchor)}"' if each.anchor else ""
            link = f' <a{target} data-device="{escape(each.device)}">{_text(each.designation)}</a>'
        word = words["accepted"] if each.accepted else each.severity_word
        yield f'<li class="{escape(kind)}">'
        yield f"<p><strong>{_text(word)}</strong> {_text(each.code)}{link}: {_text(each.message)}</p>"
        if each.accepted:
            yield f"<p>{_text(words['accepted'])}: {_text(each.accepted)}</p>"
        elif each.remedy:
            yield f"<p>{_text(words['remedy'])}: {_text(each.remedy)}</p>"
        if each.place:
            yield f"<pre>{_text(each.place)}</pre>"
        yield "</li>"
    yield "</ol>"
    yield "</section>"
