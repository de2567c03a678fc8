"""Temperature coefficients, as data sheets of modules state them."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator
from pydantic_core import PydanticCustomError

from sld.spec.units import Quantity, Units

__all__ = ["CurrentCoefficient", "PowerCoefficient", "VoltageCoefficient"]


def _not_rising(coefficient: Quantity) -> Quantity:
    """Refuse a coefficient of voltage or power above 0: it is a lost minus sign, and hides the highest voltage."""
    if coefficient.value > 0:
        bound = f"0 {coefficient.unit}"
        context = {"given": f"`{coefficient}`", "must": "at most", "bound": bound}
        raise PydanticCustomError("quantity_range", "{given} is out of range, must be {must} {bound}", context)
    return coefficient


VoltageCoefficient = Annotated[Quantity, Units("%/K", "V/K"), AfterValidator(_not_rising)]
PowerCoefficient = Annotated[Quantity, Units("%/K"), AfterValidator(_not_rising)]
CurrentCoefficient = Annotated[Quantity, Units("%/K", "A/K")]
