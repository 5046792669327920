"""Which mistakes can be named, told for people? `python -m tutor.judge.catalogue` prints the page.

The page is `docs/mistakes.md`. It is made from the files in `tutor/judge/mistakes/` alone, and every
hint on it is what `judge` says of the example beside it.
"""

from __future__ import annotations

import sys
from importlib import import_module

from tutor.judge import judge
from tutor.judge.about import M, Value, in_words
from tutor.judge.claims import CLAIMS, SUPPORTS, Claim
from tutor.judge.example import GANGWAY, MAST, TRUSSES, Example
from tutor.judge.kind import Case, Kind
from tutor.judge.mistakes import KINDS
from tutor.judge.scale import A_SLIP, FAR_LESS, HARDLY, SLIGHTLY, SOMEWHAT
from tutor.judge.verdict import Mistake
from tutor.model import Problem
from tutor.model.caution import CAUTION

OPENING = """# Mistakes

What pinjoint can name in a wrong line or value. This page is made from the files in
`tutor/judge/mistakes/`, one for each mistake; make it anew with

    python -m tutor.judge.catalogue > docs/mistakes.md

A mistake has four hints. *Look* comes with the verdict, says what kind of thing is wrong and names no
force. *Reason* gives the principle. *Place* names the force and the kind of error, but no number. The
fourth, *line*, is a right line itself; it depends on the line asked for and is not shown here. Where
several mistakes explain a line equally well, one sentence names them: "Either …; or …"."""

TRUSSES_TOLD = """## The trusses of the examples

Both are our own inventions, drawn from the joints' coordinates.

| | mast | gangway |
|---|---|---|"""

CLAIMED = """## Before the first line

Mistakes in the free body, and in members said to be zero, are made by choosing and not in a line; those
in a load that is brought from members to joints, in a list of shares. They have codes and hints as
well; the fourth hint is what has to be chosen or typed. Two of their kind show only
later: symmetry that is assumed where there is none, in a value (`symmetry`), and action and reaction
broken between the two ends of a member, in the line of the second joint (`reflected`, `minus`)."""

REMARKS = """## Remarks on right lines

A right line may carry a remark. It is no mistake and is not counted as one.

| code | said when |
|---|---|
| `heading` | the line is the equation asked for, though the heading written before it names another |
| `declared` | the line was read with a member drawn as the words beside it say |
| `rounding` | a number is off by more than the silent share of the problem (half a percent unless the file says otherwise), and by less than the share that is still right (two percent) |
| `dependent` | the line is true, but follows from lines of the same body that already stand |"""

PLAUSIBILITY = """## How plausible each is

Where several mistakes, alone or together, turn the true equation into the typed one, the account that
costs least is named first. The commonest mistakes cost one slip each; how much less plausible another
is taken to be is one of five: hardly and slightly, which only say what comes first of what costs the
same otherwise; somewhat (half a slip), as one slip more, far less (two slips more). These are our own
judgement, no source: studies of statics students describe these kinds of error, but give no
frequencies that could be used.

| code | less plausible than the commonest |
|---|---|"""

IN_WORDS = {
    0.0: "as common",
    HARDLY: "hardly",
    SLIGHTLY: "slightly",
    SOMEWHAT: "somewhat",
    A_SLIP: "as one slip more",
    FAR_LESS: "far less",
}


def page() -> str:
    """The whole page, in Markdown."""
    return "\n\n".join(
        [
            OPENING,
            CAUTION,
            _trusses(),
            "## The mistakes",
            *(_entry(kind) for kind in _named_in_order()),
            CLAIMED,
            *map(_claim, CLAIMS.values()),
            REMARKS,
            _plausibility(),
        ]
    )


def _named_in_order() -> list[Kind]:
    return [KINDS[code] for code in sorted(KINDS)]


def module_line(kind: Kind) -> str:
    """The sentence at the top of the file of a mistake."""
    module = import_module(f"tutor.judge.mistakes.{kind.code.replace('-', '_')}")
    return " ".join((module.__doc__ or "").split())


def _trusses() -> str:
    rows = (
        ("title", MAST.title, GANGWAY.title),
        ("joints", _joints(MAST), _joints(GANGWAY)),
        ("members", ", ".join(MAST.member), ", ".join(GANGWAY.member)),
        ("supports", "pin at A, roller at C", "pin at A, link from B to (7, -4)"),
        ("loads", "at D 12 kN down and 5 kN right; at B 6 kN and 8 kN down", "at C 12 kN down"),
    )
    told = (f"| {name} | {mast} | {gangway} |" for name, mast, gangway in rows)
    return "\n".join([TRUSSES_TOLD, *told])


def _joints(problem: Problem) -> str:
    return ", ".join(f"{j.name} ({j.at[0]:g}, {j.at[1]:g})" for j in problem.joints)


def _entry(kind: Kind) -> str:
    parts = [f"### `{kind.code}`", module_line(kind), f"*Why:* {kind.why}"]
    if kind.examples:
        parts += (_shown(example) for example in kind.examples)
    else:
        case = Case(MAST, M("A"))
        parts.append(_levels(kind.look(case).text, kind.reason(case), kind.place(case).text))
    return "\n\n".join(parts)


GAPS = {
    "support": "the roller at C",
    "joint": "B",
    "member": "BD",
    "members": "AB and BC",
    "ends": "B or D",
    "where": "there than its members",
    "other": "a load",
    "needs": "two members meet that are not in one line, and nothing else acts",
}
AT = {
    "zero-third-member": {"joint": "D", "other": "the force in CD"},
    **{claim.code: {"joint": "C"} for claim in SUPPORTS},
    "spread-end": {"joint": "A", "members": "AB"},
    "spread-elsewhere": {"joint": "D"},
    "too-few-reactions": {"support": "the pin at A", "joint": "A"},
}


def claim_example(claim: Claim) -> Mistake:
    """What is said of a wrong claim on the mast."""
    return claim.told(**GAPS | AT.get(claim.code, {}))


def _claim(claim: Claim) -> str:
    told = claim_example(claim)
    parts = (f"### `{claim.code}`", claim.what, f"*Why:* {claim.why}")
    return "\n\n".join((*parts, _levels(told.text, told.reason, told.place)))


def first_mistake(example: Example) -> Mistake:
    """What the judge names first in an example. IndexError where it names nothing."""
    verdict = judge(
        TRUSSES[example.truss],
        example.about,
        example.text,
        senses=example.senses,
        known=example.known,
    )
    return verdict.mistakes[0]


def _shown(example: Example) -> str:
    mistake = first_mistake(example)
    asked = in_words(example.about)
    what = f"As {asked}" if isinstance(example.about, Value) else f"For {asked}"
    return f"{what} of the {example.truss}{_own(example)}: `{example.text}`\n\n" + _levels(
        mistake.text, mistake.reason, mistake.place
    )


def _own(example: Example) -> str:
    """What the student has drawn and found before, in words."""
    own = [f"{name} drawn {sense}" for name, sense in example.senses.items()]
    own += [f"{name} found as {value}" for name, value in example.known.items()]
    return f", with {' and '.join(own)}" if own else ""


def _levels(*levels: str) -> str:
    named = zip(("look", "reason", "place"), levels, strict=True)
    return "\n".join(f"{n}. *{name}:* {text}" for n, (name, text) in enumerate(named, start=1))


def _plausibility() -> str:
    ranked = sorted(KINDS.values(), key=lambda kind: (kind.rare, kind.code))
    return "\n".join(
        [PLAUSIBILITY, *(f"| `{kind.code}` | {IN_WORDS[kind.rare]} |" for kind in ranked)]
    )


if __name__ == "__main__":
    sys.stdout.write(page() + "\n")
