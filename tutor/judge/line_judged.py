"""What is one statement of a line judged by, and how is it said what comes of it?"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tutor.judge.about import Equation, Fx, Fy
from tutor.judge.explanation import Slip
from tutor.judge.headings import headed_otherwise
from tutor.judge.independent import adds_something, same_body
from tutor.judge.kind import Case
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.other_equation import holds_at_solution
from tutor.judge.telling import mistake_of
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.judge.verdict import Mistake, Remark, Verdict
from tutor.model import Problem, Tolerance
from tutor.notation import Names, Reading
from tutor.notation.elements.fact import fact, kept

ROUNDED_HARD = "Right, though a number is rounded hard; a fraction or one more figure is safer."


@fact
class LineJudged:
    """A line that could be read, with all it is judged by.

    `standing` are the equations that stand for the same body, `lines` the student's own right lines
    as typed; `values` gives the solved truss when it is needed. `work` says what this is, if no typed line.
    """

    problem: Problem
    about: Equation
    typed: TypedEquation
    names: Names
    own: KnownValues
    standing: Sequence[Equation]
    lines: Sequence[TypedEquation]
    values: Callable[[], Mapping[str, float]]
    work: str = ""

    @property
    def reading(self) -> Reading:
        return self.typed.reading

    @kept
    def true(self) -> TrueEquation:
        return TrueEquation(self.problem, self.about, self.own)

    @kept
    def holds(self) -> bool:
        """Whether the finished truss obeys the line."""
        return self.holds_to(self.tolerance)

    def holds_to(self, tolerance: Tolerance) -> bool:
        return holds_at_solution(self.typed, self.problem, self.own, self.values(), tolerance)

    @property
    def standing_or_axes(self) -> tuple[Equation, ...]:
        """Other equations of the same body that a line may be, term by term."""
        same = [about for about in self.standing if same_body(about, self.about)]
        joint, part = self.about.joint, self.about.part
        return (*same, Fx(joint, part), Fy(joint, part))

    @property
    def tolerance(self) -> Tolerance:
        return self.problem.tolerance

    def right(self, *remarks: Remark, rounded: bool = False) -> Verdict:
        """That the line is right, with these remarks and those that any right line may earn."""
        said = (*remarks, *_remarks(self, rounded))
        return Verdict("right", "Right.", remarks=said, about=self.about, reading=self.reading)

    def mistake(self, slip: Slip, slips: Sequence[Slip] = ()) -> Mistake:
        """A slip of the line as it is told, where `slips` are all of them."""
        return mistake_of(self.true, slip, self.reading, slips, self.work)

    def wrong(self, *mistakes: Mistake, **more: object) -> Verdict:
        """That the line shows these mistakes."""
        text = " ".join(dict.fromkeys(m.text for m in mistakes))
        return Verdict("wrong", text, mistakes, about=self.about, reading=self.reading, **more)  # type: ignore[arg-type]


def _remarks(line: LineJudged, rounded: bool) -> tuple[Remark, ...]:
    remarks = []
    if headed := headed_otherwise(line.problem, line.about, line.reading.label):
        remarks.append(Remark("heading", headed))
    if rounded:
        remarks.append(Remark("rounding", ROUNDED_HARD))
    if not adds_something(line.problem, line.about, line.standing):
        case = Case(line.problem, line.about)
        kind = KINDS["dependent"]
        remarks.append(Remark("dependent", f"{kind.look(case).text} {kind.reason(case)}"))
    return tuple(remarks)
