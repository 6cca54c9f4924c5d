"""Words of the project file that the guide shows too.

All else that is said in this folder is about faults of the file, before its
language is known, and stays English; this module alone is in the catalogues.
"""

from __future__ import annotations

from guidegen.locale import N_, _

#: Choices that the guide repeats; each is looked up in the catalogue as the file writes it.
CHOICES = (
    *(N_("one end"), N_("middle"), N_("both ends"), N_("opposite ends")),
    *(N_("indoors"), N_("outdoors"), N_("sheltered outdoors"), N_("open outdoors")),
    *(N_("none"), N_("pool"), N_("pond"), N_("fountain"), N_("bath or shower"), N_("sauna")),
    *(N_("film"), N_("cement"), N_("wirewound")),
    *(N_("copper"), N_("tinned copper"), N_("copper-clad aluminium")),
    *(N_("white"), N_("warm white"), N_("blue"), N_("green"), N_("red"), N_("orange"), N_("yellow")),
)


def numbered_run(index: int) -> str:
    """The name of a run that has none, by its place; `index` counts from 0."""
    return _("run {number}").format(number=index + 1)
