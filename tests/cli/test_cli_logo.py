"""`sld` with a logo: drawn from each kind of file, refused at its place, and on a machine without the cairo library."""

from __future__ import annotations

import re
import sys
from collections.abc import Sequence
from importlib.abc import MetaPathFinder
from io import BytesIO
from pathlib import Path

import pytest
from command import SMALL, sld
from PIL import Image

import sld.picture.drawing as _loaded  # noqa: F401 - so that it can be put back after it was taken away

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">'
RECTANGLE = '<rect width="40" height="20" fill="#a33c00"/>'
LAUGHS = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))


def _png() -> bytes:
    out = BytesIO()
    Image.new("RGB", (40, 20), (0xA3, 0x3C, 0)).save(out, "PNG")
    return out.getvalue()


LOGOS = {"logo.svg": f"{HEAD}{RECTANGLE}</svg>".encode(), "logo.png": _png()}
BAD = {
    "a billion laughs": f'<!DOCTYPE svg [<!ENTITY l0 "ha">{LAUGHS}]>{HEAD}<desc>&l9;</desc>{RECTANGLE}</svg>',
    "an external entity": f'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]>{HEAD}<desc>&a;</desc></svg>',
    "another file": f'{HEAD}{RECTANGLE}<image href="file:///etc/hostname" width="9" height="9"/></svg>',
    "a script": f"{HEAD}{RECTANGLE}<script>alert(1)</script></svg>",
    "a text": f"{HEAD}{RECTANGLE}<text>Sun</text></svg>",
    "a huge one": f"{HEAD}{RECTANGLE * 20_000}</svg>",
    "a truncated one": f"{HEAD}{RECTANGLE}"[:-9],
    "a picture in itself": f'{HEAD}<g id="a"><use href="#a"/><use href="#a"/></g></svg>',
}


class NoCairo(MetaPathFinder):
    """Fails as cairocffi does where it finds no library to load."""

    def find_spec(self, name: str, path: Sequence[str] | None, target: object = None) -> None:
        if name == "cairocffi":
            raise OSError("no library called 'cairo-2' was found")


@pytest.fixture
def without_cairo(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in [each for each in sys.modules if each.split(".")[0] in ("cairocffi", "cairosvg")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.delitem(sys.modules, "sld.picture.drawing")
    monkeypatch.setattr(sys, "meta_path", [NoCairo(), *sys.meta_path])


def spec(folder: Path, logo: str, content: bytes) -> Path:
    """The small spec with a logo beside it."""
    (folder / logo).write_bytes(content)
    path = folder / "small.yaml"
    path.write_text(SMALL.replace("project: {", f"project: {{logo: {logo}, "), encoding="utf-8")
    return path


def images(folder: Path) -> list[str]:
    """What each SVG in a folder shows as an image."""
    return [
        each
        for path in sorted(folder.glob("*.svg"))
        for each in re.findall(r"<image [^>]*href=\"(.{22})", path.read_text())
    ]


@pytest.mark.parametrize("logo", LOGOS)
def test_a_logo_is_on_the_sheet(logo: str, tmp_path: Path) -> None:
    result = sld("draw", spec(tmp_path, logo, LOGOS[logo]), "-o", tmp_path / "out", "--to", "svg,pdf")
    assert result.exit_code < 2
    assert set(images(tmp_path / "out")) == {"data:image/png;base64,"}


@pytest.mark.parametrize("what", BAD)
def test_what_cannot_be_used_is_told_at_its_place(what: str, tmp_path: Path) -> None:
    result = sld("draw", spec(tmp_path, "logo.svg", BAD[what].encode()), "-o", tmp_path / "out", "--to", "svg")
    assert result.exit_code == 2
    assert re.search(r"small\.yaml:1:17\b", result.stdout + result.stderr)
    assert "SP26" in result.stdout + result.stderr
    assert "Traceback" not in result.stdout + result.stderr
    assert not list(tmp_path.glob("out/*"))


@pytest.mark.usefixtures("without_cairo")
def test_without_cairo_an_svg_logo_is_told_with_the_line_to_type(tmp_path: Path) -> None:
    result = sld("draw", spec(tmp_path, "logo.svg", LOGOS["logo.svg"]), "-o", tmp_path / "out", "--to", "svg")
    assert result.exit_code == 2
    assert "small.yaml:1:17" in result.stdout + result.stderr
    assert "sudo apt-get install -y libcairo2" in result.stdout + result.stderr


@pytest.mark.usefixtures("without_cairo")
def test_without_cairo_a_png_logo_is_drawn(tmp_path: Path) -> None:
    result = sld("draw", spec(tmp_path, "logo.png", LOGOS["logo.png"]), "-o", tmp_path / "out", "--to", "svg")
    assert result.exit_code < 2
    assert set(images(tmp_path / "out")) == {"data:image/png;base64,"}
