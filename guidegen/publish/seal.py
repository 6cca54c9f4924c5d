"""A seal on a single file: its last line holds a hash of all that stands above it."""

from __future__ import annotations

import hashlib

_HEAD, _TAIL = b"<!-- guidegen wrote all above, sha256 ", b" -->\n"


def sealed(content: bytes) -> bytes:
    """The content with its seal behind it."""
    content = content if content.endswith(b"\n") else content + b"\n"
    return content + _HEAD + hashlib.sha256(content).hexdigest().encode() + _TAIL


def is_sealed(content: bytes) -> bool:
    """Whether guidegen wrote the file and nobody has edited it since."""
    above, head, seal = content.rpartition(_HEAD)
    return bool(head) and seal == hashlib.sha256(above).hexdigest().encode() + _TAIL
