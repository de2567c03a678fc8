"""Text -> plain data and the place of every value in it.

The events of the parser are used rather than its nodes: they show every anchor, alias and tag before anything is
expanded, need no recursion, and end at the first thing that is refused.
"""

from __future__ import annotations

import re
from dataclasses import field
from typing import Any

import yaml

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.spec.misread import explain
from sld.spec.scalar import plain
from sld.spec.span import Span, Spot, UnusableText
from sld.spec.surrogates import hidden, restored

__all__ = ["MAX_DEPTH", "compose"]

MAX_DEPTH = 50
MAX_VALUES = 100_000
"""Several times what the largest spec has; 2 MB could hold a million empty values."""
_LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ufeff\ufffe\uffff]")
_UNSEEN = re.compile("[\u200b\u202a-\u202e\u2060-\u206f\ufff9-\ufffb\U000e0000-\U000e007f]")
"""What turns the order of a text round or has no width: a reader sees another text than stands there. Marks of
direction and joiners, which words of some languages need, are none of them."""


@dataclass(slots=True)
class _Open:
    """A block or list that has begun: in a block `key` is the key whose value comes next."""

    path: SpecPath
    data: dict[str, Any] | list[Any]
    own_key: Span | None
    start: Span
    key: str | None = None
    key_span: Span | None = None
    first_key: Span | None = None


@dataclass(slots=True)
class _Composer:
    file: str
    spots: dict[SpecPath, Spot] = field(default_factory=dict)
    stack: list[_Open] = field(default_factory=list)
    documents: int = 0
    root: Any = None
    last: yaml.ScalarEvent | None = None

    def span(self, event: Any) -> Span:
        """Return the place of an event, up to the end of its first line."""
        start, end = event.start_mark, event.end_mark
        width = end.column - start.column if end.line == start.line else 1
        return Span(self.file, start.line + 1, start.column + 1, max(1, width))

    @staticmethod
    def written(event: Any, text: str) -> str:
        """Return an event as it stands in the text."""
        return text[event.start_mark.index : event.end_mark.index]

    def refuse(self, event: Any) -> None:
        """Stop at what a spec may not hold. Raises UnusableText."""
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None) is not None:
            sign = "*" if isinstance(event, yaml.AliasEvent) else "&"
            name = f"{sign}{event.anchor}"
            raise UnusableText(
                "SP12",
                f"`{name}` would be an {'alias' if sign == '*' else 'anchor'}, which a spec does not have",
                f"put it in quotes if `{name}` is meant as text, else write the values as a type under `types`",
                self.span(event),
            )
        tag = getattr(event, "tag", None)
        if tag is not None:
            shown = tag.replace("tag:yaml.org,2002:", "!!")
            remedy = "leave the tag out, or put the text in quotes"
            raise UnusableText("SP13", f"tag `{shown}` is not allowed", remedy, self.span(event))
        if isinstance(event, yaml.DocumentStartEvent):
            self.documents += 1
            if self.documents > 1:
                raise UnusableText(
                    "SP15", "a second document begins here", "put each spec in a file of its own", self.span(event)
                )

    def path(self) -> SpecPath:
        """Return the path of the value that comes next."""
        if not self.stack:
            return ()
        top = self.stack[-1]
        return (*top.path, len(top.data) if isinstance(top.data, list) else str(top.key))

    def wants_key(self) -> bool:
        return bool(self.stack) and isinstance(self.stack[-1].data, dict) and self.stack[-1].key is None

    def place(self, value: Any, spot: Spot) -> None:
        """Put a value where it belongs."""
        if len(self.spots) >= MAX_VALUES:
            message = f"the file holds more than {MAX_VALUES:,} values"
            raise UnusableText(
                "SP02", message, "check that it is a spec; equal devices are written once, with `count`", spot.value
            )
        self.spots[self.path()] = spot
        if not self.stack:
            self.root = value
            return
        top = self.stack[-1]
        if isinstance(top.data, list):
            top.data.append(value)
        else:
            top.data[str(top.key)] = value
            top.key = top.key_span = None

    def take_key(self, event: yaml.ScalarEvent) -> None:
        """Remember a key. Raises UnusableText for one that is given twice or is not a word."""
        top, span, key = self.stack[-1], self.span(event), event.value
        if not key or not key.isprintable() or key != key.strip():
            raise UnusableText(
                "SP17",
                "a key is empty or has a character that does not show" if key else "there is no key before this colon",
                "write a key of plain letters; a space copied from a web page may be of another kind",
                span,
            )
        if key == "<<" and not event.style:
            raise UnusableText("SP14", "merge key `<<` is not allowed", "refer to a type under `types` instead", span)
        if key in top.data:
            first = self.spots[(*top.path, key)].span(on_key=True)
            also = ((first, "first given here"),)
            raise UnusableText("SP11", f"key `{key}` is given twice", "keep one of the two", span, also)
        top.key, top.key_span, top.first_key = key, span, top.first_key or span

    def take_scalar(self, event: yaml.ScalarEvent) -> None:
        """Place a value or remember a key."""
        span = self.span(event)
        if found := _UNPRINTABLE.search(event.value):
            name = f"U+{ord(found.group()):04X}"
            raise UnusableText("SP04", f"the text holds the control character {name}", "leave it out", span)
        if found := _UNSEEN.search(event.value):
            message = f"the text holds U+{ord(found.group()):04X}, which is not seen and changes what is"
            raise UnusableText("SP04", message, "leave it out", span)
        if self.wants_key():
            self.take_key(event)
        else:
            key = self.stack[-1].key_span if self.stack else None
            self.place(event.value if event.style else plain(event.value), Spot(key, span))

    def begin(self, event: Any, data: dict[str, Any] | list[Any]) -> None:
        """Open a block or a list. Raises UnusableText where it stands in place of a key, or too deep."""
        span = self.span(event)
        if self.wants_key():
            braces = "; braces in pairs are a template that has not been filled in" if isinstance(data, dict) else ""
            message = f"a list or block stands where a key is expected{braces}"
            raise UnusableText("SP17", message, "write one word as the key", span)
        if len(self.stack) >= MAX_DEPTH:
            raise UnusableText("SP16", f"nested more than {MAX_DEPTH} deep", "close brackets that are open", span)
        key = self.stack[-1].key_span if self.stack else None
        self.stack.append(_Open(self.path(), data, key, span))

    def end(self, event: Any) -> None:
        """Close a block or list and put it in the one around it."""
        done, closed = self.stack.pop(), event.end_mark
        value, opened = done.start, done.start
        # Only a bracket has a width; the end of an indented block is a point.
        in_brackets = event.start_mark.index < closed.index and closed.line + 1 == opened.line
        if in_brackets:
            value = Span(self.file, opened.line, opened.column, closed.column + 1 - opened.column)
        elif done.first_key is not None and done.first_key.line == opened.line:
            value = done.first_key
        self.place(done.data, Spot(done.own_key, value, is_block=not in_brackets))

    def feed(self, event: Any, text: str) -> None:
        self.refuse(event)
        if isinstance(event, yaml.ScalarEvent):
            event.value = restored(event.value, self.written(event, text), event.style)
            self.take_scalar(event)
            self.last = event
        elif isinstance(event, yaml.MappingStartEvent):
            self.begin(event, {})
        elif isinstance(event, yaml.SequenceStartEvent):
            self.begin(event, [])
        elif isinstance(event, yaml.CollectionEndEvent):
            self.end(event)


def compose(text: str, file: str) -> tuple[Any, dict[SpecPath, Spot]]:
    """Return the data of a text and the spot of every value; data is None where there is nothing but comments.

    Raises UnusableText with the place where the text stops making sense.
    """
    composer = _Composer(file)
    try:
        for event in yaml.parse(hidden(text), Loader=_LOADER):
            composer.feed(event, text)
    except yaml.YAMLError as error:
        raise explain(error, text, file, composer.last) from None
    return composer.root, composer.spots
