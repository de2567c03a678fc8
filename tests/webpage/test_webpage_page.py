"""The page for a browser as text: what it holds, what it may not do, and that nothing of a spec becomes part of it."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

import sld

SPECS = Path(__file__).parents[2] / "specs"
LARGEST_BYTES = 1_500_000


@lru_cache
def html(name: str = "village-hall") -> str:
    return sld.load(SPECS / f"{name}.yaml").draw().html()


def data(page: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(re.search(r'<script type="application/json" id="data">(.*?)</script>', page)[1])  # type: ignore[index]
    return found


def test_every_sheet_and_device_and_finding_is_there() -> None:
    hall = sld.load(SPECS / "village-hall.yaml")
    page = html()
    assert re.findall(r'<section class="sheet p\d" id="sheet-(\d)"', page) == [
        str(each.number) for each in hall.draw().sheets
    ]
    told = data(page)
    names = {device[1] for device in told["devices"]}
    assert set(hall.designations) == names
    assert page.count("<li class=") == len(hall.findings)


def test_a_rating_is_told_with_formula_inputs_and_clause() -> None:
    """The same that `sld.load(...).rating` gives; IEC 60364-5-52:2009 Table B.52.4, method C, 2.5 mm²: 24 A."""
    told = data(html())
    texts = told["texts"]
    cable = next(each for each in told["devices"] if each[1] == "-TB1-WD1")
    ratings = {texts[symbol]: (texts[value], steps) for symbol, _, value, steps in reversed(cable[4])}
    value, steps = ratings["Iz"]
    assert value == "24 A (computed)"
    said = {texts[head]: texts[what] for head, what in steps}
    assert said["Formula"] == "It · Ca · Cg"
    assert said["Numbers put in"].startswith("It = 24 A")
    assert said["Source"] == "IEC 60364-5-52:2009 523 and Annex B"
    assert "Passed over" in {texts[head] for head, _ in ratings["S"][1]}


def test_devices_lead_to_their_symbols() -> None:
    page = html()
    ids = set(re.findall(r'<g id="([^"]+)"', page))
    for _, name, _, anchor, _ in data(page)["devices"]:
        assert anchor in ids or anchor == "", name
    assert sum(1 for device in data(page)["devices"] if device[3]) > 20


def test_a_finding_links_to_the_symbol_of_its_device_and_an_accepted_one_looks_accepted() -> None:
    """The link works without the program. The farm has one accepted finding, AC12 at the isolator -TB2-QB1."""
    farm = sld.load(SPECS / "upper-farm-faulty.yaml")
    page = html("upper-farm-faulty")
    accepted = re.findall(r'<li class="accepted">\n<p><strong>accepted</strong> (\w+)', page)
    assert accepted == [each.code for each in farm.findings if each.accepted]
    symbols = {device[1]: device[3] for device in data(page)["devices"]}
    links = re.findall(r'<a href="#([^"]+)" data-device="[^"]+">([^<]+)</a>', page)
    assert len(links) > 20
    assert {(name, anchor) for anchor, name in links} <= set(symbols.items())


def test_no_id_is_there_twice() -> None:
    ids = re.findall(r' id="([^"]+)"', html("valley-school"))
    assert len(ids) == len(set(ids))


def test_devices_that_are_drawn_once_lead_to_the_one_symbol() -> None:
    estate = data(html("winery-estate"))
    assert {"-TB1", "-TB2", "-TB3"} <= {device[1] for device in estate["devices"] if device[3]}


def test_the_policy_names_the_page_s_own_style_and_program() -> None:
    """Content Security Policy Level 2, 7.15 and 7.17: a hash of the text between the tags."""
    page = html()
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]+)"', page)[1]  # type: ignore[index]
    assert policy.startswith("default-src 'none'; ")
    for name, directive in (("style", "style-src"), ("script", "script-src")):
        text = re.findall(rf"<{name}>(.*?)</{name}>", page, re.DOTALL)
        assert len(text) == 1, name
        digest = base64.b64encode(hashlib.sha256(text[0].encode()).digest()).decode()
        assert f"{directive} 'sha256-{digest}'" in policy
    assert not re.search(r' style="| on\w+="', page)


def test_nothing_of_a_spec_becomes_an_element_or_a_program() -> None:
    hostile = "</script><script>alert(1)</script><b>&amp;\u2028"
    text = (SPECS / "village-hall.yaml").read_text().replace("main board", json.dumps(hostile)[1:-1].replace("'", "''"))
    page = sld.load(text=_without_files(text)).draw().html()
    assert "alert(1)" in page
    assert "<script>alert" not in page
    assert page.count("</script>") == 2


def _without_files(text: str) -> str:
    """Return the spec with its types in it, as a text has no folder."""
    types = (SPECS / "types" / "merren-types.yaml").read_text()
    body = re.sub(r"(?m)^include:.*\n", "", text)
    return body + "\n" + types


def test_a_page_is_the_same_twice_and_small_enough() -> None:
    estate = html("winery-estate")
    assert len(estate.encode()) < LARGEST_BYTES
    assert sld.load(SPECS / "village-hall.yaml").draw().html() == html()


def test_nothing_is_loaded_from_elsewhere() -> None:
    page = html()
    addresses = set(re.findall(r'(?:src|href|url)\s*[=(]\s*"?([^"\s)>]+)', page))
    assert {each for each in addresses if not each.startswith(("#", "data:"))} == set()


@pytest.mark.parametrize("language", ["de"])
def test_the_page_speaks_the_language_of_the_drawing(language: str) -> None:
    text = _without_files((SPECS / "village-hall.yaml").read_text())
    page = sld.load(text=text.replace("project:\n", f"project:\n  language: {language}\n")).draw().html()
    assert f'<html lang="{language}">' in page
    words = data(page)["words"]
    assert words["search"].startswith("Suche")
    assert not set(words.values()) & set(data(html())["words"].values())
