"""What is *kept*? The journal of each lesson, the list of lessons, and the student's choices."""

from tutor.records.contents import Header
from tutor.records.journal import Journal
from tutor.records.keep import Keep, Kept, data_folder
from tutor.records.line import Event
from tutor.records.settings import Settings, read_settings, write_settings

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
