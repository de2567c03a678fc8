"""Every code that the program can give stands on the page of findings, with all of its explanation."""

from __future__ import annotations

import re

from sld.door.codes import FAMILIES, registered
from sld.finding import Rule
from sld.gallery.rules import rules

PAGE = rules()


def letters(text: object) -> str:
    """Return the letters and digits of a text: what no formatting changes."""
    return "".join(re.findall(r"\w", str(text).replace("_", "")))


def test_no_family_is_without_a_title() -> None:
    assert {each.code.rstrip("0123456789") for each in registered()} <= set(FAMILIES)


def test_every_rule_is_told_whole() -> None:
    sections = {text.partition("\n")[0]: text.split("\n## ")[0] for text in PAGE.split("\n### ")[1:]}
    assert set(sections) == {rule.code for rule in registered()}
    for rule in registered():
        assert_told_whole(rule, sections[rule.code])


def assert_told_whole(rule: Rule, section: str) -> None:
    said = letters(section)
    assert letters(rule.title) in said
    last = rule.explanation.strip().splitlines()[-1]
    assert letters(last) in said
    assert "(error)" in section if rule.code.startswith("SP") else f"({rule.severity.word})" in section
