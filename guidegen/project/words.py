"""Words of the project file that the guide shows too.

All else that is said in this folder is about faults of the file, before its
language is known, and stays English; this module alone is in the catalogues.
"""

from __future__ import annotations

from guidegen.locale import _


def numbered_run(index: int) -> str:
    """The name of a run that has none, by its place; `index` counts from 0."""
    return _("run {number}").format(number=index + 1)
