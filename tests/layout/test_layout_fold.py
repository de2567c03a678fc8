"""Equal branches are drawn once and counted; what differs in anything drawn or printed is never folded.

That of equal branches one is drawn with their number is common practice of single-line diagrams, no source.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

import pytest
from diagrams import systems
from hypothesis import given
from hypothesis import strategies as st
from lettering import above, below, drawn, texts
from plan_check import all_cells, defects
from plan_reader import chained as on_chains
from some_examples import examples
from test_arrange import check_reading

from sld.layout.diagram.bus_words import bus_lines
from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, Enclosure, Join, LineKind
from sld.layout.diagram.fold import FOLD_FROM, folded
from sld.layout.diagram.line import Line, Role
from sld.layout.passes.arrange import arrange
from sld.spec.blocks.project import Drawing
from sld.symbols import catalogue
from sld.words import verbatim

Change = Callable[[Cell], Cell]


def branch(number: int, box: str = "", board: str = "u") -> Cell:
    """A way of a board: fuse, inverter with two inputs, a string behind each; the isolator of each in a box."""
    t = f"-TB{number}"
    inputs = tuple(
        drawn(f"q{number}.{i}", "switch_disconnector", (f"{t}-QB{i}",), ("800 V",), enclosure=box, kind=LineKind.DC,
             children=(drawn(f"g{number}.{i}", "pv_string", (f"{t}-GC{i}",), ("18 × 410 W",), aligned="string",
                            earth="-WE4", kind=LineKind.DC),))
        for i in (1, 2)
    )  # fmt: skip
    inverter = drawn(
        f"t{number}", "inverter_3ph", (t,), ("100 kW",), aligned="inverter", join=Join.SPAN, children=inputs
    )
    return drawn(f"f{number}", "fuse", (f"{t}-FC1",), ("200 A gG",), enclosure=board, children=(inverter,))


def board(*branches: Cell, boxes: int = 0, chains: tuple[BusChain, ...] = (), captions: str = "-XD{} box") -> Diagram:
    bar = drawn("u", "busbar", ("-UC1",), enclosure="u", join=Join.SPAN, children=branches)
    enclosures = [
        Enclosure("u", verbatim("-UC1 board")),
        *(Enclosure(f"x{n}", verbatim(captions.format(n))) for n in range(1, boxes + 1)),
    ]
    free = (drawn("k", "logger", ("-KF1",)),) if chains else ()
    return Diagram(drawn("n", "network", ("-GA1",), children=(bar,)), tuple(enclosures), free, chains)


def changed(cell: Cell, symbol: str, change: Change) -> Cell:
    """The branch with its first cell of a symbol changed."""
    if cell.symbol == symbol:
        return change(cell)
    first, *others = cell.children
    return replace(cell, children=(changed(first, symbol, change), *others))


def tops(diagram: Diagram) -> list[tuple[str, ...]]:
    """The lines above the first cell of each branch of the board."""
    return [texts(cell.above) for cell in diagram.root.children[0].children]


def ways(*changes: tuple[int, str, Change], count: int = 5) -> list[Cell]:
    found = [branch(number) for number in range(1, count + 1)]
    for number, symbol, change in changes:
        found[number - 1] = changed(found[number - 1], symbol, change)
    return found


def names(count: int) -> list[list[str]]:
    return [[f"-TB{n}-FC1"] for n in range(1, count + 1)]


@pytest.mark.parametrize(
    ("count", "fold_from", "expected"),
    [
        (3, 4, names(3)),
        (4, 4, [["4 ×", "-TB1…4-FC1"]]),
        (60, 4, [["60 ×", "-TB1…60-FC1"]]),
        (4, 5, names(4)),
        (2, 2, [["2 ×", "-TB1…2-FC1"]]),
        (1, 2, names(1)),
    ],
)
def test_so_many_equal_branches_are_drawn_once(count: int, fold_from: int, expected: list[list[str]]) -> None:
    diagram = folded(board(*ways(count=count)), fold_from)
    assert [list(lines) for lines in tops(diagram)] == expected
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    check_reading(plan, diagram)


def test_a_diagram_is_folded_from_as_many_as_a_spec() -> None:
    assert Drawing().draw_once_from == FOLD_FROM


@pytest.mark.parametrize("fold_from", [1, 0, -4])
def test_one_branch_is_not_folded(fold_from: int) -> None:
    with pytest.raises(ValueError, match="from 2 on"):
        folded(board(*ways()), fold_from)


def named(text: str) -> Change:
    return lambda cell: replace(cell, above=(*above(text), *cell.above[1:]))


DIFFERENCES: list[tuple[str, str, Change]] = [
    ("value", "pv_string", lambda cell: replace(cell, below=below("17 × 410 W"))),
    ("line more", "pv_string", lambda cell: replace(cell, below=(*cell.below, *below("roof B")))),
    ("flag", "switch_disconnector", lambda cell: replace(cell, flags=(3,))),
    ("symbol", "switch_disconnector", lambda cell: replace(cell, symbol="fuse")),
    ("status", "inverter_3ph", lambda cell: replace(cell, status="existing")),
    ("earth", "pv_string", lambda cell: replace(cell, earth=above("-WE5")[0])),
    ("earth symbol", "pv_string", lambda cell: replace(cell, earth_symbol="functional_earth")),
    ("conductor", "switch_disconnector", lambda cell: replace(cell, kind=LineKind.AC)),
    ("alignment", "pv_string", lambda cell: replace(cell, aligned="")),
    ("join", "inverter_3ph", lambda cell: replace(cell, join=Join.TRUNK)),
    ("branch less", "inverter_3ph", lambda cell: replace(cell, children=cell.children[:1])),
    ("other name", "inverter_3ph", named("-TB3a")),
    ("number left out", "inverter_3ph", named("-TB7")),
    (
        "second name",
        "inverter_3ph",
        lambda cell: replace(cell, above=(*cell.above, Line(Role.NAME, verbatim("south")))),
    ),
    ("two numbers", "fuse", named("-TB3-FC3")),
    ("out of the board", "fuse", lambda cell: replace(cell, enclosure="")),
]


@pytest.mark.parametrize(("symbol", "change"), [row[1:] for row in DIFFERENCES], ids=[row[0] for row in DIFFERENCES])
def test_a_branch_that_differs_stays_by_itself(symbol: str, change: Change) -> None:
    diagram = board(*ways((3, symbol, change)))
    assert folded(diagram, 4) is diagram
    pairs = folded(diagram, 2)
    assert [lines[0] for lines in tops(pairs)][::2] == ["2 ×", "2 ×"]
    assert len(tops(pairs)) == 3


@pytest.mark.parametrize("symbol", ["pv_string", "switch_disconnector", "inverter_3ph", "fuse"])
def test_branches_equal_in_the_same_change_are_folded(symbol: str) -> None:
    flagged = [(n, symbol, lambda cell: replace(cell, flags=(3,))) for n in range(1, 6)]
    assert tops(folded(board(*ways(*flagged)))) == [("5 ×", "-TB1…5-FC1")]


def boxed(*names: str, **options: object) -> Diagram:
    return board(*(branch(n, box) for n, box in enumerate(names, 1)), boxes=6, **options)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("boxes", "expected"),
    [
        (["x1", "x2", "x3", "x4"], ["-UC1 board", "-XD1…4 box", "-XD5 box", "-XD6 box"]),
        (["x2", "x3", "x4", "x5"], ["-UC1 board", "-XD1 box", "-XD2…5 box", "-XD6 box"]),
        (["x1", "x1", "x1", "x1"], ["-UC1 board", *(f"-XD{n} box" for n in range(1, 7))]),
    ],
    ids=["a box each", "numbers of their own", "one box around all"],
)
def test_boxes_fold_with_their_branches(boxes: list[str], expected: list[str]) -> None:
    diagram = folded(boxed(*boxes))
    assert len(tops(diagram)) == 1
    assert [str(each.caption) for each in diagram.enclosures] == expected


@pytest.mark.parametrize(
    "boxes",
    [["x1", "x1", "x2", "x2"], ["x1", "x2", "x3", ""], ["x1", "x2", "x4", "x5"], ["x1", "x2", "x1", "x2"]],
    ids=["two by two", "one without", "a number left out", "in turn"],
)
def test_branches_in_boxes_otherwise_shared_are_not_folded(boxes: list[str]) -> None:
    assert len(tops(folded(boxed(*boxes)))) == 4


def test_equal_inputs_fold_within_equal_branches() -> None:
    def way(number: int) -> Cell:
        inputs = tuple(
            drawn(f"i{number}.{i}", "terminal", (f"-TB{number}-XD{i}", f"input {i}"), children=(
                drawn(f"g{number}.{i}", "pv_array", (f"-TB{number}-GC{2 * i - 1}…{2 * i}",)),))
            for i in range(1, 11)
        )  # fmt: skip
        return drawn(f"t{number}", "inverter_3ph", (f"-TB{number}",), join=Join.SPAN, children=inputs)

    diagram = folded(board(*(way(n) for n in range(1, 51))))
    inverter, terminal, strings = all_cells(diagram)[2:]
    assert texts(inverter.above) == ("50 ×", "-TB1…50")
    assert texts(terminal.above) == ("10 ×", "-TB1…50-XD1…10", "input 1…10")
    assert texts(strings.above) == ("-TB1…50-GC1…20",)
    assert [1 + len(cell.alike) for cell in (inverter, terminal, strings)] == [50, 500, 500]


Step = tuple[str, int | None, bool]
"""Device, address, terminated."""


def chained(*steps: Step, count: int = 5) -> Diagram:
    names = {"k": "-KF1", **{f"t{n}": f"-TB{n}" for n in range(1, 6)}}
    chain = BusChain("bus", steps=tuple(BusStep(key, names[key], *setting) for key, *setting in steps))  # type: ignore[arg-type]
    return board(*ways(count=count), chains=(chain,))


def told(diagram: Diagram) -> list[tuple[str, str]]:
    """Each device of the chain, and what is written beside it."""
    written = {key: str(line.said) for key, line in bus_lines(diagram.chains[0])}
    return [(step.key, written.get(step.key, "")) for step in diagram.chains[0].steps]


LOGGER = ("k", None, False)
ADDRESSED: list[Step] = [(f"t{n}", n, False) for n in range(1, 6)]


def addressed(*addresses: int | None, ends: tuple[int, ...] = ()) -> list[Step]:
    return [(f"t{n}", address, n in ends) for n, address in enumerate(addresses, 1)]


@pytest.mark.parametrize(
    ("steps", "expected"),
    [
        ([LOGGER, *ADDRESSED], [("k", ""), ("t1", "addr. 1…5")]),
        ([*ADDRESSED[::-1], LOGGER], [("t1", "addr. 1…5"), ("k", "")]),
        ([("k", None, True), *addressed(1, 2, 3, 4, 5, ends=(5,))],
         [("k", ""), ("t1", "addr. 1…5, 120 Ω at -TB5")]),
        ([LOGGER, *addressed(7, 3, 5, 9, 2)], [("k", ""), ("t1", "addr. 7, 3, 5, 9, 2")]),
        ([LOGGER, *addressed(7, None, 5, 9, 2)], [("k", ""), ("t1", "addr. see schedule")]),
        ([LOGGER, *addressed(None, 4, None, None, None)], [("k", ""), ("t1", "addr. 4 at -TB2")]),
        ([LOGGER, *addressed(1, 2, 3, 4, 5, ends=(1, 3, 5))], [("k", ""), ("t1", "addr. 1…5, 120 Ω at 3 of 5")]),
        ([LOGGER, *addressed(1, 2, 3, 4, 5, ends=(1, 2, 3, 4, 5))], [("k", ""), ("t1", "addr. 1…5")]),
    ],
)  # fmt: skip
def test_a_chain_is_led_through_the_drawn_one(steps: list[Step], expected: list[tuple[str, str]]) -> None:
    diagram = folded(chained(*steps))
    assert told(diagram) == expected
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    check_reading(plan, diagram)


@pytest.mark.parametrize(
    "steps",
    [
        [*ADDRESSED[:3], LOGGER, *ADDRESSED[3:]],
        ADDRESSED[:3],
        [ADDRESSED[n] for n in (0, 2, 1, 4, 3)],
    ],
    ids=["another device between", "some not on the chain", "in another order"],
)
def test_branches_with_other_places_on_a_chain_are_not_folded(steps: list[Step]) -> None:
    diagram = chained(*steps)
    assert len(tops(folded(diagram))) > 1
    assert on_chains(folded(diagram)) == on_chains(diagram)
    assert len(tops(folded(diagram, 2))) < 5


def stands_for(diagram: Diagram) -> Counter[str]:
    return Counter(key for cell in all_cells(diagram) for key in (cell.key, *cell.alike))


def check_folding(diagram: Diagram, fold_from: int) -> None:
    before = {cell.key: cell for cell in all_cells(diagram)}
    after = folded(diagram, fold_from)
    assert stands_for(after) == Counter(list(before))
    symbols = Counter(cell.symbol for cell in before.values())
    assert sum((Counter({c.symbol: 1 + len(c.alike)}) for c in all_cells(after)), Counter()) == symbols
    for cell in all_cells(after):
        for key in cell.alike:
            one, other = before[cell.key], before[key]
            assert (one.symbol, one.below, one.flags, one.earth, one.status, one.kind, one.join) == (
                other.symbol, other.below, other.flags, other.earth, other.status, other.kind, other.join
            )  # fmt: skip
    assert {step.key for chain in after.chains for step in chain.steps} <= {cell.key for cell in all_cells(after)}
    plan = arrange(after, catalogue)
    assert [text for text in defects(plan, after) if not text.startswith("data wire")] == []
    check_reading(plan, after)


def copied(cell: Cell, mark: str, number: int, board: str) -> Cell:
    """The branch with other keys, each designation begun with a number of its own, in the board or boxes of its own."""
    box = f"{cell.enclosure}/{mark}{number}" if cell.enclosure not in ("", board) else cell.enclosure
    children = tuple(copied(child, mark, number, board) for child in cell.children)
    names = (*above(f"-C{number}{cell.above[0].said}"), *cell.above[1:]) if cell.above else ()
    return replace(cell, key=f"{cell.key}/{mark}{number}", above=names, enclosure=box, children=children)


@st.composite
def repeated(draw: st.DrawFn) -> Diagram:
    """A system with each way of its boards there several times, in boxes of its own."""
    diagram = draw(systems())

    def grown(cell: Cell) -> Cell:
        children = [grown(child) for child in cell.children]
        if cell.symbol == "busbar":
            children = [
                copied(child, f"{place}.", number, cell.enclosure)
                for place, child in enumerate(children)
                for number in range(1, draw(st.integers(1, 4)) + 1)
            ]
        return replace(cell, children=tuple(children))

    root = grown(diagram.root)
    boxes = {cell.enclosure: None for cell in all_cells(Diagram(root)) if cell.enclosure}
    enclosures = tuple(Enclosure(name, verbatim(f"-X{name}")) for name in boxes)
    return Diagram(root, enclosures, earth=diagram.earth)


@examples(10)
@given(repeated(), st.integers(2, 4))
def test_folding_counts_as_before_and_joins_equal_ones_only(diagram: Diagram, fold_from: int) -> None:
    if len(all_cells(diagram)) < 400:
        check_folding(diagram, fold_from)


def test_folding_is_the_same_each_time_and_done_once() -> None:
    once = folded(board(*ways()))
    assert folded(board(*ways())) == once
    assert folded(once) is once


def test_a_deep_tree_is_no_limit() -> None:
    cell = drawn("c0", "fuse", ("-F0",))
    for number in range(1, 3000):
        cell = drawn(f"c{number}", "fuse", (f"-F{number}",), children=(cell,))
    diagram = Diagram(cell)
    assert folded(diagram) is diagram


def test_places_of_branches_that_differ_in_lengths_are_told_from_the_first_to_the_last() -> None:
    def placed(number: int) -> Change:
        place = Line(Role.PLACE, verbatim(f"block {number}"))
        return lambda cell: replace(cell, below=(*cell.below, place))

    made = folded(board(*ways(*((n, "fuse", placed(n)) for n in range(1, 6)))), but_for_lengths=True)
    (fuse,) = made.root.children[0].children
    assert texts(fuse.below) == ("200 A gG", "block 1…5")


def test_boards_of_inverters_on_one_chain_are_drawn_once_too() -> None:
    """Four boards of two inverters: in the order of the chain the second board goes on where the first one ends."""
    boards = [
        drawn(f"b{n}", "busbar", (f"-UC{n + 2}",), join=Join.SPAN, children=(branch(2 * n + 1), branch(2 * n + 2)))
        for n in range(4)
    ]
    chain = BusChain("bus", steps=(BusStep("k"), *(BusStep(f"t{n}") for n in range(1, 9))))
    made = folded(board(*boards, chains=(chain,)), 2)
    assert tops(made) == [("4 ×", "-UC2…5")]
    assert [len(step.alike) for step in made.chains[0].steps] == [0, 8]
