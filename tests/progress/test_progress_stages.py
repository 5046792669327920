"""A worked example fades: each lesson leaves more to the student, and who does well skips ahead."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from tutor.deeds.board import BEGINNINGS
from tutor.guide_options import BEGINNINGS as ON_COMMAND_LINE
from tutor.lesson.watching.show import UNTIL
from tutor.model import Problem, load_problem, load_sets
from tutor.progress.attained import attained_of
from tutor.progress.kept import Summaries
from tutor.progress.kinds import kind_of_problem, walk_of
from tutor.progress.stages import POORLY, STAGE, STAGES, WELL, Past, next_stage, offered
from tutor.records import Keep
from tutor.session import open_session
from tutor.shipped import shipped_problems

NAMES = [stage.name for stage in STAGES]
PAST = st.builds(
    Past, st.sampled_from(("roofs", "bridges")), st.sampled_from(NAMES), st.floats(0.0, 1.0)
)


def place(name: str) -> int:
    return NAMES.index(name)


@given(st.lists(PAST, max_size=8), st.floats(0.0, 1.0))
def test_one_more_lesson_never_leaves_less_to_the_student(past: list[Past], share: float) -> None:
    before = next_stage(past, "roofs")
    after = next_stage([*past, Past("roofs", before, share)], "roofs")
    assert place(after) >= place(before)
    if before != "alone" and share >= POORLY:
        assert place(after) > place(before)
    if before not in ("watch", "reactions", "alone") and share >= WELL:
        assert place(after) >= place(before) + 2


@given(st.lists(PAST, max_size=8))
def test_whoever_goes_on_with_a_kind_does_it_alone_in_the_end(past: list[Past]) -> None:
    for _ in NAMES:
        past = [*past, Past("roofs", next_stage(past, "roofs"), 0.7)]
    assert next_stage(past, "roofs") == "alone"


def test_the_first_of_a_first_kind_is_watched_and_poor_work_repeats_the_stage() -> None:
    assert next_stage([], "roofs") == "watch"
    watched = [Past("roofs", "watch", 1.0)]
    assert next_stage(watched, "roofs") == "half"
    assert next_stage([*watched, Past("roofs", "half", 0.2)], "roofs") == "half"
    assert next_stage([*watched, Past("roofs", "half", 0.7)], "roofs") == "joints"
    assert next_stage([*watched, Past("roofs", "half", 0.95)], "roofs") == "reactions"


def test_who_has_done_other_kinds_alone_begins_further_on() -> None:
    assert next_stage([Past("bridges", "alone", 0.9)], "roofs") == "half"
    assert next_stage([Past("bridges", "alone", 0.1)], "roofs") == "watch"


FRAME = """
title = "{title}"
force = "N"
length = "m"
members = ["AB", "BC", "AC"]
joints = {{A = [0, 0], B = [8, 0], C = [4, 3]}}
supports = {{A = "pin", B = {support}}}
{load}
"""
AT_C = "[[loads]]\nat = 'C'\ndown = 60"
OWN = {
    "plain": ("'roller'", AT_C, "first trusses"),
    "again": ("'roller'", AT_C.replace("60", "75"), "first trusses"),
    "ramp": ("{roller = 60}", AT_C, "inclined supports"),
    "snow": ("'roller'", "[[spread]]\non = ['AC']\ndown = 3", "loads on members"),
    "bare": ("'roller'", "[[loads]]\nat = 'A'\nleft = 5", "zero-force members"),
}


def own(folder: Path, name: str) -> Problem:
    support, load, _ = OWN[name]
    path = folder / f"{name}.toml"
    path.write_text(FRAME.format(title=name, support=support, load=load), encoding="utf-8")
    return load_problem(path)


def test_in_a_folder_of_ones_own_a_kind_is_what_the_walk_needs(tmp_path: Path) -> None:
    found = {name: kind_of_problem(own(tmp_path, name)) for name in OWN}
    assert found == {name: kind for name, (_, _, kind) in OWN.items()}
    loose = replace(own(tmp_path, "plain"), source=None)
    assert kind_of_problem(loose) == ""


def test_one_own_truss_done_leaves_another_kind_in_the_folder_to_be_begun(tmp_path: Path) -> None:
    problem = own(tmp_path, "plain")
    session = open_session(problem, Keep(tmp_path / "keep"))
    while session.do("show").accepted:
        pass
    session.close()
    attained = attained_of(Summaries(Keep(tmp_path / "keep")))
    assert attained.stage(own(tmp_path, "again")) == "half"
    assert attained.stage(own(tmp_path, "ramp")) == "watch"
    assert "first of its kind" in attained.offer(own(tmp_path, "ramp"))


def test_the_sets_that_come_along_are_kinds_and_all_walks_are_told_apart() -> None:
    kinds, walks = set(), set()
    for each in load_sets(shipped_problems()):
        for problem in each.problems:
            kinds.add(kind_of_problem(problem))
            walks.add(walk_of(problem))
    assert kinds == {path.parent.name for path in shipped_problems().glob("*/set.toml")}
    assert walks >= {kind for _, _, kind in OWN.values()} | {"sections", "joint after joint"}


@given(st.lists(PAST, max_size=8), st.sampled_from(NAMES))
def test_an_offer_says_what_stands_and_what_is_the_students(past: list[Past], name: str) -> None:
    said = offered(STAGE[name].name, past, "roofs")
    assert (said == "") == (name == "alone")
    assert STAGE[name].stands in said
    assert ("type watch" in said) == (name == "watch")


def test_every_stage_can_be_shown_up_to_and_asked_for() -> None:
    assert all(stage.until in UNTIL for stage in STAGES[1:-1])
    assert sorted(BEGINNINGS) == sorted(ON_COMMAND_LINE) == sorted(NAMES)


def test_one_thing_is_written_and_several_are() -> None:
    assert "Type begin, and the free body is written" in offered("reactions", [], "roofs")
    assert "the free body and the reactions are written" in offered("joints", [], "roofs")
