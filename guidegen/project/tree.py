"""The YAML text as plain data in which every scalar is text, with the place of every key and value.

Built from the parser's events, not from its objects: nothing is typed
behind a person's back (`NO` stays NO, `12:30` stays 12:30), and duplicate
keys, aliases and tags can be told with their place.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any

import yaml

from guidegen.errors import MOST_SHOWN, Fault
from guidegen.locale import _, ngettext
from guidegen.project.keys import Key, key_text
from guidegen.project.plain import SPACES, plain_spaces
from guidegen.project.source import CONTROL
from guidegen.project.syntax import syntax_fault
from guidegen.project.writing import one_line, without_smart_quotes

Place = tuple[int, int]
DEEPEST = 20  # levels; the schema needs seven
MOST_VALUES = 20_000  # a run with all its keys has about fifteen
_NOTHING = {"", "~", "null", "Null", "NULL"}


@dataclass
class Tree:
    """The data of a project file, where its parts stand, and what is wrong with its form.

    `data` holds dicts, lists, str and None.  `spoiled` are keys whose value
    could not be taken over; more about them need not be said.
    """

    name: str
    data: Any = None
    keys: dict[Key, Place] = field(default_factory=dict)
    values: dict[Key, Place] = field(default_factory=dict)
    spoiled: set[Key] = field(default_factory=set)
    faults: list[Fault] = field(default_factory=list)

    def place(self, key: Key) -> Place:
        """Where the value of the key stands, or else the nearest key that holds it."""
        while key and key not in self.values:
            key = key[:-1]
        return self.values.get(key, (1, 1))

    def key_place(self, key: Key) -> Place:
        """Where the key itself stands; of a list entry, where the entry begins."""
        return self.keys.get(key) or self.place(key)

    def written(self, key: Key) -> str:
        """The value of the key as it was written, shortened; "nothing" if there is none."""
        return describe(self.at(key))

    def at(self, key: Key) -> Any:
        """The data at the key; None if there is none."""
        value = self.data
        for step in key:
            try:
                value = value[step]
            except (KeyError, IndexError, TypeError):
                return None
        return value

    def complain(self, place: Place, key: Key, came: str, expected: str, mend: str) -> None:
        """Add a fault."""
        self.faults.append(Fault(self.name, *place, key_text(key), came, expected, mend))


def describe(value: Any) -> str:
    """A value in a few words."""
    if value is None:
        return _("nothing")
    if isinstance(value, dict):
        return (
            _("keys and values: {keys}").format(keys=one_line(", ".join(map(str, value)))) if value else "{}"
        )
    if isinstance(value, list):
        many = ngettext("a list of {count} entry", "a list of {count} entries", len(value))
        return many.format(count=len(value)) if value else "[]"
    return one_line(str(value)) or '""'


#: The parser in C where there is one; it words faults more poorly, so that a file with faults is read again.
QUICK_LOADER: type[Any] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _StopError(Exception):
    """A fault after which the rest of the file cannot be understood."""


def grow(text: str, name: str) -> Tree:
    """The tree of a project file's text; its faults are in the tree."""
    tree = _faultless(text, name)
    return _grown(text, name) if tree is None else tree


def _faultless(text: str, name: str) -> Tree | None:
    """The tree by the quick parser; None where it finds faults, which the other words better.

    The two differ on tabs behind a colon.
    """
    tree = Tree(name)
    with suppress(yaml.YAMLError, ValueError, OverflowError, _StopError):
        if "\t" not in text:
            _Grower(tree, yaml.parse(text, Loader=QUICK_LOADER)).document()
            return None if tree.faults else tree
    return None


def _grown(text: str, name: str) -> Tree:
    tree = Tree(name)
    try:
        _Grower(tree, yaml.parse(text, Loader=yaml.SafeLoader)).document()
    except (yaml.YAMLError, ValueError, OverflowError) as error:
        # ValueError: an escape such as "\Uffffffff" that is no character.
        tree.faults.append(syntax_fault(error, text, name))
        tree.spoiled.add(())
    except _StopError:
        tree.spoiled.add(())
    return tree


class _Grower:
    """Turns the parser's events into the data of a tree."""

    def __init__(self, tree: Tree, events: Iterator[yaml.Event]) -> None:
        self.tree = tree
        self.events = events

    def document(self) -> None:
        """The whole file."""
        next(self.events)  # start of the stream
        if not isinstance(next(self.events), yaml.DocumentStartEvent):
            return
        self.tree.data = self.value(next(self.events), ())
        next(self.events)  # end of the document
        more = next(self.events)
        if isinstance(more, yaml.DocumentStartEvent):
            expected, mend = _("one project in a file"), _("delete the line --- and what follows it")
            self.tree.complain(_start(more), (), _("a second document, begun by ---"), expected, mend)

    def value(self, event: yaml.Event, key: Key) -> Any:
        """The data of one value, whose first event is at hand."""
        self.tree.values[key] = _start(event)
        self._refuse_excess(event, key)
        self._refuse_magic(event, key)
        if isinstance(event, yaml.MappingStartEvent):
            return self.mapping(key)
        if isinstance(event, yaml.SequenceStartEvent):
            return self.sequence(key)
        return self.scalar(event, key) if isinstance(event, yaml.ScalarEvent) else None

    def mapping(self, key: Key) -> dict[str, Any]:
        """Keys and values up to the end of the mapping; of a key written twice, the first counts."""
        data: dict[str, Any] = {}
        last = ""
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            name = self.key_name(event, key)
            inner = (*key, name)
            known = self.tree.keys.get(inner)
            if known is None:
                self.tree.keys[inner] = _start(event)
                data[name] = self.value(next(self.events), inner)
                self._join_decimal_comma(data, inner, last)
                last = name
                continue
            self._told_twice(event, inner, known)
            self.skip(next(self.events))
        return data

    def key_name(self, event: yaml.Event, key: Key) -> str:
        """The text of a key."""
        if isinstance(event, yaml.ScalarEvent):
            self._refuse_magic(event, key)
            return plain_spaces(self._text(event, key))
        expected, mend = _("a word as key"), _("write the key as a word before the colon")
        self.tree.complain(_start(event), key, _("a list, keys or an alias as key"), expected, mend)
        raise _StopError

    def sequence(self, key: Key) -> list[Any]:
        """Entries up to the end of the list."""
        data: list[Any] = []
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            data.append(self.value(event, (*key, len(data))))
        return data

    def scalar(self, event: yaml.ScalarEvent, key: Key) -> str | None:
        """The text as it was written; None for nothing."""
        if not event.style and event.value in _NOTHING:
            return None
        return self._text(event, key)

    def skip(self, event: yaml.Event) -> None:
        """Leave out a value whose first event is at hand."""
        depth = 0
        while True:
            depth += isinstance(event, yaml.CollectionStartEvent)
            depth -= isinstance(event, yaml.CollectionEndEvent)
            if depth == 0:
                return
            if depth > DEEPEST:
                raise _StopError
            event = next(self.events)

    def _text(self, event: yaml.ScalarEvent, key: Key) -> str:
        text: str = event.value
        found = CONTROL.search(text)
        if found:
            self.tree.spoiled.add(key)
            came = _("the control character {code}").format(code=f"U+{ord(found[0]):04X}")
            mend = _("leave out the backslash code in the quotes")
            self.tree.complain(_start(event), key, came, _("text that can be seen"), mend)
        return without_smart_quotes(text.translate(SPACES))

    def _join_decimal_comma(self, data: dict[str, Any], key: Key, last: str) -> None:
        """Put `{area: 0,5 mm2}` together again, where YAML sees a second key `5 mm2`."""
        name, before = str(key[-1]), data.get(last)
        if data[name] is None and name[:1].isdigit() and isinstance(before, str) and before[-1:].isdigit():
            data[last] = f"{before},{name}"
            del data[name], self.tree.keys[key], self.tree.values[key]

    def _told_twice(self, event: yaml.Event, key: Key, first: Place) -> None:
        came = _("this key a second time; the first is in line {line}").format(line=first[0])
        self.tree.complain(_start(event), key, came, _("each key once"), _("delete one of the two"))

    def _refuse_excess(self, event: yaml.Event, key: Key) -> None:
        """Stop at a file that is no project of a person's."""
        came = mend = ""
        if len(key) > DEEPEST:
            came, mend = _("lists or keys nested too deep"), _("check the brackets and dashes")
        elif len(self.tree.values) > MOST_VALUES or len(self.tree.faults) > MOST_SHOWN:
            came, mend = _("too many values or errors"), _("split the project into several files")
        if came:
            expected = _("at most {levels} levels and {values} values").format(
                levels=DEEPEST, values=MOST_VALUES
            )
            self.tree.complain(_start(event), key[:3], came, expected, mend)
            raise _StopError

    def _refuse_magic(self, event: yaml.Event, key: Key) -> None:
        """Aliases, anchors and tags: a stranger should read every value where it stands."""
        anchor, tag = getattr(event, "anchor", None), getattr(event, "tag", None)
        if not (anchor or tag):
            return
        self.tree.spoiled.add(key)
        if isinstance(event, yaml.AliasEvent):
            came = f"*{anchor}"
        else:
            short = str(tag).replace("tag:yaml.org,2002:", "!!")
            came = f"&{anchor}" if anchor else short
        expected = _("plain values, without anchors, aliases or tags")
        mend = _("write the value out; put quotes around text that begins with *, & or !")
        self.tree.complain(_start(event), key, one_line(came), expected, mend)


def _start(event: yaml.Event) -> Place:
    mark = event.start_mark
    return (mark.line + 1, mark.column + 1) if mark else (1, 1)
