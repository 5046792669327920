"""Where two mistakes, or two others, explain a line: do the hints speak of both accounts?"""

from __future__ import annotations

from itertools import pairwise

from corpus import wrong_line

from tutor.judge import judge
from tutor.judge.saying import Saying, either
from tutor.judge.ties import told_with
from tutor.judge.verdict import Mistake

MARKS = (" Either ", " Or neither is so: ", " There may be more: ")
LEVELS = ("text", "reason", "place")


def mistake(code: str, force: str, look: str, reason: str, says: str) -> Mistake:
    one, spot = Saying(look), Saying(says, of=force)
    return Mistake(code, force, one.text, reason, spot.text, look=one, spot=spot)


SHARED = mistake("extra", "AC", "Too many", "Why too many.", "is too many")
FIRST = mistake("sign", "AB", "Wrong way", "Why the way.", "has the wrong sign")
OTHER = mistake("missing", "R_A", "Left out", "Why left out.", "is left out")
THIRD = mistake("sign", "BC", "Wrong way", "Why the way.", "has the wrong sign")
FOURTH = mistake("sign", "CD", "Wrong way", "Why the way.", "has it")


def told(mistakes: tuple[Mistake, ...], level: str) -> str:
    return " ".join(dict.fromkeys(getattr(m, level) for m in mistakes))


def test_what_two_accounts_share_is_told_once_and_first() -> None:
    found = told_with((FIRST, SHARED), [(SHARED, OTHER)])
    assert [m.code for m in found] == ["extra", "sign"]
    assert told(found, "text") == "Too many. Either wrong way; or left out."
    assert told(found, "reason") == "Why too many. Why the way. Why left out."
    assert told(found, "place") == (
        "AC is too many. Either AB has the wrong sign; or R_A is left out."
    )


def test_kinds_that_are_told_already_are_not_told_again() -> None:
    found = told_with((SHARED, FIRST), [(SHARED, THIRD)])
    assert told(found, "text") == "Too many. Wrong way."
    assert told(found, "place").endswith("Either AB or BC has the wrong sign.")
    found = told_with((FIRST, THIRD), [(OTHER,)])
    assert told(found, "text") == "Either wrong way; or left out."


def test_what_only_adds_to_two_mistakes_or_stands_for_both_is_told_as_that() -> None:
    found = told_with((FIRST, THIRD), [(FOURTH, OTHER)])
    assert told(found, "text") == "Wrong way. There may be more: left out."
    assert told(found, "place") == (
        "AB has the wrong sign. BC has the wrong sign. "
        "Or neither is so: CD has it, and R_A is left out."
    )


def test_a_choice_names_what_may_be_wrong_and_leaves_the_advice_out() -> None:
    lost, turned = (
        Saying("A load is lost", "count them."),
        Saying("is turned", "which way?", of="AB"),
    )
    assert either((lost, turned)) == "Either a load is lost; or AB is turned."


def test_what_is_said_alike_of_several_things_is_said_once_with_its_advice() -> None:
    turned = [Saying("is turned", "which way?", of=name) for name in ("The force in AB", "BC")]
    assert either(turned) == "Either the force in AB or BC is turned: which way?"
    assert either(turned[:1]) == "The force in AB is turned: which way?"


def test_only_what_is_in_doubt_names_other_forces() -> None:
    first, second = told_with((SHARED, FIRST), [(SHARED, OTHER)])
    assert (first.alike, second.alike) == ((), ("R_A",))


def test_one_other_account_of_two_mistakes_is_enough() -> None:
    found = told_with((SHARED, FIRST), [(SHARED, OTHER), (OTHER, THIRD)])
    assert all(told(found, level).count("Either ") <= 1 for level in LEVELS)


def test_a_second_pair_of_mistakes_that_explains_a_line_is_told_of() -> None:
    pairs = 0
    for seed in range(200):
        wrong = wrong_line(seed, 2)
        if wrong is None:
            continue
        verdict = judge(
            wrong.problem, wrong.about, wrong.text, senses=wrong.senses, known=wrong.known
        )
        if len(verdict.mistakes) != 2 or not verdict.candidates:
            continue
        pairs += 1
        named = [(m.code, m.force) for m in verdict.mistakes]
        new = [m for m in verdict.candidates if (m.code, m.force) not in named]
        place = told(verdict.mistakes, "place")
        assert any(mark in f" {place}" for mark in MARKS)
        assert any(m.spot.claim[1:20] in place for m in new)
        shown = [told(verdict.mistakes, level) for level in LEVELS]
        assert all(one != other for one, other in pairwise(shown))
        assert all(sum(text.count(mark) for mark in MARKS) <= 1 for text in shown)
    assert pairs
