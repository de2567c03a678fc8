"""One thing to tell the designer, as data; text is made from it later.

A `Finding` comes from reading the spec, from the model (an assumption made) or from a rule. `rule` registers the
function that makes it: importing the package `sld.rules` fills `RULES`, and nothing else has to be touched to add one.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

from sld.quantity import Rating

__all__ = ["RULES", "Acceptance", "Finding", "Rule", "Severity", "SpecPath", "rule"]

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
        """Return the word that is printed."""
        return {1: "assumption", 2: "advice", 3: "non-compliance", 4: "danger"}[self.value]


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A deliberate deviation that the spec accepts: who, why, when."""

    reason: str
    role: str
    date: str


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
    message: str
    remedy: str
    at: SpecPath
    device: str = ""
    also: tuple[tuple[SpecPath, str], ...] = ()
    compared: tuple[Rating, ...] = ()
    on_key: bool = False
    accepted: Acceptance | None = None


@dataclass(frozen=True, slots=True)
class Rule:
    """A registered rule: its code, its title, the worst severity it can give, its clause, and its check.

    check: called with (system, ratings). explanation: the module's docstring, printed by `sld explain`.
    """

    code: str
    title: str
    severity: Severity
    clause: str
    explanation: str
    check: Callable[..., Iterable[Finding]] | None


RULES: dict[str, Rule] = {}


def rule(code: str, title: str, severity: Severity, clause: str) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Register the decorated check under its code. Raises ValueError when the code is taken."""

    def register(check: Callable[..., Any]) -> Callable[..., Any]:
        if code in RULES:
            raise ValueError(f"rule code {code} is given twice")
        explanation = inspect.cleandoc(inspect.getmodule(check).__doc__ or "")
        RULES[code] = Rule(code, title, severity, clause, explanation, check)
        return check

    return register
