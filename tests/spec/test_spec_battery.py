"""What is said of a battery that does not go together."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from sld.spec.blocks.battery import Battery


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"inverter": "roof", "backup_power": "5 kVA"}, "feeds nothing by itself"),
        ({"converter_power": "5 kVA", "backup_short_circuit_current": "18 A"}, "no `backup_power`"),
    ],
)
def test_a_battery_feeds_by_its_own_converter_while_the_network_is_away(said: dict[str, str], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        Battery.model_validate(said)
