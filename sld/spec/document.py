"""The whole spec: the root block, and the types that are defined once and referred to by name."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, field_validator

from sld.spec.blocks.acceptance import Accept
from sld.spec.blocks.battery import Battery
from sld.spec.blocks.battery_circuit import BatteryDeviceType
from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.board import Board, JunctionBox, Load
from sld.spec.blocks.circuit import AcDeviceType, CableType, DcDeviceType
from sld.spec.blocks.data_bus import DataBus
from sld.spec.blocks.earthing import Earthing
from sld.spec.blocks.further_supply import FurtherSupply
from sld.spec.blocks.generator import Generator
from sld.spec.blocks.inverter import Inverter, InverterType
from sld.spec.blocks.module import ModuleType
from sld.spec.blocks.notification import Notification
from sld.spec.blocks.paper import Paper
from sld.spec.blocks.project import Drawing, Project
from sld.spec.blocks.site import Site
from sld.spec.blocks.supply import Supply
from sld.spec.blocks.upkeep import Upkeep
from sld.spec.fault import fault

__all__ = ["Profile", "Spec", "Types", "follows_nec"]

Profile = Literal["cautious", "IEC 62548-1", "IEC 60364-7-712", "BS 7671", "AS/NZS 5033", "NEC 690"]


def follows_nec(profile: str) -> bool:
    """Return whether a profile follows the National Electrical Code: its conductor sizes, tables and 125 % rules.

    The one place where that is decided; what the code lays down stands in modules of its own, named `nec`.
    """
    return profile == "NEC 690"


class Types(Block):
    """Types by name: data sheet values, written once."""

    modules: dict[str, ModuleType] = Field(default={}, description="PV module types.")
    inverters: dict[str, InverterType] = Field(default={}, description="Inverter types.")
    cables: dict[str, CableType] = Field(default={}, description="Cable types.")
    ac_devices: dict[str, AcDeviceType] = Field(default={}, description="Types of AC devices, each with its `kind`.")
    dc_devices: dict[str, DcDeviceType] = Field(default={}, description="Types of DC devices, each with its `kind`.")
    battery_devices: dict[str, BatteryDeviceType] = Field(
        default={}, description="Types of devices between battery and converter, each with its `kind`."
    )


class Spec(Block):
    """One PV system."""

    include: list[Text] = Field(default=[], description="Types files, relative to this file, inside its folder tree.")
    project: Project = Field(description="Title-block data.")
    drawing: Drawing = Field(default=Drawing(), description="Options of the drawing.")
    profile: Profile = Field(default="cautious", description="Rule profile; printed on the sheet.")
    site: Site = Field(description="Climate and surroundings.")
    supply: Supply = Field(description="Connection to the public network.")
    further_supplies: dict[str, FurtherSupply] = Field(
        default={},
        description="Further supply points of the site by name, on the same drawing; a board names the one that feeds "
        "it under `fed_from`.",
    )
    types: Types = Field(default=Types.model_construct(), description="Types that the rest refers to by name.")
    boards: dict[str, Board] = Field(default={}, description="Boards by name. Left out: one main board is assumed.")
    junction_boxes: dict[str, JunctionBox] = Field(default={}, description="DC junction boxes by name.")
    inverters: Annotated[dict[str, Inverter], Field(min_length=1)] = Field(description="Inverters by name.")
    batteries: dict[str, Battery] = Field(default={}, description="Batteries by name.")
    loads: dict[str, Load] = Field(default={}, description="Loads by name.")
    generators: dict[str, Generator] = Field(default={}, description="Generators by name.")
    earthing: Earthing | None = Field(default=None, description="Earthing arrangement. Left out: assumed.")
    data: DataBus | None = Field(default=None, description="Data bus and communication.")
    notification: Notification | None = Field(default=None, description="The application to the network operator.")
    documents: list[Paper] = Field(default=[], description="Papers that belong to it and are not made here.")
    upkeep: Upkeep | None = Field(default=None, description="What whoever operates it is handed.")
    accept: list[Accept] = Field(default=[], description="Findings that are accepted.")

    @field_validator("supply", mode="before")
    @classmethod
    def _one_supply_point(cls, given: object) -> object:
        if isinstance(given, list):
            message = f"`supply` is a list of {len(given)}, and it is one connection to the network"
            remedy = (
                "keep the first one under `supply`, and give the others by name under `further_supplies`, each with "
                "`supply` and `earthing` of its own"
            )
            raise fault(message, remedy)
        return given
