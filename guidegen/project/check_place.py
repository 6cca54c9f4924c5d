"""Checks of the place."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.schema import Place


def temperatures(place: Place) -> Iterator[Complaint]:
    """The coldest air is colder than the warmest, stated or by default."""
    if place.coldest is None and place.warmest is None:
        return
    if place.coldest_c >= place.warmest_c:
        word = "coldest" if place.coldest is not None else "warmest"
        expected = _("coldest below warmest; here they are {coldest:g} and {warmest:g} degC").format(
            coldest=place.coldest_c, warmest=place.warmest_c
        )
        yield Complaint(("place", word), expected, _("write both, the colder one as coldest"))


def water(place: Place) -> Iterator[Complaint]:
    """A distance needs the water it is measured to."""
    if place.distance_to_water is not None and place.near_water == "none":
        expected = _("distance_to_water only beside near_water")
        mend = _("name the water in near_water, such as pond, or delete the distance")
        yield Complaint(("place", "distance_to_water"), expected, mend)
