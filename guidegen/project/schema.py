"""The project file as models: every key with what it means, its unit and its default.

Numbers are SI floats once read (volt, ampere, ohm, metre, square metre,
watt) except temperatures (degree Celsius) and ratios (0 to 1).  `Field`
descriptions are what error messages and the reference list of keys show.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from guidegen.locale import N_
from guidegen.project.hung import Hanging
from guidegen.project.metering import (
    Accuracy,
    AccuracyReader,
    ReadAt,
    ReadAtReader,
    Shown,
    ShownReader,
)
from guidegen.project.model import Model
from guidegen.project.own import LONGEST_STORY, OwnStep, Photos, Words
from guidegen.project.plain import Answer, IpCode, Number, Text
from guidegen.project.quantities import (
    Area,
    Celsius,
    Current,
    Fuse,
    Gauge,
    Length,
    Money,
    Power,
    Ratio,
    Resistance,
    ResistancePerLength,
    ResistorOrNone,
    Tariff,
    Time,
    Tolerance,
    Voltage,
    ZeroOrLength,
    ZeroOrPower,
    ZeroOrResistance,
)
from guidegen.project.supply_at import SupplyAt, SupplyPlace

MOST_BULBS = 200_000
Count = Annotated[int, Number(1, MOST_BULBS)]
Name = Annotated[str, Text(1, 60)]
Weight = Annotated[float, Number(0, 1000, whole=False)]
Colour = Literal["white", "warm white", "blue", "green", "red", "orange", "yellow"]
Exposure = Literal["indoors", "sheltered outdoors", "open outdoors"]
Feed = Literal["one end", "middle", "both ends", "opposite ends"]
ResistorKind = Literal["film", "cement", "wirewound"]
Language = Literal["en", "de"]
Material = Literal["copper", "tinned copper", "copper-clad aluminium"]
Series = Literal["E12", "E24"]
YesNo = Annotated[Literal["yes", "no"], Answer()]
YesNoUnknown = Annotated[Literal["yes", "no", "unknown"], Answer(unknown=True)]


class Place(Model):
    """Where the lights will hang."""

    exposure: Exposure = Field(description=N_("How far rain reaches the lights"))
    mains: Literal["existing outlet", "new fixed wiring"] = Field(
        description=N_("Whether the supply goes into an outlet that is there already")
    )
    coldest: Celsius | None = Field(
        None, description=N_("Coldest air in use; default 10 degC indoors, -10 degC outdoors")
    )
    warmest: Celsius | None = Field(None, description=N_("Warmest air in use; default 35 degC"))
    near_water: Literal["none", "pool", "pond", "fountain", "bath or shower", "sauna"] = Field(
        "none", description=N_("Water near the lights")
    )
    distance_to_water: ZeroOrLength | None = Field(None, description=N_("Nearest part to that water's edge"))
    supply_at: SupplyAt = Field(
        "start",
        description=N_(
            "Where the supply's wire begins, on the first line of lights or in the hanging plan; of several "
            "places each is tried; default start"
        ),
    )
    children_or_animals: YesNo | None = Field(
        None, description=N_("Whether small children or animals come near; left out, yes is assumed")
    )
    over_path: YesNo | None = Field(
        None,
        description=N_("Whether people pass below the lights; left out, yes is assumed outdoors, no indoors"),
    )

    @property
    def supply_places(self) -> tuple[SupplyPlace, ...]:
        """Every place that the supply may have."""
        return self.supply_at if isinstance(self.supply_at, tuple) else (self.supply_at,)

    @property
    def coldest_c(self) -> float:
        """Coldest air in degree Celsius, stated or by default."""
        if self.coldest is not None:
            return self.coldest
        return 10.0 if self.exposure == "indoors" else -10.0

    @property
    def warmest_c(self) -> float:
        """Warmest air in degree Celsius, stated or by default."""
        return 35.0 if self.warmest is None else self.warmest


class StringWire(Model):
    """Wire of a light string, in one of the forms a maker can know it by."""

    one_conductor: Resistance | None = Field(
        None, description=N_("Ohms of one conductor of the whole string")
    )
    loop: Resistance | None = Field(
        None, description=N_("Ohms of both conductors of the whole string, one after the other")
    )
    meter_leads: ZeroOrResistance | None = Field(
        None, description=N_("What the meter reads with its leads touched together; default 0 ohm")
    )
    per_length: ResistancePerLength | None = Field(None, description=N_("Ohms of one metre, one conductor"))
    area: Area | None = Field(None, description=N_("Cross-section of one conductor"))
    gauge: Gauge | None = Field(None, description=N_("American wire gauge number"))
    material: Material | None = Field(None, description=N_("Conductor material; default copper"))


class Led(Model):
    """Curve of one LED: a typical one by colour, or the maker's own."""

    typical: Colour | None = Field(None, description=N_("Colour of a typical curve"))
    voltage: Voltage | None = Field(None, description=N_("Volts across one LED at `current`"))
    current: Current | None = Field(None, description=N_("Current at which `voltage` holds"))
    slope: Voltage | None = Field(
        None,
        description=N_("Volts more for 2.72 times the current; default typical white"),
    )
    resistance: ZeroOrResistance | None = Field(
        None, description=N_("Series resistance of one LED; default typical white")
    )


class BenchReading(Model):
    """Readings of one uncut string on its cells or a supply, through a known resistor.

    `after_resistor` is read with no meter in line; `current` is a second
    state, with the meter in line; `supply` is read loaded.
    """

    supply: Voltage = Field(description=N_("Volts of the cells or supply while the string is lit"))
    resistor: ZeroOrResistance = Field(description=N_("Resistor between supply and string"))
    after_resistor: Voltage | None = Field(None, description=N_("Volts behind the resistor"))
    current: Current | None = Field(None, description=N_("Current shown by a meter in line"))
    meter_burden: ZeroOrResistance | None = Field(None, description=N_("Resistance of that meter"))


class CameWith(Model):
    """What the string was sold with."""

    cells: Annotated[int, Number(1, 24)] = Field(description=N_("Cells in series"))
    size: Literal["AAA", "AA", "C", "D", "CR2032"] = Field("AA", description=N_("Cell size"))
    resistor: ZeroOrResistance = Field(0.0, description=N_("Resistor in the box"))


class LightString(Model):
    """One kind of light string, as bought."""

    bulbs: Count = Field(description=N_("Bulbs of one string"))
    spacing: Length = Field(description=N_("Wire from bulb to bulb"))
    wire: StringWire = Field(description=N_("Wire of the whole string"))
    bought: Annotated[int, Number(1, 10_000)] = Field(1, description=N_("Strings of this kind"))
    leds_per_bulb: Annotated[int, Number(1, 100)] = Field(1, description=N_("LEDs in one bulb, all told"))
    leds_in_series: Annotated[int, Number(1, 100)] = Field(
        1, description=N_("How many of them form one group; divides leds_per_bulb")
    )
    group_resistor: ZeroOrResistance = Field(0.0, description=N_("Resistor in each group"))
    runs_on: Literal["low voltage", "mains"] = Field(
        "low voltage", description=N_("What the string is made for")
    )
    between_bulbs: Literal["parallel", "series", "chip", "unknown"] = Field(
        "parallel", description=N_("How the bulbs are joined; only parallel may be cut or rewired")
    )
    lit_on_dc: Literal["all", "half", "half of each bulb"] = Field(
        "all", description=N_("What lights on direct current (two-way strings light half)")
    )
    tail: ZeroOrLength | None = Field(None, description=N_("Unlit wire before bulb 1; default one spacing"))
    led: Led = Field(Led(typical="white"), description=N_("Curve of one LED; default typical white"))
    max_led_current: Current | None = Field(
        None, description=N_("Largest current of one LED; default the current on fresh cells it came with")
    )
    bench: tuple[BenchReading, ...] = Field(
        (), description=N_("Readings of one uncut string; they win over led")
    )
    bench_temperature: Celsius = Field(20.0, description=N_("Air at the bench"))
    came_with: CameWith | None = Field(None, description=N_("Cells and resistor it was sold with"))
    box: Literal["kept", "removed"] = Field(
        "removed", description=N_("What becomes of the box it was sold with; default removed")
    )
    wires: Annotated[int, Number(2, 3)] | None = Field(
        None,
        description=N_("Wires from bulb to bulb, counted; left out, 2 are assumed and a step counts them"),
    )
    label: Annotated[str, Text(1, 200)] | None = Field(
        None, description=N_("What is printed on the string, its box or its adapter, word for word")
    )
    waterproof: YesNo | None = Field(
        None, description=N_("Whether its maker sells it for rain; left out, no is assumed")
    )

    @property
    def tail_m(self) -> float:
        """Length of the tail in metres."""
        return self.spacing if self.tail is None else self.tail

    @property
    def groups(self) -> int:
        """Groups in parallel in one bulb."""
        return self.leds_per_bulb // self.leds_in_series


class WirePiece(Model):
    """A length of two-conductor wire (one core for the extra wire of `opposite ends`)."""

    length: ZeroOrLength = Field(description=N_("Length of the way it runs, counted once"))
    wire: StringWire = Field(description=N_("One of area, gauge or per_length"))


class Supply(Model):
    """The low-voltage supply."""

    voltage: Voltage = Field(description=N_("Volts measured with nothing connected to it"))
    rated_current: Current = Field(description=N_("Current on its label"))
    case: Literal["sealed", "opened"] = Field(description=N_("Whether its case was ever opened"))
    insulation: Literal["double", "reinforced", "basic", "unknown"] = Field(
        description=N_("Insulation between mains and output")
    )
    tolerance: Tolerance = Field(
        0.05, description=N_("How far its volts may be off, up or down; default 5 %")
    )
    output_resistance: ZeroOrResistance = Field(
        0.0, description=N_("Resistance inside the supply; default 0 ohm")
    )
    current_limit: Current | None = Field(
        None, description=N_("Current it is sure to give into a short; default rated_current")
    )
    type: Literal["constant voltage", "constant current"] = Field(
        "constant voltage",
        description=N_("What it keeps steady, its volts or its current; default constant voltage"),
    )
    output: Literal["dc", "ac", "pulsed"] = Field("dc", description=N_("What comes out of it; default dc"))
    stands: Literal["indoors", "outdoors"] = Field("indoors", description=N_("Where the supply stands"))
    ip: Annotated[str, IpCode()] | None = Field(
        None, description=N_("IP code marked on it, such as IP44; needed outdoors")
    )
    lead: WirePiece | None = Field(None, description=N_("Wire shared by all runs; default none"))
    approved: YesNoUnknown = Field(
        "unknown", description=N_("Whether it carries a mark of approval of your country; default unknown")
    )
    limited_power: YesNo | None = Field(
        None,
        description=N_("Whether it is marked as a limited power source or Class 2; left out, no is assumed"),
    )
    unregulated: YesNo | None = Field(
        None, description=N_("Whether its volts sink as the load grows; left out, it may be so")
    )
    efficiency: Ratio | None = Field(
        None, description=N_("Watts it gives over watts it takes from the outlet; default a typical one")
    )
    standby: ZeroOrPower | None = Field(
        None, description=N_("What it takes with no load; default a typical one")
    )


class Run(Model):
    """A stretch of bulbs fed through one series resistor."""

    bulbs: Count = Field(description=N_("Bulbs in this run"))
    name: Name | None = Field(None, description=N_("Name of the run; default run 1, run 2, ..."))
    string: Name | None = Field(None, description=N_("Kind of string; may be left out when there is one"))
    feed: Feed = Field("one end", description=N_("How the run is fed"))
    resistor: ResistorOrNone | None = Field(
        None, description=N_("Series resistor, or none; left out to have it chosen")
    )
    resistor_tolerance: Tolerance = Field(
        0.05, description=N_("How far its ohms may be off, up or down; default 5 %")
    )
    resistor_rating: Power | None = Field(
        None, description=N_("Watts it is made for; left out to have it chosen")
    )
    resistor_kind: ResistorKind | None = Field(
        None, description=N_("Kind of resistor; unknown counts as worst")
    )
    series: Series | None = Field(None, description=N_("Preferred values for this run; default goals.series"))
    feeder: WirePiece | None = Field(
        None, description=N_("Two-conductor wire from supply to run; default none")
    )
    extra_wire: WirePiece | None = Field(
        None, description=N_("Wire to the middle, the far end or both; needed by every feed but one end")
    )
    first_hung: Literal["first bulb", "last bulb"] = Field(
        "first bulb",
        description=N_(
            "Which of its bulbs the hanging plan reaches first; bulb 1 is at the fed end; default first bulb"
        ),
    )


class Weights(Model):
    """What counts when arrangements are put in order, each in the unit stated; 0: does not count."""

    cost: Weight = Field(1.0, description=N_("For one unit of money; default 1"))
    evenness: Weight = Field(0.0, description=N_("For every 0.1 of evenness lacking to 1; default 0"))
    joints: Weight = Field(0.0, description=N_("For one soldered joint; default 0"))
    cuts: Weight = Field(0.0, description=N_("For one cut of a string; default 0"))
    wire: Weight = Field(0.0, description=N_("For one metre of extra wire; default 0"))


class Prices(Model):
    """What parts cost the maker; a price left out is a typical one."""

    wire: Money | None = Field(None, description=N_("One metre of two-core wire of 0.5 mm2"))
    resistor: Money | None = Field(None, description=N_("One resistor of 5 W"))
    fuse: Money | None = Field(None, description=N_("Fuse with its holder"))
    joint: Money | None = Field(None, description=N_("Solder and sleeve of one joint"))
    cell: Money | None = Field(None, description=N_("One cell of the size the strings came with"))
    supply: Money | None = Field(None, description=N_("The supply"))
    string: Money | None = Field(None, description=N_("One light string as bought"))


class Meter(Model):
    """The meter that readings are taken with; what is left out is that of a usual hand-held one."""

    accuracy: Annotated[Accuracy, AccuracyReader()] | None = Field(
        None, description=N_("Accuracy on DC volts; default 0.5 % + 2 digits")
    )
    resolution: Voltage | None = Field(
        None, description=N_("Last digit on the range used for the supply's volts; default 10 mV")
    )
    current_accuracy: Annotated[Accuracy, AccuracyReader()] | None = Field(
        None, description=N_("Accuracy on DC milliamperes; default 1 % + 3 digits")
    )
    current_resolution: Current | None = Field(
        None, description=N_("Last digit on milliamperes; default 0.1 mA")
    )
    leads: ZeroOrResistance | None = Field(
        None,
        description=N_(
            "What it shows with its leads held together; taken off measured wire that states no "
            "meter_leads; default 0 ohm"
        ),
    )
    burden: ZeroOrResistance | None = Field(
        None, description=N_("Its resistance in line on milliamperes, leads included; default 1.5 ohm")
    )


class AsBuiltReading(Model):
    """One reading of the finished build, all runs lit."""

    at: Annotated[ReadAt, ReadAtReader()] = Field(description=N_("Where the meter was put"))
    value: Annotated[Shown, ShownReader()] = Field(description=N_("What the meter showed"))
    run: Name | None = Field(
        None,
        description=N_(
            "Name of the run; may be left out when there is one run; without it, current is that of all runs"
        ),
    )


class Goals(Model):
    """What the maker wants; these may tighten safety limits, never loosen them."""

    evenness: Ratio = Field(
        0.5, description=N_("Light of the dimmest bulb as a share of the brightest one's; default 0.5")
    )
    led_current: Current | None = Field(
        None, description=N_("Mean current of a run's lit LEDs; met from 0.8 to 1.0 of it")
    )
    resistor_load: Ratio = Field(
        0.5, description=N_("Most of its rated watts that a resistor may run at; default 0.5")
    )
    supply_load: Ratio = Field(
        0.8, description=N_("Most of its rated current that may be taken from the supply; default 0.8")
    )
    light_exponent: Annotated[float, Number(0.3, 2, whole=False)] = Field(
        1.0, description=N_("Light goes with current to this power; default 1")
    )
    series: Series = Field("E12", description=N_("Preferred values for chosen resistors; default E12"))
    weights: Weights = Field(Weights(), description=N_("What puts arrangements that meet the goals in order"))


class Project(Model):
    """One low-voltage decorative lighting build."""

    title: Annotated[str, Text(1, 120)] = Field(description=N_("Name of the project"))
    place: Place = Field(description=N_("Where the lights will hang"))
    strings: dict[str, LightString] = Field(
        min_length=1, description=N_("Kinds of light string, by a name of your own")
    )
    supply: Supply = Field(description=N_("The low-voltage supply"))
    summary: Annotated[str, Text(0, 1000)] = Field("", description=N_("One or two sentences about it"))
    author: Annotated[str, Text(0, 120)] = Field("", description=N_("Who publishes the guide"))
    language: Language = Field("en", description=N_("Language of the guide; default en"))
    runs: tuple[Run, ...] | None = Field(None, description=N_("The runs; left out to have them proposed"))
    fuse: Fuse | None = Field(
        None, description=N_("Amperes that the fuse is rated for; left out to have it chosen")
    )
    fuse_type: Literal["IEC", "UL"] = Field("IEC", description=N_("IEC 60127-2 or UL 248-14; default IEC"))
    goals: Goals = Field(Goals(), description=N_("What the maker wants"))
    prices: Prices = Field(Prices(), description=N_("What parts cost, for comparing arrangements"))
    meter: Meter = Field(Meter(), description=N_("The meter that readings are taken with"))
    readings: tuple[AsBuiltReading, ...] = Field((), description=N_("Readings of the finished build"))
    hanging: Hanging | None = Field(None, description=N_("How the lights hang; left out, no hanging plan"))
    tariff: Tariff | None = Field(None, description=N_("What one kilowatt hour costs"))
    hours_per_day: Time | None = Field(
        None, description=N_("How long the lights are on in a day; default a typical evening")
    )
    days_per_season: Annotated[int, Number(1, 366)] | None = Field(
        None, description=N_("Days in a year on which the lights are on; default 90")
    )
    photos: Photos = Field(Photos(), description=N_("Photos on the first page"))
    steps: tuple[OwnStep, ...] = Field(
        (), description=N_("Your own words, photos and steps, added to the steps of the guide")
    )
    story: Annotated[str, Words(LONGEST_STORY)] = Field(
        "", description=N_("Your own words about the build, on the first page")
    )
    licence: Annotated[str, Text(0, 200)] = Field(
        "", description=N_("On what terms others may use the guide, shown at its foot")
    )
