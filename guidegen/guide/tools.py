"""The tools a step may ask for; the list of tools is what the steps use."""

from __future__ import annotations

from enum import Enum, auto

from guidegen.locale import _


class Tool(Enum):
    """One tool, in the order of the list."""

    METER = auto()
    CLIP_LEADS = auto()
    CUTTERS = auto()
    STRIPPER = auto()
    KNIFE = auto()
    MAGNET = auto()
    IRON = auto()
    HOT_AIR = auto()
    TILE = auto()
    TAPE = auto()
    CLOTH = auto()
    SCREWDRIVER = auto()
    TAPE_MEASURE = auto()
    PEN = auto()
    THERMOMETER = auto()
    GLASSES = auto()
    CLOCK = auto()
    LADDER = auto()


def tool_name(tool: Tool) -> str:
    """What a tool is called in steps and in the list."""
    return {
        Tool.METER: _("multimeter"),
        Tool.CLIP_LEADS: _("clip leads"),
        Tool.CUTTERS: _("side cutters"),
        Tool.STRIPPER: _("wire stripper"),
        Tool.KNIFE: _("small knife"),
        Tool.MAGNET: _("magnet"),
        Tool.IRON: _("soldering iron with stand, and solder"),
        Tool.HOT_AIR: _("hot-air gun"),
        Tool.TILE: _("dry tile or stone slab"),
        Tool.TAPE: _("insulating tape"),
        Tool.CLOTH: _("cloth"),
        Tool.SCREWDRIVER: _("screwdriver"),
        Tool.TAPE_MEASURE: _("tape measure"),
        Tool.PEN: _("permanent pen"),
        Tool.THERMOMETER: _("thermometer"),
        Tool.GLASSES: _("safety glasses"),
        Tool.CLOCK: _("clock"),
        Tool.LADDER: _("ladder or step"),
    }[tool]


def tool_rating(tool: Tool) -> str:
    """What a tool has to be able to do, or empty."""
    return {
        Tool.METER: _("DC volts, ohms to 2 MΩ, beeper, DC amperes; leads with sound insulation"),
        Tool.CLIP_LEADS: _("four, with insulated clips"),
        Tool.IRON: _("temperature-controlled if you have it; electronics solder with flux core"),
        Tool.THERMOMETER: _(
            "with a probe, to 200 °C at least; an infrared spot wider than the resistor reads low"
        ),
        Tool.STRIPPER: _("for thin stranded wire"),
        Tool.CLOTH: _("free of lint, dry"),
        Tool.LADDER: _("on firm ground, with someone to hold it"),
    }.get(tool, "")


def tool_why(tool: Tool) -> str:
    """Why it is needed, in one sentence."""
    return {
        Tool.METER: _("Most checks of this guide are meter readings."),
        Tool.CLIP_LEADS: _("They hold test connections, so that both hands stay free."),
        Tool.CUTTERS: _("They cut strings and wire cleanly."),
        Tool.STRIPPER: _("It bares thin strands without cutting them."),
        Tool.KNIFE: _("It scrapes lacquered wire bright."),
        Tool.MAGNET: _("It tells steel wire from copper."),
        Tool.IRON: _("Twisted wires work loose and corrode; soldered ones do not."),
        Tool.HOT_AIR: _("It shrinks sleeves evenly; a flame scorches them."),
        Tool.TILE: _("What may get hot lies on something that does not burn."),
        Tool.TAPE: _("It keeps bare joints apart until they are tested, and numbers bulbs."),
        Tool.CLOTH: _("Flux left on a joint corrodes it."),
        Tool.SCREWDRIVER: _("It tightens the terminals."),
        Tool.TAPE_MEASURE: _("The wires are cut to the lengths of the cut list."),
        Tool.PEN: _("It writes the labels and marks + on every cable."),
        Tool.THERMOMETER: _("A hot resistor is never judged by touch."),
        Tool.GLASSES: _("Cut wire ends and solder fly."),
        Tool.CLOCK: _("The first hour is watched."),
        Tool.LADDER: _("Hanging is the only work done above your head."),
    }[tool]
