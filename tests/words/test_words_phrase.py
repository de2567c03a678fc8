"""What is to be said, in English and in a language made up here. No source: it is what the types promise."""

from __future__ import annotations

from gettext import NullTranslations

import pytest

from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.wrapping import broken
from sld.quantity import Given, Rating
from sld.words import (
    ENGLISH,
    Language,
    Sayable,
    amount,
    counted,
    listing,
    of_count,
    phrase,
    phrase_in,
    sequence,
    unbroken,
    verbatim,
)
from sld.words.names import names_in, with_names


class Backwards(NullTranslations):
    """A language that says the words of English in reverse order, and two entries of its own."""

    def gettext(self, message: str) -> str:
        return " ".join(reversed(message.split()))

    def pgettext(self, context: str, message: str) -> str:
        return f"{message} in {context}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return "{count} one" if n == 1 else "{count} many"


OTHER = Language("xx", Backwards(), ",")

SAID = [
    (phrase("supply meter"), "supply meter", "meter supply"),
    (phrase("{cable} carries {current}", cable="-WD1", current=amount(12.34, "A")), "-WD1 carries 12.3 A",
     "12,3 A carries -WD1"),
    (phrase("below {what}", what=phrase("rated current")), "below rated current", "current rated below"),
    (phrase_in("a switch", "open"), "open", "open in a switch"),
    (counted("{count} string", "{count} strings", 1), "1 string", "1 one"),
    (counted("{count} string", "{count} strings", 2), "2 strings", "2 many"),
    (counted("{count} string", "{count} strings", 0), "0 strings", "0 many"),
    (verbatim("roof {east}"), "roof {east}", "roof {east}"),
    (phrase("named {name}", name="{cable}"), "named {cable}", "{cable} named"),
    (amount(0.642, "%"), "0.642 %", "0,642 %"),
    (amount(1000.4, "V", 5), "1000.4 V", "1000,4 V"),
    (amount(20000), "20000", "20000"),
    (sequence(["-FC1", "", verbatim(""), phrase("new")]), "-FC1, new", "-FC1, new"),
    (listing(["a", "b", "c"]), "a, b and c", "a, b and  in between the last two of a listc"),
    (listing(["a"]), "a", "a"),
    (Rating("Ib", 21.74, "A", "S / U", (), "IEC"), "21.7 A", "21,7 A"),
    (Rating("S", 5.26, "mm²", "table", (), "NEC", trade_name="10 AWG"), "10 AWG", "10 AWG"),
    (of_count(counted("{count} string", "{count} strings", 0), 1), "1 string", "1 one"),
    (unbroken("≤", amount(1000.5, "V", 5)), "≤ 1000.5 V", "≤ 1000,5 V"),
    (Given("Ib", 21.744, "A", phrase("load flow")), "Ib = 21.74 A (load flow)", "Ib = 21,74 A (flow load)"),
]  # fmt: skip


@pytest.mark.parametrize(("said", "english", "other"), SAID)
def test_what_is_said(said: Sayable, english: str, other: str) -> None:
    assert ENGLISH.say(said) == english
    assert isinstance(said, Rating) or str(said) == english
    assert OTHER.say(said) == other


def test_what_is_unbroken_has_no_place_for_a_line_break() -> None:
    assert ENGLISH.typeset(unbroken("Uoc", amount(741, "V"), "", phrase("at the input"))) == (
        "Uoc\u00a0741\u00a0V\u00a0at\u00a0the\u00a0input"
    )


def test_names_inside_are_found_and_changed_the_sentence_left_alone() -> None:
    said = phrase(
        "{cable} carries {current} to {device}", cable=verbatim("-WD1"), current=amount(6, "A"), device="-FC1"
    )
    assert names_in(said) == ["-WD1", "-FC1"]
    assert str(with_names(said, str.lower)) == "-wd1 carries 6 A to -fc1"
    assert str(with_names(said, str, lambda other: amount(7, "A"))) == "-WD1 carries 7 A to -FC1"
    assert names_in(unbroken("≤", sequence(["a", phrase("b {n}", n=2)]))) == ["≤", "a", "2"]


@pytest.mark.parametrize(
    ("one", "other", "is_equal"),
    [(14.001, 14.002, True), (14.04, 14.06, False), (20000, 20001, False), (0.6421, 0.6424, True)],
)
def test_amounts_are_equal_that_are_written_alike(one: float, other: float, is_equal: bool) -> None:
    assert (amount(one, "m") == amount(other, "m")) is is_equal
    assert len({amount(one, "m"), amount(other, "m")}) == (1 if is_equal else 2)
    assert amount(one, "m") != amount(one, "mm")


def test_no_line_is_broken_between_a_number_and_its_unit() -> None:
    assert ENGLISH.typeset(phrase("carries {current} as laid", current=amount(6, "A"))) == "carries 6\u00a0A as laid"


def test_the_trace_is_said_as_a_whole() -> None:
    given = (Given("N", 18), Given("Uoc", 37.4, "V"))
    rating = Rating("Uoc,max", 673.2, "V", "N · Uoc", given, phrase("by hand"), assumptions=(phrase("cold"),))
    assert str(rating.trace()) == "Uoc,max = 673 V = N · Uoc | N = 18; Uoc = 37.4 V | by hand | assumed: cold"
    assert OTHER.say(rating.trace()) == "Uoc,max = 673 V = N · Uoc | N = 18; Uoc = 37,4 V | hand by | cold assumed:"


def test_a_place_without_a_value_is_a_fault() -> None:
    with pytest.raises(KeyError):
        ENGLISH.say(phrase("{cable} carries {current}", cable="-WD1"))


def test_a_soft_hyphen_is_seen_where_a_label_is_divided_alone() -> None:
    """A mark of Unicode for where a word may be divided (UAX 14, class BA)."""
    meter = verbatim("Übergabe\u00adzähler")
    assert ENGLISH.say(meter) == ENGLISH.typeset(meter) == "Übergabezähler"
    lines = (Line(Role.RATED, meter),)
    assert [str(line.said) for line in broken(lines, 40.0, ENGLISH)] == ["Übergabezähler"]
    assert [str(line.said) for line in broken(lines, 15.0, ENGLISH)] == ["Übergabe-", "zähler"]
