"""Where values are from: a standard, a handbook, a maker's or a code body's page, or memory; never a program."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from package import PACKAGE, ROOT

REFUSED = {
    r"git(?:hub|lab|ea)|bitbucket|sourceforge|codeberg": "a host of code repositories: what stands there is a program",
    r"pypi\.|npmjs|crates\.io|docs\.rs|packagist": "a registry of packages: what stands there is a program",
    r"huggingface|kaggle": "a collection of data without a publisher who answers for it",
    r"repositor(?:y|ies)": "a repository holds a program, or what one person collected for it",
    r"source code|public (?:code|programs?)|open source": "a program says what its author took for right",
    r"public excerpts?|code index": "excerpts of code; who prints the value must be named",
    r"https?://\S+\.(?:js|ts|py|rs|java|cs|md)\b": "a file of a program",
    r"pvlib|pandapower": "a general library: it checks results in tests/reference, it is no source of a value",
}
"""What a source may not be, with the reason. The words are looked for in any case."""

ALLOWED_LINES = {
    "tests/spec/test_spec_source.py": "its type repository",  # a part of the YAML 1.1 standard is called that
    "tests/fuzz/fuzz.py": "those of the repository",  # the specs of this house, no value
}


def _found(text: str) -> list[str]:
    return [f"{match[0]} ({why})" for word, why in REFUSED.items() if (match := re.search(word, text, re.IGNORECASE))]


def _of_tables() -> Iterator[tuple[str, str]]:
    """Yield place and text of every line of the tables and of the grid rules of countries."""
    for path in (*sorted((PACKAGE / "tables").glob("*.csv")), *sorted((PACKAGE / "grid").rglob("*.toml"))):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            yield f"{path.name}:{number}", line


def _of_tests() -> Iterator[tuple[str, str]]:
    """Yield place and text of every line of the tests, without those that compare with general libraries."""
    tests = ROOT / "tests"
    skipped = {tests / "reference", tests / "house"}
    for path in sorted((*tests.rglob("*.py"), *tests.rglob("*.yaml"))):
        if skipped.isdisjoint(path.parents):
            place = path.relative_to(ROOT).as_posix()
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if not (place in ALLOWED_LINES and ALLOWED_LINES[place] in line):
                    yield f"{place}:{number}", line


def test_no_table_takes_a_value_from_a_program() -> None:
    wrong = [f"{place}: {found}" for place, line in _of_tables() for found in _found(line)]
    assert not wrong, "\n".join(wrong)


def _of_docstrings() -> Iterator[tuple[str, str]]:
    """Yield place and text of every line of the package that names a source."""
    for path in sorted(PACKAGE.rglob("*.py")):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if re.search(r"\bSources?:|\bseen\b|https?://", line):
                yield f"{path.relative_to(ROOT).as_posix()}:{number}", line


def test_no_docstring_takes_a_value_from_a_program() -> None:
    wrong = [f"{place}: {found}" for place, line in _of_docstrings() for found in _found(line)]
    assert not wrong, "\n".join(wrong)


def test_no_test_takes_a_value_from_a_program() -> None:
    wrong = [f"{place}: {found}" for place, line in _of_tests() for found in _found(line)]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize(
    "line",
    [
        "# source: NEC Table 310.16; also https://github.com/someone/something",
        "# note: seen alike in the source code of two programs",
        "# note: rows up to 1.75 m seen in public code",
        "COPPER = 'https://example.org/code/tables.js'",
        "copper wire table of a textbook; repository Someone/lessons",
        "# note: reproduced by an independent network library (pandapower 3.5.6)",
    ],
)
def test_what_is_refused(line: str) -> None:
    assert _found(line)


@pytest.mark.parametrize(
    "line",
    [
        "# source: IEC 60269-1 Table 3; seen in the manual of a loop tester, https://manualshive.com/manual?page=28",
        "# note: heat balance in test_tables_direct_current.py",
        "from sld.tables.table import table",
    ],
)
def test_what_is_a_source_or_no_source_line(line: str) -> None:
    assert not _found(line)


def test_no_allowed_line_is_forgotten() -> None:
    for place, words in ALLOWED_LINES.items():
        assert words in Path(ROOT / place).read_text(encoding="utf-8")
