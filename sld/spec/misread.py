"""The parser's own words for a text that makes no sense -> what is wrong, where, and what to write instead.

The parser comes in two builds that word the same mistake differently, so that none of their wording is passed on.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import yaml

from sld.frozen import dataclass
from sld.spec.span import Span, UnusableText, split_lines

__all__ = ["explain"]

_NO_SPACE = re.compile(r"^[\s-]*[\w-]+:[^\s:/]")
_LONG_KEY = re.compile(r"[^\s:,{}\[\]]{1000,}\s*:")
_BARE_DASH = re.compile(r"^\s*-\w")


@dataclass(frozen=True, slots=True)
class _Scene:
    """What is known about the place: lines of the text, where reading stopped, what was open, the scalar before it."""

    file: str
    lines: tuple[str, ...]
    line: int
    column: int
    opened: tuple[int, int] | None
    before: Any

    def text(self, line: int | None = None) -> str:
        at = self.line if line is None else line
        return self.lines[at] if at < len(self.lines) else ""

    @property
    def sign(self) -> str:
        return self.text()[self.column : self.column + 1]

    def here(self, width: int = 1) -> Span:
        return Span(self.file, self.line + 1, self.column + 1, width)

    def start(self) -> Span:
        """Return the place where what was open began."""
        line, column = self.opened or (self.line, self.column)
        return Span(self.file, line + 1, column + 1)

    def content(self, line: int) -> Span:
        """Return the whole of a line without its indentation."""
        text = self.text(line)
        bare = text.strip()
        return Span(self.file, line + 1, len(text) - len(text.lstrip()) + 1, max(1, len(bare)))

    def line_before(self) -> int:
        """Return the last line above that holds something."""
        return next((n for n in range(self.line - 1, -1, -1) if self.text(n).strip()), max(0, self.line - 1))


def _tab(scene: _Scene) -> UnusableText | None:
    text = scene.text()
    indent = text[: len(text) - len(text.lstrip())]
    if "\t" not in indent and scene.sign != "\t":
        return None
    column = text.index("\t") if "\t" in indent else scene.column
    span = Span(scene.file, scene.line + 1, column + 1)
    return UnusableText("SP06", "a tab stands where only spaces may", "replace each tab by spaces", span)


def _long_key(scene: _Scene) -> UnusableText | None:
    """Explain a key that the parser does not take for one: it looks 1,024 characters back for its beginning."""
    found = _LONG_KEY.search(scene.text())
    if found is None:
        return None
    span = Span(scene.file, scene.line + 1, found.start() + 1)
    return UnusableText("SP17", "a key has more than 1,000 characters", "choose a shorter name", span)


def _after_quote(scene: _Scene) -> UnusableText | None:
    """Explain what follows a closing quote: an apostrophe inside, or a quote that was forgotten further up."""
    last = scene.before
    if last is None or last.style not in ("'", '"') or last.end_mark.line != scene.line:
        return None
    between = scene.text()[last.end_mark.column : scene.column]
    if between.strip():
        return None
    opened = Span(scene.file, last.start_mark.line + 1, last.start_mark.column + 1)
    if last.start_mark.line != scene.line:
        also = ((Span(scene.file, scene.line + 1, last.end_mark.column), "the text runs on to this quote"),)
        return UnusableText("SP08", "this quote is not closed on its line", f"close it with {last.style}", opened, also)
    remedy = "put the whole value in one pair of quotes; inside single quotes an apostrophe is written twice"
    return UnusableText("SP10", "the value goes on after its closing quote", remedy, scene.here())


def _open_quote(scene: _Scene) -> UnusableText:
    mark = scene.text(scene.start().line - 1)[scene.start().column - 1 :][:1]
    return UnusableText(
        "SP08", "this quote is never closed", f"close it with {mark or 'the same quote'}", scene.start()
    )


def _escape(scene: _Scene) -> UnusableText:
    if re.match(r"[dD][89a-fA-F]", scene.text()[scene.column :].removeprefix("\\").removeprefix("u")):
        message = "half a character stands here: an escape from \\ud800 to \\udfff goes with a second one"
        return UnusableText("SP19", message, "write both halves, or the character itself", scene.here())
    remedy = "use single quotes, in which a backslash is a plain character, or write it twice"
    return UnusableText("SP19", "a backslash in double quotes begins an escape that is not known", remedy, scene.here())


def _open_bracket(scene: _Scene) -> UnusableText:
    start = scene.start()
    sign = scene.text(start.line - 1)[start.column - 1 : start.column]
    closing = {"[": "]", "{": "}"}.get(sign, "the bracket")
    if start.line == scene.line + 1 and scene.column < len(scene.text()):
        remedy = f"part the entries by commas and end with {closing}"
        message = f"a comma or {closing} is missing before this"
        return UnusableText("SP09", message, remedy, scene.here(), ((start, "opened here"),))
    also = ((scene.here(), "and this does not belong inside"),) if scene.text().strip() else ()
    return UnusableText("SP09", f"`{sign}` is not closed", f"end the line with {closing}", start, also)


def _stray(scene: _Scene) -> UnusableText:
    if scene.sign in set("]},"):
        message = f"`{scene.sign}` stands where a value is expected"
        return UnusableText("SP09", message, "remove it, or add what is missing", scene.here())
    return UnusableText("SP07", "a value is expected here", "write a value, or leave the key out", scene.here())


def _second_colon(scene: _Scene) -> UnusableText:
    """Explain a colon that cannot end a key: a value with a colon in it, a missing space, or a wrong indentation."""
    above, text = scene.line_before(), scene.text()
    if re.search(r":\s", text[: scene.column]):
        span = scene.here()
        return UnusableText("SP10", "a value holds a second colon and a space", "put the value in quotes", span)
    if above < scene.line and _NO_SPACE.match(scene.text(above)):
        return _no_space(scene, above)
    if above < scene.line and _BARE_DASH.match(scene.text(above)):
        return UnusableText(
            "SP07", "there is no space after the dash", "begin each entry with `- `", scene.content(above)
        )
    also = ((scene.content(above), "the value of this line would go on here"),)
    remedy = f"line the key up with its block, or leave the value of line {above + 1} out"
    message = "a key is indented under a line that already has a value"
    return UnusableText("SP07", message, remedy, scene.content(scene.line), also)


def _no_space(scene: _Scene, line: int) -> UnusableText:
    text = scene.text(line)
    column = text.index(":")
    span = Span(scene.file, line + 1, column + 1)
    return UnusableText("SP07", "there is no space after the colon", "write `key: value` with a space", span)


def _no_colon(scene: _Scene) -> UnusableText:
    line = scene.start().line - 1
    if _NO_SPACE.match(scene.text(line)):
        return _no_space(scene, line)
    return UnusableText("SP07", "this line has no colon", "write `key: value`", scene.content(line))


def _dash(scene: _Scene) -> UnusableText:
    remedy = "begin each entry with `- ` on a line of its own"
    return UnusableText("SP07", "a list cannot begin on the line of its key", remedy, scene.here())


def _token(scene: _Scene) -> UnusableText:
    if not scene.sign.strip():
        return _rest(scene)
    return UnusableText("SP10", f"a value cannot begin with `{scene.sign}`", "put the value in quotes", scene.here())


def _star(scene: _Scene) -> UnusableText:
    start = scene.start()
    sign = scene.text(start.line - 1)[start.column - 1 : start.column]
    if not sign.strip():
        return _rest(scene)
    return UnusableText("SP10", f"a value cannot begin with `{sign}`", "put the value in quotes", start)


def _tag(scene: _Scene) -> UnusableText:
    message = "a value that begins with `!` is a tag, which is not allowed"
    return UnusableText("SP13", message, "put it in quotes", scene.start())


def _depth(scene: _Scene) -> UnusableText:
    return UnusableText("SP16", "nested too deeply", "close brackets that are open", scene.here())


def _long_text(scene: _Scene) -> UnusableText:
    remedy = "put the value in quotes, or begin the text on the next line"
    return UnusableText("SP10", "a `|` or `>` begins a text of several lines and stands alone", remedy, scene.start())


def _structure(scene: _Scene) -> UnusableText:
    """Explain a line that fits neither the block around it nor another."""
    if scene.sign in set("]}"):
        return UnusableText("SP09", f"`{scene.sign}` closes nothing", "remove it", scene.here())
    if scene.sign == ":":
        remedy = "write a key before it, or put the text in quotes"
        return UnusableText("SP17", "there is no key before this colon", remedy, scene.here())
    bare = scene.text().strip()
    start = scene.start()
    inside = bare.startswith("- ") and not scene.text(start.line - 1)[start.column - 1 :].startswith("- ")
    what = "a list entry stands among keys" if inside else "this line does not line up with the block around it"
    also = () if start == scene.here() else ((start, "that block begins here"),)
    return UnusableText(
        "SP07", what, "give the lines of one block the same indentation", scene.content(scene.line), also
    )


def _rest(scene: _Scene) -> UnusableText:
    return UnusableText("SP07", "the text makes no sense from here on", "compare it with the lines above", scene.here())


# Searched in order in "problem; context" of either build.
_WORDINGS: tuple[tuple[str, Callable[[_Scene], UnusableText]], ...] = (
    ("nesting|recursion", _depth),
    ("(end of stream|document indicator|separator).*quoted scalar|quoted scalar.*end of stream", _open_quote),
    ("escape|hexdecimal|hexadecimal", _escape),
    ("',' or '[]}]'", _open_bracket),
    ("mapping values are not allowed", _second_colon),
    ("could not find expected ':'", _no_colon),
    ("sequence entries are not allowed", _dash),
    ("an alias|an anchor", _star),
    ("tag", _tag),
    ("cannot start any token", _token),
    ("block scalar", _long_text),
    ("node content", _stray),
    ("directive", _token),
    ("expected key|block end|'-' indicator|document start", _structure),
)


def _mark(mark: Any) -> tuple[int, int] | None:
    return None if mark is None else (mark.line, mark.column)


def explain(error: yaml.YAMLError, text: str, file: str, before: Any) -> UnusableText:
    """Return what is wrong in our own words; `before` is the last scalar that was read before it."""
    opened = _mark(getattr(error, "context_mark", None))
    line, column = _mark(getattr(error, "problem_mark", None)) or opened or (0, 0)
    lines = split_lines(text)
    if line >= len(lines):  # the end of a text without a last line break counts as the line after it
        line, column = len(lines) - 1, len(lines[-1])
    scene = _Scene(file, lines, line, column, opened, before)
    wording = f"{getattr(error, 'problem', '')}; {getattr(error, 'context', '')}"
    if long := _long_key(scene):
        return long
    found = next((tell for pattern, tell in _WORDINGS if re.search(pattern, wording)), _rest)
    if found in (_open_quote, _escape, _depth, _open_bracket):
        return found(scene)
    return _tab(scene) or _after_quote(scene) or found(scene)
