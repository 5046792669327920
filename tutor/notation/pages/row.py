"""How does a row of a table, or a sentence, give a result?

F_AB ⇥ -10.6 kip, | AD | 12.5 | C |, AB, 14, AD ..... 12.5; force in member AD = 12.5 kN; AD is in
compression: 12.5 kN. Each is spelled as the equation that it is, AD = 12.5 kN compression.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.lexicon import says
from tutor.notation.elements.source import Source
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import FUNCTIONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME

_VALUE = r"[-+]? ?[0-9][0-9.,]*"
_ROW = re.compile(
    rf" *\|? *(?P<name>[^\s|,;=:*/+.…]{{1,16}}) *(?P<gap>\t[ \t]*| (?=[-+][0-9])|[|,;→⇒] *|[-=]+> *|(?:\.{{2,}}|…+) *)"
    rf"(?P<value>{_VALUE})(?P<rest>[^=]*)"
)
_SECOND = re.compile(rf"^[^|;\t=]*[|;\t] *(?P<value>{_VALUE})(?= *(?:$|[|;\t]|[A-Za-z(]))")
"""Another number in a cell of its own, such as a length beside a force."""
_LENGTH = re.compile(
    r"(?P<mark>[|;\t]|,(?= )) *[0-9][0-9.,]* ?(?:mm|cm|m|ft|in|feet|metres?|meters?|')\.? *(?=[|;\t]|, )"
)
"""A length in a cell of its own."""
_GROUPED = re.compile(r"[-+]? ?[1-9][0-9]{0,2}(?:(?:\.[0-9]{3})+,[0-9]+|(?:,[0-9]{3})+\.[0-9]+)")
_BETWEEN = re.compile(r"[|;\t…]|\.{2,}|,(?![0-9])")
_FORCE_IN = re.compile(
    rf"^ *(?:(?:the|axial|internal|bar|member) +){{0,3}}(?P<what>force|tension|compression|thrust|pull) +"
    rf"(?:in|of) +(?:(?:the|member|bar|rod|link|post|strut|tie) +){{0,2}}(?P<name>[{LETTERS}][\w{{}}'-]*)"
    rf"(?P<sign> *(?:=|:|is|equals) *)(?P<rest>.*)$",
    re.IGNORECASE,
)
_WAY_FIRST = re.compile(
    rf"^ *(?:(?:so|hence|thus|therefore|then|and)(?: that)?,? +)?(?:(?P<name>[{LETTERS}][\w{{}}'-]*)(?:,|:| *=)? *(?:is |acts |being |are )? *[(\[]?(?:in |a |under )?"
    rf"(?P<sign>[TC](?=[,;:] *[0-9]))?)?(?P<way>(?(sign)|(?<![\w}}])[{LETTERS}]{{3,12}}))"
    rf"[)\]]?(?:[,:;] *| +(?=[0-9])(?<=[nenT] )| +(?:of|with|at|=|:|carrying|taking) +| *= *|(?<=[TC]) +)"
    rf"(?P<value>{_VALUE} *[{LETTERS}]{{0,4}})[ .]*$"
)
_BEHIND = re.compile(
    rf"(?<=[\w)\]])(?P<lead> *(?:[.,;] *)?(?:(?:(?<=[ .,;])(?:so|hence|thus|therefore|then|and)|∴|⇒|=>)(?: that)?,? *)?)"
    rf"(?<![\w}}])(?P<name>[{LETTERS}][\w{{}}'-]*) +is +(?:an?|in|under) +(?P<way>[{LETTERS}]{{3,12}})"
    rf"(?:,|:)? +(?:of +|with +)?(?P<value>{_VALUE} *[{LETTERS}]{{0,4}})(?=[ .]*$)"
)
"""A value in words behind its equation: ..., so AD is a tie of 30 kN."""
_STOP = re.compile(rf"(?<=[0-9])\.(?= +[{LETTERS}][\w{{}}'-]* +is +(?:an?|in|under) )")
_KIND = re.compile(
    rf"^ *(?:the +)?(?:member|bar|rod|link|post|diagonal|chord|web) +(?=(?P<name>[{LETTERS}][\w{{}}'-]*) *[ =:])",
    re.IGNORECASE,
)
_LINK = re.compile(
    r"^ *(?:(?:so|hence|thus|then),? +)?(?:the +)?(?:(?:force|pull|tension)(?: +in|:)? +(?:the +)?)?(?:link|cable|stay|rope)(?:'s)?(?: +(?:force|pull|tension))? *(?==)",
    re.IGNORECASE,
)
"""The one link of a truss by what it is: link = 1095 N."""
_LETTER_OF = re.compile(
    rf"^ *(?:(?:member|bar|rod|stab|force +in) +)?(?P<name>[{LETTERS}][\w{{}}'-]*) *[:;,] *(?P<letter>[NSFTP])(?= *= *[-+(0-9])",
    re.IGNORECASE,
)
"""A member set before the letter of its force: Stab AD: N = 12."""
_OF_FORCE = re.compile(rf"^ *(?P<name>[{LETTERS}][\w{{}}'-]*) *: *(?=[^:]*=)")
"""A force set before its own equation: AE: F_AE = 12."""
_OF_ITS_WORK = re.compile(
    rf"^ *(?P<name>[{LETTERS}][\w{{}}'-]*) *: *(?P<work>[-+]? ?[0-9.(√][^:={{}}]*=[^:={{}}]*[1-9][^:={{}}]*)$"
)
"""A force set before the working of its value: DF: 14*SQRT(2) = 19.8."""
_MOVES = re.compile(
    rf"^(?P<value> *(?P<name>[{LETTERS}][\w{{}}'-]*) *=[^;:]*[0-9)](?: ?(?:k?N|MN|kips?|k|lbs?))?,?(?: +(?:so|it|and|which|hence|thus|therefore),?)*) +"
    r"(?P<verb>pull(?:s|ing)?|push(?:es|ing)?)(?: +(?:back|it|to|towards|the|straight))* +(?P<way>left|right|up|down|upwards?|downwards?)(?: +on +(?:the +)?\w+)?[ .]*$"
)
"""What a force is said to do behind its value, and which way: A_x = -8, so it pulls to the left."""
_DOES_WITH = re.compile(
    rf"^ *(?:(?:so|hence|thus|therefore|then|now|and),? +)?(?:(?:the|a|this|that) +)?(?:link|member|bar|rod|cable|rope|stay|strut|tie|post|it) +(?P<verb>pull|push)(?:s|es) +(?:(?:on|at|from|it|the|pin|joint|[A-Z][0-9]?) +)*with +"
    rf"(?P<value>(?P<name>[{LETTERS}][\w{{}}'-]*) *=[^,;:]*[0-9](?: ?(?:k?N|MN|kips?|k|lbs?))?)[ .]*$",
    re.IGNORECASE,
)
"""What a link or a member does, before its value: the link pulls with R_B = 12 kN."""
_CARRIES = re.compile(
    rf"^ *(?P<name>[{LETTERS}][\w{{}}'-]*) +(?:carries|takes|has|bears|feels|acts)(?: +an?)?(?P<way> +[{LETTERS}]{{5,12}})?"
    rf"(?: +(?:force|load))?(?: +of| +with)? +(?P<value>{_VALUE})(?P<rest>[^=]*)$"
)
_PART_AS_SIZE = re.compile(
    rf"(?<![\w-])(?:the +)?(?:vert(?:ical)?|hor(?:izontal)?)\.? +(?:component|comp\.?|part) +of +(?P<name>[{LETTERS}][\w{{}}'-]*) +is +(?=[0-9][^=-]*(?P=name) *= *-)",
    re.IGNORECASE,
)
"""A component in words is a size, also before a value with a minus: the vertical component of AB is 105, so AB = -175."""
_PART_OF = re.compile(
    rf"(?:\bthe +)?\b(?P<axis>vert(?:ical)?|hor(?:izontal)?)\.? +(?:component|comp\.?|part) +of +(?:(?:the|force|in|member|bar|reaction|at|support) +)*"
    rf"(?P<name>[{LETTERS}][\w{{}}'-]*)",
    re.IGNORECASE,
)
_IN_WAY = re.compile(r"(?<=[A-Za-z0-9)]) +in +(?=(?:[TC]|tension|compression)[. ]*$)")
_SLASHED = re.compile(r"(?<=[A-Za-z0-9]) ?[/|] ?([TC]) *$")
_SIGN_APART = re.compile(
    rf"(?P<before>^|= *)(?:[(\[](?P<first>[-+])[)\]] *(?P<number>[0-9][0-9.,]*(?: ?[{LETTERS}]{{1,4}})?)|(?P<value>[0-9][0-9.,]*(?: ?[{LETTERS}]{{1,4}})?) *[(\[](?P<last>[-+])[)\]]) *$"
)
"""A value with its sign in brackets: (-) 40 kN, 40 kN (+)."""
_WAY_IN_FRONT = re.compile(
    rf"(?P<before>^ *|= *)[(\[](?P<way>[TC])[)\]] *(?P<value>[0-9][0-9.,]*(?: ?[{LETTERS}]{{1,4}})?) *$"
)


def rowed(source: Source, typed: str, names: Names) -> Source:
    """The source with = between a name and the value beside it in a row of cells.

    `typed` is the text before look-alikes were replaced, column for column.
    """
    text = "".join(
        "\t" if one == "\t" else char for one, char in zip(typed, source.text, strict=True)
    )
    found = _ROW.fullmatch(_without_length(text)) or _ROW.fullmatch(text)
    if found is None or len(names.meant(found["name"])) != 1:
        return source
    if (second := _SECOND.search(found["rest"])) is not None:
        at = found.start("rest")
        place = source.span(at + second.start("value"), at + second.end("value"))
        raise Broken("value/cells", place.start, place.end)
    start, end = found.span("gap")
    lead = re.sub(r"\|", " ", found.string[:start])
    rest = _BETWEEN.sub(lambda cut: " " * len(cut[0]), found["rest"])
    made = f"{lead}={' ' * (end - start - 1)}{_ungrouped(found['value'])}{rest}"
    return replace(source, text=made.replace("\t", " "))


def _without_length(text: str) -> str:
    """A row without the length of its member, column for column."""
    return _LENGTH.sub(lambda cell: " " * len(cell[0]), text)


def _ungrouped(value: str) -> str:
    """A number that parts its thousands by the one sign and its decimals by the other, as long as before."""
    if _GROUPED.fullmatch(value) is None:
        return value
    whole, _, places = value.replace(",", ".").rpartition(".")
    return f"{whole.replace('.', '')}.{places}".ljust(len(value))


def sentenced(source: Source, names: Names) -> Source:
    """The source with a sentence that gives one value spelled as an equation."""
    source = source.rewritten(_LINK, lambda found: _link(found, names))
    source = source.rewritten(_KIND, lambda found: _without_kind(found, names))
    source = source.rewritten(_LETTER_OF, lambda found: _letter_of(found, names))
    source = source.rewritten(_OF_FORCE, lambda found: _of_force(found, names))
    source = source.rewritten(_OF_ITS_WORK, lambda found: _of_its_work(found, names))
    source = source.rewritten(_PART_AS_SIZE, lambda found: f"{found[0]}-")
    source = source.rewritten(_PART_OF, lambda found: _part_of(found, names))
    source = source.rewritten(_IN_WAY, " ")
    source = source.rewritten(_SLASHED, lambda found: f" {found[1]} ")
    if "(" in source.text or "[" in source.text:
        source = _in_brackets(source)
    source = source.rewritten(_CARRIES, lambda found: _carries(found, names))
    source = source.rewritten(_DOES_WITH, lambda found: _does_with(found, names))
    source = source.rewritten(_MOVES, lambda found: _moves(found, names))
    source = source.rewritten(_FORCE_IN, lambda found: _force_in(found, names))
    source = source.rewritten(_STOP, ",")
    source = source.rewritten(_BEHIND, lambda found: _behind(found, names))
    return source.rewritten(_WAY_FIRST, lambda found: _way_first(found, names))


def _in_brackets(source: Source) -> Source:
    """A value with its sign or its way in brackets."""
    source = source.rewritten(
        _SIGN_APART,
        lambda found: (
            f"{found['before']}{found['first'] or found['last']}{found['number'] or found['value']}"
        ),
    )
    source = source.rewritten(
        _WAY_IN_FRONT, lambda found: f"{found['before']}{found['value']} {found['way']}"
    )
    return source


def _force_in(found: re.Match[str], names: Names) -> str | None:
    if not names.meanings(found["name"]):
        return None
    way = "" if found["what"].lower() == "force" else f" {found['what']}"
    return f"{found['name']} = {found['rest'].strip()}{way}"


def _letter_of(found: re.Match[str], names: Names) -> str | None:
    """The force by its own name, where its letter stands for nothing else."""
    letter = found["letter"]
    named = len(names.meant(found["name"])) == 1 and names.two_joints(found["name"]) is not None
    return f"{found['name']} " if named and not names.meanings(letter) else None


def _without_kind(found: re.Match[str], names: Names) -> str | None:
    return "" if names.meanings(found["name"]) and "Σ" not in found.string else None


def _does_with(found: re.Match[str], names: Names) -> str | None:
    meant = names.meant(found["name"])
    along = len(meant) == 1 and (names.two_joints(found["name"]) or meant[0].startswith("R_"))
    return f"{found['value']} {found['verb']}" if along else None


def _link(found: re.Match[str], names: Names) -> str | None:
    links = [name for name in names.unknowns if name.startswith("R_")]
    return f"{links[0]} " if len(links) == 1 else None


def _of_force(found: re.Match[str], names: Names) -> str | None:
    """Nothing for a force whose name stands again in the equation behind it; a joint is no force."""
    if names.joint(found["name"]) is not None:
        return None
    meant = names.meant(found["name"])
    words = NAME.findall(found.string[found.end() :])
    again = len(meant) == 1 and any(names.meant(word) == meant for word in words)
    return "" if again and "_" not in found["name"] else None


def _moves(found: re.Match[str], names: Names) -> str | None:
    """The value with the way in which a reaction acts, or with what a member does, which has no way."""
    meant = names.meant(found["name"])
    if len(meant) != 1:
        return None
    says_it = f"acts {found['way']}" if "_" in meant[0] else found["verb"]
    return f"{found['value']} {says_it}"


def _of_its_work(found: re.Match[str], names: Names) -> str | None:
    """A force set equal to its working, in which no other force stands."""
    if names.joint(found["name"]) is not None or len(names.meant(found["name"])) != 1:
        return None
    words = NAME.findall(found["work"].partition("=")[0])
    plain = all(word.lower() in FUNCTIONS for word in words)
    return f"{found['name']} = {found['work']}" if plain else None


def _part_of(found: re.Match[str], names: Names) -> str | None:
    word = f"{found['name']}_{'y' if found['axis'][0] in 'vV' else 'x'}"
    return word if names.meanings(word) else None


def _carries(found: re.Match[str], names: Names) -> str | None:
    if not names.meanings(found["name"]):
        return None
    return f"{found['name']} = {found['value']}{found['rest'].rstrip(' .')}{found['way'] or ''}"


def _way_first(found: re.Match[str], names: Names) -> str | None:
    way, name = found.groupdict().get("sign") or found["way"], found["name"]
    if not says(way, "T", "C") or (name and not names.meanings(name)):
        return None
    return f"{name} = {found['value']} {way}" if name else f"{found['value']} {way}"


def _behind(found: re.Match[str], names: Names) -> str | None:
    value = _way_first(found, names) if found["lead"].strip() else None
    return value and f"{found['lead'].replace('.', ';')}{value}"
