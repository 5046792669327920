"""What is *kept*? The journal of each lesson, the list of lessons, and the student's choices.

Each name is loaded when it is first asked for, so that the list of problems need not wait for all.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tutor.records.contents import Header
    from tutor.records.journal import Journal
    from tutor.records.keep import Keep, data_folder
    from tutor.records.kept import Kept
    from tutor.records.line import Event
    from tutor.records.settings import Settings, read_settings, write_settings

MODULE_OF = {
    "Event": "line",
    "Header": "contents",
    "Journal": "journal",
    "Keep": "keep",
    "Kept": "kept",
    "Settings": "settings",
    "data_folder": "keep",
    "read_settings": "settings",
    "write_settings": "settings",
}

__all__ = [
    "Event",
    "Header",
    "Journal",
    "Keep",
    "Kept",
    "Settings",
    "data_folder",
    "read_settings",
    "write_settings",
]


def __getattr__(name: str) -> object:
    """A name of this room, from the module that has it. AttributeError where none has."""
    if name not in MODULE_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{MODULE_OF[name]}"), name)
