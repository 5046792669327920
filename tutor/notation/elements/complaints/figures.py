"""What is said about a number that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "comma": Complaint(
        "“{found}” can be {one} or {other}",
        "write {one} or {other}",
        examples=(("F_AB = 1,500", 8), ("1,500 F_AB = 0", 1), ("F_AB = 12,345", 8)),
        values=(("1,500", 1), ("1,500 C", 1)),
    ),
    "comma/grouped": Complaint(
        "“{found}” groups its digits",
        "write {one}, without the grouping",
        values=(("1_500", 1), ("1_500 C", 1)),
        examples=(("F_AB = 1_500 kN", 8),),
    ),
    "comma/loose": Complaint(
        "there is a comma that belongs to no number",
        "write a decimal as 12.5, and one equation at a time",
        examples=(("F_AB = 12, 5", 10), ("F_AB, F_AC = 0", 5)),
    ),
    "number": Complaint(
        "“{found}” is not a number",
        "write a number with one decimal point, such as 12.5",
        examples=(("F_AB = 1.2.3", 8), ("F_AB = 1..2", 8), ("F_AB = .", 8)),
    ),
    "number/letters": Complaint(
        "“{found}” has a letter among its figures",
        "write {meant} if that number is meant",
        examples=(("F_AB = 26O", 8), ("3 F_AB = l5O", 10), ("F_AB - l2.5 = 0", 8)),
    ),
    "two-numbers": Complaint(
        "two numbers, {one} and {other}, have only a space between them",
        "write * between them, or one number without the space",
        examples=(("F_AB = 1 500", 10), ("3 4 F_AB = 0", 3), ("cos 30 2 F_AB = 0", 8)),
        values=(("1 2", 3), ("3 3/5", 3)),
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
}  # fmt: skip
