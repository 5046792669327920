"""Is a place the same after it was kept, and is any text of a journal some place?"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tutor.judge import Along, Fx, Fy, M, Value
from tutor.lesson.place import AtSupport, NoForce, Question, place_key, place_of
from tutor.lesson.state import Try

NAMES = st.from_regex(r"[A-Z][A-Za-z0-9]{0,7}", fullmatch=True)
JOINTS = st.none() | NAMES
NUMBERS = st.floats(-1e6, 1e6)
PLACES = st.one_of(
    st.builds(Fx, JOINTS),
    st.builds(Fy, JOINTS),
    st.builds(Along, NUMBERS, JOINTS),
    st.builds(M, NAMES | st.tuples(NUMBERS, NUMBERS)),
    st.builds(Value, NAMES),
    st.builds(AtSupport, NAMES),
    st.builds(NoForce, NAMES),
    st.builds(Question, st.sampled_from(["reasons", "count", "soundness", "loose", "halves"])),
)


@given(PLACES)
def test_a_place_is_read_back_as_what_it_was(place) -> None:
    assert place_of(place_key(place)) == place
    assert Try("joints", place, "", "wrong").place == place_key(place)


@given(st.text(max_size=40))
def test_any_text_is_a_place(text: str) -> None:
    assert place_of(place_key(place_of(text))) == place_of(text)
