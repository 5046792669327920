"""How is the app left when the system ends it, or the terminal goes away?

As long as there is a terminal it is left as the student would leave: everything as it was before.
Where it is gone there is nothing to put right, and whatever waits for it waits for ever: the process
ends there and then. Everything done is on the disk by that time, so that nothing is lost.
"""

from __future__ import annotations

import asyncio
import contextlib
import errno
import os
import signal
import sys
import threading
import time
from collections.abc import Callable
from types import FrameType

HANG_UP = 128 + 1
"""The exit status after a terminal that went away: 128 and the number of SIGHUP."""
NO_TERMINAL = frozenset({errno.EIO, errno.ENXIO, errno.ENOTTY, errno.EBADF, errno.EPIPE})
PATIENCE = 10.0
"""How long, in seconds, leaving may take while there is a terminal."""
Leave = Callable[[int], object]


def leave_on_signals(leave: Leave) -> None:
    """Call `leave` with the exit status, 128 and the signal's number, when the system says so.

    Without a terminal the process ends by itself. A signal that is ignored stays so.
    """
    loop = asyncio.get_running_loop()
    with contextlib.suppress(NotImplementedError, RuntimeError, ValueError):
        loop.add_signal_handler(signal.SIGTERM, leave, 128 + signal.SIGTERM)
        loop.add_signal_handler(signal.SIGINT, leave, 128 + signal.SIGINT)
    end_where_nobody_reads()
    number = getattr(signal, "SIGHUP", None)
    if number is None or signal.getsignal(number) == signal.SIG_IGN:
        return

    def hung_up(_: int, frame: FrameType | None) -> None:
        if not terminal_is_there():
            end_now()
        threading.Thread(target=end_later, daemon=True, name="leaving").start()
        loop.call_soon_threadsafe(leave, HANG_UP)

    # Not by the loop: it may be waiting for a writer that waits for the terminal.
    with contextlib.suppress(ValueError):
        signal.signal(number, hung_up)


def end_where_nobody_reads() -> None:
    """End the process where the thread that writes to the terminal finds none any more."""
    usual = threading.excepthook

    def failed(fault: threading.ExceptHookArgs) -> None:
        gone = isinstance(fault.exc_value, OSError) and fault.exc_value.errno in NO_TERMINAL
        if gone and not terminal_is_there():
            end_now()
        usual(fault)

    threading.excepthook = failed


def terminal_is_there() -> bool:
    """Whether what the program writes to is a terminal that still answers."""
    import termios  # not there on Windows, where no signal says that a terminal is gone

    stream = sys.__stdout__ or sys.__stderr__
    if stream is None:
        return False
    try:
        termios.tcgetattr(stream.fileno())
    except (OSError, ValueError, termios.error):
        return False
    return True


def end_later() -> None:
    """End the process once the terminal is gone, or leaving takes too long."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until and terminal_is_there():
        time.sleep(0.1)
    end_now()


def end_now() -> None:
    """End the process: the system closes the journals and lets go of their locks."""
    os._exit(HANG_UP)
