"""Packs of all specs, in every language and for every purpose: `python tests/pack/prove_packs.py [NAME...]`.

For each: nothing overlaps, contents and bookmarks agree with the pages, each text of a table is found by a search, the
hashes of the manifest are right, a second run gives the same bytes. Prints what is wrong, and ends with 1 then.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import yaml
from pack_reader import bookmarks, contents, csv_rows, pages

from sld import run
from sld.readers import PURPOSES
from sld.sheet.lint import lint
from sld.words import known_languages

SPECS = Path(__file__).resolve().parents[2] / "specs"


def spoken(path: Path, language: str) -> Path:
    """Have a spec say another language."""
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    data["project"]["language"] = language
    path.write_text(json.dumps(data, default=str), encoding="utf-8")
    return path


def printed_cells(found: list[list[str]]) -> Iterator[str]:
    """What of a table is on paper: a column that no row fills is left out there."""
    for column in zip(*found, strict=True):
        if any(cell not in {"", "–"} for cell in column[1:]):
            yield from column


def faults(checked: run.Checked, purpose: str) -> Iterator[str]:
    """What is wrong with a pack."""
    made = run.pack(checked, purpose)
    yield from (f"page {n}: {d.message}" for n, sheet in enumerate(made.bound.sheets, 1) for d in lint(sheet))
    files = run.pack_files(checked, made, "x")
    told, listed = json.loads(files["manifest.json"]), contents(files)
    for name, digest in told["files"].items():
        if hashlib.sha256(files[name]).hexdigest() != digest:
            yield f"manifest: {name} has another hash"
    texts = pages(files["x.pdf"])
    first = listed[0][1]
    if [page for _, page, _ in listed] != [
        first + sum(count for _, _, count in listed[:n]) for n in range(len(listed))
    ]:
        yield "contents: the pages do not follow each other"
    if len(texts) != first - 1 + sum(count for _, _, count in listed):
        yield f"contents: {len(texts)} pages are not those of the contents"
    chapters = [(title, page) for title, above, page in bookmarks(files["x.pdf"]) if not above]
    if chapters[1:] != [(title, page) for title, page, _ in listed]:
        yield f"bookmarks: {chapters} are not those of the contents"
    searched = "".join("".join(texts).split()).casefold()  # several columns have one head on paper: "Make; ratings"
    for name, content in files.items():
        if name.endswith(".csv"):
            for word in {word for cell in printed_cells(csv_rows(content)) for word in cell.split()}:
                short = word[word.rfind("-") :] if word.startswith("-") else word  # in a circuit, without its owner
                if len(word) < 9 and all(each.casefold() not in searched for each in (word, short)):
                    yield f"{name}: {word!r} is not found by a search"
    if run.pack_files(checked, run.pack(checked, purpose), "x") != files:
        yield "a second run gives other bytes"


def main() -> int:
    """Prove the packs of some specs, by name, or of all."""
    names, wrong = sys.argv[1:] or sorted(path.stem for path in SPECS.glob("*.yaml")), 0
    with tempfile.TemporaryDirectory() as folder:
        copied = Path(shutil.copytree(SPECS, Path(folder) / "specs"))
        for name in names:
            for language in known_languages():
                checked = run.check(spoken(copied / f"{name}.yaml", language))
                for purpose in PURPOSES:
                    found = list(faults(checked, purpose))
                    wrong += len(found)
                    print(f"{name} {language} {purpose}: {'; '.join(found) or 'nothing wrong'}", flush=True)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
