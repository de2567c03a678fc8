"""The mutants of small sources, and that a mutant takes the place of a module that others have imported."""

from __future__ import annotations

import ast
import importlib
import sys
from pathlib import Path

import pytest
from concerned_tests import ROOT, prints
from mutants import mutants_of
from mutate import Choice, Session, told
from mutated_module import put_in_place
from sample import drawn_from
from survivors import compared, read_list


def changes(source: str) -> list[str]:
    return [mutant.change for mutant in mutants_of(ast.parse(source))]


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("y = a < b", ["a < b → a <= b", "a < b → a >= b"]),
        ("y = a == b", ["a == b → a != b"]),
        ("y = a + b", ["a + b → a - b"]),
        ("y = a and b", ["a and b → a or b", "a → not a", "b → not b"]),
        ("y = not a", ["y = not a → y = a"]),
        ("y = 2", ["y = 2 → y = 3", "y = 2 → y = 1"]),
        ("y = 0.5", ["y = 0.5 → y = 0.505"]),
        ("y = True", ["y = True → y = False"]),
        ("y = max(a, b)", ["max → min"]),
        ("y = f(a, b)", ["f: a and b swapped"]),
        ("y = f('a', b)", []),
        ("y = shown(a, 3)", ["shown: a and 3 swapped"]),
        ("y = amount(a, 'A', 3)", []),
        ("y = Rating(a, digits=3)", []),
        ("y = counted('{count} fuse', '{count} fuses', 0)", []),
        ("y = f(Breaker, Fuse)", []),
        ("def f(): return a", ["return a → return None"]),
        ("def f(): yield a", ["yield a dropped"]),
        ("f(a)", ["f(a) dropped"]),
        ("y = 'text'", []),
        ("__all__ = ['f']", []),
        ("@rule('X', 1)\ndef f(a: X | None = None): pass", []),
        ("y = [c for a in b if a]", ["a → not a"]),
        ("y = a > a\nz = a > a", ["a > a → a >= a", "a > a → a <= a", "a > a → a >= a (#2)", "a > a → a <= a (#2)"]),
    ],
)  # fmt: skip
def test_changes(source: str, expected: list[str]) -> None:
    assert changes(source) == expected


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("def f(r): return r.drawn + r.checked", ["r.drawn → r.checked", "r.checked → r.drawn"]),
        ("def f(r): return r.drawn", []),
        ("y = get('Iz')\nz = get('Ib')", ["get: 'Iz' → 'Ib'", "get: 'Ib' → 'Iz'"]),
        ("y = get(a, IZ)\nz = get(b, IB)", ["get: IZ → IB", "get: IB → IZ"]),
        ("y = get('Iz')", []),
        ("y = Block(site=a, customer=b)", ["Block: site and customer swapped"]),
        ("y = {'ac': 'meter', 'dc': 'fuse'}", ["values of 'ac' and 'dc' swapped"]),
        ("y = (a, b)", ["a and b exchanged"]),
        ("y = [a, b]", ["a and b exchanged", "a left out", "b left out"]),
        ("y = f'{a} / {b} A'", ["a and b exchanged in a text"]),
        ("y = f'{a} / {a} A'", []),
        ("y = 0.5", []),
        ("y = phrase('{a} of {b}', a=c, b=d)", ["phrase: a and b swapped"]),
        ("y = phrase('in {a}', a=c)\nz = phrase('at {a}', a=c)\nx = phrase('{b}', b=c)",
         ["phrase: 'in {a}' → 'at {a}'", "phrase: 'at {a}' → 'in {a}'"]),
        ("y = counted('1', '{count}', n)", ["counted: one and many exchanged"]),
        ("y = [line(Role.LIMIT, a)]", ["Role.LIMIT → RATED"]),
        ("y = line(Role.NAME, a)", ["Role.NAME → COMPUTED"]),
        ("y = Cell(a, State.BLANK)", ["State.BLANK → GIVEN"]),
        ("y = get(Symbol.IZ)\nz = get(Symbol.IB)", ["Symbol.IZ → IB", "Symbol.IB → IZ"]),
        ("from sld.documents.cell import computed, given\ny = given(a)", ["given(a) → computed"]),
        ("y = given(a)", []),
    ],
)  # fmt: skip
def test_changes_of_what_picks_a_value(source: str, expected: list[str]) -> None:
    ordinary = changes(source)
    found = [mutant.change for mutant in mutants_of(ast.parse(source), prints=True)]
    assert [change for change in found if change not in ordinary] == expected


def test_a_single_dispatch_and_a_kept_value_are_exchanged(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = (
        "from functools import cache, singledispatch\n"
        "@singledispatch\ndef f(a): return 0\n"
        "@f.register\ndef _(a: int): return 1\n"
        "@f.register\ndef _(a: str): return 2\n"
        "@cache\ndef g(): return 3\n"
    )
    (tmp_path / "mutated_dispatch.py").write_text(source, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    module = importlib.import_module("mutated_dispatch")
    f, g = module.f, module.g
    assert (f(1.5), f(1), f("a"), g()) == (0, 1, 2, 3)
    put_in_place(module, ast.parse(source.replace("return", "return 10 +")))
    assert (f(1.5), f(1), f("a"), g()) == (10, 11, 12, 13)
    del sys.modules["mutated_dispatch"]


def test_a_generator_without_its_yield_is_still_one() -> None:
    tree = ast.parse("def f():\n    yield 1")
    next(mutant for mutant in mutants_of(tree) if mutant.change.endswith("dropped")).put_in()
    names: dict[str, object] = {}
    exec(compile(ast.fix_missing_locations(tree), "f", "exec"), names)
    assert list(names["f"]()) == []  # type: ignore[operator]


def test_importers_see_the_mutant(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = "LIMIT = 10\nclass A:\n    x = 1\n    @property\n    def y(self): return 3\ndef f(a=1): return a + LIMIT\n"
    (tmp_path / "mutated_example.py").write_text(source, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    module = importlib.import_module("mutated_example")
    f, a = module.f, module.A()
    put_in_place(module, ast.parse(source.replace("10", "20").replace("a=1", "a=2").replace("return 3", "return 4")))
    assert (f(), a.y, module.LIMIT) == (22, 4, 20)
    del sys.modules["mutated_example"]


def test_what_is_told_by_its_identity_stays_the_same_object(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    source = "from sld.model.kinds.row import Role\nFIRST = Role('one')\nALL = (FIRST,)\nBY_NAME = {'first': FIRST}\n"
    (tmp_path / "mutated_rows.py").write_text(source, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    module = importlib.import_module("mutated_rows")
    elsewhere = (module.FIRST,)
    put_in_place(module, ast.parse(source.replace("'one'", "'two'")))
    assert elsewhere[0].name == "two"
    assert elsewhere[0] is module.FIRST is module.ALL[0] is module.BY_NAME["first"]
    del sys.modules["mutated_rows"]


def test_sample_is_drawn_from_all_mutants_of_all_files() -> None:
    counts = {"sld/a.py": 2, "sld/b.py": 98, "sld/c.py": 0}
    drawn = drawn_from(counts, 10, seed=1)
    assert sum(map(len, drawn.values())) == 10
    assert drawn == drawn_from(counts, 10, seed=1) != drawn_from(counts, 10, seed=2)
    assert drawn_from(counts, 1000, seed=1) == {"sld/a.py": {0, 1}, "sld/b.py": set(range(98))}
    # 1 of 100 in each of 1000 samples: a file with 2 mutants has some of it 20 times, give or take 4 (binomial)
    times = sum("sld/a.py" in drawn_from(counts, 1, seed) for seed in range(1000))
    assert 5 <= times <= 35


def test_share_of_the_files_and_of_a_sample() -> None:
    assert list(Choice().of("sld/a.py", 4)) == [0, 1, 2, 3]
    assert list(Choice(every=3).of("sld/a.py", 8)) == [0, 3, 6]
    assert list(Choice(about=2).of("sld/a.py", 5)) == [0, 3]
    assert list(Choice(sample={"sld/a.py": frozenset({3})}).of("sld/a.py", 5)) == [3]
    assert list(Choice(sample={}).of("sld/a.py", 5)) == []


def test_a_module_that_fails_as_it_is_is_set_aside(capsys: pytest.CaptureFixture[str]) -> None:
    session = Session([], None, Choice())  # type: ignore[arg-type]
    session.set_aside.append("sld/a.py")
    assert told(session, []) == 1
    assert "sld/a.py: set aside" in capsys.readouterr().out


def test_list_of_survivors() -> None:
    first, second = ("sld/a.py", "f", "a → b"), ("sld/b.py", "f", "a → b")
    assert compared({first: "equal"}, [first], ["sld/a.py"]) == ([], [])
    assert compared({}, [first], ["sld/a.py"]) == ([first], [])
    assert compared({first: "equal", second: "equal"}, [], ["sld/a.py"]) == ([], [first])
    assert all(reason for reason in read_list().values())


@pytest.mark.whole
def test_what_is_listed_can_still_be_tried() -> None:
    listed = read_list()
    sources = {path: ast.parse((ROOT / path).read_text(encoding="utf-8")) for path, _, _ in listed}
    known = {
        (path, each.function, each.change)
        for path, tree in sources.items()
        for each in mutants_of(tree, prints=prints(path))
    }
    assert set(listed) - known == set()
