"""A pack read back from its files alone: the pages of its PDF, its bookmarks, its contents, its tables."""

from __future__ import annotations

import csv
import re
import shutil
import subprocess
from collections.abc import Mapping
from io import BytesIO, StringIO
from zipfile import ZipFile

import pytest

__all__ = ["bookmarks", "contents", "csv_rows", "pages", "xlsx_rows"]


def pages(pdf: bytes) -> list[str]:
    """The text of each page, as a search finds it."""
    path = shutil.which("pdftotext")
    if path is None:
        pytest.skip("needs pdftotext")
    told = subprocess.run([path, "-layout", "-", "-"], input=pdf, capture_output=True, check=True).stdout
    return told.decode().split("\f")[:-1]


def bookmarks(pdf: bytes) -> list[tuple[str, str, int]]:
    """Title, title of the entry above, and page of each bookmark (PDF 32000-1:2008, 12.3.3)."""
    text = pdf.decode("latin-1")
    items = re.findall(r"(\d+) 0 obj\n<< /Title (\(.*?\)|<[0-9A-Fa-f]*>)\n((?:   /.*\n)+)", text)
    kids = re.search(r"/Kids \[([\d R\n]+)\]", text)
    assert kids
    numbers = {number: page for page, number in enumerate(re.findall(r"(\d+) 0 R", kids[1]), 1)}
    titles = {number: _string(title) for number, title, _ in items}
    found = []
    for number, _, rest in items:
        parent = re.search(r"/Parent (\d+) 0 R", rest)
        place = re.search(r"/Dest \[(\d+) 0 R", rest)
        assert parent
        assert place
        found.append((titles[number], titles.get(parent[1], ""), numbers[place[1]]))
    return found


def _string(written: str) -> str:
    """A text string of a PDF: UTF-16 in hexadecimal digits, or plain between brackets (7.9.2.2)."""
    if written.startswith("<"):
        return bytes.fromhex(written[1:-1]).decode("utf-16")
    return re.sub(r"\\(.)", r"\1", written[1:-1])


def csv_rows(content: bytes) -> list[list[str]]:
    return list(csv.reader(StringIO(content.decode("utf-8-sig"), newline=""), strict=True))


def contents(files: Mapping[str, bytes]) -> list[tuple[str, int, int]]:
    """Document, first page and count of pages of each line of the contents."""
    (table,) = [content for name, content in files.items() if name.endswith("-cover-contents.csv")]
    return [(row[0], int(row[-2]), int(row[-1])) for row in csv_rows(table)[1:]]


def xlsx_rows(content: bytes) -> dict[str, list[list[str]]]:
    """The cells of each sheet, read by the general library that spreadsheets of Python are read with."""
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.load_workbook(BytesIO(content))
    assert not ZipFile(BytesIO(content)).testzip()
    return {
        sheet.title: [["" if cell is None else cell for cell in row] for row in sheet.iter_rows(values_only=True)]
        for sheet in book
    }
