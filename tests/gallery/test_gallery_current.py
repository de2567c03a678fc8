"""The files in gallery/ are those that the specs, blocks, rules, tables and symbols of today give."""

from __future__ import annotations

import re
import struct
from io import BytesIO
from pathlib import Path

import pytest
from example_specs import SPECS, checked, document
from PIL import Image

from sld import run
from sld.gallery import drawings
from sld.gallery.pages import HAND_WRITTEN, ROOT, pages, strangers
from sld.sheet.compose import Composition

GALLERY = ROOT / "gallery"
COMMAND = "run `python -m sld.gallery` and look at what changed"


@pytest.fixture(scope="module")
def made() -> dict[str, bytes]:
    """The pages and pictures; PNG, of which the size is compared, without their palettes, which take half of the time.

    What other tests draw too, as each spec in English is, is drawn once.
    """
    english = {
        id(found): path
        for path in SPECS
        if (found := checked(path)).source.data.get("project", {}).get("language", "en") == "en"
    }

    def drawn(found: run.Checked) -> Composition:
        return document(english[id(found)], "drawing") if id(found) in english else _DRAW(found)

    def read(path: Path) -> run.Checked:
        return checked(path) if id(checked(path)) in english else _CHECK(path)

    with pytest.MonkeyPatch.context() as changed:
        changed.setattr(drawings, "_in_few_tints", bytes)
        changed.setattr(run, "draw", drawn)
        changed.setattr(run, "check", read)
        return pages(ROOT / "specs")


_DRAW, _CHECK = run.draw, run.check


def pixels(content: bytes) -> tuple[int, int]:
    """Return width and height of a PNG: the first two numbers of its header chunk (PNG specification, 11.2.2)."""
    assert content[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", content[16:24])
    return width, height


def without_font(content: bytes) -> bytes:
    """Return an SVG without the packed font: how it is compressed depends on the versions of zlib and fonttools."""
    return re.sub(rb"(font/woff;base64,)[A-Za-z0-9+/=]+", rb"\1", content)


def differing(made: dict[str, bytes], folder: Path) -> list[str]:
    """Return the names of files that are missing or differ from what is made."""
    found = []
    for name, content in made.items():
        path = folder / name
        if not path.is_file():
            found.append(f"{name} is missing")
            continue
        there = path.read_bytes()
        if name.endswith(".png"):
            # pictures differ from one version of cairo to the next, so only their size is compared
            same = pixels(there) == pixels(content)
        else:
            same = without_font(there) == without_font(content)
        if not same:
            found.append(f"{name} differs")
    return found


def test_files_are_current(made: dict[str, bytes]) -> None:
    found = differing(made, GALLERY)
    assert not found, f"{'; '.join(found)}: {COMMAND}"


def test_no_file_is_left_over(made: dict[str, bytes]) -> None:
    found = strangers(GALLERY, made)
    assert not found, f"nothing makes {', '.join(found)}: delete it"


def test_comparison_sees_a_change(made: dict[str, bytes], tmp_path: Path) -> None:
    for name, content in made.items():
        (tmp_path / name).write_bytes(content)
    assert differing(made, tmp_path) == []
    (tmp_path / "rules.md").write_bytes(made["rules.md"] + b" ")
    (tmp_path / "tables.md").unlink()
    assert sorted(differing(made, tmp_path)) == ["rules.md differs", "tables.md is missing"]


def test_every_spec_is_drawn(made: dict[str, bytes]) -> None:
    for path in (ROOT / "specs").glob("*.yaml"):
        assert f"{path.stem}.svg" in made
        assert f"{path.stem}.png" in made
        assert f"]({path.stem}.png)" in made["README.md"].decode()


def test_pictures_are_light(made: dict[str, bytes]) -> None:
    """One SVG and one PNG a spec: the history keeps every picture that ever was."""
    heavy = {path.name: path.stat().st_size for path in GALLERY.glob("*.png") if path.stat().st_size > 200_000}
    assert heavy == {}
    specs = {path.stem for path in (ROOT / "specs").glob("*.yaml")}
    assert {name for name in made if name.endswith(".svg")} == {
        f"{stem}.svg" for stem in {*specs, "symbols", "symbols-ansi"}
    }


def test_a_picture_has_few_tints_and_its_size() -> None:
    before, after = BytesIO(), BytesIO()
    Image.linear_gradient("L").save(before, "PNG")
    after.write(drawings._in_few_tints(before.getvalue()))
    assert pixels(after.getvalue()) == pixels(before.getvalue()) == (256, 256)
    with Image.open(after) as picture:
        assert picture.mode == "P"
        assert len(picture.getcolors()) == drawings.TINTS_COUNT == 16


def links(text: str) -> list[str]:
    """Return the targets of all links and pictures of a page, code left out."""
    text = re.sub(r"```.*?```", "", text, flags=re.DOTALL)
    return re.findall(r"\]\(([^)\s]+)\)", re.sub(r"`[^`]*`", "", text))


def anchors(text: str) -> list[str]:
    """Return the anchors of a page as code-hosting pages make them (common practice, no source)."""
    headings = re.findall(r"^#+ (.+)$", re.sub(r"```.*?```", "", text, flags=re.DOTALL), flags=re.MULTILINE)
    return [re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-") for heading in headings]


def test_every_link_leads_somewhere(made: dict[str, bytes]) -> None:
    texts = {name: content.decode() for name, content in made.items() if name.endswith(".md")}
    texts |= {name: (GALLERY / name).read_text(encoding="utf-8") for name in HAND_WRITTEN}
    broken = []
    for name, text in texts.items():
        here = anchors(text)
        assert len(here) == len(set(here)), f"{name} has two headings of the same words"
        for target in links(text):
            file, _, anchor = target.partition("#")
            known = not file or file in made or file in HAND_WRITTEN or (GALLERY / file).exists()
            if not known or (anchor and not file and anchor not in here):
                broken.append(f"{name}: {target}")
    assert not broken
