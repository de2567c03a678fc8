"""A new user's half hour, replayed: from nothing to a clean check of an own system; keys, words and errors counted.

The system: 10 kW, two orientations, battery, TN-C-S, three-phase, in Great Britain. Reading at 200 words and typing at
150 keystrokes a minute are slow for an adult (common practice, no source). Each step types what the step before told.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from command import ROOT, sld

WORDS_A_MINUTE, KEYS_A_MINUTE = 200, 150
THOUGHT_MINUTES = 0.5
"""Between two steps: to look, to decide, to find the line."""


@dataclass
class User:
    """Somebody at a terminal with an editor: counts what is typed and read, and how often a check finds errors."""

    folder: Path
    keys: int = 0
    words: int = 0
    steps: int = 0
    errors: int = 0
    told: str = field(default="", repr=False)

    @property
    def spec(self) -> Path:
        return self.folder / "house.yaml"

    def command(self, *arguments: str) -> int:
        """Type a command in the folder of the spec and read what it prints."""
        self.steps += 1
        self.keys += len(" ".join(("sld", *arguments))) + 1
        result = sld(*(self.spec if each == "house.yaml" else each for each in arguments))
        self.told = result.stdout + result.stderr
        self.words += len(self.told.split())
        self.errors += self.told.count(": error ")
        return result.exit_code

    def edit(self, *changes: tuple[str, str]) -> None:
        """Replace lines of the spec in an editor. Each line is looked for with some keys and typed anew."""
        self.steps += 1
        text = self.spec.read_text(encoding="utf-8")
        for old, new in changes:
            assert text.count(old) == 1, old
            text = text.replace(old, new)
            self.keys += len(new) + 10
        self.spec.write_text(text, encoding="utf-8")

    @property
    def minutes(self) -> float:
        return self.words / WORDS_A_MINUTE + self.keys / KEYS_A_MINUTE + self.steps * THOUGHT_MINUTES


def readme_words() -> int:
    """Return the words of the README that are read: to the end of the commands."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    return len(text[: text.index("## From Python")].split())


OF_THE_DATA_SHEETS = (
    ("rated_power: 400 W", "rated_power: 410 W"),
    ("open_circuit_voltage: 37 V", "open_circuit_voltage: 37.4 V"),
    ("short_circuit_current: 13.7 A", "short_circuit_current: 13.9 A"),
    ("mpp_voltage: 31 V", "mpp_voltage: 31.3 V"),
    ("mpp_current: 12.9 A", "mpp_current: 13.1 A"),
    ("# voltage_coefficient:", "voltage_coefficient: -0.26 %/K"),
)
OF_THE_SITE = (
    ("temperature_min: -15 °C", "temperature_min: -12 °C"),
    ("temperature_max: 35 °C", "temperature_max: 33 °C\n  building: dwelling"),
    ("# service_fuse:", "service_fuse: 80 A"),
    ("# prospective_fault_current:", "prospective_fault_current: 4.2 kA"),
    ("# loop_impedance:", "loop_impedance: 0.22 ohm"),
)
BATTERY = """batteries:
  store:
    connected_to: main
    energy: 10 kWh
    converter_power: 5 kVA
    circuit:
      - {kind: breaker, breaking_capacity: 6 kA, bidirectional: true}
      - {kind: cable, length: 6 m}
      - {kind: isolator}
earthing:
  electrode: {kind: rod}
  bonding:
    - {to: water pipe, purpose: main_bonding}
    - {to: module frames, purpose: array_frame}
"""


def test_from_nothing_to_a_clean_check_in_half_an_hour(tmp_path: Path) -> None:
    user = User(tmp_path, words=readme_words())
    user.command("--help")
    assert user.command(
        "new", "house.yaml", "--phases", "3", "--earthing", "TN-C-S", "--country", "GB", "--power", "10 kW",
        "--strings", "13,12", "--module", "Brightfell 410", "--inverter", "Tarnholt T10",
    ) == 0  # fmt: skip
    user.command("check", "house.yaml")
    user.edit(*OF_THE_DATA_SHEETS)
    user.edit(*OF_THE_SITE)
    user.command("keys", "batteries")
    user.edit(
        ("modules_in_series: 13}", "modules_in_series: 13, orientation: east, cable: {length: 12 m}}"),
        ("modules_in_series: 12}", "modules_in_series: 12, orientation: west, cable: {length: 15 m}}"),
        ("      - {kind: breaker}\n", "      - {kind: breaker, breaking_capacity: 6 kA, bidirectional: true}\n"),
        (
            "      # - {kind: cable, length: }  # to be measured: the way from the board to the inverter\n",
            "      - {kind: cable, length: 9 m}\n",
        ),
        ("# earthing:  # to be looked at: `sld keys earthing`\n", BATTERY),
    )
    code = user.command("check", "house.yaml")
    assert code == 0
    assert user.errors == 0
    assert user.minutes < 30
