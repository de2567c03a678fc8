"""Country files: mistakes are told with their line, an operator's file replaces entries, standing is computed."""

from __future__ import annotations

import re
import tomllib
from datetime import date
from pathlib import Path

import pytest

import sld.grid
from sld.grid import GENERIC, BadGridFile, country, known, overridden, rules_of
from sld.grid.evidence import Source, Standing, standing
from sld.grid.read import parse

FOLDER = Path(sld.grid.__file__).parent / "countries"
CODES = (*known(), GENERIC)
DAY = date(2026, 11, 30)

WHEN = 'when = [{quantity = "line_current", sign = ">", limit = 1, unit = "A"}]'
SMALL = """\
code = "GB"
rules = "EREC G98"
edition = "1"

[sources]
page = {mark = "primary", edition = "1", publisher = "an operator", address = "a page", seen_on = 2026-11-30}

[[procedures]]
name = "notify"
when = [{quantity = "line_current", sign = "<=", limit = 16, unit = "A"}]
outcome = "notify_after"
days = 28
clause = "G98"
edition = "1"
sources = ["page"]

[[procedures]]
name = "apply"
outcome = "apply"
clause = "G99"
edition = "1"
sources = ["page"]
"""


@pytest.mark.parametrize("code", CODES)
def test_every_file_is_read(code: str) -> None:
    rules = country(code)
    assert rules.code == code
    assert all(entry.resolved for entry in rules.entries())


@pytest.mark.parametrize(
    ("old", "new", "line", "told"),
    [
        ('sign = "<="', 'sign = "=<"', 10, "'<=', '<', '>' or '>='"),
        ("limit = 16", "limit = -1", 10, "greater than or equal to 0"),
        ('unit = "A"', 'unit = "kVA"', 10, "a limit of line_current is in A, not in `kVA`"),
        ('quantity = "line_current"', 'quantity = "current"', 10, "'line_current'"),
        ('outcome = "notify_after"', 'outcome = "notify"', 11, "'notify_after'"),
        ("days = 28", "days = 28\nstanding = 'confirmed'", 13, "`standing` is not a key here"),
        ("days = 28", "days = 28\nresolved = [{mark = 'primary', edition = '1'}]", 13, "`resolved` is not written"),
        ('outcome = "notify_after"\n', "", 8, "`outcome` is missing"),
        ('sources = ["page"]\n\n', 'sources = ["book"]\n\n', 15, "there is no source `book`"),
        ('mark = "primary"', 'mark = "heard"', 6, "'primary', 'secondary' or 'memory'"),
        ("seen_on = 2026-11-30", 'seen_on = "lately"', 6, "date"),
        ('name = "apply"', 'name = "notify"', 1, "two entries of `procedures` are named `notify`"),
        ('outcome = "apply"', f'outcome = "apply"\n{WHEN}', 1, "the last of `procedures` has conditions"),
        ("days = 28", "days = = 28", 12, "no TOML"),
    ],
)  # fmt: skip
def test_a_bad_entry_is_told_with_its_line(old: str, new: str, line: int, told: str) -> None:
    assert parse(SMALL, "GB.toml").code == "GB"
    with pytest.raises(BadGridFile) as caught:
        parse(SMALL.replace(old, new, 1), "GB.toml")
    assert caught.value.line == line
    assert told in caught.value.reason
    assert str(caught.value).startswith(f"GB.toml:{line}: ")


def source(mark: str, publisher: str = "one", edition: str = "2020") -> Source:
    return Source(mark=mark, edition=edition, publisher=publisher, seen_on=DAY)


@pytest.mark.parametrize(
    ("sources", "confirmed"),
    [
        ([source("primary")], True),
        ([source("primary", edition="2015")], False),
        ([source("secondary")], False),
        ([source("secondary"), source("secondary")], False),  # one publisher twice
        ([source("secondary"), source("secondary", "another")], True),
        ([source("secondary"), source("secondary", "another", "2015")], False),
        ([source("memory")], False),
        ([source("memory"), source("secondary")], False),
        ([source("memory"), source("primary")], True),
    ],
)
def test_what_is_confirmed(sources: list[Source], confirmed: bool) -> None:
    """One primary source of the edition in force, or two independent secondary ones: the definition of this house."""
    assert (standing("2020", sources) is Standing.CONFIRMED) is confirmed
    assert standing("2020", sources, disagreeing=True) is Standing.DISPUTED


@pytest.mark.parametrize("code", CODES)
def test_no_file_says_itself_that_something_is_confirmed(code: str) -> None:
    """Recomputed from the text of the file alone."""
    text = (FOLDER / f"{code}.toml").read_text(encoding="utf-8")
    assert not re.search(r"confirm|standing|override|resolved", text)
    data = tomllib.loads(text)
    groups = [data.get("supply_point", []), *(value for value in data.values() if isinstance(value, list))]
    written = [each for group in groups for each in (group if isinstance(group, list) else [group])]
    found = {}
    for entry in written:
        read = [data["sources"][name] for name in entry["sources"]]
        in_force = [each for each in read if each["edition"] == entry["edition"]]
        several = len({each["publisher"] for each in in_force if each["mark"] == "secondary"}) >= 2
        sure = any(each["mark"] == "primary" for each in in_force) or several
        found[entry["name"], entry.get("clause")] = sure and not entry.get("differs")
    made = {(each.name, each.clause): each.standing is Standing.CONFIRMED for each in country(code).entries()}
    assert made == found


@pytest.mark.parametrize("code", CODES)
def test_what_was_seen_says_where_and_when_and_what_is_from_memory_does_not(code: str) -> None:
    for name, each in country(code).sources.items():
        seen = (each.publisher, each.address, each.seen_on)
        assert all(seen) if each.mark != "memory" else not any(seen), name


@pytest.mark.parametrize("code", CODES)
def test_every_source_is_used(code: str) -> None:
    rules = country(code)
    used = {name for entry in rules.entries() for name in entry.sources}
    used |= {each.source for limit in rules.limits() for each in limit.differs}
    assert set(rules.sources) - {"memory"} <= used


OWN = """\
by = "Merren network"

[[replace]]
entry = "procedures.connect_and_notify"
reason = "conditions of connection 2026, section 3"
days = 14
"""


def test_an_operator_replaces_an_entry_with_a_reason() -> None:
    rules = overridden(country("GB"), OWN, "merren.toml")
    old, new = country("GB").procedures[0], rules.procedures[0]
    assert (old.days, new.days) == (28, 14)
    assert (new.outcome, new.when, new.form) == (old.outcome, old.when, old.form)
    assert new.standing is Standing.OVERRIDDEN
    assert new.override is not None
    assert (new.override.by, new.override.reason) == ("Merren network", "conditions of connection 2026, section 3")
    assert rules.procedures[1:] == country("GB").procedures[1:]


@pytest.mark.parametrize(
    ("old", "new", "line", "told"),
    [
        ("connect_and_notify", "connect_and_notfy", 4, "perhaps `procedures.connect_and_notify`"),
        ('reason = "conditions of connection 2026, section 3"\n', "", 3, "`reason` is missing"),
        ("days = 14", "days = 0", 6, "greater than or equal to 1"),
        ("days = 14", "dayz = 14", 6, "`dayz` is not a key here"),
        ("days = 14", 'when = [{quantity = "line_current", sign = "<=", limit = 10, unit = "kA"}]', 6, "is in A"),
        ("days = 14", 'sources = ["memory"]', 3, "stay as they are"),
        ('by = "Merren network"\n', "", 1, "`by` is missing"),
    ],
)
def test_a_bad_replacement_is_told_with_its_line(old: str, new: str, line: int, told: str) -> None:
    with pytest.raises(BadGridFile) as caught:
        overridden(country("GB"), OWN.replace(old, new, 1), "merren.toml")
    assert caught.value.line == line
    assert told in caught.value.reason


@pytest.mark.parametrize(("code", "taken"), [("DE", "DE"), ("SE", GENERIC), (None, GENERIC)])
def test_where_there_are_no_rules_the_generic_ones_are_taken(code: str | None, taken: str) -> None:
    assert rules_of(code).code == taken


@pytest.mark.parametrize(
    ("address", "short"),
    [
        ("operator.co.uk/pages/type_a.aspx", "operator.co.uk"),
        ("copy at papers.com/document/4, p. 3", "copy at papers.com, p. 3"),
        ("labels.com.au, signage of AS/NZS 4777.1:2024", "labels.com.au, signage of AS/NZS 4777.1:2024"),
        (None, ""),
    ],
)
def test_on_paper_an_address_has_no_path(address: str | None, short: str) -> None:
    source = Source(mark="primary", edition="1", publisher="an operator", address=address, seen_on=DAY)
    assert source.short_address == short
