"""Numbers of supply points: form and check digit."""

from __future__ import annotations

import re

import pytest

from sld.grid import country
from sld.grid.check_digit import CHECKS, bare

NUMBERS = [
    # country, number, form is right, check digit is right
    ("DE", "41373559241", True, True),  # https://nordgroon.de, Marktlokation
    ("DE", "41373559242", True, False),
    ("DE", "01373559241", False, None),
    ("DE", "DE0001234567890000000000000000001", True, True),  # a metering location has no check digit
    ("ES", "ES1234123456789012JY", True, True),  # https://es.support.somenergia.coop/article/210
    ("ES", "ES1234123456789012WR", True, False),
    ("ES", "ES1234123456789012JY1F", True, True),
    ("GB", "20 0000 0000 000", True, False),
    # primes 3 5 7 13 17 19 23 29 31 37 41 43: 1 in the first place alone gives 3
    ("GB", "1000000000003", True, True),
    ("GB", "1000000000004", True, False),
    # a sum of 32 is 10 modulo 11, and that 0 modulo 10: 3 · 1 + 29 · 1
    ("GB", "1000000100000", True, True),
    ("GB", "hello", False, None),
    # AEMO, NMI procedures: 2001985732 has the check digit 8, QAAAVZZZZZ 3
    ("AU", "20019857328", True, True),
    ("AU", "QAAAVZZZZZ3", True, True),
    ("AU", "20019857327", True, False),
    ("AU", "2001985732", True, True),  # written without it
    # GS1 (from memory): weight 3 on the 17th, 15th ... digit from the right: 3 · 8 + 7 + 3 · 1 = 34, 6 to the next ten
    ("NL", "871000000000000006", True, True),
    ("NL", "871000000000000001", True, False),
    ("BE", "541000000000000007", True, None),
    ("AT", "AT.001000.01234.00000000000000000001", True, None),
    ("AT", "AT.001000.01234.0000000000000000001", False, None),
    ("AT", "AT0010000123400000000000000000012", True, None),
    ("CH", "CH1011701234500000000000000000012", True, None),
    ("FR", "12345678901234", True, None),
    ("FR", "1234567890123", False, None),
    ("IT", "IT001E12345678", True, None),
    ("IT", "IT001F12345678", False, None),
    ("IE", "10012345678", True, None),
    ("IE", "20012345678", False, None),
    ("PL", "590123456789012345", True, None),
    ("NZ", "0001234567UN12A", True, None),
    ("NZ", "0001234567UN12G", False, None),
]


@pytest.mark.parametrize(("code", "number", "formed", "checked"), NUMBERS)
def test_form_and_check_digit(code: str, number: str, formed: bool, checked: bool | None) -> None:
    asked = country(code).supply_point
    assert asked is not None
    assert asked.form is not None
    written = bare(number)
    assert bool(re.fullmatch(asked.form, written)) is formed
    if formed and asked.check is not None and checked is not None:
        assert CHECKS[asked.check](written) is checked


@pytest.mark.parametrize("code", ["US", "ZA"])
def test_countries_without_a_national_number(code: str) -> None:
    assert country(code).supply_point is None
