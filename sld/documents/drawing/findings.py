"""What the flags mean, what was accepted, and what was assumed."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import MEMORY_SIGN
from sld.documents.section import FlagForm, FlaggedList, FlaggedRow, Paragraphs
from sld.finding import RULES, Finding, Severity
from sld.layout.diagram.flags import Flag
from sld.layout.diagram.ranges import joined
from sld.model.system import System
from sld.steps import Ratings
from sld.tables.table import table
from sld.words import Day, Phrase, Said, Sayable, phrase, sequence

__all__ = ["accepted", "assumptions", "findings", "is_from_memory", "taken", "told"]


_FORMS = {
    Severity.DANGER: FlagForm.DANGER,
    Severity.NON_COMPLIANCE: FlagForm.NON_COMPLIANCE,
    Severity.ADVICE: FlagForm.ADVICE,
}


def findings(system: System, flags: Sequence[Flag]) -> FlaggedList:
    """Return the list of open findings behind their numbers."""
    rows = tuple(
        FlaggedRow(
            flag.number,
            (_message(system, flag), phrase("Remedy: {remedy}", remedy=flag.remedy)),
            _FORMS[flag.findings[0].severity],
        )
        for flag in flags
        if flag.findings[0].accepted is None
    )
    return FlaggedList("findings", phrase("Findings"), rows)


def accepted(system: System, flags: Sequence[Flag]) -> FlaggedList:
    """Return the accepted findings with reason, role and date."""
    rows = []
    for flag in flags:
        entry = flag.findings[0].accepted
        if entry is not None:
            by_whom = phrase(
                "accepted by {role} on {date}: {reason}", role=entry.role, date=Day(entry.date), reason=entry.reason
            )
            rows.append(FlaggedRow(flag.number, (_message(system, flag), by_whom), FlagForm.ACCEPTED))
    return FlaggedList("accepted", phrase("Accepted deviations"), tuple(rows))


def _message(system: System, flag: Flag) -> Sayable:
    first = flag.findings[0]
    others = [system.devices[each.device].designation for each in flag.findings[1:] if each.device in system.devices]
    likewise = [phrase("likewise {names}", names=joined(others))] if others else []
    return sequence([told(first, flag.message), *likewise], "; ")


def told(finding: Finding, message: Said | None = None) -> Phrase:
    """Return a finding as every reader is told of it: its code, how bad it is, and what is wrong.

    The code has the sign of what is from memory where a clause of the rule is. message: of several, instead of its own.
    """
    code = f"{finding.code}{MEMORY_SIGN}" if is_from_memory(finding) else finding.code
    return phrase(
        "{code} {severity}: {message}", code=code, severity=finding.severity.phrase, message=message or finding.message
    )


def is_from_memory(finding: Finding) -> bool:
    """Return whether a clause of the rule of a finding is from memory."""
    return finding.code in RULES and RULES[finding.code].rests_on_memory


def assumptions(system: System) -> Paragraphs:
    """Return what the model added or chose, each once with the number of places: together as many as are counted."""
    found: dict[Sayable | str, list[str]] = {}
    counts: dict[Sayable | str, int] = {}
    shared: dict[int, Sayable | str] = {}  # one phrase is shared by what is assumed of equal inverters
    for assumption in system.assumptions:
        text = shared.setdefault(id(assumption.what), assumption.what)
        names = found.setdefault(text, [])
        counts[text] = counts.get(text, 0) + 1
        if assumption.device in system.devices:
            names.append(system.devices[assumption.device].designation)
    paragraphs = [_at_places(text, counts[text], names) for text, names in found.items()]
    if open_count := len(table("profile_scope").where(profile=system.profile)):
        what = phrase("what profile {profile} leaves open, as the notes say", profile=system.profile)
        paragraphs.append(_at_places(what, open_count, ()))
    return Paragraphs("assumptions", phrase("Assumptions"), tuple(paragraphs), numbered=True, dense=True)


def _at_places(text: Sayable | str, count: int, names: Sequence[str]) -> Sayable:
    """Return an assumption with the number of its places, and the devices there."""
    if count == 1:
        return phrase("{what} ({names})", what=text, names=joined(names)) if names else sequence([text])
    if not names:
        return phrase("{what}, {count} places", what=text, count=count)
    return phrase("{what}, {count} places ({names})", what=text, count=count, names=joined(names))


def taken(ratings: Ratings) -> Paragraphs:
    """Return what formulas took because nothing is given, each once with the symbols of what they gave."""
    found: dict[Sayable | str, list[str]] = {}
    for key, rating in ratings.kept():
        for text in rating.assumptions:
            symbols = found.setdefault(text, [])
            if str(rating.symbol) not in symbols and key not in symbols:
                symbols.append(str(rating.symbol))
    paragraphs = tuple(phrase("{what} ({names})", what=text, names=joined(names)) for text, names in found.items())
    return Paragraphs("taken", phrase("Taken in formulas"), paragraphs, dense=True)
