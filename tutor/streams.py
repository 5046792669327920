"""Is there a full terminal, and what becomes of characters that it cannot write?"""

from __future__ import annotations

import os
import sys


def full_terminal() -> bool:
    """Whether input and output are a terminal that can draw a screen."""
    streams = sys.stdin, sys.stdout
    return os.environ.get("TERM", "dumb") not in ("", "dumb", "unknown") and all(
        stream is not None and stream.isatty() for stream in streams
    )


def safe_streams() -> None:
    """What cannot be written in the terminal's encoding is written as a question mark."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
