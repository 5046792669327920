"""What is said about a function or an angle, or a product that is not linear that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "unknown-function": Complaint(
        "“{found}” is no function that is read here",
        "the functions are sin, cos, tan, asin, acos, atan and sqrt",
        examples=(("log(2) F_AB = 0", 1), ("F_AB exp(3) = 0", 6), ("foo(2) F_AB = 0", 1)),
        numbers=(("eval(1)", 1), ("exp(1)", 1)),
    ),
    "unknown-function/near": Complaint(
        "“{found}” is no function that is read here",
        "perhaps {nearest} is meant",
        examples=(("F_AB tann(30) = 0", 6), ("F_AB coss 30 = 0", 6), ("sqr(2) F_AB = 1", 1)),
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
}  # fmt: skip
