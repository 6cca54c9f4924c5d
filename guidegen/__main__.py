"""The first and the last lines of the program: the command `guidegen`, and `python -m guidegen`.

Whatever happens, a person gets a sentence and an exit status, never a
traceback.  Nothing is imported before it is guarded here.
"""

from __future__ import annotations

import gc
import os
import sys
from contextlib import suppress
from typing import NoReturn

FAILED = 1
STOPPED = 130  # as shells tell a process ended by Ctrl-C
SHOW_FAULTS = "GUIDEGEN_TRACEBACK"  # set by those who look for a fault of the program's own


def run() -> NoReturn:
    """Run the command line and end the process with its exit status."""
    try:
        _run()
    except KeyboardInterrupt:
        _drop_output()
        sys.exit(STOPPED)
    except OSError as error:
        _drop_output()
        _end(_unwritten(error))
    except Exception as error:
        if os.environ.get(SHOW_FAULTS):
            raise
        _end(_own_fault(error))
    sys.exit(0)


def _run() -> None:
    """The commands; refused beforehand where nothing could be shown."""
    from guidegen.locale import _  # noqa: PLC0415 - see the module's text

    # A command makes many objects and ends: looking for cycles among them would take a tenth of its time.
    gc.disable()
    if sys.stdout is None:
        _end(_("Standard output is closed, so nothing can be shown. Nothing was done."))
    from guidegen.cli import main  # noqa: PLC0415

    main(prog_name="guidegen")


def _end(sentence: str) -> NoReturn:
    if sys.stderr is not None:
        with suppress(OSError):
            sys.stderr.write(f"{sentence}\n")
    sys.exit(FAILED)


def _unwritten(error: OSError) -> str:
    """The commands tell of files themselves, so what is left is their output."""
    from guidegen.locale import _  # noqa: PLC0415

    name = f" ({error.filename})" if error.filename else ""
    return _("The output cannot be written: {reason}.").format(reason=f"{error.strerror or error}{name}")


def _own_fault(error: Exception) -> str:
    """A fault of the program: what and where, for those who mend it."""
    import traceback  # noqa: PLC0415

    from guidegen.locale import _  # noqa: PLC0415

    last = traceback.extract_tb(error.__traceback__)[-1]
    return _(
        "guidegen has met a fault of its own: {fault} ({file}, line {line}). It is not your doing; please "
        "report it together with the project file. With {variable}=1 it shows more."
    ).format(
        fault=" ".join(f"{type(error).__name__}: {error}".split())[:300],
        file=os.path.basename(last.filename),  # noqa: PTH119 - a name, no file
        line=last.lineno,
        variable=SHOW_FAULTS,
    )


def _drop_output() -> None:
    """Send what is still to be written nowhere, so that the interpreter does not fail over it at its end."""
    if sys.stdout is not None:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


if __name__ == "__main__":
    run()
