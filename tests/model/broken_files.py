"""Broken problem files: one thing changed in a sound file, and what has to be said of it."""

from __future__ import annotations

from typing import NamedTuple

SOUND = """\
title = "Lamp arm"
force = "kN"
length = "m"
level = 2
members = ["AB", "BC", "CA"]

[joints]
A = [0, 0]
B = [4, 0]
C = [2, 3]

[supports]
A = "pin"
B = "roller"

[[loads]]
at = "C"
down = 12
"""


class Case(NamedTuple):
    """`old` becomes `new` in `SOUND`; then `line` says `says` and cures with `cure`."""

    old: str
    new: str
    line: int
    says: str
    cure: str


LONG = "x" * 201
CASES = (
    # keys
    Case("force =", "forse =", 2, '"forse" is an unknown key', 'did you mean "force"?'),
    Case("level = 2", "Level = 2", 4, '"Level" is an unknown key', 'did you mean "level"?'),
    Case("level = 2", "qqq = 2", 4, '"qqq" is an unknown key', "the keys are: title, story"),
    Case('at = "C"', 'att = "C"', 17, 'the unknown key "att"', 'did you mean "at"?'),
    Case("down = 12", "dwon = 12", 18, 'the unknown key "dwon"', 'did you mean "down"?'),
    Case('B = "roller"', "B = { roler = 90 }", 14, 'unknown key "roler"', 'you mean "roller"?'),
    Case('B = "roller"', "B = { pin = true }", 14, 'unknown key "pin"', 'write "pin" in quotes'),
    Case(
        "[[loads]]",
        "[tolerance]\nquiet = 1\n\n[[loads]]",
        17,
        'tolerance has the unknown key "quiet"',
        "the keys here are: silent and remark",
    ),
    # what is missing
    Case('title = "Lamp arm"\n', "", 1, "there is no title", 'write title = "…"'),
    Case('force = "kN"\n', "", 1, "there is no unit of force", 'write force = "kN"'),
    Case('length = "m"\n', "", 1, "there is no unit of length", 'write length = "m"'),
    Case('members = ["AB", "BC", "CA"]\n', "", 1, "there is no list of members", "write members"),
    Case(
        '\n[supports]\nA = "pin"\nB = "roller"\n', "", 1, "there is no support", "write [supports]"
    ),
    Case('\n[[loads]]\nat = "C"\ndown = 12\n', "", 1, "there is no load", "write [[loads]]"),
    Case('["AB", "BC", "CA"]', "[]", 5, "members is empty", "write members ="),
    Case('A = "pin"\nB = "roller"\n', "", 12, "[supports] is empty", "write [supports]"),
    Case('at = "C"\n', "", 16, "a load has no joint", 'write at = "C"'),
    Case("down = 12\n", "", 16, "the load at C has no size", "down = 12"),
    Case("down = 12", "size = 12", 18, "size but no angle", "write angle = … too"),
    Case("down = 12", "angle = 30", 18, "angle but no size", "write size = … too"),
    # words and units
    Case('"Lamp arm"', '"\\u001B"', 1, "the title is empty", "write one"),
    Case('"Lamp arm"', f'"{LONG}"', 1, "201 characters, more than 200", "in story"),
    Case('"Lamp arm"', "12", 1, "title is a number, not a text", 'write title = "…" in quotes'),
    Case('"Lamp arm"', "true", 1, "title is true or false, not a text", "in quotes"),
    Case('"Lamp arm"', "1979-05-27", 1, "title is a date or time, not a text", "in quotes"),
    Case('force = "kN"', 'force = "kn"', 2, '"kn" is no unit of force', 'did you mean "kN"?'),
    Case('length = "m"', 'length = "yd"', 3, '"yd" is no unit of length', "m, mm, cm, in and ft"),
    Case("level = 2", "level = 0", 4, "level is 0", "from 1 to 6"),
    Case("level = 2", "level = 7", 4, "level is 7", "from 1 to 6"),
    Case("level = 2", "level = true", 4, "level is true or false", "from 1 to 6"),
    Case("level = 2", "level = 2.0", 4, "level is a number", "a whole number"),
    Case("level = 2", 'level = "2"', 4, "level is a text", "a whole number"),
    Case("level = 2", "topics = 2", 4, "topics is a number, not a list", "topics = ["),
    Case("level = 2", "topics = [\n1]", 5, "topics holds a number", "a list of texts"),
    Case("level = 2", 'topics = [""]', 4, "topics holds an empty text", "delete it"),
    Case("level = 2", 'given = "reactions"', 4, "given is a text", 'given = ["reactions"]'),
    Case("level = 2", 'given = ["reaction"]', 4, '"reaction" cannot be given', '"reactions"?'),
    Case("level = 2", "tolerance = 2", 4, "tolerance is a number", "[tolerance]"),
    Case("level = 2", "tolerance.silent = 3", 4, "3 %, is more than remark, 2 %", "give both"),
    Case("level = 2", "tolerance.silent = -1", 4, "silent is -1 percent", "from 0 to 50"),
    Case("level = 2", "tolerance.remark = 51", 4, "remark is 51 percent", "from 0 to 50"),
    # joints
    Case("C = [2, 3]", "C = [2]", 10, "joint C is a list of 1, not a place", "like [4, 0]"),
    Case("C = [2, 3]", "C = [2, 3, 0]", 10, "joint C is a list of 3", "like [4, 0]"),
    Case("C = [2, 3]", "C = 2", 10, "joint C is a number, not a place", "like [4, 0]"),
    Case("C = [2, 3]", "C = [2,\n\n true]", 12, "the y of joint C is true", "write a number"),
    Case("C = [2, 3]", "C = [nan, 3]", 10, "is nan, which is no finite number", "write a number"),
    Case("C = [2, 3]", "C = [2, -inf]", 10, "is -inf, which is no finite number", "a number"),
    Case("C = [2, 3]", "C = [2, 1e13]", 10, "larger than 1e12", "a larger unit"),
    Case("C = [2, 3]", "C = [2, 1e999999999]", 10, "larger than 1e12", "a larger unit"),
    Case("C = [2, 3]", f"C = [2, 0x{'f' * 5000}]", 10, "larger than 1e12", "a larger unit"),
    Case("C = [2, 3]", "C = [2, 1e-13]", 10, "smaller than 1e-12", "write 0"),
    Case("C = [2, 3]", f"C = [2, 3.{'1' * 30}]", 10, "more than 30 digits", "round it"),
    Case("C = [2, 3]", 'C = [2, ""]', 10, "the y of joint C is an empty text", "write a number"),
    Case("C = [2, 3]", 'C = [2, "x"]', 10, 'C is "x", which cannot be read', "the number itself"),
    Case("C = [2, 3]", 'C = [2, "1/0"]', 10, "“1/0” divides by zero", "below the fraction line"),
    Case(
        "C = [2, 3]",
        'C = [2, "kN"]',
        10,
        '"kN", which cannot be read',
        "in the units of the problem",
    ),
    Case("C = [2, 3]", "C = [2, []]", 10, "the y of joint C is a list, not a number", "a number"),
    Case(
        "C = [2, 3]", "C = [2, 3]\nA = [1, 1]", 11, "A is named twice, first on line 8", "another"
    ),
    Case("C = [2, 3]", "C = [2, 3]\nD = [9, 9]", 11, "joint D has no member", "add one"),
    Case("C = [2, 3]", 'C = [2, 3]\n"D-1" = [9, 9]', 11, '"D-1" cannot name a joint', "letter"),
    Case("C = [2, 3]", 'C = [2, 3]\n"D\\u001b[31m" = [9, 9]', 11, '"D[31m" cannot name', "letter"),
    Case("C = [2, 3]", 'C = [2, 3]\n"" = [9, 9]', 11, '"" cannot name a joint', "letter"),
    Case("C = [2, 3]", "C = [2, 3]\nABCDEFGHI = [9, 9]", 11, '"ABCDEFGHI" cannot name', "letter"),
    Case("C = [2, 3]", "C = [2, 3]\n4 = [9, 9]", 11, '"4" cannot name a joint', "letter"),
    # members
    Case('"CA"', '"CX"', 5, 'member "CX" goes to joint X, which is not there', "A, B and C"),
    Case('"CA"', '"XY"', 5, "goes to joints X and Y, which are not there", "[joints]"),
    Case('"CA"', '"C-U1"', 5, "goes to joint U1, which is not there", "[joints]"),
    Case('"CA"', '"CA", "Ca"', 5, "goes to joint a, which is not there", 'did you mean "A"?'),
    Case('"CA"', '"CA", "A"', 5, 'member "A" does not name two joints', 'like "AB"'),
    Case('"CA"', '"CA", ""', 5, 'member "" does not name two joints', 'like "AB"'),
    Case('"CA"', '"CA", "ABC"', 5, 'member "ABC" does not name two joints', 'like "AB"'),
    Case('"CA"', '"CA",\n"AC"', 6, 'member "AC" is already there as "CA" on line 5', "delete"),
    Case('"CA"', '"CA", "CA"', 5, 'member "CA" is already there', "delete"),
    Case('"CA"', '"CA", "AA"', 5, '"AA" begins and ends at joint A', "two different joints"),
    Case('"CA"', '"CA", 12', 5, "a member is a number, not a text", 'like "AB"'),
    Case('"CA"', '"CA", ["A", "B"]', 5, "a member is a list, not a text", 'like "AB"'),
    Case('["AB", "BC", "CA"]', '"AB"', 5, "members is a text, not a list", "write members ="),
    # supports
    Case('"roller"', '"roler"', 14, 'the support at B is "roler"', 'did you mean "roller"?'),
    Case('"roller"', '"link"', 14, 'the support at B is "link"', "the fixed point of the link"),
    Case('"roller"', "90", 14, "the support at B is a number", "{ roller = 150 }"),
    Case('"roller"', "{}", 14, "the support at B is an empty table", "{ roller = 150 }"),
    Case('"roller"', '["pin", "roller"]', 14, "a joint has one support", "{ roller = 150 }"),
    Case(
        '"roller"',
        "{ roller = 90, link = [1, 1] }",
        14,
        "joint B has two supports, a roller and a link",
        "keep one",
    ),
    Case(
        '"roller"', '{ roller = "up" }', 14, 'B is "up", which cannot be read', "the number itself"
    ),
    Case('"roller"', '{ roller = "120°" }', 14, "with a unit", "a number alone: 120"),
    Case('"roller"', "{ roller = 400 }", 14, "is 400 degrees", "from -360 to 360"),
    Case('"roller"', "{ link = [4, 0] }", 14, "the link at B has no length", "away from joint B"),
    Case('"roller"', "{ link = 4 }", 14, "the fixed point of the support at B is a number", "[4,"),
    Case('B = "roller"', 'D = "roller"', 14, "a support is at joint D, which is not", "joints are"),
    Case('B = "roller"', 'A = "roller"', 14, "joint A has two supports, first on line 13", "keep"),
    Case("[supports]", "[[supports]]", 12, "supports is a list, not a table", "[supports]"),
    # loads
    Case('at = "C"', 'at = "D"', 17, "a load is at joint D, which is not there", "A, B and C"),
    Case('at = "C"', "at = 3", 17, "the joint of a load is a number, not a text", 'at = "C"'),
    Case("down = 12", "down = 0", 18, "the push down of the load at C is 0", "give it a size"),
    Case("down = 12", 'down = "0/7"', 18, "is 0, so it is no load", "give it a size"),
    Case(
        "down = 12",
        "down = 1e-12",
        18,
        "is 1e-12, too small to be told from 0",
        "size",
    ),
    Case("down = 12", "down = -3", 18, "is negative, -3", "write it as up"),
    Case("down = 12", "size = -3\nangle = 0", 18, "is negative, -3", "and turn the angle by 180"),
    Case("down = 12", "size = 3\nangle = 361", 19, "is 361 degrees", "from -360 to 360"),
    Case("down = 12", "size = 0\nangle = 3", 18, "the size of the load at C is 0", "delete it"),
    Case("down = 12", "size = 3\nangle = 3\nup = 1", 18, "has up and also size and angle", "give"),
    Case("down = 12", "down = 1\nup = 1", 16, "cancel, so it is a load of size 0", "delete it"),
    Case("down = 12", "down = true", 18, "is true, which is not a number", "write a number"),
    Case(
        "down = 12",
        'down = "12 kN"',
        18,
        '"12 kN", which cannot be read',
        "in the units of the problem",
    ),
    Case("down = 12", "down = 12\ndown = 13", 19, "the load has down twice", "[[loads]]"),
    Case("[[loads]]", "[loads]", 16, "[loads] holds one load of a list", "write [[loads]]"),
    Case("down = 12\n", 'down = 12\ntopics = ["a"]\n', 19, "topics stands under [[loads]]", "up"),
    # what TOML cannot read
    Case('"Lamp arm"', '"Lamp arm', 1, 'the quote before "Lamp arm" is never closed', 'write "'),
    Case('"kN"', "kN", 2, '"kN" is neither a number nor a text in quotes', 'quotes: "kN"'),
    Case('"kN"', "“kN”", 2, '"“kN”" is not in straight quotes', "straight quotes"),
    Case("level = 2", "level = 02", 4, 'the number "02" begins with a nought', "write 2"),
    Case("level = 2", "level", 4, '"level" has no =', "a remark starts with #"),
    Case("level = 2", "level: 2", 4, '"level: 2" has a colon where = belongs', "a line is"),
    Case("level = 2", "level =", 4, "level has no value", "write a value after level ="),
    Case("level = 2", "level = 2\nlevel = 3", 5, "level stands twice, first on line 4", "keep"),
    Case("level = 2", "my level = 2", 4, '"my level" cannot be a name', "letters and digits"),
    Case("level = 2", "level = True", 4, '"True" is no value', "write true in small letters"),
    Case('["AB", "BC", "CA"]', '["AB", "BC", "CA"', 5, "the [ of members is never", "write ]"),
    Case('["AB", "BC", "CA"]', '["AB" "BC", "CA"]', 5, '"AB" and "BC" stand side by side', "comma"),
    Case('["AB", "BC", "CA"]', '["AB", "BC", "CA"]]', 5, "a ] that closes nothing", "delete it"),
    Case("C = [2, 3]", "C = [2, 3/2]", 10, '"3/2" is not in quotes', 'in quotes: "3/2"'),
    Case("C = [2, 3]", "C = [2 3]", 10, '"2" and "3" stand side by side', "a comma"),
    Case("C = [2, 3]", "C = [2, .5]", 10, 'the number ".5" is not complete', "0.5"),
    Case("C = [2, 3]", "C = [2, 5.]", 10, 'the number "5." is not complete', "5.0"),
    Case("C = [2, 3]", "C = [2, 3m]", 10, '"3m" is not a number', "the number alone, 3"),
    Case("[joints]", "[joints", 7, '"[joints" is not a table heading', "write [joints] alone"),
    Case("[supports]", "[joints]\n[supports]", 12, "[joints] stands twice, first on line 7", "one"),
    Case("level = 2", "a" + ".a" * 40 + " = 1", 4, "too many dots", "a line is"),
)


def text_of(case: Case) -> str:
    assert SOUND.count(case.old) >= 1
    return SOUND.replace(case.old, case.new, 1)
