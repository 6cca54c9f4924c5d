"""Rules about the work itself: iron, tools, meter, and the first hour of light."""

from __future__ import annotations

from guidegen.locale import N_
from guidegen.safety.rule import Case, Rule, always

RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="solder-at-the-bench",
        level="warning",
        topics=("soldering",),
        title=N_("Solder at the bench"),
        sentence=N_("A hot iron on a ladder leaves no hand to hold on with."),
        consequence=N_("Falls, burns, fire below."),
        avoid=(
            N_("Make every joint at the bench, iron in its stand, with eye protection and fresh air."),
            N_("Hang finished pieces, unplugged."),
        ),
        reason=N_("Solder drips, irons fall, and joints made overhead are poor."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="first-hour-watched",
        level="warning",
        topics=("first-power",),
        title=N_("Watch the first hour"),
        sentence=N_("Poor joints and hot parts show themselves in the first hour."),
        consequence=N_("Unwatched, a hot spot can start a fire."),
        avoid=(N_("Stay with it for an hour; unplug at any smell, smoke, flicker or heat."),),
        reason=N_("Parts take about that long to reach their final temperature."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="meter-on-amps",
        level="caution",
        topics=("meter",),
        title=N_("Meter on amps"),
        sentence=N_("A meter set to amps is a short across whatever it touches."),
        consequence=N_("The meter's fuse blows, and leads can burn a hand."),
        avoid=(
            N_("Never put it across the supply; put the lead back into the volts socket at once."),
            N_("Better: read the volts across the resistor and divide by its ohms."),
        ),
        reason=N_("On amps a meter has next to no resistance."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="sharp-tools",
        level="caution",
        topics=("sharp",),
        title=N_("Sharp tools"),
        sentence=N_("Knives, cutters and wire ends are sharp, and cut ends fly."),
        consequence=N_("Cut fingers, hurt eyes."),
        avoid=(N_("Cut away from yourself, hold the end that falls, and wear eye protection."),),
        reason=N_("Thin wire is stripped with a blade close to the fingers."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="polarity-by-meter",
        level="notice",
        topics=("polarity",),
        title=N_("Polarity by meter"),
        sentence=N_("Rib, stripe and colour do not tell which wire is plus."),
        consequence="",
        avoid=(N_("Find + with the meter at every joint, and mark it."),),
        reason=N_("Makers mark either conductor, and a string may swap them on the way."),
        source=N_("common practice"),
        applies=always,
    ),
)
