"""Which *word* does what? One grammar of deeds for every front: text in, one of a few things out.

A deed is data: an event of the lesson, something to be shown, somewhere to go. The screen and the
plain lesson read the same words here and each does them in its own way.
"""

from tutor.deeds.complete import completions
from tutor.deeds.read import deed_of

__all__ = ["completions", "deed_of"]
