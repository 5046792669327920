"""Does a lesson take whatever people write, and end?"""

from __future__ import annotations

import pytest
from paper.measure import lines, problem

from tutor.judge import Judge
from tutor.lesson import Lesson
from tutor.lesson.steps.apart import statements_apart

SETS = [
    "lecturer", "own-a", "typed", "hurry", "night", "board", "pages", "asides", "evening", "lecterns", "clippings",
    "scraps", "pastings", "lamplight", "chalk", "desk", "satchel", "rostrum", "clipboard", "margin", "podium", "ledger",
    "dais", "tram", "carbon", "lamp", "easel", "blotter", "pulpit", "scans", "slate", "stage", "couch", "gallery", "kerb",
    "plinth", "inkpad", "bench", "rail", "binder", "yard", "copybook", "aula", "kitchen", "locker", "rota",
    "porch", "tray", "folder", "bunk", "bicycle", "atrium", "valise", "counter", "corridor", "porthole", "balcony",
    "scarf", "forum", "rigger", "courier", "apron", "cloister", "tally", "dossier",
    "slipway", "toolbox", "folio", "crayon", "azulejo", "chatter", "gadget", "academy", "dictated",
    "harbour", "rucksack", "noticeboard", "workbench", "belfry", "wagon", "foolscap", "kiosk", "envelope", "jotter",
    "lighthouse", "scrapbook", "lunchbox", "quayside", "pinboard", "postbag",
]  # fmt: skip


@pytest.mark.parametrize("name", SETS)
def test_lines_beside_each_other_are_shorter_than_the_line_they_stand_in(name: str) -> None:
    for line in lines(name):
        read = Judge(problem(line["truss"])).read(line["text"])
        parts = statements_apart(read)
        assert all(len(part) < len(line["text"]) for part in parts), (line["text"], parts)


@pytest.mark.parametrize(
    "text",
    [
        "80 + 0.8 AE = 0 (0.8 = 4/5), AE = -100",
        "A ↑: A_y + 4/5 AE = 0 (4/5 AE = -80), AE = -100",
        "A ↑: A_y + 4/5 AE = 0 (4/5 = 0.8), AE = -A_y*5/4",
        "(A_y = 80) A_y + 4/5 AE = 0, AE = -100",
        "(A_y = 80, 4/5 = 0.8) A_y + 4/5 AE = 0; A_x + AB + 0.6 AE = 0",
        "A_y + 4/5 AE = 0. (80 = 160/2, 0.8 = 4/5)",
    ],
)
def test_a_line_with_working_in_brackets_is_taken_as_it_stands(text: str) -> None:
    lesson = Lesson(problem("rack"))
    lesson.take("show", now=1.0, until="joints")
    lesson.take("joint", now=2.0, joint="A")
    reply = lesson.take("type", now=3.0, text=text)
    assert reply.accepted, [say.text for say in reply.said]


SPOKEN = SETS[SETS.index("kerb") :]
"""Sets of whole hundreds by people who had not seen the program."""


@pytest.mark.parametrize("name", SPOKEN)
def test_a_right_line_typed_while_no_sum_is_chosen_is_not_said_to_be_wrong(name: str) -> None:
    for line in lines(name):
        if line["kind"] != "right" or {"known", "senses", "lines", "standing"} & line.keys():
            continue
        asked, *of = line["about"]
        lesson = Lesson(problem(line["truss"]))
        of_truss = asked == "M" or (asked != "Value" and not any(of))
        lesson.take("show", now=1.0, until="reactions" if of_truss else "joints")
        if not of_truss and asked != "Value":
            lesson.take("joint", now=2.0, joint=of[-1])
        reply = lesson.take("type", now=3.0, text=line["text"])
        tones = {say.tone for say in reply.said}
        assert "wrong" not in tones, (line["text"], [say.text for say in reply.said])
