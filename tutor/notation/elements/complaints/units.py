"""What is said about a unit that cannot be read?"""

from __future__ import annotations

from collections.abc import Mapping

from tutor.notation.elements.complaints.complaint import Complaint

COMPLAINTS: Mapping[str, Complaint] = {
    "unknown-unit": Complaint(
        "“{found}” is no unit that is read here",
        "forces are in N, kN, MN, lb or kip and lengths in mm, cm, m, in or ft",
        examples=(("F_AB = 12 kg", 11), ("F_AB = 12 kPa", 11), ("F_AB = 12kgf", 10)),
        values=(("12 kg", 4),),
    ),
    "unknown-unit/near": Complaint(
        "“{found}” is no unit that is read here",
        "perhaps {nearest} is meant",
        examples=(
            ("3 M F_AB = 0", 3), ("F_AB = 12 mN", 11), ("F_AB = 12 nm", 11), ("F_AB = 12 k", 11),
            ("1500# + F_AB = 0", 5),
        ),
        values=(("40 k C", 4), ("40K", 3), ("1500# C", 5)),
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
}  # fmt: skip
