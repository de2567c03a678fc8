"""Why a rating could not be made: the reason in words, and of which kind it is."""

from __future__ import annotations

from enum import Enum

from sld.frozen import dataclass
from sld.words import Phrase, phrase
from sld.words.phrase import Speaker

__all__ = ["NO_CORE", "UNKNOWN_CURRENT", "WITHOUT_FUSE", "Unanswered", "Why"]


class Why(Enum):
    """What keeps a rating from being made."""

    NO_VALUE = "no table and no standard size holds it"
    NO_CORE = "there is no such conductor"
    NEEDS_TRANSFORMERS = "no meter stands the current by itself"
    FOLLOWS = "an earlier rating is missing, which is told of itself"
    SILENT_SPEC = "the spec does not say what flows or protects"
    WITHOUT_SERVICE_FUSE = "the spec does not say how much the supply carries"


@dataclass(frozen=True, slots=True)
class Unanswered:
    """The reason why there is no value."""

    what: Phrase
    why: Why = Why.NO_VALUE

    def __str__(self) -> str:
        return str(self.what)

    def said(self, speaker: Speaker) -> str:
        """Return the reason in words."""
        return self.what.said(speaker)


WITHOUT_FUSE = Unanswered(phrase("it cannot be told without `service_fuse`"), Why.WITHOUT_SERVICE_FUSE)
"""Why nothing at the supply point is chosen by the generation alone: the loads draw more than it feeds."""

UNKNOWN_CURRENT = Unanswered(phrase("nothing says what current flows here"), Why.SILENT_SPEC)

NO_CORE = Unanswered(phrase("its cores hold no protective conductor"), Why.NO_CORE)
