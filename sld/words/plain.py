"""Words of the spec language on paper, where nobody types them."""

from __future__ import annotations

from dataclasses import dataclass

from sld.words.phrase import Sayable, Speaker

__all__ = ["Plain", "plain"]


def plain(text: str) -> str:
    """Return a text with the words of the spec, which the console sets off by marks, as plain words."""
    parts = text.split("`")
    if len(parts) % 2 == 0:  # a mark of the user's own
        return text
    return "".join(part.replace("_", " ") if place % 2 else part for place, part in enumerate(parts))


@dataclass(frozen=True, slots=True)
class Plain:
    """What is said with the words of the spec as plain words."""

    what: Sayable

    def said(self, speaker: Speaker) -> str:
        """Return the text without marks."""
        return plain(self.what.said(speaker))
