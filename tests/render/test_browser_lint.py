"""Every sheet of the specs in a real browser: no text on text or line, nothing outside, no letter too small.

The measure is the browser's own: `getBBox` of a text is its full line box (SVG 2, 4.6.4), and points are sampled along
each stroke with `getPointAtLength`. Nothing of the package's font metrics or of its own lint takes part.
"""

from __future__ import annotations

import html
import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

from sld import run

ROOT = Path(__file__).parents[2]
CHROMIUM = Path("/usr/bin/chromium")
SPECS = ("village-hall", "valley-school", "upper-farm-faulty")
pytestmark = pytest.mark.skipif(not CHROMIUM.exists(), reason="needs /usr/bin/chromium")

MEASURE = r"""
const MARGIN = 0.12, STEP = 0.25, CELL = 5;  // millimetres
const group = e => e.closest("g[id]") ? e.closest("g[id]").id : "";
const box = t => { const b = t.getBBox(); return {text: t.textContent, x: b.x, y: b.y,
    right: b.x + b.width, bottom: b.y + b.height, height: b.height}; };
const buckets = texts => { const found = new Map(); texts.forEach((t, i) => {
    for (let x = Math.floor(t.x / CELL); x <= Math.floor(t.right / CELL); x++)
        for (let y = Math.floor(t.y / CELL); y <= Math.floor(t.bottom / CELL); y++) {
            const key = x + "," + y; if (!found.has(key)) found.set(key, []); found.get(key).push(i); } });
    return found; };
async function measure(page) {
    const svg = page.querySelector("svg"), view = svg.viewBox.baseVal;
    const family = page.defaultView.getComputedStyle(svg.querySelector("text")).fontFamily;
    await page.fonts.load("10px " + family); await page.fonts.ready;
    const texts = [...svg.querySelectorAll("text")].map(box);
    const at = buckets(texts), touching = new Set(), struck = new Set(), outside = new Set();
    for (const t of texts)
        if (t.x < 0 || t.y < 0 || t.right > view.width || t.bottom > view.height) outside.add(t.text);
    for (const near of at.values()) for (const i of near) for (const j of near) {
        const a = texts[i], b = texts[j];
        if (i < j && a.x + MARGIN < b.right - MARGIN && b.x + MARGIN < a.right - MARGIN
            && a.y + MARGIN < b.bottom - MARGIN && b.y + MARGIN < a.bottom - MARGIN)
            touching.add(a.text + " | " + b.text); }
    let points = 0;
    for (const shape of svg.querySelectorAll("path, circle, line, polyline, polygon")) {
        const length = shape.getTotalLength(), count = Math.max(2, Math.ceil(length / STEP));
        for (let k = 0; k <= count; k++) {
            const p = shape.getPointAtLength(length * k / count); points++;
            if (p.x < 0 || p.y < 0 || p.x > view.width || p.y > view.height) outside.add(group(shape));
            for (const i of at.get(Math.floor(p.x / CELL) + "," + Math.floor(p.y / CELL)) || []) {
                const t = texts[i];
                if (p.x > t.x + MARGIN && p.x < t.right - MARGIN && p.y > t.y + MARGIN && p.y < t.bottom - MARGIN)
                    struck.add(t.text + " | " + group(shape)); } } }
    return {texts: texts.length, points: points, touching: [...touching], struck: [...struck], outside: [...outside],
        least: Math.min(...texts.map(t => t.height)), family: family,
        fonts: [...page.fonts].map(f => [f.family.replaceAll('"', ""), f.status])};
}
addEventListener("load", async () => {
    const found = [];
    for (const frame of document.querySelectorAll("iframe")) found.push(await measure(frame.contentDocument));
    const pre = document.createElement("pre");
    pre.textContent = JSON.stringify(found); document.body.replaceChildren(pre);
});
"""
"""A text's box is shrunk by what no eye can see. Its box is the whole line of the font, accents and descenders too."""

CONTRAST = """<?xml?><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" width="100mm" height="50mm"><g id="a">
<text x="10" y="20" font-size="4" font-family="serif">one</text><text x="12" y="21" font-size="4">two</text>
<text x="95" y="40" font-size="4">outside</text><path d="M9 19H30"/></g></svg>"""
"""A drawing with one of each fault."""


def measured(svgs: list[str], folder: Path) -> list[dict[str, Any]]:
    """Return what a browser measures of drawings, each in a document of its own with its own font."""
    page = folder / "page.html"
    frames = "".join(f"<iframe srcdoc='{html.escape(svg.split('?>', 1)[1])}'></iframe>" for svg in svgs)
    page.write_text(f"<!doctype html><meta charset=utf-8><body><script>{MEASURE}</script>{frames}", encoding="utf-8")
    switches = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]
    command = [str(CHROMIUM), *switches, f"--user-data-dir={folder / 'profile'}", "--virtual-time-budget=60000"]
    dom = subprocess.run([*command, "--dump-dom", page.as_uri()], capture_output=True, timeout=120, check=True).stdout
    found = re.search(r"<pre>(.*)</pre>", dom.decode(), re.DOTALL)
    assert found, "the page did not run to its end"
    result: list[dict[str, Any]] = json.loads(html.unescape(found[1]))
    return result


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> dict[str, dict[str, Any]]:
    """All sheets of all specs by file name, and the faulty drawing, measured in one start of the browser."""
    svgs = {"contrast": CONTRAST}
    for name in SPECS:
        drawing = run.draw(run.check(ROOT / "specs" / f"{name}.yaml"))
        svgs |= {file: content.decode() for file, content in run.files(drawing.sheets, name, ("svg",)).items()}
    found = measured(list(svgs.values()), tmp_path_factory.mktemp("browser"))
    return dict(zip(svgs, found, strict=True))


def of_drawings(sheets: dict[str, dict[str, Any]], what: str) -> dict[str, Any]:
    return {name: sheet[what] for name, sheet in sheets.items() if name != "contrast" and sheet[what]}


def test_the_measure_sees_each_fault(sheets: dict[str, dict[str, Any]]) -> None:
    contrast = sheets["contrast"]
    assert contrast["touching"] == ["one | two"]
    assert contrast["struck"] == ["one | a", "two | a"]
    assert contrast["outside"] == ["outside"]


@pytest.mark.parametrize("fault", ["touching", "struck", "outside"])
def test_no_sheet_has(sheets: dict[str, dict[str, Any]], fault: str) -> None:
    assert of_drawings(sheets, fault) == {}


def test_all_was_measured(sheets: dict[str, dict[str, Any]]) -> None:
    assert {name.split(".")[0] for name in sheets} >= set(SPECS)
    for name in SPECS:
        assert sheets[f"{name}.svg"]["texts"] > 100
        assert sheets[f"{name}.svg"]["points"] > 10_000


def test_the_least_letters_are_1_8_mm_high(sheets: dict[str, dict[str, Any]]) -> None:
    """1.8 mm is the least size of ISO 3098-1 (from memory); the line box of this font is 1.6 times its capitals."""
    assert min(of_drawings(sheets, "least").values()) >= 1.6 * 1.8 - 0.01


def test_the_font_inside_is_what_is_used(sheets: dict[str, dict[str, Any]]) -> None:
    for name, sheet in sheets.items():
        if name != "contrast":
            assert sheet["fonts"] == [["DejaVu Sans Condensed", "loaded"]]
            assert sheet["family"].replace('"', "") == "DejaVu Sans Condensed"
