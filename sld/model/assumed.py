"""What is assumed is said: assumptions are findings of their own severity, printed on the sheet."""

from __future__ import annotations

from sld.finding import RULES, Finding, Rule, Severity, SpecPath

__all__ = ["assumption"]

_CODES = {
    "AS01": (
        "device or value assumed",
        "The spec leaves out something that the drawing cannot do without. The usual one is "
        "drawn and said; write it into the spec if it is right, or write what is really there.",
    ),
    "AS02": (
        "design value assumed",
        "A rating needs a value that the spec does not give. A cautious one is used and printed "
        "beside the number that used it.",
    ),
}

for _code, (_title, _text) in _CODES.items():
    RULES.setdefault(_code, Rule(_code, _title, Severity.ASSUMPTION, "common practice, no source", _text, None))


def assumption(code: str, at: SpecPath, device: str, what: str, remedy: str) -> Finding:
    """Return the finding that says what was assumed."""
    return Finding(code, Severity.ASSUMPTION, f"assumed: {what}", remedy, at, device)
