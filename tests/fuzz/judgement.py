"""What is wrong with what the tool made of a spec: nothing that it may do depends on the spec being a good one."""

from __future__ import annotations

import json
import re
import traceback
import xml.etree.ElementTree as ElementTree
from collections.abc import Iterator
from pathlib import Path

from sld import run
from sld.finding import Finding
from sld.sheet.lint import lint
from sld.sheet.sheet import Sheet
from sld.spec import Source, Unusable
from sld.spec.quote import as_json, quote
from sld.spec.source import is_pinned
from sld.symbols.stroke import Text

__all__ = ["judged"]

LONGEST_NUMBER = 12
LONGEST_MESSAGE = 1200
_NUMBER = re.compile(r"[0-9][0-9.]*(?:e[-+]?[0-9]+)?")
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]")


def judged(text: str, folder: Path, *, drawn: bool) -> tuple[str, list[tuple[str, str]]]:
    """Return how far a spec came (refused, checked, drawn) and its faults: kind, and what exactly."""
    path = folder / "spec.yaml"
    path.write_text(text, encoding="utf-8")
    try:
        return _judged(path, drawn)
    except Exception as crash:
        frames = [each for each in traceback.extract_tb(crash.__traceback__) if "/sld/" in each.filename]
        where = f"{Path(frames[-1].filename).name}:{frames[-1].name}" if frames else "?"
        return "crashed", [(f"traceback {type(crash).__name__} in {where}", str(crash)[:200])]


def _judged(path: Path, drawn: bool) -> tuple[str, list[tuple[str, str]]]:
    try:
        found = run.check(path)
    except Unusable as refused:
        return "refused", list(_of_findings(refused.source, refused.findings))
    faults = list(_of_findings(found.source, found.findings))
    if not drawn:
        return "checked", faults
    drawing, calculation = run.documents(found, ("drawing", "calculation")).values()
    for sheet in (*drawing.sheets, *calculation.sheets):
        # what the font lacks is drawn as an empty box, and the command says so
        faults += [(f"lint {each.kind}", str(each.message)) for each in lint(sheet) if each.kind != "glyph"]
    for sheet in drawing.sheets:  # the calculation has long numbers of clauses
        faults += _of_texts(sheet, path.read_text(encoding="utf-8"))
    for content in run.files(drawing.sheets[:1], "x", ("svg",)).values():
        ElementTree.fromstring(content)
    return "drawn", faults


def _of_findings(source: Source, findings: tuple[Finding, ...]) -> Iterator[tuple[str, str]]:
    """Yield what is wrong with what is told: no place, a text without end, what JSON cannot say."""
    for each in findings:
        message, remedy = str(each.message), str(each.remedy)
        said = f"{each.code} {message[:200]}"
        span = source.locate(each.at, each.on_key)
        line = [*source.lines(span.file), ""][max(0, min(span.line - 1, len(source.lines(span.file))))]
        if each.code.startswith("SP") and not _is_placed(source, each):
            yield f"no place {each.code}", said
        if span.line < 1 or span.column < 1 or span.column > len(line) + 1:
            yield f"place outside the text {each.code}", f"{span} {said}"
        if len(message) > LONGEST_MESSAGE or len(remedy) > LONGEST_MESSAGE:
            yield f"told at length {each.code}", said
        quote(source, each)
        json.dumps(as_json(source, each), allow_nan=False)


def _is_placed(source: Source, finding: Finding) -> bool:
    """Tell whether a finding stands at a value of the spec, or is about the top level or the whole file."""
    return not finding.at or is_pinned(finding.at) or finding.at[:1] in source.spots


def _of_texts(sheet: Sheet, spec: str) -> Iterator[tuple[str, str]]:
    """Yield numbers that are too long and signs that do not show; the numbers of the spec itself are its own."""
    for group in sheet.groups:
        for stroke in group.strokes:
            if not isinstance(stroke, Text):
                continue
            for number in _NUMBER.findall(stroke.text):
                if len(number) > LONGEST_NUMBER and number not in spec:
                    yield "long number", stroke.text
            if _UNSEEN.search(stroke.text):
                yield "sign that does not show", ascii(stroke.text)
