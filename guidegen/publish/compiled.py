"""Compiled templates, kept beside a theme's templates as Python keeps its compiled modules.

Compiling takes longer than rendering.  A template that has changed, or
another version of Python or Jinja, is compiled anew.
"""

from __future__ import annotations

import sys
from contextlib import suppress
from pathlib import Path

from jinja2.bccache import Bucket, FileSystemBytecodeCache

#: Of the kind that neither a guide nor an archive takes along.
_FOLDER, _NAMES = "__pycache__", "%s.pyc"


class CompiledTemplates(FileSystemBytecodeCache):
    """Keeps what it may; a folder that cannot be written is no fault."""

    def __init__(self, theme: Path) -> None:
        folder = theme / _FOLDER
        if not sys.dont_write_bytecode:
            with suppress(OSError):
                folder.mkdir(exist_ok=True)
        super().__init__(str(folder), _NAMES)

    def load_bytecode(self, bucket: Bucket) -> None:
        """Take a template's code if it is there and fits."""
        with suppress(OSError):
            super().load_bytecode(bucket)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a template's code, unless Python was told to keep none."""
        if not sys.dont_write_bytecode:
            with suppress(OSError):
                super().dump_bytecode(bucket)
