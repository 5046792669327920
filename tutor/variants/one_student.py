"""What is a set as one student has it: with their own numbers, and under a title that says whose?"""

from __future__ import annotations

from dataclasses import replace

from tutor.model import Defect, Problem, ProblemError, ProblemSet
from tutor.model.source import file_name
from tutor.variants.choose import NoVariant, variant_of

AS_WRITTEN = "The numbers are those of the file; for your own, begin with --student and your id."
CURE = "tell your instructor: pinjoint check says what to change"


def personal(among: ProblemSet, student: str | None) -> ProblemSet:
    """The set with the numbers of a student, or as it is written where none is known.

    Its title says for whom the numbers are, where any of them vary, and when it is due; its note that
    they are nobody's own. A problem that has no numbers for the student is among the broken ones.
    """
    notes = []
    note = ""
    problems: list[Problem] = list(among.problems)
    broken = dict(among.broken)
    if any(problem.vary is not None for problem in problems):
        if student:
            notes.append(f"the numbers of {student}")
        else:
            note = AS_WRITTEN
    if among.rules.due is not None:
        notes.append(f"due {among.rules.due:%Y-%m-%d}")
    if student:
        problems = []
        for problem in among.problems:
            try:
                problems.append(variant_of(problem, student=student, set=among.name))
            except NoVariant as refused:
                file = file_name(problem.source or problem.title)
                defect = Defect(file, 1, str(refused), CURE)
                if problem.source is not None:
                    broken[problem.source] = ProblemError([defect])
    title = f"{among.title} ({'; '.join(notes)})" if notes else among.title
    return replace(among, title=title, problems=tuple(problems), broken=broken, note=note)
