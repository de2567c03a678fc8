"""Every code that the program can give stands on the page of findings, with all of its explanation."""

from __future__ import annotations

import re

import pytest

from sld.finding import Rule
from sld.gallery.rules import FAMILIES, registered, rules

PAGE = rules()


def letters(text: str) -> str:
    """Return the letters and digits of a text: what no formatting changes."""
    return "".join(re.findall(r"\w", text.replace("_", "")))


def test_no_family_is_without_a_title() -> None:
    assert {each.code.rstrip("0123456789") for each in registered()} <= set(FAMILIES)


@pytest.mark.parametrize("rule", registered(), ids=lambda rule: rule.code)
def test_rule_is_told_whole(rule: Rule) -> None:
    section = PAGE.split(f"\n### {rule.code}\n")[1].split("\n### ")[0].split("\n## ")[0]
    said = letters(section)
    assert letters(rule.title) in said
    last = rule.explanation.strip().splitlines()[-1]
    assert letters(last) in said
    assert "(error)" in section if rule.code.startswith("SP") else f"({rule.severity.word})" in section
