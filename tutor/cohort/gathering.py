"""What does one file that was handed in come to? Files are gathered each by itself, in any order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from tutor.cohort.believing import MOST_ANSWERS, Replayed, replayed
from tutor.cohort.course import Course
from tutor.cohort.facts import FileFault, StudentWork, VerdictsChecked
from tutor.cohort.handed import HandedIn, LessonPart, digest, plain_bytes, read_handed_in
from tutor.cohort.leaning import leaning
from tutor.cohort.sampling import SHARE
from tutor.cohort.working import work_of
from tutor.lesson import Lesson
from tutor.model import Problem
from tutor.records.told import faults_in_short
from tutor.skills import Mastery, Seen, masteries, seen_in
from tutor.text import one_line, shown

FORGED = "the verdicts kept in it are not those of its judge; every answer was judged again"
TWICE = "the lesson on {title} is in it more than once; it counts once"
NO_ID = "it names no student; ask for one made after pinjoint --student ID"
NOTHING = "it holds no lesson on this set"
OTHER_SET = "it holds no lesson on this set; it is of the set {set}"


@dataclass(frozen=True)
class Gathered:
    """What one file comes to. `digest` is that of its bytes, empty where they could not be read; `lessons` tell lessons apart by how they were begun, whoever hands them in;
    `made` is when the file was written, in seconds since 1970."""

    file: str
    digest: str
    student: str = ""
    made: float = 0.0
    works: tuple[StudentWork, ...] = ()
    skills: tuple[Mastery, ...] = ()
    lessons: tuple[str, ...] = ()
    faults: tuple[FileFault, ...] = ()
    checked: VerdictsChecked = field(default_factory=VerdictsChecked)


@dataclass(frozen=True)
class Way:
    """How files are gathered: by what the sample is drawn, how large it is, whether skills are traced."""

    seed: str
    share: float = SHARE
    skills: bool = True


def gather(course: Course, file: str, data: bytes, way: Way) -> Gathered:
    """What the file of this name comes to; never raises for what it holds."""
    handed = read_handed_in(data)
    mark = digest(plain_bytes(data))
    if isinstance(handed, str):
        return Gathered(file, mark, faults=(FileFault(file, handed),))
    student = one_line(handed.student)
    if not student:
        return Gathered(file, mark, faults=(FileFault(file, NO_ID),))
    return _Reader(course, file, student, way).read(handed, mark)


class _Reader:
    """Reads one file; lives as long as that takes."""

    def __init__(self, course: Course, file: str, student: str, way: Way) -> None:
        self.course = course
        self.file = file
        self.student = student
        self.way = way
        self.own = course.of(student)
        self.faults: list[FileFault] = []
        self.lessons: dict[str, list[Lesson]] = {name: [] for name in course.base}
        self.checked = VerdictsChecked()
        self.marks: list[str] = []

    def read(self, handed: HandedIn, mark: str) -> Gathered:
        for fault in handed.faults:
            self._tell(fault)
        for part in self._once(handed.parts):
            self._take(part)
        if not self.marks:
            other = handed.set and handed.set != self.course.among.name
            self._tell(OTHER_SET.format(set=shown(handed.set)) if other else NOTHING)
        works = tuple(
            work_of(
                problem.name,
                problem.title,
                self.lessons[problem.name],
                self.course.asked[problem.name],
            )
            for problem in self.course.problems
        )
        return Gathered(
            self.file,
            mark,
            self.student,
            handed.made.timestamp(),
            leaning(works),
            masteries(self._seen()) if self.way.skills else (),
            tuple(mark for mark in self.marks if mark),
            tuple(self.faults),
            self.checked,
        )

    def _seen(self) -> Iterator[Seen]:
        for lessons in self.lessons.values():
            for lesson in lessons:
                yield from seen_in(lesson.state)

    def _tell(self, message: str) -> None:
        self.faults.append(FileFault(self.file, message, self.student))

    def _once(self, parts: Sequence[LessonPart]) -> Iterator[LessonPart]:
        """Each lesson once, as far as it got; a file may hold what was handed in earlier besides."""
        furthest: dict[str, LessonPart] = {}
        for part in parts:
            known = furthest.setdefault(part.begun, part)
            if len(part.contents.lines) > len(known.contents.lines):
                furthest[part.begun] = part
        for part in parts:
            if not part.begun or furthest[part.begun] is part:
                yield part
            elif part.contents.header is not None:
                self._tell(TWICE.format(title=shown(part.contents.header.title)))

    def _take(self, part: LessonPart) -> None:
        """Replay one lesson, or say why it does not count."""
        header = part.contents.header
        if header is None:
            self._tell("a lesson in it has no whole line; it does not count")
            return
        what = f"the lesson on {shown(header.title)}"
        found = self.course.belongs(self.own, header, self.student)
        if isinstance(found, str):
            self._tell(f"{what} does not count: {found}")
            return
        if part.faults:
            self._tell(
                f"{what} was edited or damaged: {faults_in_short(part.faults)}; its whole lines count"
            )
        name, problem = found
        self._replay(part, name, problem, what)

    def _replay(self, part: LessonPart, name: str, problem: Problem, what: str) -> None:
        lines = part.contents.lines
        seed = f"{self.way.seed} {part.contents.last_sum}"
        done = replayed(problem, lines, part.whole, seed, self.way.share)
        self.lessons[name].append(done.lesson)
        self.marks.append(part.begun)
        self._count(done)
        if done.forged:
            self._tell(f"{what}: {FORGED}")
        if done.passed_over:
            self._tell(f"{what} has over {MOST_ANSWERS} entries; those behind are not counted")

    def _count(self, done: Replayed) -> None:
        was = self.checked
        self.checked = replace(
            was,
            answers=was.answers + done.answers,
            again=was.again + done.again,
            lessons=was.lessons + 1,
            lessons_again=was.lessons_again + done.whole,
            otherwise=was.otherwise + done.otherwise,
        )
