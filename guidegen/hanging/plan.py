"""What a hanging plan is, in numbers; metre and newton, seen from above with x to the right, y upwards."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.hanging.hooks import HookPoint, Span
from guidegen.hanging.lay import Laid


@dataclass(frozen=True)
class HungBulb:
    """Where a bulb lands.

    `run` is the run's index, `along_m` counts along the wire from the first
    hook, `from_m` likewise from the hook before it.  `span` is the index of
    its span in the line; None where the bulb is beyond the last hook or
    before the first, and then it has no place.
    """

    run: int
    bulb: int
    lit: bool
    along_m: float
    span: int | None
    from_m: float
    x_m: float | None
    y_m: float | None
    height_m: float | None


@dataclass(frozen=True)
class Gap:
    """A stretch without light longer than usual, between two lit bulbs (run, bulb)."""

    before: tuple[int, int]
    after: tuple[int, int]
    length_m: float


@dataclass(frozen=True)
class HungLine:
    """A row of hooks with the runs on it (indices), how they lie, its spans and bulbs in order.

    `lead_in_m`: unlit wire before its first bulb; `lights_m`: wire from its
    first bulb to its last, less what joints take; `placed` whether the file
    tells where the hooks are, not only how far apart.
    """

    runs: tuple[int, ...]
    laid: tuple[Laid, ...]
    hooks: tuple[HookPoint, ...]
    spans: tuple[Span, ...]
    bulbs: tuple[HungBulb, ...]
    gaps: tuple[Gap, ...]
    lead_in_m: float
    lights_m: float
    placed: bool

    @property
    def wire_m(self) -> float:
        """Wire from the first hook to the last."""
        return sum(span.length_m for span in self.spans)

    @property
    def beyond(self) -> tuple[HungBulb, ...]:
        """Bulbs for which the hooks do not reach."""
        return tuple(bulb for bulb in self.bulbs if bulb.span is None)

    @property
    def spare_m(self) -> float:
        """Wire that the hooks ask for behind the last bulb; below zero: bulbs hang beyond the last hook."""
        return self.wire_m - self.bulbs[-1].along_m

    @property
    def longest(self) -> Span:
        """The longest span."""
        return max(self.spans, key=lambda span: span.wire.span_m)


@dataclass(frozen=True)
class Loads:
    """Load of a line per metre of wire, N/m.

    `dead`: strings, extra wire and guide wire; `ice` on top of it; `wind`
    sideways, on the iced wire; `worst`: all together.
    """

    dead: float
    ice: float
    wind: float
    worst: float


@dataclass(frozen=True)
class Pull:
    """What pulls at one hook, N: both sides together, and each side alone (0 where there is none).

    `x_n`, `y_n` lie level in the plan, `down_n` downwards; at the worst load.
    """

    hook: HookPoint
    x_n: float
    y_n: float
    down_n: float
    together_n: float
    alone_n: float

    @property
    def worst_n(self) -> float:
        """The largest of: both sides together, one side alone while the other is not hung."""
        return max(self.together_n, self.alone_n)


@dataclass(frozen=True)
class LinePulls:
    """Pulls of one line; `tension_n`: largest pull in the wire itself, at the worst load."""

    loads: Loads
    hooks: tuple[Pull, ...]
    tension_n: float


@dataclass(frozen=True)
class Usage:
    """Strings of one kind: wire of those bought, wire hung, wire that joints take, and bulbs left over."""

    string: str
    bought_m: float
    used_m: float
    joints_m: float
    bulbs_left: int


@dataclass(frozen=True)
class HangingPlan:
    """The whole plan; `pulls` one a line.

    `not_hung`: indices of runs on no line; `guide_wire` whether a wire of its
    own bears the lights; limits are None where nothing is stated.
    """

    lines: tuple[HungLine, ...]
    pulls: tuple[LinePulls, ...]
    usage: tuple[Usage, ...]
    not_hung: tuple[int, ...]
    guide_wire: bool
    hook_limit_n: float | None
    wire_limit_n: float | None
    typical: tuple[str, ...]

    @property
    def hooks(self) -> int:
        """How many hooks there are."""
        return sum(len(line.hooks) for line in self.lines)

    @property
    def worst_hook(self) -> Pull:
        """The hook with the largest pull."""
        return max((pull for line in self.pulls for pull in line.hooks), key=lambda pull: pull.worst_n)

    @property
    def tension_n(self) -> float:
        """Largest pull in a wire."""
        return max(line.tension_n for line in self.pulls)

    @property
    def hooks_hold(self) -> bool | None:
        """Whether no hook bears more than its limit; None where nothing is stated."""
        return None if self.hook_limit_n is None else self.worst_hook.worst_n <= self.hook_limit_n

    @property
    def wire_holds(self) -> bool | None:
        """Whether the wire that bears the lights is pulled no more than it may be."""
        return None if self.wire_limit_n is None else self.tension_n <= self.wire_limit_n

    @property
    def lowest_m(self) -> float | None:
        """Height of the lowest point of all, if every height is known."""
        heights = [span.lowest_m for line in self.lines for span in line.spans]
        known = [height for height in heights if height is not None]
        return min(known) if known and len(known) == len(heights) else None
