"""How does one lesson go, line by line, from its first question to leaving it?"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from tutor.deeds import deed_of
from tutor.deeds.board import beginning
from tutor.deeds.deed import (
    Await,
    Begin,
    Deed,
    Do,
    Go,
    Guided,
    Lost,
    RemarksOn,
    Save,
    Show,
    Tell,
    Unfinished,
    Way,
)
from tutor.homework.broken_lines import goes_on
from tutor.judge import judge_of
from tutor.lesson import Ask, Lesson, Reply, State
from tutor.lesson.pointing import PLACE
from tutor.lesson.reply import LINES
from tutor.plain import telling
from tutor.plain.saving import save
from tutor.plain.sights import sight
from tutor.plain.voice import Voice
from tutor.records.report import markdown
from tutor.session import Session


class Walk:
    """One session as a conversation: `listen` until the student goes elsewhere.

    `step_done` is told the name of each step that was passed without a wrong answer; `remarks` and
    `guide`, whether remarks on an easier way and the guide are wanted from now on; `after` is what is
    said after the table.
    """

    def __init__(
        self,
        voice: Voice,
        session: Session,
        step_done: Callable[[str], None],
        remarks: Callable[[bool], None] = lambda on: None,
        guide: Callable[[bool], None] = lambda on: None,
        after: Callable[[], Iterable[str]] = tuple,
    ) -> None:
        self.voice = voice
        self.session = session
        self._step_done = step_done
        self._remarks = remarks
        self._guide = guide
        self._after = after
        self._value_of: str | None = None
        self._before = ""
        self._last: tuple[str, ...] = ()
        self._told: set[str] = set()

    @property
    def lesson(self) -> Lesson:
        return self.session.lesson

    def listen(self) -> Way:
        """Answer line after line; the end of the input is the way out."""
        self.voice.say(self.session.news())
        self.voice.say(self._asked(None))
        return self.voice.converse(self._answer, "out", self.session.log)

    def _answer(self, text: str) -> Way | None:
        """Do what a line asks for and say what came of it."""
        deed = self.deed_of(text)
        match deed:
            case Go(where=where):
                return where
            case Do():
                self._do(deed)
            case Await(unknown=unknown):
                self._value_of = unknown
                self.voice.say((f"Type the value of {unknown}, with T or C, or a direction.",))
            case Save(name=name):
                self.voice.say(self._save(name))
            case RemarksOn(on=on):
                self.session.remarks = on
                self._remarks(on)
                self.voice.say(("Remarks are on." if on else "Remarks are off.",))
            case Begin(stage=stage):
                self.begin(stage)
            case Guided(on=on):
                self._guide(on)
                self.voice.say(("The guide is on." if on else "The guide is off.",))
            case Show(what="last") if self._last:
                self.voice.say(self._last)
            case Show():
                self.voice.say(sight(self.lesson, deed))
            case Tell(lines=lines) | Unfinished(lines=lines):
                self.voice.say(lines)
            case Lost(meant=meant):
                self.voice.say((self._lost(text, meant),))
        return None

    def begin(self, stage: str) -> None:
        """Have the first steps written, up to this stage or as offered."""
        deed = beginning(stage or self.session.stage)
        if isinstance(deed, Do):
            self._do(deed)
        elif isinstance(deed, Tell):
            self.voice.say(deed.lines)

    def _lost(self, text: str, meant: str) -> str:
        """What is said of a line that is nothing here."""
        if not text.strip():
            return "Type help to hear what can be typed."
        did_you = f' Did you mean "{meant}"?' if meant else ""
        how = telling.HOW.get(self.lesson.ask.kind, "")
        return f"Cannot read: this is no answer here and no command.{did_you} {how}".rstrip()

    def deed_of(self, text: str) -> Deed:
        """What a typed line means, with the one before it where it only goes on; a value that is waited
        for is waited for once."""
        unknown, self._value_of = self._value_of, None
        begun, self._before = self._before, text
        if self.lesson.ask.kind in LINES:
            whole = goes_on(judge_of(self.lesson.problem), begun, text)
            if whole is not None:
                return Do("type", {"text": whole}, whole)
        return deed_of(self.lesson, text, unknown)

    def _do(self, deed: Do) -> None:
        """One event: kept first, then answered."""
        before, old = self.lesson.ask, self.lesson.state
        reply = self.session.do(deed.kind, **deed.data)
        typed = str(deed.data.get("text", ""))
        if not reply.accepted and deed.read_as and deed.read_as != typed:
            self.voice.say((f"Read as: {deed.read_as}",))
        self._say_reply(deed, reply, typed)
        self.voice.say(self.session.news())
        self.voice.say(self._shown(deed, reply, old))
        self.voice.say(self._asked(before))
        state, step = self.lesson.state, old.step
        if deed.kind not in ("go", "undo", "skip") and state.step != step and passed(state, step):
            self._step_done(step)

    def _say_reply(self, deed: Do, reply: Reply, typed: str) -> None:
        """What was said back; a hint is heard again together with the verdict before it.

        What is unknown at a joint one has come to is said by the question that follows.
        """
        if deed.kind == "joint" and reply.accepted:
            reply = replace(reply, said=tuple(say for say in reply.said if say.tone != "note"))
        lines = tuple(telling.reply_lines(reply, typed))
        self._last = (*self._last, *lines) if deed.kind == "hint" else lines
        self.voice.say(lines)

    def _shown(self, deed: Do, reply: Reply, before: State) -> Iterator[str]:
        """The figure or table that comes into view with this reply."""
        state, step, part = self.lesson.state, before.step, before.part
        if state.step == "table" and step != "table":
            yield from telling.table_lines(self.lesson, caution=False)
            yield from self._after()
        elif state.step == "reactions" and step == "free body":
            yield from telling.arrow_lines(state)
        elif deed.kind == "hint" and reply.accepted and state.hints_used[-1:] == (PLACE,):
            yield from telling.pointed_lines(state)
        elif deed.kind == "joint" and reply.accepted and state.joint is not None:
            yield from telling.joint_lines(state, state.joint)
        elif state.part and state.part != part:
            yield from telling.part_lines(state)

    def _asked(self, before: Ask | None) -> Iterator[str]:
        """What is asked now, where it is not what was asked before."""
        ask = self.lesson.ask
        if before is not None and _same(before, ask):
            if before.question != ask.question:
                yield ask.question
            return
        yield from telling.ask_lines(ask, how=ask.kind not in self._told)
        self._told.add(ask.kind)

    def _save(self, name: str) -> tuple[str, ...]:
        """Write the report into a new file."""
        return save(name, markdown(self.lesson))


def passed(state: State, step: str) -> bool:
    """Whether everything tried in a step was right at once."""
    return all(t.verdict == "right" for t in state.tries if t.step == step)


def _same(one: Ask, other: Ask) -> bool:
    """Whether two questions are of one kind about one thing, with the same options."""
    keys = [option.key for option in one.options]
    return (
        one.kind == other.kind
        and one.subject == other.subject
        and keys == [option.key for option in other.options]
    )
