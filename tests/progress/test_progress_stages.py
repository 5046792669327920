"""A worked example fades: each lesson leaves more to the student, and who does well skips ahead."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tutor.deeds.board import BEGINNINGS
from tutor.guide_options import BEGINNINGS as ON_COMMAND_LINE
from tutor.lesson.watching.show import UNTIL
from tutor.progress.stages import POORLY, STAGE, STAGES, WELL, Past, next_stage, offered

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
