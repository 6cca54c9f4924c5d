"""What the maker adds to the guide: photos, own words, own steps."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field

from guidegen.locale import N_, _
from guidegen.project.model import Model
from guidegen.project.plain import Reader, Text, UnreadableError

LONGEST_STORY, LONGEST_WORDS = 10_000, 3000
MOST_BRACKETS = 300  # each may begin a link, and the time to look for its end grows with their square
#: "C:", "https:": a drive, or an address in the network.
_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:")


@dataclass(frozen=True)
class Words(Reader):
    """Text of several lines, in simple Markdown; rendered and cleaned where it is published."""

    longest: int

    def expected(self) -> str:
        """What a person should write, in words."""
        return _(
            "text of at most {longest} characters, on several lines behind | if need be; blank lines part "
            "paragraphs, *stars* stress, - begins an entry of a list, [words](https://...) are a link"
        ).format(longest=self.longest)

    def read(self, value: Any) -> str:
        """The text with its lines; raises UnreadableError."""
        if not isinstance(value, str):
            raise UnreadableError(_("write | behind the key, and the text indented on the lines below"))
        text = value.strip("\n").rstrip()
        if len(text) > self.longest:
            raise UnreadableError(
                _("shorten it by {count} characters").format(count=len(text) - self.longest)
            )
        if text.count("[") > MOST_BRACKETS:
            raise UnreadableError(_("leave out some links and square brackets"))
        return text


@dataclass(frozen=True)
class FileName(Reader):
    """A file in the project's folder, or in a folder inside that; whether it is there is seen later."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("the name of a picture in the project file's folder, such as lit.jpg or photos/lit.jpg")

    def read(self, value: Any) -> str:
        """The path with forward slashes, relative to the project's folder; raises UnreadableError."""
        text = value.strip() if isinstance(value, str) else ""
        if not text or len(text) > 200:
            raise UnreadableError(_("write the name of the file alone"))
        if re.match(r"(?:https?|ftp|data):", text, re.IGNORECASE):
            raise UnreadableError(_("save the picture beside the project file, and write its name here"))
        if text[0] in "/\\~" or _SCHEME.match(text):
            raise UnreadableError(_("put the picture beside the project file, and write its name alone"))
        if "\\" in text:
            own = text.replace("\\", "/")
            raise UnreadableError(_("write forward slashes: {example}").format(example=own))
        if ".." in text.split("/"):
            raise UnreadableError(_("put the picture into the project file's folder; .. leads out of it"))
        return text


class Photo(Model):
    """A picture of the maker's."""

    file: Annotated[str, FileName()] = Field(
        description=N_("JPEG, PNG or WebP; shrunk for the guide, without the place it was taken at")
    )
    alt: Annotated[str, Text(1, 400)] = Field(
        description=N_("What it shows, in a sentence, for people who do not see it")
    )


class Photos(Model):
    """Photos on the first page."""

    cover: Photo | None = Field(None, description=N_("The finished build, at the head of the guide"))
    lit: Photo | None = Field(None, description=N_("The lights when they shine"))
    unlit: Photo | None = Field(None, description=N_("The same view when they are dark"))


class OwnStep(Model):
    """Words added to a step of the guide, or a step of the maker's own before or after one.

    Exactly one of `step`, `before` and `after` is given, the id of a step of
    the guide.
    """

    step: Annotated[str, Text(1, 120)] | None = Field(
        None,
        description=N_(
            "Id of the step to add to: on the page “Build it” it stands behind # in the step's address"
        ),
    )
    before: Annotated[str, Text(1, 120)] | None = Field(
        None, description=N_("Instead of step: a step of your own comes before the step of this id")
    )
    after: Annotated[str, Text(1, 120)] | None = Field(
        None, description=N_("Instead of step: a step of your own comes after the step of this id")
    )
    title: Annotated[str, Text(1, 120)] | None = Field(
        None, description=N_("Title of a step of your own, needed with before or after")
    )
    text: Annotated[str, Words(LONGEST_WORDS)] = Field(
        "", description=N_("What to do, in your words; needed with before or after")
    )
    note: Annotated[str, Words(LONGEST_WORDS)] = Field(
        "", description=N_("Something good to know, set apart")
    )
    photo: Photo | None = Field(None, description=N_("A photo of this step"))
