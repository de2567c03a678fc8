"""The shipped font for the renderers: a subset to carry inside an SVG, and the only font that cairo may see."""

from __future__ import annotations

import base64
import ctypes
import ctypes.util
import hashlib
import os
import tempfile
import threading
from collections.abc import Iterable, Iterator
from functools import lru_cache
from pathlib import Path
from types import ModuleType

from sld.picture.lettering import Letters, font_with
from sld.render.font_subset import woff
from sld.render.missing import MissingCairo, MissingScripts, UnknownLetters
from sld.sheet.sheet import Sheet
from sld.symbols.script import known, runs_left
from sld.symbols.stroke import Text
from sld.symbols.typeface import FAMILY, FONT_FILE, font, missing

__all__ = ["cairo_with_font", "further_base64", "further_family", "lacking", "readable", "subset_base64"]

_one_thread = threading.Lock()

CONFIGURATION = """<?xml version="1.0"?>
<fontconfig>
  <dir>{fonts}</dir>
  <cachedir>{cache}</cachedir>
  <config><rescan><int>0</int></rescan></config>
</fontconfig>
"""


def lacking(sheets: Iterable[Sheet]) -> str:
    """Return the characters on some sheets that the font has no sign for, each once."""
    found = (sheet.font.lacking(_borrowed(sheet)) if sheet.font else _borrowed(sheet) for sheet in sheets)
    return "".join(dict.fromkeys("".join(found)))


def _borrowed(sheet: Sheet) -> str:
    """Return the characters on a sheet that the shipped font lacks, each once."""
    return missing("".join(_texts((sheet,))))


def readable(sheets: Iterable[Sheet]) -> None:
    """Pass sheets whose text can be drawn as it is read.

    Raises UnknownLetters for letters that the font lacks, MissingScripts for Hebrew and Arabic text on a machine
    without the libraries that order it.
    """
    sheets = list(sheets)
    if signs := lacking(sheets):
        raise UnknownLetters(signs)
    if not known() and any(map(runs_left, _texts(sheets))):
        raise MissingScripts


def _texts(sheets: Iterable[Sheet]) -> Iterator[str]:
    strokes = (stroke for sheet in sheets for group in sheet.groups for stroke in group.strokes)
    return (each.text for each in strokes if isinstance(each, Text))


@lru_cache(maxsize=64)
def subset_base64(characters: str) -> str:
    """Return the shipped font as WOFF with just these characters, base64; the same bytes for the same characters."""
    return base64.b64encode(woff(font(), characters)).decode("ascii")


def further_base64(sheets: Iterable[Sheet]) -> tuple[str, str]:
    """Return what some sheets take from the user's font: the letters, sorted, and the font with just these as WOFF."""
    sheets = list(sheets)
    signs = "".join(sorted(set().union(*map(_borrowed, sheets))))
    font = next((sheet.font for sheet in sheets if sheet.font), None)
    if not signs or font is None:
        return "", ""
    return signs, base64.b64encode(font_with(font, signs, FAMILY, "woff")).decode("ascii")


def further_family(sheet: Sheet) -> str:
    """Return the name by which cairo knows the letters that a sheet takes from the user's font; empty without any."""
    signs = "".join(sorted(_borrowed(sheet)))
    return _known_to_cairo(sheet.font, signs) if signs and sheet.font else ""


@lru_cache(maxsize=64)
def _known_to_cairo(font: Letters, signs: str) -> str:
    """Add a font with just these letters to those that cairo may see; return its name, which no other has."""
    family = f"sld {hashlib.sha256(font.content + signs.encode()).hexdigest()[:16]}"
    file = _configuration()[1].parent / f"{family}.ttf"
    file.write_bytes(font_with(font, signs, family))
    name = ctypes.util.find_library("fontconfig")
    if name:
        ctypes.CDLL(name).FcConfigAppFontAddFile(None, str(file).encode())
    return family


@lru_cache(maxsize=1)
def _configuration() -> tuple[tempfile.TemporaryDirectory[str], Path]:
    """Return a directory that lasts as long as the process, and in it a fontconfig file that knows one font only."""
    directory = tempfile.TemporaryDirectory(prefix="sld-font-")
    file = Path(directory.name) / "fonts.conf"
    file.write_text(CONFIGURATION.format(fonts=FONT_FILE.parent, cache=directory.name), encoding="utf-8")
    return directory, file


def cairo_with_font() -> ModuleType:
    """Return the module cairocffi, with fontconfig told to use the shipped font and nothing else.

    A machine without fonts, or with another version of this one, thus gives the same text. The setting holds for this
    process; its environment is left as it was. Raises MissingCairo where the library is not installed.
    """
    with _one_thread:  # which sets the environment, once
        return _cairo_with_font()


@lru_cache(maxsize=1)
def _cairo_with_font() -> ModuleType:
    before = os.environ.get("FONTCONFIG_FILE")
    os.environ["FONTCONFIG_FILE"] = str(_configuration()[1])
    try:
        import cairocffi

        _read_configuration_again()
        probe = cairocffi.Context(cairocffi.ImageSurface(cairocffi.FORMAT_A8, 1, 1))
        probe.select_font_face(FAMILY)
        probe.text_extents("0")  # fontconfig reads its file on first use
    except OSError as error:  # cairocffi found no library to load
        raise MissingCairo from error
    finally:
        if before is None:
            del os.environ["FONTCONFIG_FILE"]
        else:
            os.environ["FONTCONFIG_FILE"] = before
    return cairocffi  # type: ignore[no-any-return]


def _read_configuration_again() -> None:
    """Make fontconfig read its file now, also where the program around us has used it before."""
    name = ctypes.util.find_library("fontconfig")
    if name:
        ctypes.CDLL(name).FcInitReinitialize()
