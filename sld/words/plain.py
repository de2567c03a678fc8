"""Words of the spec language on paper, where nobody types them."""

from __future__ import annotations

from sld.frozen import dataclass
from sld.words.phrase import Sayable, Speaker, phrase_in

__all__ = ["Plain", "plain"]


_KEY = phrase_in("a word of the spec language in a sentence; with quotes where it is set off", "{word}")


def plain(text: str, speaker: Speaker) -> str:
    """Return a text with the words of the spec, which the console sets off by marks, as the language has them.

    In English they are plain words; a language that sets them off has them as they are written.
    """
    parts = text.split("`")
    if len(parts) % 2 == 0:  # a mark of the user's own
        return text
    form = speaker.translated(_KEY)
    plainly = form == _KEY.text
    return "".join(
        part if place % 2 == 0 else part.replace("_", " ") if plainly else form.format(word=part)
        for place, part in enumerate(parts)
    )


@dataclass(frozen=True, slots=True)
class Plain:
    """What is said with the words of the spec as plain words."""

    what: Sayable

    def said(self, speaker: Speaker) -> str:
        """Return the text without marks, as `plain` has it."""
        return plain(self.what.said(speaker), speaker)
