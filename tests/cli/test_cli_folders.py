"""`sld draw` and `sld check` over folders, patterns and lists: what is found, where files go, how a run closes."""

from __future__ import annotations

from pathlib import Path

import pytest
from command import ROOT, SMALL, sld

from sld.files import RECORD_NAME

TYPES = "types:\n" + SMALL.split("types:\n")[1].split("inverters:\n  roof")[0]
SPEC = SMALL.replace("types:\n" + TYPES.removeprefix("types:\n"), "include: [types/all.yaml]\n")
UNUSABLE = SMALL.replace("phases: 1, voltage", "phase: 1, voltage")


@pytest.fixture
def tree(tmp_path: Path) -> Path:
    """Four specs, one of them unusable, beside what is no spec."""
    root = tmp_path / "designs"
    for name, text in {
        "north/barn.yaml": SPEC,
        "north/types/all.yaml": TYPES,
        "north/near/well.yml": SMALL,
        "south/barn.yaml": '{"project": {"title": "T"}, ' + "\n}",
        "top.yaml": SMALL,
        "notes.yaml": "title: nothing of this is a spec\nitems: [1, 2]\n",
        "notes.strokes": "none either",
        ".old/barn.yaml": SMALL,
        "south/.barn.yaml": SMALL,
    }.items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")
    return root


def drawn(folder: Path) -> set[str]:
    found = (path for path in folder.rglob("*") if path.is_file() and path.parent.name != RECORD_NAME)
    return {path.relative_to(folder).as_posix() for path in found if path.stem[-2:-1] != "-"}


ALL = {"north/barn.strokes", "north/near/well.strokes", "top.strokes"}


def test_the_specs_of_a_folder_are_drawn_below_the_output_folder_as_they_lie(tree: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    result = sld("draw", tree, "-o", out, "--to", "strokes")
    assert result.exit_code == 2
    assert drawn(out) == ALL
    assert f"{tree}: left out, as not a spec: {tree / 'north/types/all.yaml'}, {tree / 'notes.yaml'}" in result.stderr
    *_, failure, closing = result.stderr.splitlines()
    assert closing == "4 checked: 3 clean, 1 unusable"
    assert sld("check", tree, "--fail-on", "advice").stderr.endswith("4 checked: 3 with findings, 1 unusable\n")
    assert failure.startswith(f"{tree / 'south/barn.yaml'}:1:")
    assert " SP" in failure
    first = [line for line in result.stdout.splitlines() if Path(line).stem[-2:-1] != "-"]
    assert first == [str(out / name) for name in sorted(ALL)]


def test_the_output_folder_is_not_searched(tree: Path) -> None:
    """A spec that somebody keeps among the drawings."""
    out = tree / "out"
    out.mkdir()
    (out / "kept.yaml").write_text(SMALL, encoding="utf-8")
    assert sld("draw", tree, "-o", out, "--to", "strokes").exit_code == 2
    assert drawn(out) == {*ALL, "kept.yaml"}
    assert f"\n{out / 'kept.yaml'}: " in sld("check", tree).stdout


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (["north"], {"barn.strokes", "near/well.strokes"}),
        (["north/near/../barn.yaml", "top.yaml"], {"barn.strokes", "top.strokes"}),
        (["t*.yaml"], {"top.strokes"}),
        (["north/**"], {"barn.strokes", "near/well.strokes"}),
        (["*/near/*.y*ml"], {"north/near/well.strokes"}),
        (["n*h"], {"north/barn.strokes", "north/near/well.strokes"}),
        (["top.yaml", "top.yaml", "t*.yaml"], {"top.strokes"}),
    ],
)
def test_files_folders_and_patterns(tree: Path, tmp_path: Path, words: list[str], names: set[str]) -> None:
    out = tmp_path / "out"
    result = sld("draw", *(tree / word for word in words), "-o", out, "--to", "strokes")
    assert (result.exit_code, drawn(out)) == (0, names), result.stderr


def test_a_list_on_standard_input(tree: Path, tmp_path: Path) -> None:
    listed = f"{tree / 'top.yaml'}\n\n{tree / 'north'}\n-\n".encode()
    result = sld("draw", "-", "-o", tmp_path / "out", "--to", "strokes", listed=listed)
    assert result.exit_code == 0, result.stderr
    assert drawn(tmp_path / "out") == {"top.strokes", "barn.strokes", "near/well.strokes"}


def test_specs_of_two_folders_with_one_name_are_refused_in_one_line(tree: Path, tmp_path: Path) -> None:
    result = sld("draw", tree / "north", tree / "south", "-o", tmp_path / "out", "--to", "strokes")
    assert result.exit_code == 2
    one, other = tree / "north/barn.yaml", tree / "south/barn.yaml"
    assert f"{one} and {other} would both be drawn to barn.*" in result.stderr
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("word", "told"), [("empty", "there is no spec in this folder"), ("x*.yaml", "no file matches this pattern")]
)
def test_where_nothing_is_found_the_others_are_done(tree: Path, word: str, told: str) -> None:
    (tree / "empty").mkdir()
    result = sld("check", tree / word, tree / "top.yaml")
    assert result.exit_code == 2
    assert f"{tree / word}: {told}" in result.stderr
    assert f"{tree / 'top.yaml'}: " in result.stdout


def test_the_closing_counts_each_state_and_names_each_failure(tree: Path, tmp_path: Path) -> None:
    """FARM has findings; a text in the place of a sheet is not replaced; two mistakes are one line."""
    (tree / "south/barn.yaml").write_text(UNUSABLE.replace("phases: 1\n", "phase: 1\n"), encoding="utf-8")
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "top.strokes").write_text("mine", encoding="utf-8")
    farm = ROOT / "specs" / "upper-farm-faulty.yaml"
    result = sld("draw", tree, farm, "-o", tmp_path / "out", "--to", "strokes")
    assert result.exit_code == 2
    *_, bad, refused, closing = result.stderr.splitlines()
    assert closing == "5 checked: 2 clean, 1 with findings, 1 unusable, 1 not written"
    assert bad.startswith(f"{tree / 'south/barn.yaml'}:3:")
    assert bad.endswith("; and 1 more")
    assert refused == f"{tree / 'top.yaml'}: not written: drawing"
    assert "checked: " not in sld("check", tree / "top.yaml").stderr


def test_a_fault_of_ours_at_one_spec_is_closed_with_the_rest(tree: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from sld import run

    check = run.check

    def broken(path: Path, **asked: bool) -> run.Checked:
        if path.name == "top.yaml":
            raise ZeroDivisionError("by nought")
        return check(path, **asked)

    monkeypatch.setattr(run, "check", broken)
    result = sld("check", tree)
    assert result.exit_code == 3
    *_, fault, closing = result.stderr.splitlines()
    assert fault.startswith(f"{tree / 'top.yaml'}: ZeroDivisionError: by nought (")
    assert closing == "4 checked: 2 clean, 1 unusable, 1 failed"


def test_a_spec_is_known_by_the_keys_that_it_must_have() -> None:
    from sld.spec.document import Spec
    from sld.spec.is_spec import REQUIRED

    assert {name for name, key in Spec.model_fields.items() if key.is_required()} == REQUIRED
