"""What reaches the terminal of a text from a file, a paste or a student?"""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.screens.clean import one_line
from tutor.screens.typed_text import typed, without_remnants
from tutor.text import visible

CONTROLS = {"Cc", "Cf", "Cs"}


class TestNothingOnTheScreen:
    @given(st.text())
    def test_is_a_control_or_direction_character(self, text: str) -> None:
        assert not {unicodedata.category(c) for c in visible(text)} & CONTROLS - {"Cc"}
        assert all(c == "\n" or unicodedata.category(c) != "Cc" for c in visible(text))
        assert "\n" not in one_line(text)

    @given(st.text())
    def test_is_cleaned_twice(self, text: str) -> None:
        assert visible(visible(text)) == visible(text)

    @given(st.text(st.characters(categories=["L", "N", "P", "Sm"], exclude_characters="\u034f")))
    def test_is_lost_of_letters_figures_and_signs(self, text: str) -> None:
        assert visible(text) == text


class TestATypedLine:
    @given(st.text())
    def test_keeps_everything_but_controls_and_names_what_it_leaves_out(self, text: str) -> None:
        kept, dropped = typed(text)
        assert not {unicodedata.category(c) for c in kept} & {"Cc", "Cs"}
        assert len(kept) == len(text) or dropped

    def test_keeps_a_character_of_no_width_for_the_reading_to_name(self) -> None:
        assert typed("F_A\u200bC") == ("F_A\u200bC", "")

    def test_leaves_out_escapes_and_direction_marks(self) -> None:
        assert typed("\x1b[31mF\u202eC\x07") == ("[31mFC", "U+001B, U+202E, U+0007")

    @pytest.mark.parametrize(
        "codes",
        [
            "\x1b[<35;10;12M",
            "[<0;33;7m",
            "<35;10;12M[<35;11;12M",
            "\x1b[<64;80;24M\x1b[<65;80;24M",
            "[35;10;12M",
            "\x1b[M !!",
            "[12;40R",
            "\x1b[?1;2c",
            "\x1b[?2026;2$y",
            "\x1b[200~",
            "\x1b[I",
            "\x1b[O",
            "\x1b[1;5A",
        ],
    )
    def test_is_nothing_where_the_terminal_alone_sent_it(self, codes: str) -> None:
        assert without_remnants(codes) == ""

    @pytest.mark.parametrize(
        "line",
        [
            "3/5 F_AB + F_AC - 12 = 0",
            "[3(F_AC) - 2] = 0",
            "{F_AB} <= 3",
            "B_y(9 m) = 12 kN * 3 m",
            "M_A: 2[B_y] - 3M = 0",
            "[12] R_C = 4",
            "F_AB cos 36.87° = [2.5]",
            "[I] = 0",
        ],
    )
    def test_of_a_student_is_left_alone(self, line: str) -> None:
        assert without_remnants(line) == line
