"""What has this student done, what can they do by now, and what comes next?

`kept` goes through the lessons of a folder once and keeps what each came to; `standing` is all of
them together. From it follow how much of a new problem is left to the student (`stages`), which one
comes next and why (`choosing`), and the page that tells the student what they can do (`page`).
"""

from tutor.progress.guide import Guide, Listed, guide_for
from tutor.progress.kept import Summaries
from tutor.progress.standing import Standing, standing_of

__all__ = ["Guide", "Listed", "Standing", "Summaries", "guide_for", "standing_of"]
