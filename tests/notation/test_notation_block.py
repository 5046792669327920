"""Are several rows read as the statements of one line, as a page, a display or a quoted answer has them?"""

from __future__ import annotations

import pytest
from test_notation_hands import true_of, truss

from tutor.notation import Line, Unreadable, read_line

BLOCKS = [
    ("quay", "Moments about A:\n8 C_y = 24(4) + 12(4) + 8(3)\nC_y = 21 kN"),
    ("quay", "ΣF_y = 0:\n15 + 0.6 F_AD = 0\n=> F_AD = -25 kN"),
    ("quay", "> At A:\n> 15 + 0.6 F_AD = 0\n> \n> so F_AD = -25 kN"),
    ("quay", "\\begin{align*}\nF_{AD} &= -\\frac{15}{0.6} \\\\\n&= -25\\ \\text{kN}\n\\end{align*}"),
    ("quay", "\\begin{aligned}\n\\Sigma F_y &= 15 + \\tfrac{3}{5}F_{AD} = 0 \\\\\nF_{AD} &= -25\n\\end{aligned}"),
    ("quay", "$$\nF_{BD} - 12 = 0\n$$"),
    ("quay", "\\[\nF_{BD} = 12\n\\]"),
    ("quay", "```\nF_BD - 12 == 0\n```"),
    ("quay", "8 C_y = 24*4 +\n12*4 + 8*3"),
    ("quay", "C_y = 168/8\n= 21"),
    ("quay", "F_BC - F_AB = 0\r\nF_BC = 28 kN (T)"),
    ("quay", "F_BD = 12 ;\nF_AB = 28"),
    ("ramp", "- $F_{QR} - F_{PR} = 0$"),
    ("ramp", "R_Q*sin(pi/3) = 4500"),
    ("ramp", "R_Q*cos(pi/6)-4500 == 0"),
    ("ramp", "(%o4)   [R_Q = 5196.2]"),
    ("ramp", "Out[3]= {R_Q -> 5196.2}"),
    ("ramp", "Step 2) R_Q cos 30° = 4500"),
    ("ramp", "•\tR_Q cos 30° = 4500"),
    ("ramp", "R_Q cos 30° = 4500 =&gt; R_Q = 5196"),
    ("ramp", "| R_Q | 9000/(2 cos 30°) = 5196 N | push |"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "text"), BLOCKS)
def test_a_true_block_is_read_as_what_it_says(name: str, text: str) -> None:
    names, true = truss(name)
    found = read_line(text, names)
    assert not isinstance(found, Unreadable), found.message
    assert found.text == text
    assert any(true_of(one, true, False) for one in (found, *found.alternatives)), found


@pytest.mark.parametrize(("name", "text"), BLOCKS)
def test_every_span_of_a_block_lies_in_the_text_as_typed(name: str, text: str) -> None:
    found = read_line(text, truss(name)[0])
    assert isinstance(found, Line)
    spans = [step.span for step in found.steps]
    spans += [term.span for step in found.steps for side in step.sides for term in side.terms]
    assert all(0 <= span.start <= span.end <= len(text) for span in spans)


def test_two_rows_are_two_statements_and_one_that_goes_on_is_one() -> None:
    names, _ = truss("quay")
    assert len(read_line("15 + 0.6 F_AD = 0\nF_AD = -25", names).steps) == 2
    assert len(read_line("15 + 0.6 F_AD\n= 0", names).steps) == 1
    assert len(read_line("F_AD = -15/0.6\n= -25", names).steps) == 1


def test_a_minus_before_a_formula_in_its_own_marks_is_a_bullet_and_one_within_is_not() -> None:
    names, _ = truss("quay")
    within = read_line("- $-F_{AB} + F_{BC} = 0$", names)
    assert [term.value for term in within.steps[0].sides[0].terms] == [-1.0, 1.0]


def test_what_cannot_be_read_is_told_at_its_place_in_the_text_as_typed() -> None:
    text = "15 + 0.6 F_AD = 0\nF_QZ = -25"
    found = read_line(text, truss("quay")[0])
    assert isinstance(found, Unreadable)
    assert found.text == text
    assert found.column == text.index("F_QZ") + 1
    assert found.message.isprintable()
