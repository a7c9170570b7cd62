"""How the working of a named function is said: once with names, once with numbers.

`%(item)s` and `%(second)s` are the first two things it is applied to, `%(step)s` the last, `%(items)s` all
and `%(rest)s` those after the first two. Plain sums and products need no words.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Phrase:
    """A function in words; `numbers` is the same with the numbers put in, when that reads otherwise.

    `binds` is false for a phrase that needs brackets inside a longer sum; with numbers put in, `sign` is the
    sign it then binds by. `joint` stands between items with numbers put in.
    """

    names: str
    numbers: str = ""
    binds: bool = False
    joint: str = ", "
    sign: str = ""

    @property
    def with_numbers(self) -> str:
        """The sentence for numbers."""
        return self.numbers or self.names


PHRASES: Mapping[str, Phrase] = {
    "round_up": Phrase("%(item)s, taken up to the next %(step)s"),
    "round_down": Phrase("%(item)s, taken down to a whole %(step)s"),
    "least": Phrase("least of %(items)s"),
    "greatest": Phrase("greatest of %(items)s"),
    "total": Phrase("total of %(items)s", "%(items)s", joint=" + ", sign="+"),
    "mean": Phrase("mean of %(items)s", "(%(items)s) ÷ %(count)s", joint=" + ", sign="/"),
    "count": Phrase("count of %(items)s", "%(count)s"),
    "sqrt": Phrase("√(%(item)s)", binds=True),
    "atan": Phrase("atan(%(item)s)", binds=True),
    "tan": Phrase("tan(%(item)s)", binds=True),
    "sin": Phrase("sin(%(item)s)", binds=True),
    "cos": Phrase("cos(%(item)s)", binds=True),
    "asin": Phrase("asin(%(item)s)", binds=True),
    "parted_by_rounding": Phrase("most that reading six sizes to %(item)s each can leave"),
    "called_for_by": Phrase("what %(items)s call for"),
    "section_area": Phrase("area of the section drawn to %(items)s"),
    "section_girth": Phrase("length round the section drawn to %(items)s, without its back"),
    "gap_area": Phrase("area left in front of the readings, drawn straight between them: %(items)s"),
    "line_at": Phrase("straight line fitted to %(rest)s, read at %(item)s"),
    "shortest_in_stock": Phrase("shortest of %(rest)s, at least %(item)s and at most %(second)s"),
    "line_rms": Phrase("root mean square distance of %(items)s from the straight line fitted to them"),
    "left_open": Phrase("distance from the end of the last wall to the first, walked by %(items)s"),
    "area_walked": Phrase("area inside the walls, walked by %(items)s"),
    "moisture_in_air": Phrase(
        "moisture of wood in air of %(item)s °C and %(second)s of saturation, USDA Wood Handbook eq. 4-5"
    ),
    "boards_opened": Phrase("boards opened when rows of %(item)s in all are laid with offcuts used again"),
    "boards_at_least": Phrase("all rows end to end, %(item)s, in boards of %(step)s, taken up"),
    "row_chosen": Phrase("row 1 chosen so that no strip is narrow, with rows of %(second)s over %(item)s"),
    "start_chosen": Phrase("start chosen to keep ends and stagger in a row of %(item)s"),
    "screws_counted": Phrase("screws of each piece on faces %(item)s long, %(second)s high, %(step)s apart"),
}
