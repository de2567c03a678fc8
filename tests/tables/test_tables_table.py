"""The reader: front matter, exact picks, misses that help, next rows, series."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import sld.tables
from sld.tables.table import NoRow, next_at_least, parse_table, series, table

FRONT = "# title: t\n# unit: A\n# source: a standard\n# edition: 2020\n# status: seen\n"
TEXT = FRONT + "# keys: size, way\nsize,way,i_a,status\n1.5,air,30,\n1.5,wall,29,from memory\n2.5,air,,\n"
NAMES = sorted(path.stem for path in Path(sld.tables.__path__[0]).glob("*.csv"))


@pytest.mark.parametrize("size", [1.5, "1.5"])
def test_pick_finds_a_row_by_number_or_by_word(size: float | str) -> None:
    row = parse_table("capacity", TEXT).pick(size=size, way="air")
    assert row.number("i_a") == 30
    assert row["way"] == "air"


def test_reference_names_table_keys_and_what_is_from_memory() -> None:
    rows = parse_table("capacity", TEXT).rows
    assert str(rows[0].reference) == "t: size 1.5, air"
    assert str(rows[1].reference) == "t: size 1.5, wall (from memory)"
    assert rows[0].source == "a standard"


def test_a_column_that_was_seen_is_cited_without_the_mark_of_its_row() -> None:
    front = FRONT.replace("status: seen", "status: from memory")
    row = parse_table("capacity", front + "size,wall_a,air_a,seen\n1.5,17,20,wall_a\n").rows[0]
    assert str(row.reference_of("wall_a")) == "t: size 1.5"
    assert str(row.reference_of("air_a")) == str(row.reference) == "t: size 1.5 (from memory)"
    with pytest.raises(ValueError, match="seen names no column: roof_a"):
        parse_table("capacity", front + "size,wall_a,seen\n1.5,17,roof_a\n")


@pytest.mark.parametrize(
    ("column", "value", "words"),
    [
        ("section_mm2", "2.5", "section 2.5 mm²"),
        ("circuits_count", "1", "1 circuit"),
        ("loaded_conductors_count", "3", "3 loaded conductors"),
        ("t_ambient_c", "70", "ambient 70 °C"),
        ("arrangement", "two_touching", "two touching"),
    ],
)
def test_a_row_is_cited_in_words_with_units(column: str, value: str, words: str) -> None:
    row = parse_table("x", f"{FRONT}# short: capacity\n{column},i_a\n{value},1\n").rows[0]
    assert str(row.reference) == f"capacity: {words}"


@pytest.mark.parametrize("name", NAMES)
def test_no_name_of_a_program_is_cited(name: str) -> None:
    """What is printed on a drawing has no underscores."""
    assert not [row.reference for row in table(name) if "_" in str(row.reference)]


def test_a_miss_names_the_table_the_keys_and_the_nearest_values() -> None:
    with pytest.raises(NoRow) as caught:
        parse_table("capacity", TEXT).pick(size=2, way="pipe")
    text = str(caught.value)
    assert text == "table t has no row for size 2, pipe; nearest present size: 1.5, 2.5; way: air, wall"


def test_an_empty_cell_and_an_unknown_column_are_misses() -> None:
    capacity = parse_table("capacity", TEXT)
    with pytest.raises(NoRow, match="no value for i_a"):
        capacity.pick(size=2.5).number("i_a")
    with pytest.raises(NoRow, match="no column depth"):
        capacity.pick(depth=1)
    with pytest.raises(NoRow, match="no column depth"):
        capacity.rows[0]["depth"]


def test_more_than_one_row_is_refused() -> None:
    with pytest.raises(ValueError, match=r"2 rows for size 1\.5"):
        parse_table("capacity", TEXT).pick(size=1.5)


@pytest.mark.parametrize(("value", "up", "down"), [(1.5, 1.5, 1.5), (1.500001, 2.5, 1.5), (2.5, 2.5, 2.5)])
def test_at_least_and_at_most_take_the_next_row(value: float, up: float, down: float) -> None:
    capacity = parse_table("capacity", TEXT)
    assert capacity.at_least("size", value, way="air").number("size") == up
    assert capacity.at_most("size", value, way="air").number("size") == down


@pytest.mark.parametrize(("way", "value"), [("at_least", 2.500001), ("at_most", 1.499999)])
def test_beyond_the_ends_there_is_no_row(way: str, value: float) -> None:
    with pytest.raises(NoRow, match="table t has no row"):
        getattr(parse_table("capacity", TEXT), way)("size", value)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (FRONT.replace("# source: a standard\n", "") + "a\n1\n", "lacks source"),
        (FRONT.replace("seen", "guessed") + "a\n1\n", "status must be one of"),
        (FRONT + "a,b\n1\n", "1 cells for 2 columns"),
        (FRONT + "# keys: c\na,b\n1,2\n", "key column c does not exist"),
        ("# no colon here\na\n1\n", "without a colon"),
    ],
)
def test_a_table_that_is_not_well_formed_is_refused(text: str, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        parse_table("broken", text)


def test_an_unknown_table_is_a_miss_that_lists_the_tables() -> None:
    with pytest.raises(NoRow, match=r"no table capacities; there are .*standard_ratings"):
        table("capacities")


@pytest.mark.parametrize("name", NAMES)
def test_every_table_reads_has_rows_and_names_each_row_once(name: str) -> None:
    rows = table(name).rows
    assert rows
    references = [str(row.reference) for row in rows]
    assert len(set(references)) == len(references)
    assert all(row.source for row in rows)


@pytest.mark.parametrize("row", table("standard_ratings").rows, ids=lambda row: row["series"])
def test_every_series_rises(row) -> None:  # type: ignore[no-untyped-def]
    values = series(row["series"])
    assert list(values) == sorted(set(values))


@pytest.mark.parametrize(
    ("name", "members"),
    [
        # https://www.scribd.com/document/93765893/Seleccion-Fusibles-PV, 10x38 gPV links
        ("gpv_fuse_a", {2, 4, 6, 8, 10, 12, 16, 20, 25}),
        # https://www.scribd.com/document/723180093/NH1-1000VDC-gPV-fuse-links-photovoltaic
        ("gpv_fuse_a", {25, 32, 40, 50, 63, 80, 100, 125, 160, 200}),
        # IEC 60898-1, preferred rated currents (from memory)
        ("mcb_a", {6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125}),
        # NEC 240.6(A) (from memory)
        ("nec_240_6_a", {15, 20, 25, 30, 35, 40, 45, 60, 70, 90, 110}),
        # IEC 60228, nominal sections (from memory)
        ("section_mm2", {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300}),
        ("rcd_idn_ma", {30, 100, 300}),
    ],
)
def test_a_series_holds_the_published_members(name: str, members: set[float]) -> None:
    assert members <= set(series(name))


@pytest.mark.parametrize(("value", "answer"), [(0, 10), (16, 16), (16.0000001, 20), (20, 20), (20.0000001, None)])
def test_next_at_least_on_a_limit_beyond_it_and_above_all(value: float, answer: float | None) -> None:
    assert next_at_least((20.0, 10.0, 16.0), value) == answer


def test_next_at_least_of_nothing_is_none() -> None:
    assert next_at_least((), 1.0) is None


@given(st.floats(0, 700, allow_nan=False))
def test_next_at_least_is_enough_and_the_smallest_that_is(value: float) -> None:
    values = series("gpv_fuse_a")
    answer = next_at_least(values, value)
    assert [x for x in values if x >= value][:1] == ([] if answer is None else [answer])


@pytest.mark.parametrize(
    ("name", "last"),
    [
        ("array_insulation_minimum", "array power above 500 kW"),
        ("residual_current_monitor", "apparent power above 30 kVA"),
        ("functional_earth_fuse", "array power above 250 kW"),
    ],
)
def test_a_row_without_an_upper_end_says_what_it_lies_above(name: str, last: str) -> None:
    """`inf` is a word of the files; a drawing says it in words."""
    assert last in str(list(table(name))[-1].reference)
    assert not any(" inf" in str(row.reference) for row in table(name))
