"""How is the app left when the system ends it? As if the student had: the terminal stays sane."""

from __future__ import annotations

import asyncio
import contextlib
import signal
from collections.abc import Callable

ENDING = ("SIGTERM", "SIGHUP")


def leave_on_signals(leave: Callable[[int], None]) -> None:
    """Call `leave` with the exit status, 128 and the signal's number, when the system says so."""
    loop = asyncio.get_running_loop()
    for name in ENDING:
        number = getattr(signal, name, None)
        if number is not None:
            with contextlib.suppress(NotImplementedError, RuntimeError, ValueError):
                loop.add_signal_handler(number, leave, 128 + number)
