"""The key `hanging`: hooks or spans, how deep the lights hang, and what pulls at the hooks.

Numbers are SI floats once read: metre, kilogram, newton, metre per second.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from guidegen.locale import N_
from guidegen.project.model import Model
from guidegen.project.plain import Answer, Text
from guidegen.project.quantities import (
    Coordinate,
    Length,
    Load,
    Mass,
    MassPerLength,
    Speed,
    ZeroOrLength,
)


class Hook(Model):
    """A place that the lights hang from, seen from above."""

    x: Coordinate = Field(description=N_("Distance to the right in the plan"))
    y: Coordinate = Field(description=N_("Distance upwards in the plan"))
    height: ZeroOrLength | None = Field(
        None, description=N_("Height above the ground; default hanging.height")
    )


class Line(Model):
    """Hooks in a row, and the runs that hang from them one behind the other."""

    runs: tuple[Annotated[str, Text(1, 60)], ...] | None = Field(
        None, description=N_("Names of the runs on these hooks, in order; with one line all runs")
    )
    hooks: tuple[Hook, ...] | None = Field(
        None, description=N_("The hooks in the order in which the lights reach them")
    )
    spans: tuple[Length, ...] | None = Field(
        None, description=N_("Distances from hook to hook in a straight row; instead of hooks")
    )
    sag: Length | None = Field(
        None, description=N_("Dip in the middle of the longest span; default hanging.sag")
    )
    length: Length | None = Field(
        None, description=N_("Wire from the first hook to the last; instead of sag")
    )


class Hanging(Model):
    """How the lights hang."""

    lines: tuple[Line, ...] = Field(description=N_("Rows of hooks"))
    sag: Length | None = Field(
        None, description=N_("Dip in the middle of the longest span of a line that states none")
    )
    height: ZeroOrLength | None = Field(
        None, description=N_("Height of the hooks that state none above the ground")
    )
    starts_at: Literal["first bulb", "tail"] = Field(
        "first bulb",
        description=N_("What is at the first hook: bulb 1, or the begin of the tail; default first bulb"),
    )
    hook_kind: Annotated[str, Text(1, 60)] | None = Field(None, description=N_("Kind of hook, in your words"))
    hook_rating: Load | None = Field(None, description=N_("What one hook may bear for good"))
    wire_weight: MassPerLength | None = Field(
        None, description=N_("One metre of the strings' cable; default a typical one")
    )
    bulb_weight: Mass | None = Field(None, description=N_("One bulb; default a typical one"))
    wire_diameter: Length | None = Field(
        None, description=N_("Thickness of the strings' cable; default a typical one")
    )
    bulb_size: Length | None = Field(None, description=N_("Width of one bulb; default a typical one"))
    guide_wire: Annotated[Literal["yes", "no"], Answer()] = Field(
        "no", description=N_("Whether a wire of its own bears the lights; default no")
    )
    guide_wire_weight: MassPerLength | None = Field(
        None, description=N_("One metre of the guide wire; default a typical one")
    )
    guide_wire_strength: Load | None = Field(None, description=N_("Load at which the guide wire breaks"))
    wind: Speed | None = Field(None, description=N_("Strongest wind to reckon with"))
    ice: ZeroOrLength | None = Field(
        None, description=N_("Thickness of the coat of ice to reckon with; default none")
    )
