"""Stay safe: every caution of the project, most severe first."""

from __future__ import annotations

from collections.abc import Sequence

from guidegen.guide.cautions import Placed
from guidegen.guide.pages import SafetyPage
from guidegen.locale import _


def safety_page(cautions: Sequence[Placed]) -> SafetyPage:
    """The page of whole boxes."""
    return SafetyPage(
        first_line=_(
            "Local codes and licensed practice come before this guide. Where they say otherwise, follow "
            "them. This guide is about the low-voltage side of a finished, approved supply; it tells nothing "
            "about mains work, which belongs to a licensed person."
        ),
        cautions=tuple(each.caution for each in cautions),
    )
