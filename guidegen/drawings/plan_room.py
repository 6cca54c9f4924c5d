"""Room in the plan: what is taken already, and where the supply's box and the words at feeds still fit."""

from __future__ import annotations

from dataclasses import dataclass, field

from guidegen.drawings.picture import text_width
from guidegen.drawings.sketch import Place

#: Space kept around words, pixels.
_APART = 3.0


@dataclass(frozen=True)
class Box:
    """A box around a middle, half its width and height."""

    middle: Place
    half_width: float
    half_height: float

    def meets(self, other: Box) -> bool:
        """Whether the two overlap."""
        dx, dy = abs(self.middle[0] - other.middle[0]), abs(self.middle[1] - other.middle[1])
        wide, high = self.half_width + other.half_width, self.half_height + other.half_height
        return dx < wide + _APART and dy < high + _APART


@dataclass
class Room:
    """What is drawn already; `words` are those boxes that nothing at all may cross."""

    taken: list[Box] = field(default_factory=list)
    words: list[Box] = field(default_factory=list)

    def take(self, middle: Place, half_width: float, half_height: float) -> None:
        """Draw something here."""
        self.taken.append(Box(middle, half_width, half_height))

    def take_words(self, middle: Place, words: str, size: float = 11.0) -> None:
        """Write something here."""
        box = words_box(middle, words, size)
        self.taken.append(box)
        self.words.append(box)

    def free(self, box: Box) -> bool:
        """Whether nothing is there."""
        return not any(box.meets(other) for other in self.taken)

    def crosses_words(self, middle: Place, half: float) -> bool:
        """Whether a small square there lies on words."""
        return any(Box(middle, half, half).meets(other) for other in self.words)


def words_box(middle: Place, words: str, size: float = 11.0) -> Box:
    """The box that words fill."""
    return Box(middle, text_width(words, size) / 2, size / 2)
