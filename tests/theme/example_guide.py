"""A guide made by hand with every kind of block in it, for tests of the theme.

The figures are made up; only their form matters here.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace

from guidegen.guide.blocks import (
    Calculation,
    CalculationGroup,
    Caution,
    Check,
    Column,
    CutLine,
    Fact,
    PartLine,
    ReadingGroup,
    ReadingRow,
    Signal,
    Step,
    StepGroup,
    Symbol,
    Table,
)
from guidegen.guide.pages import (
    BuildPage,
    Guide,
    LightPage,
    NumbersPage,
    Page,
    PartsPage,
    PrintSetPage,
    ReadingsPage,
    SafetyPage,
    StartPage,
    WiringPage,
)


@dataclass(frozen=True)
class Drawing:
    """A picture as a template gets it."""

    src: str
    alt: str
    caption: str
    width: float
    height: float


PICTURES = {
    "lit": Drawing("drawings/light.svg", "Light of every bulb along both rails.", "", 760.4, 300),
    "schematic-1": Drawing(
        "drawings/schematic.svg",
        "Supply, fuse and two runs of 24 bulbs.",
        "Both runs from supply to last bulb",
        920,
        420,
    ),
    "light": Drawing("drawings/light.svg", "Light falls towards the middle.", "Light of each bulb", 760, 300),
    "cut": Drawing("drawings/cut.svg", "Cut mark right behind bulb 12.", "Where to cut", 420, 260),
}


def _caution(anchor: str, signal: Signal, title: str, *, full: bool = True) -> Caution:
    return Caution(
        anchor=anchor,
        signal=signal,
        word=signal.upper(),
        title=title,
        hazard="The resistor of the back rail reaches 71 °C while it runs and 240 °C if the run is shorted.",
        consequence="It burns skin and sets foam alight.",
        avoid=(
            "Mount it in free air, away from plastic, hot glue and foam.",
            "Judge it with a thermometer, or the back of a hand held near, never by touching.",
        ),
        source="Computed for this build; free air, 20 °C.",
        full=full,
    )


CAUTIONS = (
    _caution("new-wiring", "danger", "A new mains outlet is work for a qualified person"),
    _caution("rcd", "warning", "Outdoors only from an outlet with residual current protection"),
    _caution("hot-resistor", "caution", "The resistor gets hot"),
    _caution("approval", "notice", "The conversion ends the maker's outdoor rating"),
)


def _start() -> StartPage:
    return StartPage(
        what=(
            "Two even rows of warm-white drops over a potting bench: 48 bulbs on two rails, fed from one "
            "sealed 5.1 V supply that stays indoors.",
            "You join two strings for each rail, feed one rail from opposite ends and the other in its "
            "middle, and give each rail its own resistor.",
        ),
        facts=(
            Fact("Time", "5 to 6 hours", "one evening at the bench, one outside"),
            Fact("Difficulty", "Soldering, a meter, no mains work"),
            Fact("Supply", "5.1 V, 2.4 A", "sealed, double insulated"),
            Fact("Power", "2.2 W", "18 % of the supply's rating"),
            Fact("Bulbs", "48 in 2 runs"),
            Fact("Evenness", "0.61", "dimmest bulb against brightest; looks like 0.78"),
        ),
        verdict="This build meets all of its goals and stays inside every limit.",
        verdict_good=True,
        findings=("The insulation of the supply is not marked: look for the double square.",),
        picture="lit",
    )


def _parts() -> PartsPage:
    return PartsPage(
        buy=(
            PartLine("4", "String of 12 warm-white bulbs", "3 AA cells, 3 LEDs a bulb", "Two for each rail."),
            PartLine(
                "2",
                "Resistor 10 Ω",
                "5 W, 5 %, cement",
                "Keeps the LEDs at 3 mA; bears a shorted run.",
                "brown black black gold",
            ),
            PartLine("1", "Fuse 1 A with holder", "5 × 20 mm, 250 V", "Opens before the wire gets hot."),
            PartLine("11.5 m", "Two-core wire", "0.5 mm²", "Feeders and the extra wire of each run."),
        ),
        tools=(
            PartLine("1", "Multimeter", "volts, ohms, milliamperes", "For every check."),
            PartLine("1", "Soldering iron", "40 to 60 W", "Joints are soldered at the bench."),
        ),
        cuts=(
            CutLine(
                "F1", "0.5 mm² two-core", "1.60 m", "strip 8 mm, tin", "Feeder of the back rail, 10 cm spare."
            ),
            CutLine("X1", "0.5 mm² single", "6.60 m", "strip 8 mm, tin"),
        ),
        labels=("5.1 V DC, + is striped, fuse 1 A", "Back rail, run 1, 10 Ω 5 W"),
    )


def _wiring() -> WiringPage:
    return WiringPage(
        pictures=("schematic-1",),
        how_to_read=(
            "Plus is drawn on top, minus below.",
            "T1, T2, ... are the places for the meter; the same numbers stand in steps and readings.",
        ),
        points=Table(
            "Where to put the meter",
            (Column("Point"), Column("Place"), Column("Volts", numeric=True)),
            (
                ("T1", "Supply, at the plug", "5.06 V"),
                ("T2", "Across the resistor of the back rail", "1.98 V"),
                ("T3", "Behind the resistor of the back rail", "3.07 V"),
            ),
        ),
        wires=Table(
            "Every piece of wire",
            (
                Column("Wire"),
                Column("From"),
                Column("To"),
                Column("Area", numeric=True),
                Column("Length", numeric=True),
                Column("Lasting fault current", numeric=True),
            ),
            (
                ("F1", "fuse", "back rail, bulb 1", "0.5 mm²", "1.50 m", "2.10 A"),
                ("X1", "supply minus", "back rail, bulb 24", "0.5 mm²", "6.50 m", "2.10 A"),
            ),
            "Lengths are one way.",
        ),
        runs=Table(
            "What each run is",
            (
                Column("Run"),
                Column("Feed"),
                Column("Bulbs", True),
                Column("Resistor"),
                Column("Current", True),
            ),
            (
                ("back rail", "opposite ends", "24", "10 Ω 5 W", "205 mA"),
                ("front rail with a very long name for it", "middle", "24", "10 Ω 5 W", "208 mA"),
            ),
        ),
    )


def _numbers() -> NumbersPage:
    calculation = Calculation(
        title="Current of the back rail",
        formula="I = (U − U_after) / R",
        symbols=(
            Symbol("U", "volts ahead of the resistor", "5.06 V"),
            Symbol("U_after", "volts behind it", "3.07 V"),
            Symbol("R", "the run's resistor", "10 Ω"),
        ),
        substituted="I = (5.06 V − 3.07 V) / 10 Ω",
        result="0.199 A",
        source="Ohm's law",
        note="The solved network gives the same to 1 part in 10⁹.",
    )
    bulbs = tuple(
        (str(n), f"{0.25 * n:.2f}", f"{2.9 - n / 500:.3f}", f"{9 - n / 9:.2f}") for n in range(1, 13)
    )
    table = Table(
        "Bulbs of the back rail",
        (Column("Bulb", True), Column("Position, m", True), Column("Volts", True), Column("mA", True)),
        bulbs,
    )
    return NumbersPage(
        groups=(
            CalculationGroup(
                "currents",
                "Currents",
                "Each run is solved whole; here its answer is put back into Ohm's law.",
                (calculation, replace(calculation, title="Current of the front rail", note="")),
                (table,),
            ),
            CalculationGroup(
                "resistors", "Resistors", "", (replace(calculation, title="Watts", symbols=()),)
            ),
        ),
        corners=Table(
            "Which corner decides what",
            (
                Column("Quantity"),
                Column("Supply"),
                Column("Resistor"),
                Column("LED voltage"),
                Column("Result", True),
            ),
            (("LED current", "5.36 V", "9.5 Ω", "2.65 V", "4.1 mA"),),
        ),
        left_out=("Ageing of the LEDs.", "Loose or corroded joints."),
        project_file_name="potting-bench.yaml",
        project_file=(
            "title: Potting-bench lights\nstrings:\n  drop:\n    bulbs: 12\n    spacing: 25 cm\n"
            "supply:\n  voltage: 5.1 V  # read with the meter, unloaded, after a quarter of an hour on\n"
        ),
    )


def _light() -> LightPage:
    return LightPage(
        message=("The dimmest bulb gives 61 % of the light of the brightest; the eye sees about 78 %.",),
        pictures=("light",),
        tables=(_numbers().groups[0].tables[0],),
    )


def _check(number: int) -> Check:
    return Check(
        what="Volts behind the resistor",
        meter="20 V DC; red on plus, black on minus.",
        expected="3.07 V",
        range="2.95 V to 3.18 V",
        if_not=(
            "Near 5 V: the run is open; look at the joint behind bulb 12.",
            "Near 0 V: the run is shorted.",
        ),
        points=(f"T{number}",),
    )


def _build() -> BuildPage:
    steps = tuple(
        Step(
            identity=f"back-rail-{number}",
            number=number,
            title=title,
            why="A joint that is pulled on will fail; the sleeve and the knot take the pull.",
            parts=("2 sleeves 6 mm", "10 cm wire"),
            tools=("soldering iron", "heat gun"),
            cautions=(CAUTIONS[2], replace(CAUTIONS[1], full=False), replace(CAUTIONS[0], full=False))
            if number == 2
            else (),
            do=(
                "Lay both strings out on the bench, plugs to the left.",
                "Cut right behind bulb 12, so that the whole spacing stays with the next run.",
                "Slide one sleeve over each conductor before you solder.",
            ),
            checks=(
                _check(number),
                replace(
                    _check(number),
                    what="Beep between the plus wires",
                    expected="a beep, less than 1 Ω",
                    range="",
                    points=(),
                    meter="",
                ),
            )
            if number != 1
            else (),
            picture="cut" if number == 2 else "",
        )
        for number, title in enumerate(
            (
                "Mark the bulbs",
                "Join the two strings of the back rail and cut where the run ends",
                "First power",
            ),
            start=1,
        )
    )
    return BuildPage(
        before=("Read Stay safe.", "Have every part of Parts and tools on the bench."),
        groups=(
            StepGroup(
                "bench", "At the bench", "Everything here is done with the supply unplugged.", steps[:2]
            ),
            StepGroup("power", "First power", "", steps[2:]),
        ),
    )


def _readings() -> ReadingsPage:
    row = ReadingRow(
        identity="t1-volts",
        point="T1",
        what="Volts of the supply",
        meter="20 V DC",
        unit="V",
        expected=5.06,
        low=4.9,
        high=5.2,
        expected_text="5.06 V",
        range_text="4.90 V to 5.20 V",
        if_low="The supply is overloaded or not the one of the project file.",
        if_high="The adapter is not regulated; do not go on.",
    )
    line = replace(
        row, identity="run-1-line", point="run 1", what="Current in line, meter in plus", unit="mA"
    )
    return ReadingsPage(
        how=("Fill in what your meter shows. The page tells at once whether it is in range.",),
        cautions=(replace(CAUTIONS[2], full=False), CAUTIONS[3]),
        groups=(
            ReadingGroup("Supply", (row,)),
            ReadingGroup(
                "Back rail", (replace(row, identity="t3", point="T3"), replace(line, if_low="", if_high=""))
            ),
        ),
    )


def _print_set() -> PrintSetPage:
    return PrintSetPage(lead=("Print this sheet.",), sheets=("stay-safe.html", "parts.html", "readings.html"))


def make_guide(**changes: object) -> Guide:
    """The example guide, with fields of it changed."""
    pages = (
        Page("index.html", "Start here", "What it will be, and what it takes", "start.html", _start()),
        Page("stay-safe.html", "Stay safe", "Read before anything is plugged in", "safe.html",
             SafetyPage("Nothing here is mains work: the guide stops at the plug.", CAUTIONS)),
        Page("parts.html", "Parts and tools", "All to buy and to own before step 1", "parts.html", _parts()),
        Page("wiring.html", "Wiring", "The schematic, its test points and wires", "wiring.html", _wiring()),
        Page("numbers.html", "The numbers", "Every calculation, worked", "numbers.html", _numbers()),
        Page("light.html", "Light along the run", "How bright each bulb will be", "light.html", _light()),
        Page("build.html", "Build it", "Step by step, with a reading at each check", "build.html", _build()),
        Page("readings.html", "Readings", "What the meter shows, and yours", "readings.html", _readings()),
        Page("print-set.html", "Print set", "A stack for the workshop", "print-set.html", _print_set()),
    )  # fmt: skip
    guide = Guide(
        title="Potting-bench lights",
        summary="Two even rows of warm-white drops over a potting bench.",
        author="A. Maker",
        language="en",
        key="0f1e2d3c",
        version="0.1.0",
        pages=pages,
    )
    return replace(guide, **changes)  # type: ignore[arg-type]


#: Fields that are names within the program, not text of a person.
_NAMES = frozenset(
    {
        "anchor",
        "signal",
        "identity",
        "picture",
        "pictures",
        "sheets",
        "language",
        "key",
        "name",
        "template",
        "version",
        "src",
    }
)


def with_text(block: object, text: str) -> object:
    """The same block with `text` behind every text in it, except in the names the program uses."""
    if isinstance(block, str):
        return block + text
    if isinstance(block, tuple):
        return tuple(with_text(item, text) for item in block)
    if is_dataclass(block) and not isinstance(block, type):
        changed = {
            field.name: with_text(getattr(block, field.name), text)
            for field in fields(block)
            if field.name not in _NAMES
        }
        # A part's name is text; a page's name is a file.
        if isinstance(block, PartLine):
            changed["name"] = block.name + text
        return replace(block, **changed)
    return block
