"""Reading a text: what YAML 1.2.2 and RFC 8259 say it means, and one located finding where it means nothing."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from sld.finding import RULES, Finding
from sld.spec import compose as compose_module
from sld.spec.source import Source, Unusable, read, read_text

NAME = "roof.yaml"


def refusal(text: str | bytes) -> tuple[Source, Any]:
    with pytest.raises(Unusable) as caught:
        read_text(text, NAME)
    (finding,) = caught.value.findings
    return caught.value.source, finding


@pytest.mark.parametrize(
    ("text", "value"),
    [
        # YAML 1.2.2, section 10.2 (JSON schema) and 10.3.2: what a plain word stands for.
        ("x: true", True),
        ("x: false", False),
        ("x: null", None),
        ("x: ~", None),
        ("x:", None),
        ("x: 12", 12),
        ("x: -0.5", -0.5),
        ("x: 1e3", 1000.0),
        ("x: '12'", "12"),
        ('x: "true"', "true"),
        ("x: |\n  a\n  b\n", "a\nb\n"),
        ("x: >\n  a\n  b\n", "a b\n"),
        # What YAML 1.1 (section 10 of its type repository) turned into something else stays what was written.
        ("x: NO", "NO"),
        ("x: yes", "yes"),
        ("x: 200:5", "200:5"),
        ("x: 12:30:45", "12:30:45"),
        ("x: 010", "010"),
        ("x: 0x1F", "0x1F"),
        ("x: 5_000", "5_000"),
        ("x: 2026-01-31", "2026-01-31"),
        ("x: .inf", ".inf"),
        ("x: 1e999", "1e999"),
        ("x: 1]", "1]"),
        ("x: a#b # c", "a#b"),
    ],
)
def test_a_word_means_what_yaml_1_2_says(text: str, value: Any) -> None:
    read_value = read_text(text).data["x"]
    assert read_value == value
    assert type(read_value) is type(value)


def test_a_key_is_text() -> None:
    assert read_text("on: 1\n2: x\nnull: y\n").data == {"on": 1, "2": "x", "null": "y"}


@pytest.mark.parametrize(
    ("text", "code", "line", "column", "message", "remedy"),
    [
        ("a:\n\tb: 1\n", "SP06", 2, 1, "tab", "spaces"),
        ("a:\n  \tb: 1\n  c: 2\n", "SP06", 2, 3, "tab", "spaces"),
        ("", "SP05", 1, 1, "nothing", "gallery/spec-reference.md"),
        ("# only a comment\n", "SP05", 1, 1, "nothing", "gallery/spec-reference.md"),
        ("---\n", "SP05", 1, 1, "nothing", "gallery/spec-reference.md"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "SP03", 1, 1, "0x89", "UTF-8"),
        (b"a: 1\nb: \xe4\n", "SP03", 2, 4, "0xE4", "UTF-8"),
        (b"\xff\xfea\x00:\x00", "SP03", 1, 1, "UTF-16", "UTF-8"),
        (b"a: 1\nb: x\x00y\n", "SP04", 2, 5, "U+0000", "delete"),
        ("a: \x1b[31m", "SP04", 1, 4, "U+001B", "delete"),
        ('a: 1\nb: "\\0"', "SP04", 2, 4, "U+0000", "leave it out"),
        ("a: 1\n\ufeffb: 2\n", "SP04", 2, 1, "U+FEFF", "delete"),
        ("a: {%s: 1}\n" % ("k" * 1100), "SP17", 1, 5, "more than 1,000 characters", "shorter"),
        ("a:\n  %s: 1\n" % ("k" * 1100), "SP17", 2, 3, "more than 1,000 characters", "shorter"),
        ("a: 1\nb: {", "SP07", 2, 5, "value is expected", "write a value"),
        ("a: 1\nb: x\u202ey\n", "SP04", 2, 4, "U+202E", "leave it out"),
        ('a: 1\nb: "x\\u2066y"\n', "SP04", 2, 4, "U+2066", "leave it out"),
        ("a: 1\nb: [x, y\u200bz]\n", "SP04", 2, 8, "U+200B", "leave it out"),
        ("a: " + "[" * 60, "SP16", 1, 53, "50 deep", "close"),
        ("a: " + "{x: " * 60, "SP16", 1, 200, "50 deep", "close"),
        ("a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n", "SP12", 1, 4, "`&a`", "types"),
        ("a: *b\n", "SP12", 1, 4, "`*b`", "quotes"),
        ("a: !!int 5\n", "SP13", 1, 4, "!!int", "leave the tag out"),
        ("a: !odd 5\n", "SP13", 1, 4, "!odd", "leave the tag out"),
        ("a: !x!y 1\n", "SP13", 1, 4, "tag", "quotes"),
        ("a: 1\n<<: 2\n", "SP14", 2, 1, "<<", "types"),
        ("a: 1\n---\nb: 2\n", "SP15", 2, 1, "second document", "file of its own"),
        ("a: 1\nb: 2\na: 3\n", "SP11", 3, 1, "`a` is given twice", "keep one"),
        ("a: {b: 1, b: 2}\n", "SP11", 1, 11, "`b` is given twice", "keep one"),
        ("[a, b]: 1\n", "SP17", 1, 1, "where a key is expected", "one word"),
        ("a: {{ name }}\n", "SP17", 1, 5, "template", "one word"),
        (": 5\n", "SP17", 1, 1, "no key", "write a key"),
        ('"": 5\n', "SP17", 1, 1, "no key", "write a key"),
        ("a:\n\u00a0\u00a0b: 1\n", "SP17", 2, 1, "does not show", "web page"),
        ("- 1\n", "SP18", 1, 1, "a list", "project"),
        ("voltage\n", "SP18", 1, 1, "a single value", "project"),
        ('a: "x\nb: 1\n', "SP08", 1, 4, "never closed", 'close it with "'),
        ("a: 1\nb: 'x\n", "SP08", 2, 4, "never closed", "close it with '"),
        ('a: "x\nb: "y"\n', "SP08", 1, 4, "not closed on its line", 'close it with "'),
        ("a: 'it's'\n", "SP10", 1, 8, "after its closing quote", "written twice"),
        ('a: "x" y\n', "SP10", 1, 8, "after its closing quote", "one pair of quotes"),
        ("a: [1, 2\nb: 3\n", "SP09", 1, 4, "`[` is not closed", "end the line with ]"),
        ("a: {x: 1\nb: 3\n", "SP09", 1, 4, "`{` is not closed", "end the line with }"),
        ('a: ["x" "y"]\n', "SP09", 1, 9, "comma or ] is missing", "commas"),
        ("a: [1,,2]\n", "SP09", 1, 7, "`,` stands", "remove it"),
        ("a: ]\n", "SP09", 1, 4, "`]` stands", "remove it"),
        ("a: 1\n}\n", "SP09", 2, 1, "`}` closes nothing", "remove it"),
        ("a: 1\nb 2\nc: 3\n", "SP07", 2, 1, "no colon", "key: value"),
        ("a: 1\nb:2\nc: 3\n", "SP07", 2, 2, "no space after the colon", "with a space"),
        ("a:1\nb: 2\n", "SP07", 1, 2, "no space after the colon", "with a space"),
        ("a: 1\n  b: 2\n", "SP07", 2, 3, "already has a value", "line 1"),
        ("a:\n  b: 1\n c: 2\n", "SP07", 3, 2, "does not line up", "same indentation"),
        ("a: 1\n- b\n", "SP07", 2, 1, "list entry stands among keys", "same indentation"),
        ("- a\nb: 1\n", "SP07", 2, 1, "does not line up", "same indentation"),
        ("-a\nb: 1\n", "SP07", 1, 1, "no space after the dash", "`- `"),
        ("a: - x\n", "SP07", 1, 4, "list cannot begin", "line of its own"),
        ("a: b: c\n", "SP10", 1, 5, "second colon", "quotes"),
        ("a: @x\n", "SP10", 1, 4, "`@`", "quotes"),
        ("a: %x\n", "SP10", 1, 4, "`%`", "quotes"),
        ("a: *\n", "SP10", 1, 4, "`*`", "quotes"),
        ("a: | x\n y\n", "SP10", 1, 4, "several lines", "quotes"),
        ('a: "C:\\plans"\n', "SP19", 1, 7, "escape", "single quotes"),
        ("include: types.yaml\n", "SP20", 1, 10, "not a list", "[types.yaml]"),
        ("include: [types.yaml]\n", "SP21", 1, 11, "no folder", "from a file"),
    ],
)
def test_a_text_that_cannot_be_read_gives_one_finding(
    text: str | bytes, code: str, line: int, column: int, message: str, remedy: str
) -> None:
    source, finding = refusal(text)
    span = source.locate(finding.at)
    assert (finding.code, span.file, span.line, span.column) == (code, NAME, line, column)
    assert message in finding.message
    assert remedy in finding.remedy
    assert RULES[code].explanation


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("a:\n\tb: 1\n", "SP06", 2),
        ("a: 1\nb: 2\na: 3\n", "SP11", 3),
        ('a: "x\nb: 1\n', "SP08", 1),
        ("a: [1, 2\nb: 3\n", "SP09", 1),
        ("a: 1\nb 2\nc: 3\n", "SP07", 2),
        ("a: 1\n  b: 2\n", "SP07", 2),
        ("a:\n  b: 1\n c: 2\n", "SP07", 3),
        ("a: - x\n", "SP07", 1),
        ("a: @x\n", "SP10", 1),
        ("a: | x\n y\n", "SP10", 1),
        ('a: "\\q"\n', "SP19", 1),
        ("a: [1,,2]\n", "SP09", 1),
        ("a: *b\n", "SP12", 1),
        ("a: " + "[" * 1000, "SP16", 1),
    ],
)
def test_the_slow_parser_tells_the_same(text: str, code: str, line: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(compose_module, "_LOADER", yaml.BaseLoader)
    source, finding = refusal(text)
    assert (finding.code, source.locate(finding.at).line) == (code, line)


def test_a_doubled_key_names_both_places() -> None:
    source, finding = refusal("a: 1\nb:\n  c: 1\n  c: 2\n")
    assert [(source.locate(path).line, word) for path, word in finding.also] == [(3, "first given here")]


def test_a_growing_alias_text_is_refused_before_it_grows() -> None:
    lines = ["a0: &a0 [x]"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 40)]
    _, finding = refusal("\n".join(lines))
    assert finding.code == "SP12"


@pytest.mark.parametrize("text", ["a: " + "[" * 1000, "[" * 100_000, "a: " + "{b: " * 5000, "- " * 1000])
def test_deep_nesting_is_refused_and_exhausts_nothing(text: str) -> None:
    assert refusal(text)[1].code == "SP16"


def test_a_file_over_two_megabytes_is_refused() -> None:
    assert refusal("a: " + "x" * 2_000_000)[1].code == "SP02"
    assert len(read_text("a: " + "x" * 1_999_997).data["a"]) == 1_999_997


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_a_byte_order_mark_move_nothing(ending: str, mark: str) -> None:
    text = mark + ending.join(["a: 1", "b:", "  c: 25 m", "  d: [x, yy]", ""])
    source = read_text(text.encode())
    assert source.data == {"a": 1, "b": {"c": "25 m", "d": ["x", "yy"]}}
    span = source.locate(("b", "c"))
    assert (span.line, span.column, span.width) == (3, 6, 4)
    span = source.locate(("b", "d", 1))
    assert (span.line, span.column, span.width) == (4, 10, 2)


PLACES = """\
project:
  name: "Öst"   # two bytes, one column
strings:
  - id: S1
    cable: {length: 25 m, kind: dc}
  -
    id: S2
"""


@pytest.mark.parametrize(
    ("path", "on_key", "line", "column", "width"),
    [
        (("project",), False, 1, 1, 7),
        (("project", "name"), False, 2, 9, 5),
        (("project", "name"), True, 2, 3, 4),
        (("strings", 0), False, 4, 5, 2),
        (("strings", 0, "cable"), False, 5, 12, 24),
        (("strings", 0, "cable"), True, 5, 5, 5),
        (("strings", 0, "cable", "length"), False, 5, 21, 4),
        (("strings", 1, "id"), False, 7, 9, 2),
        # What is not written is shown by the nearest block around it.
        (("strings", 0, "cable", "section"), False, 5, 5, 5),
        (("strings", 9, "id"), False, 3, 1, 7),
        (("project", "name", "deeper"), False, 2, 3, 4),
        ((), False, 1, 1, 1),
        (("nothing",), False, 1, 1, 1),
    ],
)
def test_every_value_has_its_place(path: Any, on_key: bool, line: int, column: int, width: int) -> None:
    span = read_text(PLACES).locate(path, on_key)
    assert (span.line, span.column, span.width) == (line, column, width)


def test_a_file_that_is_not_there_is_a_finding(tmp_path: Path) -> None:
    for path in (tmp_path / "none.yaml", tmp_path):
        with pytest.raises(Unusable) as caught:
            read(path)
        assert caught.value.findings[0].code == "SP01"
        assert str(caught.value).startswith(f"{path}:1:1: SP01")


# YAML 1.1 parsers count U+0085, U+2028 and U+2029 as line breaks (YAML 1.2.2, section 5.4), JSON does not.
# Control characters are refused on purpose.
_SIGNS = st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\u2028\u2029\ufeff\ufffe\uffff")
_TEXT = st.text(_SIGNS, max_size=8)
_JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**15), 10**15) | st.floats(-1e9, 1e9) | _TEXT,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.from_regex("[a-z]{1,6}", fullmatch=True), inner),
    max_leaves=12,
)


@settings(max_examples=30, deadline=None)
@given(
    st.dictionaries(st.from_regex("[b-h]{1,6}", fullmatch=True), _JSON, min_size=1), st.sampled_from([None, 2, "\t"])
)
def test_json_means_what_the_json_module_says(data: dict[str, Any], indent: Any) -> None:
    text = json.dumps(data, ensure_ascii=False, indent=indent)
    assert read_text(text).data == json.loads(text)


def read_or_not(text: str) -> tuple[Source, tuple[Finding, ...]]:
    try:
        return read_text(text, NAME), ()
    except Unusable as unusable:
        return unusable.source, unusable.findings


@settings(max_examples=30, deadline=None)
@given(st.data())
def test_a_mangled_text_is_read_or_refused(data: st.DataObject) -> None:
    text = PLACES
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(text)))
        gone = data.draw(st.integers(0, 5))
        new = data.draw(st.text("\t\n :-[]{}\"'#&*!|>%@`,?\\<a0\r\x00\x85\u2028é", max_size=4))
        text = text[:at] + new + text[at + gone :]
    source, found = read_or_not(text)
    assert isinstance(source.data, dict)
    for finding in found:
        assert finding.code in RULES
        assert finding.message
        assert finding.remedy
        assert 1 <= source.locate(finding.at).line <= len(source.lines(NAME))
