"""*Where* is the student? A lesson is a fold over events: same events, same state."""

from tutor.lesson.event import Event
from tutor.lesson.lesson import Lesson
from tutor.lesson.reply import Ask, Option, Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS
from tutor.lesson.steps.table import Row, Table
from tutor.model.caution import CAUTION

__all__ = [
    "CAUTION",
    "STEPS",
    "Ask",
    "Event",
    "Lesson",
    "Option",
    "Reply",
    "Row",
    "Say",
    "State",
    "Table",
]
