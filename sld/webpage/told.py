"""What the page tells beside the sheets: findings, and each device with its ratings."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import field
from typing import Any

from sld.documents.derivation import derived, entities
from sld.finding import Finding
from sld.frozen import dataclass
from sld.model.system import System
from sld.steps import Ratings
from sld.words import Language, sequence
from sld.words.plain import plain

__all__ = ["TellPlace", "Told", "devices", "findings"]

TellPlace = Callable[[Finding], str]
"""Returns the line of the spec that a finding is about, as it is shown, or nothing."""


@dataclass(frozen=True, slots=True)
class Told:
    """One finding in words. anchor: id of the symbol of its device on the page, empty without one."""

    code: str
    severity: str
    severity_word: str
    accepted: str
    message: str
    remedy: str
    device: str
    designation: str
    anchor: str
    place: str


@dataclass(slots=True)
class _Strings:
    """Texts, each once; ratings of equal devices share nearly all of theirs."""

    texts: dict[str, int] = field(default_factory=dict)

    def number(self, text: str) -> int:
        return self.texts.setdefault(text, len(self.texts))


def findings(
    systems: Sequence[System], found: Sequence[Finding], anchors: Mapping[str, str], tell_place: TellPlace
) -> list[Told]:
    """Return all findings in the language of the drawing, in their order. systems: one for each supply point."""
    language = systems[0].language
    names = {key: each for system in systems for key, each in entities(system).items()}
    say = language.say

    def one(finding: Finding) -> Told:
        accepted = finding.accepted
        reason = say(sequence([accepted.reason, accepted.role, accepted.date])) if accepted else ""
        device = names.get(finding.device)
        return Told(
            code=finding.code,
            severity=finding.severity.word,
            severity_word=say(finding.severity.phrase),
            accepted=reason,
            message=_said(finding.message, language),
            remedy=_said(finding.remedy, language),
            device=finding.device if device else "",
            designation=device.designation if device else "",
            anchor=anchors.get(finding.device, ""),
            place=tell_place(finding),
        )

    return [one(each) for each in found]


def _said(said: Any, language: Language) -> str:
    return plain(language.say(sequence([said], "")), language)


def devices(parts: Sequence[tuple[System, Ratings]], anchors: Mapping[str, str]) -> dict[str, Any]:
    """Return all devices as data for the page's program: texts once, and by their numbers what is said of each.

    A device is its key, designation, what it is, the id of its symbol (empty without one) and its quantities: symbol,
    meaning, value and steps, each a heading and what it says.
    """
    language, strings = parts[0][0].language, _Strings()

    def number(said: Any) -> int:
        return strings.number(language.say(sequence([said], "")))

    told = [
        [
            each.key,
            each.designation,
            number(each.what),
            anchors.get(each.key, ""),
            [
                [number(it.symbol), number(it.meaning), number(it.value),
                 [[number(head), number(said)] for head, said in it.steps]]
                for it in derived(ratings, each.key)
            ],
        ]
        for system, ratings in parts
        for each in entities(system).values()
    ]  # fmt: skip
    return {"texts": list(strings.texts), "devices": told}
