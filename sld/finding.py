"""One thing to tell the designer, as data; text is made from it later.

A `Finding` comes from reading the spec, from the model (an assumption made) or from a rule. `rule` registers the
function that makes it: importing the package `sld.rules` fills `RULES`, and nothing else has to be touched to add one.

What is told has one family of names. A `Finding` is one thing told, from wherever it comes; a `Breach` is what a rule
yields of it. Input that cannot be used is `Unusable` (`sld.spec`): the exception that carries the findings on it up to
the command. Inside `sld.spec` it begins as an `UnusableText` or an `UnusableValue` with its `Explanation`.
"""

from __future__ import annotations

import inspect
import re
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from enum import IntEnum

from sld.frozen import dataclass
from sld.quantity import Rating
from sld.words import Phrase, Said, Sayable, counted, phrase, sequence

__all__ = ["RULES", "Acceptance", "Breach", "Finding", "Rule", "Severity", "SpecPath", "Tally", "rule", "tally"]

SpecPath = tuple[str | int, ...]
"""The way from the root of the spec to a value: keys and list indices, e.g. `("inverters", 0, "type")`."""


class Severity(IntEnum):
    """How bad it is, worst last, so that severities compare."""

    ASSUMPTION = 1
    ADVICE = 2
    NON_COMPLIANCE = 3
    DANGER = 4

    @property
    def word(self) -> str:
        """Return the word by which terminals and machines tell it."""
        return str(self.phrase)

    @property
    def phrase(self) -> Phrase:
        """Return the word that is printed."""
        return _SEVERITIES[self.value - 1]


_SEVERITIES = (phrase("assumption"), phrase("advice"), phrase("non-compliance"), phrase("danger"))


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A deliberate deviation that the spec accepts: who, why, when."""

    reason: str
    role: str
    date: str


@dataclass(frozen=True, slots=True)
class Breach:
    """What a rule yields: what is violated, with its values, and what to do; the fields are those of a `Finding`.

    Code and severity are the rule's. severity: only where a case is milder than the rule's own.
    """

    message: Said
    remedy: Said
    at: SpecPath
    device: str = ""
    also: tuple[tuple[SpecPath, Said], ...] = ()
    compared: tuple[Rating, ...] = ()
    on_key: bool = False
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """What is wrong, where, and what to do.

    message: what is wrong, with both numbers and the unit, lower case, no full stop, no advice. remedy: what to do,
    with the nearest working value where there is one. at: the smallest span of the spec to edit (its key if `on_key`).
    device: the key of the device in the System that the flag is drawn beside, empty for the whole system. also: further
    places with a word on each. compared: the ratings that were compared.
    """

    code: str
    severity: Severity
    message: Said
    remedy: Said
    at: SpecPath
    device: str = ""
    also: tuple[tuple[SpecPath, Said], ...] = ()
    compared: tuple[Rating, ...] = ()
    on_key: bool = False
    accepted: Acceptance | None = None


@dataclass(frozen=True, slots=True)
class Tally:
    """How many findings there are: open ones by severity, the worst first, assumptions, and accepted ones.

    Every finding counts once, however many are told together; the terminal, the JSON, the title block and the gallery
    all say this.
    """

    danger: int = 0
    non_compliance: int = 0
    advice: int = 0
    assumption: int = 0
    accepted: int = 0

    def __str__(self) -> str:
        return str(self.phrase)

    @property
    def phrase(self) -> Sayable:
        """Return the count as it is printed: `1 danger, 2 advice, 3 assumptions`."""
        parts = [
            *([counted("{count} danger", "{count} danger", self.danger)] if self.danger else ()),
            *([counted("{count} non-compliance", "{count} non-compliance", self.non_compliance)]
              if self.non_compliance else ()),
            *([counted("{count} advice", "{count} advice", self.advice)] if self.advice else ()),
            *([counted("{count} assumption", "{count} assumptions", self.assumption)] if self.assumption else ()),
            *([counted("{count} accepted", "{count} accepted", self.accepted)] if self.accepted else ()),
        ]  # fmt: skip
        return sequence(parts) if parts else phrase("none")


def tally(findings: Iterable[Finding]) -> Tally:
    """Count findings."""
    counts = Counter(each.severity if each.accepted is None else None for each in findings)
    return Tally(
        counts[Severity.DANGER], counts[Severity.NON_COMPLIANCE], counts[Severity.ADVICE],
        counts[Severity.ASSUMPTION], counts[None],
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Rule:
    """A registered rule: its code, its title, the worst severity it can give, its clause, and its check.

    check: called with (system, ratings). explanation: the module's docstring, printed by `sld explain`. once: what it
    tells of one device is not told again of its equals: it looks at them itself, or tells of the first only.
    """

    code: str
    title: Said
    severity: Severity
    clause: Said
    explanation: str
    check: Callable[..., Iterable[Finding]] | None
    once: bool = False

    @property
    def rests_on_memory(self) -> bool:
        """Return whether a clause that it names is from memory, by the part of its explanation on clauses."""
        clauses = re.search(r"^Clause\n((?:[ ]+.*(?:\n|$))+)", self.explanation, re.MULTILINE)
        return clauses is not None and "from memory" in " ".join(clauses[1].split())  # wherever a line ends


RULES: dict[str, Rule] = {}


Check = Callable[..., Iterator[Breach | Finding]]


def rule(code: str, title: Said, severity: Severity, clause: Said, *, once: bool = False) -> Callable[[Check], Check]:
    """Register the decorated check under its code. Raises ValueError when the code is taken.

    once: what it tells of one device is not told again of those of equal inverters.
    """

    def register(check: Check) -> Check:
        if code in RULES:
            raise ValueError(f"rule code {code} is given twice")
        explanation = inspect.cleandoc(sys.modules[check.__module__].__doc__ or "")

        def findings(system: object, ratings: object) -> Iterator[Finding]:
            for each in check(system, ratings):
                yield each if isinstance(each, Finding) else _of(each, code, severity)

        RULES[code] = Rule(code, title, severity, clause, explanation, findings, once)
        return check

    return register


def _of(breach: Breach, code: str, severity: Severity) -> Finding:
    return Finding(
        code, breach.severity or severity, breach.message, breach.remedy, breach.at, breach.device, breach.also,
        breach.compared, breach.on_key,
    )  # fmt: skip
