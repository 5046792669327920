"""What stands on a sheet, on its key, and in a worked solution?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from tutor.figure import Figure, joint_figure, part_figure, result_figure, truss_figure
from tutor.figure.parts import Arrow
from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.about import point_of
from tutor.judge.known_values import senses_for
from tutor.model import Problem
from tutor.paper.blocks import (
    LARGE,
    SMALL,
    Block,
    Lines,
    Paragraph,
    Picture,
    PrintedSheet,
    SubHeading,
    Together,
    WorkingSpace,
    fitted,
)
from tutor.paper.held import IF_HELD, question, what_it_is
from tutor.paper.lines import force_symbol, rounded
from tutor.paper.tables import members_asked, members_table, reactions_asked, reactions_table
from tutor.paper.to_joints import brought, lying
from tutor.paper.way_through import Body, Worked, WrittenStep, worked
from tutor.statics import Answer, cut_around, forces_follow, joint_order, solve
from tutor.text import FEW, listed

JOINTS_A_PAGE = 6
MANY = 30
STRAIGHT = 1e-9
WIDE, MIDDLE = 0.9, 0.75
SIGNS = "x is positive to the right, y up, moments counter-clockwise; a member force is positive in tension."


def sheet(problem: Problem, whom: str = "") -> PrintedSheet:
    """The problem to work on: picture, story, room to work, an empty table."""
    return PrintedSheet(
        problem.title,
        whom,
        (
            *_story(problem),
            Picture(truss_figure(problem), f"The truss: {problem.title}", WIDE),
            *lying(problem),
            *question(problem),
            Paragraph(_task(problem)),
            *reactions_asked(problem),
            members_asked(problem),
            WorkingSpace(1 + len(problem.joints) // JOINTS_A_PAGE),
        ),
    )


def key(problem: Problem, whom: str = "") -> PrintedSheet:
    """The answers alone: the truss with its forces, and tables; of a truss that statics does not
    solve and is asked about, what it is. Raises `Unsolvable` of any other."""
    if not forces_follow(problem):
        return PrintedSheet(f"{problem.title}: key", whom, (_plain(problem), *what_it_is(problem)))
    answer = solve(problem)
    return PrintedSheet(
        f"{problem.title}: key",
        whom,
        (
            *what_it_is(problem),
            _result(answer),
            reactions_table(answer),
            members_table(answer),
        ),
    )


def worked_solution(problem: Problem, whom: str = "") -> PrintedSheet:
    """The whole way, line by line, with a picture of each body; of a truss that statics does not solve
    and is asked about, what it is. Raises `Unsolvable` of any other."""
    if not forces_follow(problem):
        return PrintedSheet(
            f"{problem.title}: worked solution",
            whom,
            (*_story(problem), _plain(problem), *what_it_is(problem)),
        )
    way = worked(problem)
    answer = solve(problem)
    free = truss_figure(problem, reactions=dict.fromkeys(problem.reaction, ""))
    return PrintedSheet(
        f"{problem.title}: worked solution",
        whom,
        (
            *_story(problem),
            _plain(problem),
            *what_it_is(problem),
            Paragraph(SIGNS + " Values are written to four figures and used so from then on."),
            *brought(problem, MIDDLE),
            SubHeading("Free body of the whole truss"),
            Picture(free, "The truss cut free from its supports", MIDDLE),
            *_whole(way),
            *(_body(way.problem, body) for body in way.bodies),
            *_together(way),
            *_check(way),
            Together(
                (
                    SubHeading("Result"),
                    _result(answer),
                )
            ),
            reactions_table(answer),
            members_table(answer),
            Paragraph(_closing(way)),
        ),
    )


def _result(answer: Answer) -> Picture:
    figure = _narrow(result_figure(answer.problem, answer.values))
    return fitted(figure, _words_of_results(answer.problem), LARGE)


def _narrow(figure: Figure) -> Figure:
    """The figure with its reactions in few words where one is inclined: which way it acts stands in the
    table and the unit in a corner, and the truss would be small beside "R_B = 49.5 kN at 135°"."""
    arrows = [i for i in figure.items if isinstance(i, Arrow) and i.role == "reaction"]
    if not any(abs(arrow.toward[0] * arrow.toward[1]) > STRAIGHT for arrow in arrows):
        return figure
    items = tuple(
        replace(i, texts=i.texts[1:] or i.texts) if i in arrows else i for i in figure.items
    )
    return replace(figure, items=items)


def _plain(problem: Problem) -> Picture:
    return Picture(truss_figure(problem), f"The truss: {problem.title}", MIDDLE)


def _story(problem: Problem) -> Iterator[Block]:
    for part in problem.story.split("\n\n"):
        if part.strip():
            yield Paragraph(" ".join(part.split()))


def _task(problem: Problem) -> str:
    from_reactions = "" if "reactions" in problem.given else "the reactions and "
    find = f"ind {from_reactions}the force in every member by the method of joints"
    task = f"F{find}" if problem.truss is None else f"{IF_HELD}f{find}"
    if problem.truss is None and joint_order(problem).stuck:
        task += "; where no joint has as few as two unknown forces, cut the truss by a section"
    return (
        f"{task}. Say of each member whether it is in tension (T) or in compression (C). Forces are in "
        f"{problem.force}, lengths in {problem.length}."
    )


def _words_of_results(problem: Problem) -> str:
    return f"The truss with its forces in {problem.force}: single lines T, double lines C, dotted 0"


def _whole(way: Worked) -> Iterator[Block]:
    if "reactions" in way.problem.given:
        yield Paragraph("The reactions are given; these are the lines that lead to them.")
    if way.reactions:
        yield Lines(_rows(way.problem, way.reactions))
    left = [n for n in way.problem.reaction if not any(n in s.finds for s in way.reactions)]
    if left:
        has = "is" if len(left) == 1 else "are"
        yield Paragraph(
            f"The whole truss has more reactions than it has equations: {listed(left, FEW)} {has} found "
            "at the joints."
        )


def _body(problem: Problem, body: Body) -> Block:
    """A joint, or the part that a section cuts off, with its picture and its lines."""
    values, senses = _in_true_sense(problem, body.steps[0].known)
    if body.joint:
        title = f"Joint {body.joint}"
        figure = joint_figure(problem, body.joint, known=values, senses=senses)
        words = f"Joint {body.joint} cut free"
    else:
        cut, kept = cut_around(problem, body.part), listed(body.part, MANY)
        title = f"Section through {listed(cut, MANY)}: the part with {kept}"
        figure = part_figure(problem, body.part, known=values, senses=senses)
        words = f"The part with {kept} cut free"
    size = SMALL if body.joint else LARGE
    return Together(
        (SubHeading(title), fitted(figure, words, size), Lines(_rows(problem, body.steps)))
    )


def _in_true_sense(
    problem: Problem, known: Mapping[str, float]
) -> tuple[Mapping[str, float], Mapping[str, str]]:
    """Every known force in its true sense, as the lines put it in: sizes, and the senses drawn."""
    senses = {n: senses_for(problem, n)[1] for n, value in known.items() if value < 0.0}
    sizes = {n: value if n in problem.member else abs(value) for n, value in known.items()}
    return sizes, senses


def _together(way: Worked) -> Iterator[Block]:
    if not way.together:
        return
    open_ones = dict.fromkeys(name for step in way.together for name in step.unknown)
    yield SubHeading("What is left, all at once")
    yield Paragraph(
        "No joint that is left has as few as two unknown forces, and no section finds one alone, so "
        f"their lines are solved together for {listed(open_ones, MANY)}. What they give stands below."
    )
    rows = _rows(way.problem, way.together)
    at = (step.about.joint for step in way.together)
    yield Lines(
        tuple((f"{joint}: {row[0]}", *row[1:]) for joint, row in zip(at, rows, strict=True))
    )


def _check(way: Worked) -> Iterator[Block]:
    """The sums of the whole truss, where no joint is left over to check the work."""
    if way.closing:
        yield Together(
            (SubHeading("Check: the whole truss"), Lines(_rows(way.problem, way.closing)))
        )


def _rows(problem: Problem, steps: Sequence[WrittenStep]) -> tuple[tuple[str, str, str], ...]:
    values = worked_values(steps)
    rows = []
    for step in steps:
        remark = "closes" if step.checks else ""
        if step.finds:
            remark = _found(problem, step.finds, values)
            if step.with_last:
                remark = f"with the line above: {remark}"
        rows.append((heading(step.about, problem), step.text, remark))
    return tuple(rows)


def worked_values(steps: Sequence[WrittenStep]) -> Mapping[str, float]:
    """The values that these steps find."""
    return {name: value for step in steps for name, value in step.gives.items()}


def _found(problem: Problem, names: Sequence[str], values: Mapping[str, float]) -> str:
    return ", ".join(
        f"{force_symbol(problem, name)} = {_in_words(problem, name, values[name])}"
        for name in names
    )


def _in_words(problem: Problem, name: str, value: float) -> str:
    """A value as a textbook tells it: "20 kN (T)", "−20 kN = 20 kN (C)", "−3 kN", "0"."""
    with_unit = f"{rounded(value)} {problem.force}"
    if value == 0.0 or name not in problem.member:
        return "0" if value == 0.0 else with_unit
    if value < 0.0:
        return f"{with_unit} = {rounded(-value)} {problem.force} (C)"
    return f"{with_unit} (T)"


def heading(about: Equation, problem: Problem) -> str:
    """The heading of a line: "ΣF_x", "ΣM_A", "ΣM about (4, 3)", "ΣF along 30°"."""
    match about:
        case Fx():
            return "ΣF_x"
        case Fy():
            return "ΣF_y"
        case M(at=str() as joint):
            return f"ΣM_{joint}"
        case Along(degrees=degrees):
            return f"ΣF along {rounded(degrees)}°"
    x, y = point_of(problem, about)
    return f"ΣM about ({rounded(x)}, {rounded(y)})"


def _closing(way: Worked) -> str:
    checks = [b.joint for b in way.bodies if b.joint and any(step.checks for step in b.steps)]
    if way.together:
        return "Any sum of the whole truss checks the work."
    if not checks:
        return "The sums of the whole truss check the work."
    return f"The lines at {listed(checks, FEW)} in which nothing is unknown check the work: they close."
