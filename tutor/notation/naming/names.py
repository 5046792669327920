"""Which unknown does a spelling mean, in this truss?

Member forces are spelled with their two joints in either order, alone or after F, S, N or T;
reactions with or without the underscore. A spelling in another case is read where only one unknown
can be meant. The table knows no problem: it is given names.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache

from tutor.notation.elements.characters import plain
from tutor.notation.elements.lexicon import SPEECH
from tutor.notation.naming.spellings import FurtherSpellings, Meaning, Slant, squeezed, structured
from tutor.notation.naming.symbols import FREE_LETTERS, LOAD_LETTERS

_FORCE_LETTERS = "FSNT"


@dataclass(frozen=True, eq=False)
class Names:
    """The names of one truss: members as (name, start joint, end joint), reactions, joints, units.

    Equal ones are one object, made by `of`.

    `force` and `length` are the problem's own units ("kN", "m"), meant where none is typed.
    `slants` are the directions of members and reactions; without one a force has no components here.
    `sited` says where joints lie; without it no point is known where lines of members meet.
    """

    members: tuple[tuple[str, str, str], ...]
    reactions: tuple[str, ...]
    joints: tuple[str, ...]
    force: str
    length: str
    slants: tuple[Slant, ...] = ()
    sited: tuple[tuple[str, float, float], ...] = ()
    _found: dict[str, tuple[Meaning, ...]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    @classmethod
    def of(
        cls,
        members: Iterable[tuple[str, str, str]],
        reactions: Iterable[str],
        joints: Iterable[str],
        force: str,
        length: str,
        slants: Iterable[Slant] = (),
        sited: Iterable[tuple[str, float, float]] = (),
    ) -> Names:
        """The names of a truss; equal arguments give the same object, with its table built once."""
        listed = (tuple(members), tuple(reactions), tuple(joints))
        return _names(*listed, force, length, tuple(slants), tuple(sited))

    @property
    def unknowns(self) -> tuple[str, ...]:
        """The canonical names of all unknowns: reactions first, then members."""
        return (*self.reactions, *(name for name, _, _ in self.members))

    def meant(self, word: str) -> tuple[str, ...]:
        """The unknowns that `word` may mean: one if it is clear, none if it names no unknown."""
        return tuple(meaning.name for meaning in self.meanings(word) if meaning.share is None)

    def meanings(self, word: str) -> tuple[Meaning, ...]:
        """What `word` may mean, components too: one if it is clear, none if it names nothing.

        An unknown's own spellings come first, then those in other letter case, then the further
        ones of `spellings`, in the typed letter case and in any.
        """
        found = self._found.get(word)
        if found is None:
            found = tuple(map(Meaning, self.plainly(word))) or self._further(word)
            if len(self._found) < 4096:
                self._found[word] = found
        return found

    def plainly(self, word: str) -> tuple[str, ...]:
        """The unknowns that `word` may mean by their own spellings, in any letter case."""
        return self.spelled(word) or _united(self._folded, map(str.casefold, _cores(_bare(word))))

    def _further(self, word: str) -> tuple[Meaning, ...]:
        if word.endswith("_") or (len(word) > 2 and word.islower() and word in SPEECH):
            return ()
        words = [key for key in (structured(word), squeezed(word)) if key]
        ways = (self._more.exactly, self._more.in_any_case)
        found: set[Meaning] = next(filter(None, (way(key) for way in ways for key in words)), set())
        return tuple(sorted(found, key=lambda meaning: meaning.name))

    def spelled(self, word: str) -> tuple[str, ...]:
        """The unknowns that `word` spells exactly, letter case included."""
        return _united(self._table, _cores(_bare(word)))

    def joint(self, word: str) -> str | None:
        """The joint called `word`, in any case if only one can be meant."""
        word = word.strip("{} ")
        if word in self._joints:
            return self._joints[word]
        if "_" in word and (word := squeezed(word)) in self._joints:
            return self._joints[word]
        alike = {joint for joint in self.joints if joint.casefold() == word.casefold()}
        return alike.pop() if len(alike) == 1 else None

    def free(self, letter: str) -> bool:
        """Whether it is a letter that may stand for a length, and names nothing of the truss."""
        named = letter in self.joints or bool(self.meanings(letter))
        return letter in FREE_LETTERS and not named

    def for_load(self, letter: str) -> bool:
        """Whether it is a letter that may stand for a load, and names nothing of the truss."""
        named = letter in self.joints or bool(self.meanings(letter))
        return letter in LOAD_LETTERS and not named

    def meeting(self, joint: str) -> tuple[str, ...]:
        """The members at a joint."""
        return tuple(name for name, start, end in self.members if joint in (start, end))

    def two_joints(self, word: str) -> tuple[str, str] | None:
        """The two joints that `word` puts side by side, after F, S, N or T or not."""
        for core in _member_cores(_bare(word)):
            for cut in range(1, len(core)):
                one, other = self.joint(core[:cut].rstrip("-")), self.joint(core[cut:].lstrip("-"))
                if one is not None and other is not None:
                    return one, other
        return None

    def nearest(self, word: str) -> tuple[str, ...]:
        """Up to three unknowns whose spelling is closest to `word`."""
        known = {spelling(name): name for name in self.unknowns}
        known |= {name: name for name in self.unknowns}
        close = difflib.get_close_matches(word, known, n=3, cutoff=0.6)
        return tuple(dict.fromkeys(known[match] for match in close))

    @cached_property
    def own_spellings(self) -> tuple[str, ...]:
        """Every way to write an unknown by its own name, without marks for what is below the line."""
        letters = {"m": ("", *_FORCE_LETTERS), "r": ("",)}
        found = (letter + key[1:] for key in self._table for letter in letters[key[0]])
        return tuple(dict.fromkeys(found))

    @cached_property
    def slant(self) -> Mapping[str, Slant]:
        """The directions, by the name of the unknown."""
        return {slant.name: slant for slant in self.slants}

    @cached_property
    def places(self) -> Mapping[str, tuple[float, float]]:
        """Where each joint lies, by its name."""
        return {joint: (x, y) for joint, x, y in self.sited}

    @cached_property
    def links(self) -> tuple[str, ...]:
        """The reactions that are the forces in links."""
        return tuple(slant.name for slant in self.slants if slant.pull)

    @cached_property
    def _more(self) -> FurtherSpellings:
        return FurtherSpellings(self.members, self.reactions, self.joints, self.slant)

    @cached_property
    def _joints(self) -> dict[str, str]:
        return {plain(joint): joint for joint in self.joints}

    @cached_property
    def _table(self) -> dict[str, set[str]]:
        """Exact spellings: members by their joints ("m" before them), reactions by name ("r")."""
        table: dict[str, set[str]] = {}
        for name, start, end in self.members:
            one, other = plain(start), plain(end)
            for core in (one + other, other + one, f"{one}-{other}", f"{other}-{one}"):
                table.setdefault("m" + core, set()).add(name)
        for name in self.reactions:
            word = plain(name)
            base, _, sub = word.rpartition("_")
            for core in (word, base + sub):
                table.setdefault("r" + core, set()).add(name)
        return table

    @cached_property
    def _folded(self) -> dict[str, set[str]]:
        folded: dict[str, set[str]] = {}
        for core, names in self._table.items():
            folded.setdefault(core.casefold(), set()).update(names)
        return folded


def spelling(name: str) -> str:
    """How to write an unknown so that nothing else can be meant: "F_AB", "F_{U1-L2}", "A_x"."""
    if "_" in name:
        return name
    return f"F_{{{name}}}" if "-" in name else f"F_{name}"


@lru_cache(maxsize=64)
def _names(
    members: tuple[tuple[str, str, str], ...],
    reactions: tuple[str, ...],
    joints: tuple[str, ...],
    force: str,
    length: str,
    slants: tuple[Slant, ...],
    sited: tuple[tuple[str, float, float], ...],
) -> Names:
    return Names(members, reactions, joints, force, length, slants, sited)


def _bare(word: str) -> str:
    return word.replace("{", "").replace("}", "").replace(" ", "")


def _united(table: Mapping[str, set[str]], keys: Iterable[str]) -> tuple[str, ...]:
    return tuple(sorted(set().union(*(table.get(key, ()) for key in keys))))


def _cores(word: str) -> Iterator[str]:
    yield "r" + word
    for core in _member_cores(word):
        yield "m" + core


def _member_cores(word: str) -> Iterator[str]:
    """What `word` may say about a member once a force letter before it is taken away."""
    if word[:1].isdigit():
        return
    yield word
    if word[:1].upper() in _FORCE_LETTERS and len(word) > 1:
        yield word[2:] if word[1] == "_" else word[1:]
