"""How a piece of string is lit alone, and how two of them meet."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.format import quantity
from guidegen.guide.steps.joint_words import closed_end
from guidegen.locale import _
from guidegen.parts.trial_resistors import Trial
from guidegen.tables.limits import HOT_SURFACE_DEGC


def joined_ends(run: RunPlan, bulb: int) -> tuple[str, ...]:
    """How two pieces meet behind a bulb, and what the lead-in of the second does to the spacing."""
    place = run.joins.index(bulb)
    lines = () if run.pieces[place].cut_behind else (closed_end(bulb),)
    gap = dark_gap_m(run, bulb)
    if not gap:
        return lines
    return (
        *lines,
        _("The wire to bulb {next} is {gap} long. For even gaps hang it folded.").format(
            next=bulb + 1, gap=quantity(gap, "m")
        ),
    )


def dark_gap_m(run: RunPlan, bulb: int) -> float:
    """Wire from the bulb in front of a join to the next one if longer than the usual spacing, else 0."""
    gap = float(run.segment_m[bulb])
    usual = [float(run.segment_m[k]) for k in range(1, run.bulbs) if k not in run.joins]
    return gap if usual and gap > min(usual) else 0.0


def clip_line(ohm: str, what: str) -> str:
    """How something is lit through a test resistor."""
    return _(
        "Unplugged, clip: + common connector to the {ohm} resistor, resistor to one wire of {what}, its "
        "other wire to the − common connector. Plug in."
    ).format(ohm=ohm, what=what)


def find_plus_line() -> str:
    """Light tells plus."""
    return _("Dark: unplug at once and swap the two wires. When it shines, plus is the wire at the resistor.")


def hot_lines(trial: Trial) -> tuple[str, ...]:
    """What to do about a test resistor that a short makes hot."""
    if trial.shorted_c <= HOT_SURFACE_DEGC.value:
        return ()
    return (
        _(
            "Dark both ways round may be a short: the resistor gets to {hot}. Unplug at once; hands off it."
        ).format(hot=heat_text(trial)),
    )


def heat_text(trial: Trial) -> str:
    """How hot a short makes a test resistor."""
    return quantity(round(trial.shorted_c), "°C")
