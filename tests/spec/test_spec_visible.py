"""What does not print is shown by its number; what prints is left alone."""

from __future__ import annotations

import json

import pytest

from sld.spec.visible import as_json_text, visible

# Classes after Unicode annex 9 (direction) and annex 14 (line breaks), ECMA-48 (escape, C1 controls).
HIDDEN = {
    "\n": r"\n",
    "\r": r"\r",
    "\x1b": r"\x1b",
    "\x9b": r"\x9b",
    "\x7f": r"\x7f",
    "\u202e": r"\u202e",
    "\u2066": r"\u2066",
    "\u200f": r"\u200f",
    "\u2028": r"\u2028",
    "\u2029": r"\u2029",
    "\x85": r"\x85",
    "\u200b": r"\u200b",
    "\ufeff": r"\ufeff",
    "\U000e0041": r"\U000e0041",
    "\udcff": r"\udcff",
}


@pytest.mark.parametrize(("sign", "shown"), HIDDEN.items(), ids=HIDDEN.values())
def test_a_character_that_does_not_print_is_shown(sign: str, shown: str) -> None:
    assert visible(f"a{sign}b") == f"a{shown}b"
    assert as_json_text(sign, ascii_only=True).isprintable()
    written = as_json_text({"a": f"a{sign}b", "b": [1, "Ω"]})
    assert all(each.isprintable() for each in written.splitlines())
    assert sign not in written.replace("\n", "") or sign == "\n"
    assert json.loads(written) == {"a": f"a{sign}b", "b": [1, "Ω"]}


@pytest.mark.parametrize("text", ["Süd 水 −15 °C ≤ 2.5 mm² Ω", "a\tb", "", "🌞"])
def test_what_prints_is_left(text: str) -> None:
    assert visible(text) == text
    assert json.dumps(text, ensure_ascii=False) in as_json_text({"a": text})


def test_json_in_ascii() -> None:
    assert as_json_text(["Ω🌞"], ascii_only=True) == '[\n  "\\u03a9\\ud83c\\udf1e"\n]'
