"""Under which name is the paper of a problem kept?

Under that of the problem's key, as lessons are found by it. Where there is none, it is looked for by what
it is of, since the file or its set may have another name now; where what is there is of another truss, that
paper stays as it is, and a new one is begun beside it.
"""

from __future__ import annotations

from tutor.model import Problem
from tutor.records import Keep
from tutor.records.belonging import belonging, digest, key_of, truss_text
from tutor.records.kept import Kept, in_their_order, look_at
from tutor.records.kept_lines import FOLDER, homework_name


def name_of_paper(problem: Problem, keep: Keep) -> str:
    """The name of the paper on a problem, whether there is one or not."""
    own, folder = homework_name(key_of(problem)), keep.folder / FOLDER
    path = folder / f"{own}.jsonl"
    if path.exists():
        there = look_at(path)
        return own if not there.readable or _is_of(there, problem) else _beside(problem)
    if (folder / f"{_beside(problem)}.jsonl").exists():
        return _beside(problem)
    papers = (look_at(other) for other in folder.glob("homework-*.jsonl"))
    found = (kept for kept in papers if _is_paper(kept) and _is_of(kept, problem))
    return next((kept.path.stem for kept in in_their_order(found, keep.now())), own)


def _beside(problem: Problem) -> str:
    """The name of a paper whose problem has the names of another one that a paper is kept of."""
    return homework_name(f"{key_of(problem)} {digest(truss_text(problem))}")


def _is_of(kept: Kept, problem: Problem) -> bool:
    return belonging(problem, kept.problem, kept.content, kept.title) is not None


def _is_paper(kept: Kept) -> bool:
    """Whether it is the paper of its problem, and not what was wrong in some file of work on it."""
    return kept.readable and kept.path.stem == homework_name(kept.problem)
