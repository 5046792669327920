"""A scripted student: walks through any problem, with slips and hints on the way.

The student knows what is true from `statics` alone, never from the judge, and writes lines of their
own. `walk` does the whole problem through `do`, which takes events as `Lesson.take` does;
`as_typed` is what a person types in the plain mode for the same thing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from tutor.judge import Fx, Fy
from tutor.judge.about import Equation, Value, equation_of, from_text
from tutor.judge.independent import adds_something, same_body
from tutor.lesson import Ask, Lesson, Reply
from tutor.lesson.steps.zero import CALLED, RULES, ways_to_see
from tutor.model import Load, Problem, Support
from tutor.statics import loose_joints, part, sections, solve, soundness, zero_force

Do = Callable[..., Reply]
AGAINST = frozenset({"left", "down", "against", "C"})
HALVES = ["halves", "two-force", "bending"]
REASONS = ["pins", "joints", "weight"]
RULE_KEYS = {"two": "two", "three": "three"}


class Student:
    """One student at one lesson; everything done goes through `do(kind, **data)`.

    Where every joint has three unknown forces or more, one who `cuts` cuts the truss; another writes the
    sums of joint after joint until they give a value together.
    """

    def __init__(self, lesson: Lesson, do: Do, cuts: bool = True) -> None:
        self.lesson = lesson
        self.do = do
        self.cuts = cuts
        solvable = soundness(lesson.problem) == "determinate"
        self.truth = solve(lesson.problem).values if solvable else {}
        self.slipped: set[str] = set()

    def walk(self) -> None:
        """From the first question to the table. AssertionError where the lesson does not move on."""
        for _ in range(20 * (len(self.truth) + 5)):
            if self.lesson.done:
                return
            ask = self.lesson.ask
            before = len(self.lesson.events)
            getattr(self, ask.kind.replace("-", "_"))(ask)
            assert len(self.lesson.events) > before, ask
        raise AssertionError(f"the walk does not end: {self.lesson.ask}")

    def reasons(self, ask: Ask) -> None:
        beside = [option.key for option in ask.options if option.key not in REASONS]
        self.slip("reasons", chosen=[beside[0], "pins"])
        self.right("reasons", chosen=REASONS)

    def halves(self, ask: Ask) -> None:
        beside = [option.key for option in ask.options if option.key not in HALVES]
        self.slip("halves", chosen=[beside[0], "halves"])
        self.right("halves", chosen=HALVES)

    def shares(self, ask: Ask) -> None:
        """Each joint with twice what it takes at first, as if all of a member hung on each end."""
        loads = [load for load in self.lesson.problem.loads if load.spread]
        self.slip("shares", text=shares_of(loads, 2.0))
        self.right("shares", text=shares_of(loads))

    def count(self, ask: Ask) -> None:
        problem = self.lesson.problem
        m, r, n = len(problem.members), len(problem.reactions), 2 * len(problem.joints)
        self.slip("count", m=m + 1, r=r, **{"2j": n})
        self.right("count", m=m, r=r, **{"2j": n})

    def soundness(self, ask: Ask) -> None:
        true = soundness(self.lesson.problem)
        self.slip("soundness", **{"is": next(o.key for o in ask.options if o.key != true)})
        self.right("soundness", **{"is": true})

    def loose(self, ask: Ask) -> None:
        """Every joint is said to move at first, or all but one."""
        joints = list(loose_joints(self.lesson.problem))
        others = [option.key for option in ask.options if option.key not in joints]
        self.slip("loose", joints=[*joints, *others[:1]] if others else joints[1:])
        self.right("loose", joints=joints)

    def support(self, ask: Ask) -> None:
        support = next(s for s in self.lesson.problem.supports if s.joint == ask.subject)
        acts = what_acts(self.lesson.problem, support)
        self.slip("support", joint=ask.subject, acts=[*acts, "moment"])
        self.right("support", joint=ask.subject, acts=acts)

    def sense(self, ask: Ask) -> None:
        """Every other arrow is drawn against its force, which is legitimate."""
        options = [option.key for option in ask.options]
        index = list(self.lesson.problem.reaction).index(str(ask.subject))
        self.right("sense", unknown=ask.subject, sense=options[index % 2])

    def turning(self, ask: Ask) -> None:
        self.right("turning", positive="clockwise")

    def line(self, ask: Ask) -> None:
        """The reactions, or what acts on a part: the equation with the fewest unknowns that adds
        something, then values."""
        kept = self.lesson.state.part
        unknowns = (
            part(self.lesson.problem, kept).unknowns if kept else self.lesson.problem.reaction
        )
        if self.give_values(list(unknowns)):
            return
        abouts = [from_text(option.key) for option in ask.options]
        left = [a for a in abouts if self.is_worth(a)]
        if not left:
            self.go_to_joint()
            return
        self.write(min(left, key=lambda a: len(self.unknowns(a))), ask)

    def joint(self, ask: Ask) -> None:
        """A zero-force member that can be seen, else the next joint that can be solved."""
        state, problem = self.lesson.state, self.lesson.problem
        for seen in zero_force(problem, {r.unknown for r in state.results if r.value == 0}):
            if seen.member not in state.result and seen.rule in RULE_KEYS:
                fitting = {"along"} | {
                    CALLED.get(z.rule, z.rule) for z in ways_to_see(state, seen.member)
                }
                for rule in [rule for rule in RULES if rule not in fitting][-1:]:
                    self.slip("zero", member=seen.member, rule=rule)
                self.right("zero", member=seen.member, rule=RULE_KEYS[seen.rule])
                return
        ready = [o.key for o in ask.options if len(state.unknown_at(o.key)) <= 2]
        if ready or not self.cut():
            self.go_to_joint()

    def cut(self) -> bool:
        """A section with three unknown forces or fewer on one of its parts, not all at one joint; or the
        next value that the lines of many joints give. Whether there was any."""
        state, problem = self.lesson.state, self.lesson.problem
        if not self.cuts:
            return self.give_values(list(self.truth))
        for found in sections(problem, {m.name for m in problem.members if m.name in state.result}):
            for kept in found.parts:
                unknown = set(part(problem, kept).unknowns) - state.result.keys()
                if len(unknown) <= 3 and not set.intersection(*map(self.joints_of, unknown)):
                    self.slip(
                        "section", members=list(found.cut)[1:], keep=kept[0], count_slip=False
                    )
                    self.right("section", members=list(found.cut), keep=kept[0])
                    return True
        return False

    def joints_of(self, unknown: str) -> set[str]:
        """The joints on which an unknown acts."""
        member = self.lesson.problem.member.get(unknown)
        return (
            {member.start, member.end} if member else {self.lesson.problem.reaction[unknown].joint}
        )

    def go_to_joint(self) -> None:
        """To the joint with the fewest unknowns of those whose lines do not stand yet."""
        state = self.lesson.state
        joints = [j.name for j in self.lesson.problem.joints if state.unknown_at(j.name)]
        fresh = [j for j in joints if self.is_worth(Fx(j)) or self.is_worth(Fy(j))]
        if not fresh and self.give_values(list(self.truth)):
            return
        self.right("joint", joint=min(fresh, key=lambda j: len(state.unknown_at(j))))

    def joint_line(self, ask: Ask) -> None:
        """Both sums of a joint, then what follows from them."""
        state = self.lesson.state
        if self.give_values(list(state.unknown_at(str(ask.subject)))):
            return
        for option in ask.options[:2]:
            about = from_text(option.key)
            if self.is_worth(about):
                self.write(about, ask)
                return
        self.right("joint", joint=None)

    def close(self, ask: Ask) -> None:
        self.write(from_text(ask.options[0].key), ask)

    def write(self, about: Any, ask: Ask) -> None:
        """A line with one sign turned, a hint, and the line itself."""
        assert not isinstance(about, Value)
        key = next(o.key for o in ask.options if from_text(o.key) == about)
        if ask.about != about:
            self.right("choose", about=key)
        wrong = self.line_for(about, turned=True)
        if wrong is not None:
            self.slip("type", text=wrong)
            self.do("hint")
        self.slip("type", text=f"{self.line_for(about)} +", count_slip=False)
        self.right("type", text=self.line_for(about))

    def line_for(self, about: Equation, turned: bool = False) -> str | None:
        """The equation as text under the student's senses, at the close with the values put in.

        None where turning a sign is no slip.
        """
        linear = equation_of(self.lesson.problem, about).linear
        senses = self.lesson.state.senses
        terms = []
        for name, coefficient in linear.items():
            if name is None:
                continue
            flip = -1.0 if senses.get(name) in AGAINST else 1.0
            terms.append((flip * coefficient, name))
        constant = linear[None]
        if turned:
            turning = [i for i, (_, name) in enumerate(terms) if self.counts(name)]
            if len(terms) + (constant != 0.0) < 2 or not turning:
                return None
            coefficient, name = terms[turning[0]]
            terms[turning[0]] = (-coefficient, name)
        text = " ".join(
            f"{'-' if c < 0 else '+'} {abs(c):.6f}*{self.put_in(name)}" for c, name in terms
        )
        if constant:
            text += f" {'-' if constant < 0 else '+'} {abs(constant):.6f}"
        return f"{text.removeprefix('+ ')} = 0"

    def counts(self, name: str) -> bool:
        """Whether the sign of a term changes anything: a value of zero put in does not."""
        return self.lesson.state.step != "close" or self.lesson.state.result[name].value != 0

    def put_in(self, name: str) -> str:
        """An unknown in a line, or its value in a closing line."""
        if self.lesson.state.step != "close":
            return typed(name)
        return f"({self.lesson.state.result[name].value:.6g})"

    def give_values(self, names: list[str]) -> bool:
        """The values that the standing lines give: a wrong one first. Whether there was any."""
        given = False
        for name in names:
            if name in self.lesson.state.result:
                continue
            value = self.own_value(name)
            if self.lesson.state.tries and name not in self.slipped and value:
                self.slipped.add(name)
                self.do("type", text=f"{name} = {self.written(name, 2.5 * value)}")
            reply = self.do("type", text=f"{name} = {self.written(name, value)}")
            given = given or reply.accepted
        return given

    def own_value(self, name: str) -> float:
        flip = -1.0 if self.lesson.state.senses.get(name) in AGAINST else 1.0
        return flip * self.truth[name] + 0.0

    def written(self, name: str, value: float) -> str:
        """A reaction in its own sense, a member with T or C."""
        if name in self.lesson.problem.reaction or value == 0:
            return f"{value:.6g}"
        tension = self.truth[name] > 0
        return f"{abs(value):.6g} {'T' if tension else 'C'}"

    def unknowns(self, about: Any) -> list[str]:
        linear = equation_of(self.lesson.problem, about).linear
        return [n for n in linear if n is not None and n not in self.lesson.state.result]

    def is_worth(self, about: Any) -> bool:
        """Whether an equation holds an unknown, and says more than the lines that stand."""
        lines = self.lesson.state.lines
        standing = [line.about for line in lines if line.adds and same_body(line.about, about)]
        adds = adds_something(self.lesson.problem, about, standing)
        return adds and bool(self.unknowns(about))

    def slip(self, kind: str, *, count_slip: bool = True, **data: Any) -> None:
        """Something wrong: the lesson must not take it, and a hint is asked for."""
        reply = self.do(kind, **data)
        assert not reply.accepted, (kind, data, reply.text)
        if count_slip:
            assert any(say.tone == "wrong" for say in reply.said), (kind, data, reply.said)
            self.do("hint")

    def right(self, kind: str, **data: Any) -> None:
        reply = self.do(kind, **data)
        assert reply.accepted, (kind, data, reply.text)


def shares_of(loads: Sequence[Load], times: float = 1.0) -> str:
    """What joints take, as a student types it."""
    return ", ".join(
        " ".join([load.joint, *(f"{times * size.value:.6g} {way}" for way, size in load.pushes)])
        for load in loads
    )


def typed(name: str) -> str:
    """An unknown as a student types it."""
    return name if "_" in name else f"F_{{{name}}}" if "-" in name else f"F_{name}"


def what_acts(problem: Problem, support: Support) -> list[str]:
    """What a support does, as the lesson's options name it."""
    if support.kind == "pin":
        return ["x", "y"]
    (direction,) = (r.direction for r in problem.reactions if r.joint == support.joint)
    if direction.x and direction.y:
        return ["slanting"]
    return ["x"] if direction.x else ["y"]


def as_typed(ask: Ask, kind: str, data: Mapping[str, Any]) -> str:
    """What is typed in the plain mode, at this question, for this event."""
    numbers = {option.key: str(n) for n, option in enumerate(ask.options, start=1)}
    match kind:
        case "reasons" | "halves":
            return " ".join(numbers[key] for key in data["chosen"])
        case "support":
            return " ".join(numbers[key] for key in data["acts"])
        case "count":
            return f"m {data['m']}, r {data['r']}, 2j {data['2j']}"
        case "soundness":
            return numbers[data["is"]]
        case "loose":
            return " ".join(data["joints"])
        case "sense":
            return numbers[data["sense"]]
        case "turning":
            return str(data["positive"])
        case "choose":
            return numbers[data["about"]]
        case "type" | "shares":
            return str(data["text"])
        case "joint":
            return f"joint {data['joint']}" if data["joint"] else "leave joint"
        case "section":
            return f"section {' '.join(data['members'])} keep {data['keep']}"
        case "zero":
            return f"zero {data['member']} {data['rule']}"
    return kind
