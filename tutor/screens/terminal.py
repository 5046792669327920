"""Where is the screen written to? The standard output, wherever messages of faults go.

The library writes it to the standard error, so that a screen would be lost with messages sent elsewhere.
"""

from __future__ import annotations

import os
import sys
from typing import Any

from textual import constants
from textual.driver import Driver


def driver() -> type[Driver] | None:
    """What drives the terminal; None for the library's own choice."""
    if os.name == "nt" or constants.DRIVER is not None:
        return None
    from textual.drivers.linux_driver import LinuxDriver  # not there on Windows

    class OnOutput(LinuxDriver):
        """Writes to the standard output."""

        def __init__(self, *given: Any, **named: Any) -> None:
            super().__init__(*given, **named)
            if sys.__stdout__ is not None:
                self._file = sys.__stdout__

    return OnOutput
