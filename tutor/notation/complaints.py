"""Which complaints are there? One table of sentences, cures and the broken inputs that earn them.

A key is a stable code, with a variant after "/" where one code has several sentences. In `says`
and `cure`, {found} is the text pointed at. The examples are read in a truss with the members AB,
AC, BC, BD, CD and IN, reactions A_x, A_y and R_D, joints A, B, C, D, I and N, kN and m; each pairs
an input with the column it points at.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Complaint:
    """One way in which text cannot be read; `placed` says whether the sentence names the column.

    `examples` are equations, `values` are results, `numbers` constants of problem files.
    """

    says: str
    cure: str
    examples: tuple[tuple[str, int], ...] = ()
    values: tuple[tuple[str, int], ...] = ()
    numbers: tuple[tuple[str, int], ...] = ()
    placed: bool = True


_LENGTH, _SYMBOLS, _DEPTH = 500, 128, 32

COMPLAINTS: Mapping[str, Complaint] = {
    # the text as a whole
    "empty": Complaint(
        "nothing is written yet",
        "write an equation such as 3/5 F_AB + F_AC - 12 = 0",
        examples=(("", 1), ("   ", 4)),
        placed=False,
    ),
    "empty/value": Complaint(
        "nothing is written yet",
        "write a number, such as {example}",
        values=(("", 1), (" ", 2)),
        numbers=(("", 1),),
        placed=False,
    ),
    "too-long": Complaint(
        "the text has {count} characters and at most 500 are read",
        "split it or leave out what is not needed",
        examples=(("F_AB = " + "1 + " * 200, 501),),
        values=(("1" * 501, 501),),
        numbers=(("1+" * 300, 501),),
        placed=False,
    ),
    "too-many": Complaint(
        "the text has more than 128 symbols",
        "put known numbers together first",
        examples=(("F_AB = " + "1+" * 70 + "1", 135),),
        placed=False,
    ),
    "too-deep": Complaint(
        "“{found}” lies more than 32 levels deep",
        "take out brackets or signs that are not needed",
        examples=(("(" * 33 + "F_AB" + ")" * 33 + " = 0", 33), ("F_AB = " + "-" * 40 + "1", 40)),
    ),
    "control": Complaint(
        "there is a control character, {found}, which no key for a formula types",
        "delete it and type the line again",
        examples=(
            ("F_AB\x1b[A = 12", 5),
            ("\x00", 1),
            ("F_AB =\n12", 7),
            ("\x1b[<0;35;12M", 1),
            ("F_AB\x07 = 0", 5),
        ),
        values=(("12\x7f", 3),),
    ),
    "invisible": Complaint(
        "there is an invisible character, {found}",
        "delete it (it often comes along when text is copied)",
        examples=(("F_AB\u200b = 12", 5), ("\ufeffF_AB = 12", 1), ("F_\u202eAB = 12", 3)),
    ),
    "character": Complaint(
        "“{found}” has no meaning in a formula",
        "write numbers, names, + - * / ^, brackets, units and one =",
        examples=(("F_AB 😀 = 12", 6), ("F_AB = 12 $", 11), ("F_AB & F_AC = 0", 6), ("½ F_AB = 3", 1)),
        values=(("12 %", 4),),
    ),
    "character/inequality": Complaint(
        "“{found}” compares and does not set equal",
        "write = between the two sides",
        examples=(("F_AB < 12", 6), ("F_AB ≈ 12", 6), ("F_AB ≥ 12", 6)),
    ),
    # numbers
    "comma": Complaint(
        "“{found}” can be {one} or {other}",
        "write {one} or {other}",
        examples=(("F_AB = 1,500", 8), ("1,500 F_AB = 0", 1), ("F_AB = 12,345", 8)),
        values=(("1,500", 1), ("1,500 C", 1)),
    ),
    "comma/grouped": Complaint(
        "“{found}” groups its digits",
        "write {one}, without the grouping",
        values=(("1'500", 1), ("1_500 C", 1)),
        examples=(("F_AB = 1,500.5", 8), ("F_AB = 1,500,000", 8), ("F_AB = 1.500,5", 8)),
    ),
    "comma/loose": Complaint(
        "there is a comma that belongs to no number",
        "write a decimal as 12.5, and one equation at a time",
        examples=(("F_AB = 12, F_AC = 3", 10), ("F_AB, F_AC = 0", 5)),
    ),
    "number": Complaint(
        "“{found}” is not a number",
        "write a number with one decimal point, such as 12.5",
        examples=(("F_AB = 1.2.3", 8), ("F_AB = 1..2", 8), ("F_AB = .", 8)),
    ),
    "two-numbers": Complaint(
        "two numbers, {one} and {other}, have only a space between them",
        "write * between them, or one number without the space",
        examples=(("F_AB = 1 500", 10), ("3 4 F_AB = 0", 3), ("cos 30 2 F_AB = 0", 8)),
        values=(("1 2", 3), ("3 1/2", 3)),
    ),
    "digits": Complaint(
        "a number has {count} digits and at most 30 are read",
        "round it",
        examples=(("F_AB = " + "1" * 31, 8),),
        numbers=(("0." + "3" * 40, 1),),
    ),
    "too-big": Complaint(
        "“{found}” is more than 1e12, larger than any force here",
        "check the number and its unit",
        examples=(("F_AB = 1e999", 8), ("F_AB = 9999999999999", 8), ("10^6*10^6*10 F_AB = 1", 1)),
        values=(("1e13", 1),),
        numbers=(("1e999", 1),),
    ),
    "too-small": Complaint(
        "“{found}” is too close to zero to be a force or a length",
        "check the exponent, or write 0",
        examples=(("F_AB = 1e-999", 8),),
    ),
    "power": Complaint(
        "the power “{found}” is not one that is read",
        "use whole powers from -6 to 6, or 1/2 for a square root",
        examples=(("2^7 F_AB = 1", 3), ("2^999 F_AB = 1", 3), ("(2^3)^3 F_AB = 1", 7), ("2^0.3 F_AB = 0", 3)),
    ),
    "power/unknown": Complaint(
        "there is an unknown in the power “{found}”",
        "an equilibrium equation has numbers as powers",
        examples=(("2^F_AB = 1", 3), ("2^(F_AB + 1) = 1", 3)),
    ),
    # the shape of an equation
    "no-equals": Complaint(
        "there is no = sign",
        "an equation sets two sides equal, such as 3/5 F_AB - 12 = 0",
        examples=(("3/5 F_AB - 12", 14), ("F_AB", 5), ("3/5 F_AB + (F_AC", 17)),
        placed=False,
    ),
    "two-equals": Complaint(
        "there is a second = sign",
        "write one equation a line, with one = sign",
        examples=(("F_AB = 12 = F_AC", 11), ("F_AB == 12", 7)),
    ),
    "two-equals/label": Complaint(
        "there is a second = sign after “{label}”",
        "put a colon after the name of the equation, such as “{label}:”",
        examples=(("ΣF_x = F_AC - 12 = 0", 18), ("ΣMA = 3 F_AB - 12 = 0", 19)),
    ),
    "empty-side": Complaint(
        "there is nothing {side} the = sign",
        "write something on both sides, 0 where nothing is left",
        examples=(("= 12", 1), ("F_AB =", 7), ("=", 1), ("F_AB = ", 8)),
    ),
    "brackets": Complaint(
        "the bracket “{found}” is never closed",
        "close it with “{partner}”",
        examples=(("3/5 (F_AB + F_AC = 12", 5), ("cos(30 F_AB = 0", 4), ("3/5 F_AB + ( = 0", 12)),
        values=(("(12", 1),),
    ),
    "brackets/unopened": Complaint(
        "the bracket “{found}” closes nothing",
        "take it out, or open it with “{partner}” before",
        examples=(("F_AB) = 12", 5), ("F_AB = 12)", 10)),
    ),
    "brackets/across": Complaint(
        "the bracket “{found}” is still open at the = sign",
        "close it with “{partner}” on its own side",
        examples=(("(F_AB = 12)", 1),),
    ),
    "brackets/mixed": Complaint(
        "“{found}” cannot close “{opened}”",
        "close “{opened}” with “{partner}”",
        examples=(("3(F_AB + 2] = 0", 11), ("[F_AB} = 0", 6)),
    ),
    "brackets/empty": Complaint(
        "there is nothing in the brackets “{found}”",
        "write what belongs there, or take them out",
        examples=(("F_AB () = 0", 6), ("cos() F_AB = 0", 4)),
    ),
    "unfinished": Complaint(
        "nothing follows “{before}”",
        "write a number or a force after it, or take it out",
        examples=(("F_AB + = 0", 8), ("F_AB = 12 *", 12), ("(F_AB -) = 0", 8), ("2^ = F_AB", 4)),
        values=(("12 +", 5),),
    ),
    "operator": Complaint(
        "“{found}” comes right after “{before}”",
        "write a number or a force between the two, or take one out",
        examples=(("F_AB + * 3 = 0", 8), ("F_AB */ 3 = 0", 7), ("2^*3 F_AB = 0", 3)),
    ),
    "operator/first": Complaint(
        "nothing stands before “{found}”",
        "write a number or a force before it, or take it out",
        examples=(("* F_AB = 0", 1), ("F_AB = / 3", 8), ("(^2) F_AB = 0", 2)),
    ),
    "order": Complaint(
        "“{found}” cannot follow “{before}”",
        "write the operator that belongs between them, or brackets",
        examples=(("2^3^2 F_AB = 0", 4), ("30°° F_AB = 0", 4)),
    ),
    "argument": Complaint(
        "“{before}” has nothing to be taken of",
        "write it with its angle or number, such as {before}(30)",
        examples=(("F_AB cos = 12", 10), ("F_AB cos * 3 = 0", 10), ("F_AB (cos) = 0", 10)),
    ),
    # names
    "unknown-name": Complaint(
        "“{found}” names no force here",
        "the forces are {known}",
        examples=(("F_XYZ + F_AB = 0", 1), ("qqq = 2", 1)),
    ),
    "unknown-name/near": Complaint(
        "“{found}” names no force here",
        "perhaps {nearest} is meant",
        examples=(("F_ABB = 0", 1), ("12 + A_z = 0", 6), ("F_AB_ = 2", 1)),
    ),
    "unknown-name/member": Complaint(
        "“{found}” would be the force in a member {pair}, and no member joins {one} and {other}",
        "{meeting}",
        examples=(("F_AD + F_AB = 0", 1), ("0.6F_DA = 0", 4), ("AD = 12", 1), ("3 F_{AD} = 0", 3)),
        values=(("F_AD = 12", 1),),
    ),
    "unknown-name/end": Complaint(
        "“{found}” would be the force in a member at {joint}, and its other end is no joint",
        "the members at {joint} are {meeting}",
        examples=(("F_AE = 3", 1), ("F_AB + 0.8F_{EA} = 0", 11), ("AE = 1", 1)),
    ),
    "unknown-name/angle": Complaint(
        "“{found}” stands for an angle whose size is not known here",
        "write the angle itself, such as cos(36.87) or cos(atan(3/4))",
        examples=(("F_AB cos θ = 12", 10), ("F_AB cosθ = 12", 9), ("F_AB sin(theta) = 0", 10)),
    ),
    "unknown-name/reaction": Complaint(
        "“{found}” would be a reaction at {joint}, and no such force acts there",
        "the reactions are {reactions}",
        examples=(("C_y + F_AB = 0", 1), ("3 D_x = 0", 3), ("R_A = 0", 1)),
    ),
    "unknown-name/joint": Complaint(
        "“{found}” is a joint and not a force",
        "name a member force by both its joints, such as {example}",
        examples=(("3 A = 12", 3), ("F_A = 0", 1)),
    ),
    "unknown-name/constant": Complaint(
        "“{found}” is a name, and a number is meant here",
        "write the number itself",
        numbers=(("3*x", 3), ("F_AB", 1), ("theta", 1)),
    ),
    "letter": Complaint(
        "“{found}” after a number says {meaning}, which belongs to a result",
        "leave it out of an equation",
        examples=(("F_AB = 12 C", 11), ("F_AB + F_AC = 3 T", 17)),
    ),
    "difference": Complaint(
        "“{found}” is one joint less another",
        "write {example} without spaces for the force in the member",
        examples=(("A - B = 12", 1), ("3 + C - D = 0", 5)),
    ),
    "ambiguous": Complaint(
        "“{found}” can mean {one} or {other}",
        "write {cure}",
    ),
    "ambiguous/unit": Complaint(
        "“{found}” can be the unit or the force in member {name}",
        "write {spelling} for the force, and leave out the unit or give the number in {own}",
        examples=(("F_AB = 12 IN", 11), ("3 F_AB - 2IN = 0", 11)),
        values=(("12 IN", 4),),
    ),
    "ambiguous/function": Complaint(
        "“{found}” can be the function or the force in member {name}",
        "write {spelling} for the force and {function} for the function",
        examples=(("F_AB SIN 30 = 0", 6),),
    ),
    "ambiguous/power": Complaint(
        "the power “{found}” can belong to the argument or to the whole function",
        "put brackets around what is raised",
        examples=(("cos 30^2 F_AB = 0", 8), ("√2² F_AB = 0", 3), ("sqrt 2^2 F_AB = 0", 8)),
    ),
    "ambiguous/fraction": Complaint(
        "“{found}” can be {function}({fraction}) or ({function} {top})/{bottom}",
        "put brackets around what the function is taken of",
        examples=(("F_AB cos(atan 3/4) = 0", 10), ("F_AB sin(tan^-1 3/4) = 0", 10)),
    ),
    "ambiguous/pi": Complaint(
        "“{found}” has π in an angle without a unit, and bare angles are in degrees",
        "write {call} rad) for radians, or the angle in degrees",
        examples=(("F_AB cos(pi/6) = 12", 9), ("F_AB sin(π/4) = 0", 9)),
        numbers=(("cos(pi/3)", 4),),
    ),
    "ambiguous/unit-below": Complaint(
        "the unit in “{found}” can belong to what divides or to the whole fraction",
        "put the fraction in brackets with the unit after it",
        examples=(("F_AB = 1200/sqrt(2) N", 8), ("F_AB = 12/(3 + 4) N", 8)),
    ),
    # functions
    "unknown-function": Complaint(
        "“{found}” is no function that is read here",
        "the functions are sin, cos, tan, asin, acos, atan and sqrt",
        examples=(("log(2) F_AB = 0", 1), ("F_AB exp(3) = 0", 6), ("foo(2) F_AB = 0", 1)),
        numbers=(("eval(1)", 1), ("exp(1)", 1)),
    ),
    "unknown-function/near": Complaint(
        "“{found}” is no function that is read here",
        "perhaps {nearest} is meant",
        examples=(("F_AB cosine(30) = 0", 6), ("F_AB coss 30 = 0", 6), ("sqr(2) F_AB = 1", 1)),
    ),
    "unknown-function/reciprocal": Complaint(
        "“{found}” is not read here",
        "write 1/{nearest}(…) in its place",
        examples=(("F_AB sec(30) = 12", 6), ("F_AB cot 30 = 12", 6)),
    ),
    "function-power": Complaint(
        "“{found}” is not a power of a function that is read here",
        "write cos^2(30) for a square, cos^-1(0.8) for the inverse, or brackets",
        examples=(("cos^9(30) F_AB = 1", 1), ("sin^-2(30) F_AB = 1", 1), ("sqrt^2(3) F_AB = 0", 1)),
    ),
    "undefined": Complaint(
        "“{found}” has no value",
        "check what the function is taken of",
        examples=(
            ("F_AB tan(90) = 0", 6),
            ("F_AB acos(1.2) = 0", 6),
            ("sqrt(-4) F_AB = 0", 1),
            ("(-4)^0.5 F_AB = 0", 1),
        ),
    ),
    "divide-by-zero": Complaint(
        "“{found}” divides by zero",
        "check what stands below the fraction line",
        examples=(("F_AB/0 = 1", 1), ("3/(2 - 2) F_AB = 0", 1), ("F_AB = 12/cos(90)", 8), ("0^-1 F_AB = 0", 1)),
        numbers=(("1/0", 1),),
    ),
    # linear
    "nonlinear": Complaint(
        "“{found}” multiplies one unknown by another",
        "an equilibrium equation has each unknown times a number",
        examples=(("F_AB*F_AC = 0", 1), ("F_AB(F_AC + 1) = 0", 1), ("2FABFAC = 0", 1)),
    ),
    "nonlinear/divide": Complaint(
        "“{found}” divides by an unknown",
        "an equilibrium equation has each unknown times a number",
        examples=(("12/F_AB = 1", 1), ("F_AB/(F_AC + 1) = 0", 1)),
    ),
    "nonlinear/power": Complaint(
        "“{found}” raises an unknown to a power",
        "an equilibrium equation has each unknown times a number",
        examples=(("F_AB^2 = 4", 1), ("(F_AB + 1)² = 0", 1), ("F_AB**3 = 0", 1)),
    ),
    "nonlinear/function": Complaint(
        "“{found}” takes a function of an unknown",
        "an equilibrium equation has each unknown times a number",
        examples=(("sqrt(F_AB) = 2", 1), ("cos(F_AB) = 0", 1), ("3 cos F_AB = 0", 3)),
    ),
    # units
    "unknown-unit": Complaint(
        "“{found}” is no unit that is read here",
        "forces are in N, kN, MN, lb or kip and lengths in mm, cm, m, in or ft",
        examples=(("F_AB = 12 kg", 11), ("F_AB = 12 kPa", 11), ("F_AB = 12kgf", 10)),
        values=(("12 kg", 4),),
    ),
    "unknown-unit/near": Complaint(
        "“{found}” is no unit that is read here",
        "perhaps {nearest} is meant",
        examples=(("3 M F_AB = 0", 3), ("F_AB = 12 mN", 11), ("F_AB = 12 nm", 11)),
    ),
    "unknown-unit/quotient": Complaint(
        "“{found}” divides or raises a unit",
        "units are forces, lengths and their products, such as kN*m",
        examples=(("F_AB = 12 kN/m", 11), ("3 m^2 F_AB = 0", 3), ("2 m² F_AB = 0", 3)),
    ),
    "unit": Complaint(
        "the unit “{found}” stands without a number",
        "write it right after a number or a closing bracket",
        examples=(("kN F_AB = 0", 1), ("F_AB kN = 12 kN", 6), ("3 * kN F_AB = 0", 5)),
        values=(("kN", 1),),
    ),
    "unit/constant": Complaint(
        "“{found}” is a unit, and a number without a unit is meant here",
        "give the number in the units of the problem",
        numbers=(("3 m", 3), ("12 kN", 4)),
    ),
    "angle": Complaint(
        "the angle “{found}” stands outside a function",
        "write what is taken of it, such as cos({found})",
        examples=(("F_AB * 30° = 12", 8), ("30 deg F_AB = 0", 1), ("F_AB = 0.6 rad", 8)),
        values=(("30°", 1),),
    ),
    "angle/alone": Complaint(
        "“{found}” stands without a number",
        "write the size of the angle before it",
        examples=(("cos(°) F_AB = 0", 5), ("F_AB° = 0", 5), ("cos(30) * ° F_AB = 0", 11)),
    ),
    "angle/inverse": Complaint(
        "“{found}” puts radians on the result of an inverse function, which is in degrees",
        "leave out the unit",
        examples=(("F_AB cos(atan(3/4) rad) = 0", 10),),
    ),
    "dimension": Complaint(
        "“{found}” is {this} beside {that}",
        "only like things can be added or set equal",
        examples=(
            ("F_AB - 12 kN*m = 0", 8),
            ("F_AB = 12 m", 8),
            ("A_x = 0 + 3 m", 11),
            ("3 m F_AB - 12 kN = 0", 12),
            ("12 kN + 3 m = F_AB", 9),
        ),
    ),
    "dimension/function": Complaint(
        "“{found}” takes a function of {this}",
        "angles have no unit of force or length, and ratios none at all",
        examples=(("F_AB cos(30 m) = 0", 6), ("F_AB atan(3 kN/4 m) = 0", 6)),
    ),
    "dimension/value": Complaint(
        "“{found}” is {this}",
        "the result is a force, in {force}",
        values=(("12 m", 1), ("12 kN*m C", 1)),
    ),
    # labels
    "label": Complaint(
        "“{found}” before the colon names no equation",
        "write ΣF_x: or ΣF_y: or ΣM_A: with the joint, or leave it out",
        examples=(("hello: F_AB = 0", 1), ("ΣQ: F_AB = 0", 1), (": F_AB = 0", 1), ("M: F_AB = 0", 1)),
    ),
    "label/joint": Complaint(
        "“{found}” names no joint",
        "the joints are {joints}",
        examples=(("ΣM_Z: F_AB = 0", 4), ("MQ: F_AB = 0", 2)),
    ),
    "label/missing-colon": Complaint(
        "“{found}” looks like the name of an equation",
        "put a colon after it, such as “{label}:”",
        examples=(("ΣF_x F_AB - 12 = 0", 1), ("sum Fx F_AB = 0", 1), ("ΣF = 0", 1)),
    ),
    # values
    "value": Complaint(
        "“{found}” is an unknown, and a result is a number",
        "put in its value",
        values=(("F_AB = 3 F_AC", 10), ("2 F_AB = 24", 3), ("F_AB + 2", 1)),
    ),
    "value/sides": Complaint(
        "there is no force alone on one side of the = sign",
        "write one force and its number, such as F_AB = 12",
        values=(("12 = 12", 4), ("2*6 = 12 C", 5)),
    ),
    "value/equation": Complaint(
        "there is an = sign, and only a number is meant here",
        "write the number alone",
        numbers=(("x = 3", 3), ("2 = 2", 3)),
    ),
    "value/number": Complaint(
        "“{found}” comes without a number",
        "write the size first, such as 12 {found}",
        values=(("C", 1), ("F_AB = T", 8), ("left", 1)),
    ),
    "value/order": Complaint(
        "“{found}” stands before the number",
        "write it after the number, such as 12 {found}",
        values=(("T 12", 1), ("C 12 kN", 1), ("F_AB = C 12", 8), ("left 12", 1)),
    ),
    "value/two": Complaint(
        "“{found}” comes after another letter or direction",
        "give one of them, such as 12 C or 12 left",
        values=(("12 C T", 6), ("12 left right", 9), ("12 T left", 6)),
    ),
}  # fmt: skip
