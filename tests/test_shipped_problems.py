"""Is every problem that ships sound, tidy enough to do by hand, and part of sets with some range?"""

from __future__ import annotations

import itertools
import math
import re
from collections import Counter
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest
from every_problem import FILES, FORCES, USUAL, problem_of

from tutor.model import LEVELS, Member, Problem, ProblemSet, defects, load_sets
from tutor.shipped import shipped_problems
from tutor.statics import determinacy, joint_order, sections, solve, soundness, zero_force

SETS = load_sets(shipped_problems())
FEWEST = 64
FIRST, *TOPICS = SETS
CLOSE = 1e-9


@pytest.fixture(params=FILES, ids=lambda path: path.stem)
def file(request: pytest.FixtureRequest) -> Path:
    path: Path = request.param
    return path


@pytest.fixture
def problem(file: Path) -> Problem:
    return problem_of(file)


@pytest.fixture(params=FORCES, ids=lambda path: path.stem)
def solved(request: pytest.FixtureRequest) -> Problem:
    """One of which the forces are asked for."""
    return problem_of(request.param)


def shipped() -> tuple[Problem, ...]:
    return tuple(problem for found in SETS for problem in found.problems)


@pytest.fixture(params=SETS, ids=lambda found: found.path.name)
def found(request: pytest.FixtureRequest) -> ProblemSet:
    a_set: ProblemSet = request.param
    return a_set


# What a slope, a force and a figure must be like for pencil and paper


def run_and_rise(problem: Problem, member: Member) -> tuple[float, float]:
    start, end = problem.joint[member.start].at, problem.joint[member.end].at
    return abs(end[0] - start[0]), abs(end[1] - start[1])


def tidy_slope(run: float, rise: float) -> bool:
    """Level, upright, 3-4-5, 5-12-13, 8-15-17, 20-21-29, 45 degrees, 30 or 60 degrees."""
    ratios = (0.0, 1.0, 3 / 4, 5 / 12, 8 / 15, 20 / 21, 1 / math.sqrt(3))
    short, long = sorted((run, rise))
    return any(math.isclose(short, ratio * long, abs_tol=CLOSE) for ratio in ratios)


def tidy_force(value: float) -> bool:
    """A whole number of halves, or of halves of the root of 2 or of 3."""
    halves = (2 * value / root for root in (1.0, math.sqrt(2), math.sqrt(3)))
    return any(math.isclose(half, round(half), abs_tol=1e-6) for half in halves)


def extent(problem: Problem) -> float:
    xs, ys = zip(*(joint.at for joint in problem.joints), strict=True)
    return max(max(xs) - min(xs), max(ys) - min(ys))


def distance_to(problem: Problem, joint: str, member: Member) -> float:
    """How far a joint lies from the nearest place on a member."""
    (x, y), (ax, ay) = problem.joint[joint].at, problem.joint[member.start].at
    bx, by = problem.joint[member.end].at
    dx, dy = bx - ax, by - ay
    along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)
    along = min(1.0, max(0.0, along))
    return math.dist((x, y), (ax + along * dx, ay + along * dy))


def cross(problem: Problem, one: Member, other: Member) -> bool:
    """Whether two members cross, each between its ends."""
    a, b, c, d = (problem.joint[j].at for j in (one.start, one.end, other.start, other.end))

    def side(p: tuple[float, float], q: tuple[float, float], r: tuple[float, float]) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def sizes(problem: Problem) -> set[float]:
    """Every load size that the file gives."""
    pushes = {size.value for load in problem.loads for _, size in load.pushes}
    return pushes | {load.size.value for load in problem.loads if load.size is not None}


# Each problem by itself


def test_a_shipped_file_has_no_defect_and_no_warning(file: Path) -> None:
    assert [str(defect) for defect in defects(file)] == []


def test_a_shipped_problem_is_what_it_says_and_else_determinate_and_stable(
    problem: Problem,
) -> None:
    assert soundness(problem) == (problem.truss or "determinate")


def test_a_shipped_problem_can_be_solved_where_its_forces_are_asked_for(solved: Problem) -> None:
    count = determinacy(solved)
    assert count.members + count.reactions == count.equations
    assert set(solve(solved).values) == set(solved.unknowns)


def test_a_shipped_problem_can_be_walked_joint_by_joint_or_is_to_be_cut(solved: Problem) -> None:
    order = joint_order(solved)
    if "section" in solved.topics:
        assert order.stuck
        assert any(len(each.cut) <= 3 for each in sections(solved, ()))
        return
    assert order.stuck == ()
    assert not any(step.across for step in order.steps)
    assert sorted(order.joints) == sorted(solved.joint)


def test_a_shipped_problem_has_a_level_topics_and_a_story_of_two_to_four_sentences(
    problem: Problem,
) -> None:
    assert problem.level in LEVELS
    assert problem.topics
    assert len(set(problem.topics)) == len(problem.topics)
    story = problem.story.strip()
    assert story.endswith(".")
    assert 2 <= len(re.findall(r"\.(?=\s|$)", story)) <= 4
    assert "  " not in story


def test_a_force_told_in_a_story_is_a_load_of_the_file(problem: Problem) -> None:
    told = re.findall(r"(\d+(?:\.\d+)?) (kN|MN|N|kip|lb)\b", problem.story)
    assert {unit for _, unit in told} <= {problem.force}
    assert {float(number) for number, _ in told} <= sizes(problem)


def test_the_forces_of_a_shipped_problem_can_be_carried_by_hand(solved: Problem) -> None:
    untidy = {name: v for name, v in solve(solved).values.items() if not tidy_force(v)}
    assert untidy == {}


def test_the_members_of_a_shipped_problem_have_slopes_with_tidy_sines_and_cosines(
    problem: Problem,
) -> None:
    untidy = [m.name for m in problem.members if not tidy_slope(*run_and_rise(problem, m))]
    assert untidy == []


def test_no_members_of_a_shipped_problem_cross(problem: Problem) -> None:
    pairs = itertools.combinations(problem.members, 2)
    assert [(a.name, b.name) for a, b in pairs if cross(problem, a, b)] == []


def test_the_joints_of_a_shipped_problem_stand_clear_of_each_other_and_of_the_members(
    problem: Problem,
) -> None:
    room = extent(problem) / 10
    for one, other in itertools.combinations(problem.joints, 2):
        assert math.dist(one.at, other.at) > room
    for joint, member in itertools.product(problem.joint, problem.members):
        if joint not in (member.start, member.end):
            assert distance_to(problem, joint, member) > room


def test_every_load_of_a_shipped_problem_pushes(problem: Problem) -> None:
    assert sizes(problem)
    assert min(sizes(problem)) > 0


# The sets as a whole


def test_the_sets_can_be_used_as_they_are(found: ProblemSet) -> None:
    assert not found.broken
    assert not found.warnings
    assert len(found.problems) >= 5
    assert found.rules.mode == "practice"


def test_the_first_set_opens_the_list_and_the_topics_follow_in_their_order() -> None:
    assert FIRST.title == "First steps at Wrenhythe harbour"
    assert [found.name for found in TOPICS] == [
        "marl-hill-components",
        "pellam-free-bodies",
        "corrow-moments",
        "brankhollow-trusses",
        "tidewell-held",
        "lindery-zero-force",
        "haddenshaw-roofs",
        "ulver-bridges",
        "fellgate-cranes",
        "ostrey-compound",
        "hollin-pass-traps",
    ]


def test_file_names_are_lower_case_words_with_hyphens() -> None:
    assert [f.stem for f in FILES if not re.fullmatch(r"[a-z]+(-[a-z]+)*", f.stem)] == []


def test_a_set_never_steps_down_a_level(found: ProblemSet) -> None:
    levels = [problem.level or 0 for problem in found.problems]
    assert levels == sorted(levels)


def test_what_comes_first_stands_before_it_in_the_order(found: ProblemSet) -> None:
    place = {p.source.stem: n for n, p in enumerate(found.problems) if p.source is not None}
    for later, before in found.rules.after.items():
        assert all(place[each] < place[later] for each in before), later


def test_no_two_problems_of_a_set_share_a_truss(found: ProblemSet) -> None:
    trusses = {frozenset(joint.at for joint in problem.joints) for problem in found.problems}
    assert len(trusses) == len(found.problems)


def test_no_two_problems_share_a_file_name_a_title_or_a_story() -> None:
    problems = shipped()
    for facts in (
        {path.stem for path in FILES},
        {problem.title.casefold() for problem in problems},
        {problem.story for problem in problems},
    ):
        assert len(facts) == len(problems)


def test_there_are_enough_problems_and_every_level_has_some() -> None:
    levels = Counter(problem.level for problem in shipped())
    assert levels.total() == len(FILES) >= FEWEST
    assert set(levels) == set(LEVELS)


def test_no_load_stands_in_more_than_three_problems() -> None:
    """Whatever its unit: students learn an answer by its digits."""
    stands = Counter(size for problem in shipped() for size in sizes(problem))
    assert {size: count for size, count in stands.items() if count > 3} == {}


def test_two_thirds_of_the_problems_have_other_numbers_for_each_student() -> None:
    problems = shipped()
    assert 3 * sum(problem.vary is not None for problem in problems) >= 2 * len(problems)


def test_the_usual_problems_have_some_of_every_set_level_unit_and_support() -> None:
    assert {path.stem for path in FILES} >= USUAL
    usual = [p for p in shipped() if p.source is not None and p.source.stem in USUAL]

    def kinds(problems: Iterable[Problem]) -> dict[str, set[object]]:
        return {
            "set": {p.source.parent for p in problems if p.source is not None},
            "level": {p.level for p in problems},
            "unit": {unit for p in problems for unit in (p.force, p.length)},
            "support": {support.kind for p in problems for support in p.supports},
        }

    assert kinds(usual) == kinds(shipped())


def test_the_guide_and_the_readme_count_what_comes_along() -> None:
    root = Path(__file__).parents[1]
    guide = (root / "docs" / "students.md").read_text("utf-8")
    for found in SETS:
        levels = [problem.level for problem in found.problems]
        row = f"| {found.title} | {len(levels)} | {levels[0]} to {levels[-1]} |"
        assert row in guide, row
    assert f"{len(FILES)} come with it" in (root / "README.md").read_text("utf-8")


# The range of the sets: each feature is there in at least one problem


def members(count: int) -> Callable[[Problem], bool]:
    return lambda problem: len(problem.members) == count


def units(force: str, length: str) -> Callable[[Problem], bool]:
    return lambda problem: (problem.force, problem.length) == (force, length)


def wall_cantilever(problem: Problem) -> bool:
    """A pin and a roller above each other, the rest of the truss to one side of them."""
    kinds = sorted(support.kind for support in problem.supports)
    held = {problem.joint[support.joint].x.value for support in problem.supports}
    free = {joint.x.value for joint in problem.joints} - held
    return kinds == ["pin", "roller"] and len(held) == 1 and min(free) > max(held)


def load_with_two_components(problem: Problem) -> bool:
    return any(len(load.pushes) == 2 for load in problem.loads)


def load_by_size_and_angle(problem: Problem) -> bool:
    return any(load.size is not None for load in problem.loads)


def hangs_below_its_supports(problem: Problem) -> bool:
    held = {problem.joint[support.joint].y.value for support in problem.supports}
    loaded = {problem.joint[load.joint].y.value for load in problem.loads}
    return max(loaded) < min(held)


def link_support(problem: Problem) -> bool:
    return any(support.kind == "link" for support in problem.supports)


def inclined_roller(problem: Problem) -> bool:
    return any(
        support.kind == "roller" and support.angle is not None and support.angle.value % 90 != 0
        for support in problem.supports
    )


def three_zero_force_members(problem: Problem) -> bool:
    return len(zero_force(problem)) >= 3


def asymmetrical(problem: Problem) -> bool:
    """On a level pin and roller at its two ends, and yet not its own mirror image."""
    xs = [joint.x.value for joint in problem.joints]
    held = [problem.joint[support.joint] for support in problem.supports]
    spans = {joint.x.value for joint in held} == {min(xs), max(xs)}
    level = len({joint.y.value for joint in held}) == 1
    middle = min(xs) + max(xs)
    points = {(round(j.x.value, 9), round(j.y.value, 9)) for j in problem.joints}
    return spans and level and points != {(round(middle - x, 9), y) for x, y in points}


def parallel_chords_loaded_along_the_bottom(problem: Problem) -> bool:
    """Two level chords, and a downward load on every bottom joint between the supports."""
    heights = sorted({joint.y.value for joint in problem.joints})
    held = {support.joint for support in problem.supports}
    bottom = {joint.name for joint in problem.joints if joint.y.value == heights[0]} - held
    loaded = {load.joint for load in problem.loads if load.vector[1] < 0}
    return len(heights) == 2 and len(bottom) >= 3 and bottom <= loaded


def every_member_found_from_the_far_end(problem: Problem) -> bool:
    """With no reaction known, the joints can be walked from a free joint to the supports."""
    order = joint_order(problem, given=())
    held = {support.joint for support in problem.supports}
    free = len(problem.joints) - len(held)
    plain = not order.stuck and not any(step.across for step in order.steps)
    return plain and free >= 3 and not held & set(order.joints[:free])


def load_at_a_support(problem: Problem) -> bool:
    return bool({load.joint for load in problem.loads} & {s.joint for s in problem.supports})


def zero_reaction(problem: Problem) -> bool:
    """A support of one unknown that carries nothing."""
    single = [
        r
        for s in problem.supports
        if s.kind != "pin"
        for r in problem.reactions
        if r.joint == s.joint
    ]
    return any(abs(solve(problem).value(reaction.name)) < CLOSE for reaction in single)


def idle_between_supports(problem: Problem) -> bool:
    held = {support.joint for support in problem.supports}
    answer = solve(problem)
    return any(
        {member.start, member.end} <= held and abs(answer.value(member.name)) < CLOSE
        for member in problem.members
    )


def gives_the_reactions(problem: Problem) -> bool:
    return "reactions" in problem.given


def long_level_4(problem: Problem) -> bool:
    return problem.level == 4 and 11 <= len(problem.members) <= 15


def exact_roots(problem: Problem) -> bool:
    return any("sqrt" in part.text for joint in problem.joints for part in (joint.x, joint.y))


def exact_tangents(problem: Problem) -> bool:
    return any("tan" in part.text for joint in problem.joints for part in (joint.x, joint.y))


def long_joint_names(problem: Problem) -> bool:
    return {"U1", "L2"} <= set(problem.joint)


def sloping(*ratio: float) -> Callable[[Problem], bool]:
    def there(problem: Problem) -> bool:
        return any(
            math.isclose(min(span) * ratio[1], max(span) * ratio[0], abs_tol=CLOSE)
            for span in (run_and_rise(problem, member) for member in problem.members)
        )

    return there


RANGE: dict[str, Callable[[Problem], bool]] = {
    "three members": members(3),
    "five members": members(5),
    "a cantilever on a pin and a roller": wall_cantilever,
    "a load with two components": load_with_two_components,
    "a load given by size and angle": load_by_size_and_angle,
    "its supports above its loads": hangs_below_its_supports,
    "a link": link_support,
    "an inclined roller": inclined_roller,
    "three zero-force members": three_zero_force_members,
    "no symmetry": asymmetrical,
    "parallel chords with a load on each bottom joint": parallel_chords_loaded_along_the_bottom,
    "kips and feet": units("kip", "ft"),
    "pounds and feet": units("lb", "ft"),
    "newtons and metres": units("N", "m"),
    "newtons and millimetres": units("N", "mm"),
    "a single member": members(1),
    "two pins": lambda problem: [s.kind for s in problem.supports] == ["pin", "pin"],
    "three links": lambda problem: [s.kind for s in problem.supports] == ["link"] * 3,
    "a load that points up": lambda problem: any(load.vector[1] > 0 for load in problem.loads),
    "a load at a support": load_at_a_support,
    "a reaction that is zero": zero_reaction,
    "a member between its supports without a force": idle_between_supports,
    "every member found from the far end": every_member_found_from_the_far_end,
    "its reactions given": gives_the_reactions,
    "eleven to fifteen members at level 4": long_level_4,
    "exact roots": exact_roots,
    "exact tangents": exact_tangents,
    "longer joint names": long_joint_names,
    "a 3-4-5 slope": sloping(3, 4),
    "a 5-12-13 slope": sloping(5, 12),
    "an 8-15-17 slope": sloping(8, 15),
    "a 20-21-29 slope": sloping(20, 21),
    "a slope of 45 degrees": sloping(1, 1),
    "a slope of 30 or 60 degrees": sloping(1, math.sqrt(3)),
}


@pytest.mark.parametrize("feature", RANGE)
def test_some_problem_has(feature: str) -> None:
    forces = (problem for problem in shipped() if problem.truss in (None, "determinate"))
    assert any(RANGE[feature](problem) for problem in forces)


def test_some_trusses_are_loose_some_have_a_bar_too_many_and_one_is_neither() -> None:
    asked = Counter(problem.truss for problem in shipped() if problem.truss is not None)
    assert asked["unstable"] + asked["indeterminate"] >= 3
    assert min(asked[each] for each in ("unstable", "indeterminate", "determinate")) > 0
    fitting = [p for p in shipped() if p.truss == "unstable" and determinacy(p).count == "fits"]
    assert fitting, "one whose counts fit and that moves all the same"


def test_four_trusses_have_three_unknown_forces_at_every_joint_that_is_left() -> None:
    cut = [problem for problem in shipped() if "section" in problem.topics]
    assert len(cut) >= 4
    assert any(joint_order(problem).joints for problem in cut), "one where some joints come first"
    assert any(not joint_order(problem).joints for problem in cut)
