"""Types files: what may be included, and what is told where it may not."""

from __future__ import annotations

from pathlib import Path

import pytest

from sld.spec.source import Unusable, read

TYPES = "types:\n  modules:\n    M400: {power: 400 W}\n"


def write(folder: Path, **files: str) -> Path:
    """Write NAME.yaml files, `__` in a name parting folders, and return the path of roof.yaml."""
    for name, text in files.items():
        path = folder / (name.replace("__", "/") + ".yaml")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder / "roof.yaml"


def test_types_of_a_file_are_put_under_those_of_the_spec(tmp_path: Path) -> None:
    spec = "include: [lib/types.yaml, more.yaml]\ntypes:\n  modules:\n    M300: {power: 300 W}\n"
    more = "types:\n  cables:\n    C6: {section: 6 mm2}\n"
    source = read(write(tmp_path, roof=spec, lib__types=TYPES, more=more))
    assert source.data["types"] == {
        "modules": {"M300": {"power": "300 W"}, "M400": {"power": "400 W"}},
        "cables": {"C6": {"section": "6 mm2"}},
    }
    there = source.locate(("types", "modules", "M400", "power"))
    assert (Path(there.file), there.line, there.column) == (tmp_path / "lib/types.yaml", 3, 19)
    here = source.locate(("types", "modules", "M300", "power"))
    assert (Path(here.file), here.line) == (tmp_path / "roof.yaml", 4)
    assert source.lines(there.file)[2] == "    M400: {power: 400 W}"


def test_a_spec_without_types_takes_those_of_the_file(tmp_path: Path) -> None:
    source = read(write(tmp_path, roof="include: [types.yaml]\n", types=TYPES))
    assert list(source.data["types"]["modules"]) == ["M400"]


@pytest.mark.parametrize(
    ("spec", "types", "code", "file", "line", "message"),
    [
        ("a: 1\ninclude: [none.yaml]\n", TYPES, "SP21", "roof", 2, "no file `none.yaml`"),
        ("include: [.]\n", TYPES, "SP21", "roof", 1, "no file"),
        ("include: [5]\n", TYPES, "SP20", "roof", 1, "not a list of file names"),
        ("include: [../types.yaml]\n", TYPES, "SP22", "roof", 1, "outside"),
        ("include: [/etc/hostname]\n", TYPES, "SP22", "roof", 1, "outside"),
        ("include: [link.yaml]\n", TYPES, "SP22", "roof", 1, "outside"),
        ("include: [roof.yaml]\n", TYPES, "SP25", "roof", 1, "already part"),
        ("include: [types.yaml, ./types.yaml]\n", TYPES, "SP25", "roof", 1, "already part"),
        ("include: [types.yaml]\n", "include: [roof.yaml]\n" + TYPES, "SP23", "types", 1, "cannot hold `include`"),
        ("include: [types.yaml]\n", TYPES + "site: {}\n", "SP23", "types", 4, "cannot hold `site`"),
        ("include: [types.yaml]\n", "types: [1]\n", "SP23", "types", 1, "not a block"),
        ("include: [types.yaml]\n", "types:\n\tx: 1\n", "SP06", "types", 2, "tab"),
        ("include: [types.yaml]\n", "", "SP05", "types", 1, "nothing in the file"),
        ("include: [types.yaml]\n" + TYPES, TYPES, "SP24", "types", 3, "`M400` is defined twice"),
        ("include: [types.yaml]\ntypes: [1]\n", TYPES, "SP34", "roof", 2, "not a block"),
    ],
)
def test_what_cannot_be_included_is_told_at_its_place(
    tmp_path: Path, spec: str, types: str, code: str, file: str, line: int, message: str
) -> None:
    write(tmp_path, types=TYPES)
    home = tmp_path / "home"
    path = write(home, roof=spec, types=types)
    (home / "link.yaml").symlink_to(tmp_path / "types.yaml")
    with pytest.raises(Unusable) as caught:
        read(path)
    (finding,) = caught.value.findings
    span = caught.value.source.locate(finding.at)
    assert (finding.code, Path(span.file).stem, span.line) == (code, file, line)
    assert message in finding.message


def test_a_doubled_type_names_both_files(tmp_path: Path) -> None:
    path = write(tmp_path, roof="include: [one.yaml, two.yaml]\n", one=TYPES, two="# a comment\n" + TYPES)
    with pytest.raises(Unusable) as caught:
        read(path)
    (finding,), source = caught.value.findings, caught.value.source
    places = [source.locate(finding.at), *(source.locate(each) for each, _ in finding.also)]
    assert [(Path(span.file).name, span.line) for span in places] == [("two.yaml", 4), ("one.yaml", 3)]


def test_outside_is_allowed_when_asked_for(tmp_path: Path) -> None:
    write(tmp_path, types=TYPES)
    path = write(tmp_path / "home", roof="include: [../types.yaml]\n")
    assert "modules" in read(path, allow_outside=True).data["types"]
