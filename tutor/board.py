"""What is on the drawing board: the truss being drawn, the file it is of, its homework, all kept?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from tutor.drafting import Draft, DraftAnswer, Mark, lines_of
from tutor.homework.redrawn import redrawn
from tutor.model import Problem, write_problem
from tutor.model.read import read_text
from tutor.records import Keep
from tutor.records.kept_lines import TRUSS, KeptLines
from tutor.truss_file import Opened, Origin, Saved, open_into, origin_of, save
from tutor.workbook import open_workbook

WORKED = "truss-homework"
RENAMED, FROM = "# renamed ", "# from "
CAME_ALONG = "Your paper came along with the corrected truss."


@dataclass(frozen=True)
class WorkedOn:
    """The truss on which the homework was last opened, and the drawing then.

    `joints` says what a joint of it, renamed before `mark`, was called at `mark`.
    """

    problem: Problem
    mark: Mark
    joints: Mapping[str, str]


class Board:
    """One drawing, kept in `folder` after every step. Both front ends draw on it."""

    def __init__(self, folder: Path) -> None:
        self.draft = Draft()
        self.kept = KeptLines(folder, TRUSS)
        self.file: Origin | None = None
        self._kept_worked = KeptLines(folder, WORKED)
        self._worked: WorkedOn | None = None
        self._written: tuple[str, ...] | None = None

    @property
    def problem(self) -> Problem:
        """The truss as it is now; it may lack anything."""
        return self.draft.problem

    @property
    def origin(self) -> Origin | None:
        """The file that the drawing is of, as it stands now."""
        return origin_of(self.draft, self.file)

    def again(self) -> tuple[int, int]:
        """Draw what was kept, as one step: how many lines there were, and how many went wrong."""
        lines, again = self.kept.read(), Draft()
        refused = sum(not again.type(line).taken for line in lines)
        if lines:
            self.draft = Draft([tuple(entry for step in again.steps for entry in step)])
        self._worked = self._read_worked()
        return len(lines), refused

    def news(self) -> tuple[str, ...]:
        """What is to be told of the keeping and was not yet told; each notice comes once."""
        return (*self.kept.news(), *self._kept_worked.news())

    def close(self) -> None:
        """Let go of what is kept, so that another program may go on with it."""
        self.kept.close()
        self._kept_worked.close()

    def type(self, text: str) -> DraftAnswer:
        """Take a typed line, wholly or not at all, and keep the drawing."""
        return self.kept_after(self.draft.type(text))

    def kept_after(self, answer: DraftAnswer) -> DraftAnswer:
        """The answer to a step, once the drawing is kept, with what is to be told of the keeping."""
        trouble = self.keep() if answer.taken else ""
        return replace(answer, said=f"{answer.said} {trouble}") if trouble else answer

    def keep(self) -> str:
        """Keep the drawing as it is; what is to be told where it cannot be, else ""."""
        trouble = self.kept.write(lines_of(self.problem))
        self._keep_worked()
        return trouble

    def open(self, name: str) -> tuple[Opened, str]:
        """Put the truss of a file on the board; what came of it, and of keeping it."""
        opened = open_into(self.draft, name)
        if opened.origin is None:
            return opened, ""
        self.file = opened.origin
        return opened, self.keep()

    def save(self, name: str = "", *, over: bool = False) -> Saved:
        """Save the drawing as `truss_file.save` does; it is of that file from now on."""
        outcome = save(self.draft, self.file, name, over=over)
        if outcome.origin is not None:
            self.file = outcome.origin
        return outcome

    # The homework on the drawing

    def bring_paper(self, keep: Keep) -> tuple[str, ...]:
        """Before a homework on the drawing: its paper from before it was corrected comes along.

        What is to be told of that. A truss drawn or opened in the place of it has its own paper.
        """
        told: tuple[str, ...] = ()
        names = self._names_now()
        if self._worked is not None and names is not None:
            told = _brought(self._worked.problem, self.problem, names, keep)
        self._worked = WorkedOn(self.problem, self.draft.mark, {})
        self._keep_worked()
        return told

    def _names_now(self) -> Mapping[str, str] | None:
        """What the joints of the truss last worked on are called; None where it is another truss."""
        if self._worked is None:
            return None
        since = self.draft.renamed_since(self._worked.mark)
        if since is None:
            return None
        then = {name: self._worked.joints.get(name, name) for name in self._worked.problem.joint}
        return {name: since.get(mid, mid) for name, mid in then.items()}

    def _keep_worked(self) -> None:
        names = self._names_now()
        lines: list[str] = []
        if self._worked is not None and names is not None:
            worked = self._worked.problem
            lines += write_problem(worked, schema="").splitlines()
            if worked.source is not None:
                lines.append(f"{FROM}{worked.source}")
            lines += [f"{RENAMED}{old} {new}" for old, new in names.items() if old != new]
        if tuple(lines) != self._written:
            self._written = tuple(lines)
            self._kept_worked.write(lines)

    def _read_worked(self) -> WorkedOn | None:
        lines = self._kept_worked.read()
        problem = read_text("\n".join(lines), WORKED).problem if lines else None
        if problem is None:
            return None
        renamed = [line.removeprefix(RENAMED).split() for line in lines if line.startswith(RENAMED)]
        source = next((line.removeprefix(FROM) for line in lines if line.startswith(FROM)), None)
        problem = replace(problem, source=None if source is None else Path(source))
        return WorkedOn(problem, self.draft.mark, {pair[0]: pair[-1] for pair in renamed if pair})


def _brought(
    before: Problem, after: Problem, joints: Mapping[str, str], keep: Keep
) -> tuple[str, ...]:
    """Put the paper of the truss as it was on the one it is now."""
    if write_problem(before) == write_problem(after):
        return ()
    paper = open_workbook(before, keep).paper
    book = open_workbook(after, keep)
    kept = redrawn(paper, before, after, joints)
    if paper.blank or (kept.paper == book.paper and not kept.told):
        return ()
    book.put(kept.paper)
    return (CAME_ALONG, *kept.told, *book.news())
