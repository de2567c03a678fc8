"""Where the network operator's part ends and the customer's begins."""

from __future__ import annotations

from sld.model.draft import Draft
from sld.model.kinds.ac import METER
from sld.spec.document import follows_nec
from sld.words import phrase

__all__ = ["last_of_the_operator"]


def last_of_the_operator(draft: Draft) -> str:
    """Return the key of the last device that belongs to the network operator, empty where nobody knows.

    As given; left out, what is usual is taken and said: a transformer of the site is the customer's, and a service fuse
    the operator's, as in Great Britain and Germany (common practice, no source). Where the National Electrical Code
    holds, a fuse at the service is the customer's, so that nothing is taken there.
    """
    supply, point = draft.spec.supply, draft.point
    network, service_fuse = f"{point.prefix}supply", f"{point.prefix}supply.service_fuse"
    if supply.ownership_boundary == "supply_meter":
        return _supply_meter(draft)
    if supply.ownership_boundary is not None:
        return network if supply.ownership_boundary == "network" else service_fuse
    remedy = phrase("give `ownership_boundary` under `supply`, after the operator's terms")
    if supply.transformer is not None:
        ahead = phrase("the network operator's part ends ahead of the site's transformer")
        draft.assume(point.place(("supply",)), network, ahead, remedy)
        return network
    if supply.service_fuse_a is not None and not follows_nec(draft.spec.profile):
        behind = phrase("the network operator's part ends behind the service fuse")
        draft.assume(point.place(("supply",)), network, behind, remedy)
        return service_fuse
    return ""


def _supply_meter(draft: Draft) -> str:
    """Return the key of the first supply meter of the main board, which the spec is known to have or to be given."""
    return next(
        device.key
        for device in draft.devices.values()
        if device.owner == f"boards.{draft.main}"
        and (meter := device.given_as(METER)) is not None
        and meter.purpose == "supply"
    )
