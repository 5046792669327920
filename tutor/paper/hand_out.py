"""Which files does an instructor hand out, and what is in each?

Nothing is written before everything is made, so that a problem that cannot be used costs no half of a
folder; nothing that is there already is written over unless that is asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_sets, write_problem
from tutor.model.set_file import SET_FILE
from tutor.model.source import file_name, read_source
from tutor.paper.blocks import PrintedSheet
from tutor.paper.html import to_html
from tutor.paper.keys import class_key
from tutor.paper.markdown import to_markdown
from tutor.paper.roster import Person
from tutor.paper.sheets import key, sheet, worked_solution
from tutor.paper.typst import to_pdf
from tutor.statics import Unsolvable, forces_follow, solve
from tutor.text import unended
from tutor.variants import NoVariant, variant_of

Form = Literal["md", "html", "pdf"]
Kind = Literal["sheet", "key", "worked"]
MAKES: dict[Kind, Callable[[Problem, str], PrintedSheet]] = {
    "sheet": sheet,
    "key": key,
    "worked": worked_solution,
}
NOBODY = Person("")
Files = dict[Path, bytes]


@dataclass(frozen=True)
class Wanted:
    """What is asked for: which kinds, in which form, for whom, all in one file or each apart."""

    kinds: tuple[Kind, ...] = ("sheet",)
    form: Form = "html"
    people: tuple[Person, ...] = ()
    one_file: bool = False


def papers_for(path: Path, wanted: Wanted) -> Files:
    """The files of paper for the problems at `path`, by their names within the folder.

    Raises ProblemError where a problem cannot be used or has no numbers for a student, NoTypst where
    PDF cannot be made.
    """
    sets = _usable(path)
    files: Files = {}
    for kind in wanted.kinds:
        if kind == "key" and wanted.people:
            files |= _written(_class_keys(sets, wanted.people), "keys", wanted.form, Path())
            continue
        by_person = {
            person: [MAKES[kind](problem, person.words) for problem in problems]
            for person, problems in _for_each(sets, wanted.people or (NOBODY,))
        }
        together = wanted.one_file or not wanted.people
        if together:
            every = [paper for papers in by_person.values() for paper in papers]
            stem = f"{kind}s" if wanted.people and kind != "worked" else kind
            files |= _written(every, stem, wanted.form, Path())
        else:
            for person, papers in by_person.items():
                folder = Path(person.stem) if wanted.form == "md" else Path()
                stem = kind if wanted.form == "md" else f"{person.stem}-{kind}"
                files |= _written(papers, stem, wanted.form, folder)
    return files


def _class_keys(sets: Sequence[ProblemSet], people: Sequence[Person]) -> list[PrintedSheet]:
    """A key for each problem, with a row for each student."""
    own = {person.words: problems for person, problems in _for_each(sets, people)}
    count = len(next(iter(own.values()))) if own else 0
    return [
        class_key([(whom, problems[at]) for whom, problems in own.items()]) for at in range(count)
    ]


def problems_for(path: Path, people: Sequence[Person]) -> Files:
    """The problem files of each student, in a folder of their own, with the set.toml beside them.

    Raises ProblemError as `papers_for`.
    """
    sets = _usable(path)
    files: Files = {}
    for person in people:
        for among in sets:
            folder = Path(person.stem)
            if len(sets) > 1:
                folder /= among.name
            for problem, own in zip(among.problems, _own(among, person), strict=True):
                name = problem.source.name if problem.source is not None else "problem.toml"
                files[folder / name] = write_problem(own).encode("utf-8")
            if among.file is not None and among.file.is_file():
                text = read_source(among.file).text or ""
                files[folder / SET_FILE] = text.encode("utf-8")
    return files


def put(files: Files, to: Path, replace: bool = False) -> tuple[Path, ...]:
    """Write the files below the folder `to`; the paths of those that are there already, in which
    case, unless they may be replaced, nothing is written. OSError where the disk refuses."""
    there = tuple(to / name for name in files if (to / name).exists())
    if there and not replace:
        return there
    for name, content in files.items():
        path = to / name
        path.parent.mkdir(parents=True, exist_ok=True)
        fresh = path.with_name(f".{path.name}.fresh")
        fresh.write_bytes(content)
        fresh.replace(path)
    return ()


def _written(papers: Sequence[PrintedSheet], stem: str, form: Form, folder: Path) -> Files:
    if form == "pdf":
        return {folder / f"{stem}.pdf": to_pdf(papers)}
    if form == "html":
        title = papers[0].title if len(papers) == 1 else stem.capitalize()
        return {folder / f"{stem}.html": to_html(papers, title).encode("utf-8")}
    text, pictures = to_markdown(papers, stem)
    files = {folder / f"{stem}.md": text.encode("utf-8")}
    return files | {folder / name: svg.encode("utf-8") for name, svg in pictures.items()}


def _usable(path: Path) -> tuple[ProblemSet, ...]:
    """The sets at `path`; ProblemError where anything in them cannot be used."""
    sets = load_sets(path)
    found = [
        defect
        for among in sets
        for refused in among.broken.values()
        for defect in refused.problems
        if defect.severity == "error"
    ]
    if found:
        raise ProblemError(found)
    return sets


def _for_each(
    sets: Sequence[ProblemSet], people: Sequence[Person]
) -> Iterator[tuple[Person, tuple[Problem, ...]]]:
    for person in people:
        yield person, tuple(problem for among in sets for problem in _own(among, person))


def _own(among: ProblemSet, person: Person) -> tuple[Problem, ...]:
    """A student's problems of a set; as they stand where it is for nobody in particular."""
    return tuple(_one(problem, among, person) for problem in among.problems)


def _one(problem: Problem, among: ProblemSet, person: Person) -> Problem:
    """One of them, which statics can solve or which is asked about. Raises ProblemError where there is none."""
    file = file_name(problem.source or problem.title)
    try:
        own = variant_of(problem, student=person.id, set=among.name) if person.id else problem
        if forces_follow(own):
            solve(own)
    except NoVariant as refused:
        cure = "widen a list of [vary], or take a condition away"
        raise ProblemError([Defect(file, 1, str(refused), cure)]) from None
    except Unsolvable as refused:
        cure = "pinjoint check says what to change"
        raise ProblemError([Defect(file, 1, unended(refused.reason), cure)]) from None
    return own
