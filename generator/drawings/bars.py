"""Bars of stock as they are cut: piece marks, mitres as slopes, running lengths after the saw, offcuts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from generator.drawings.clipping import Box, Disc, Point, Points, circle, clip_to_disc, rectangle
from generator.drawings.dimensions import dimension, origin_ring, tick
from generator.drawings.figures import Size
from generator.drawings.hatches import Hatch
from generator.drawings.keys import heading, margin, paragraph, title
from generator.drawings.lettering import cap, extent, wrapped
from generator.drawings.pens import (
    BLUE,
    CUT_NEW,
    DIMENSION,
    HATCH_STANDING,
    INK,
    RING,
    RULE_FINE,
    THUMBNAIL,
    TINT,
    VISIBLE,
    Pen,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Outline, Sheet, Stroke, TextKind, Zone, arrow
from generator.drawings.stock import StockBar, StockPiece
from generator.drawings.views import View, ring_letter
from generator.drawings.words import say
from generator.quantities.cut_pieces import in_runs

OFFCUT = Hatch(kind="lines", spacing=2.4, slopes=(45.0,), pen=Pen(width=0.15, colour=HATCH_STANDING))
FIRST_SHEET, NEXT_SHEETS = 4, 7
_MOST_BARS = 12
_ALONG = (10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 150)
_ACROSS = (1, 2, 3, 4, 5, 6, 8, 10, 15, 20)
_DETAILS = (1, 2, 3, 4, 5, 8, 10)
_HIGH = 10.0
_RADIUS = 27.0
_SIDE = 0.9
_LABELS = 19.0
_OFFCUT_ROOM = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """How real lengths fall on the sheet: mm of paper a mm along and across, and where the bars begin."""

    sheet: Sheet
    left: float
    along: int
    across: int
    face: float

    @property
    def high(self) -> float:
        """The height of a bar on paper."""
        return self.face / self.across

    def x(self, mm: float) -> float:
        """Where a length from the bar's end falls."""
        return self.left + mm / self.along

    def slope(self, angle: float) -> float:
        """How far an end at this saw angle runs back along the bar, on paper."""
        return self.face * math.tan(math.radians(angle)) / self.along


def sheets_of(bars: Sequence[StockBar]) -> tuple[tuple[StockBar, ...], ...]:
    """The bars shared out over sheets that fit a page: fewer on the first, which carries the notes."""
    rest = bars[FIRST_SHEET:]
    later = (tuple(rest[at : at + NEXT_SHEETS]) for at in range(0, len(rest), NEXT_SHEETS))
    return tuple(bars[:FIRST_SHEET]), *later


@drawing
def cutting_plan(
    width: float,
    *,
    bars: tuple[StockBar, ...],
    material: str,
    face_width: Size,
    kerf: Size,
    profile: str = "square",
    marks: str = "",
    explained: str = "",
) -> Drawn:
    """Cutting plan of bars with running lengths.

    1 to 12 bars; `sheets_of` shares those of a longer plan out over several sheets. `marks` is a sentence
    on what the marks stand for; `explained` is any word on a sheet that leaves it to an earlier one how
    running lengths are read. Raises ValueError for no bars, too many, or pieces that overlap.
    """
    _check(bars)
    sheet = Sheet(width=width)
    frame = _frame(sheet, bars, face_width.mm)
    words = _title(bars, material)
    bottom = title(sheet, words) + (1.0 if not sheet.thumbnail else 0.0)
    tops: dict[str, float] = {}
    for bar in bars:
        tops[bar.number], bottom = _draw_bar(frame, bar, bottom)
    joint = None if explained or sheet.thumbnail else _joint(frame, bars)
    if not sheet.thumbnail:
        reading = () if explained else (_running_lengths(bars, kerf),)
        words_below = (*_marked(marks), *reading, _scales(frame, joint, "" if explained else profile))
        _closing(frame, joint, tops, bottom + 3.0, words_below)
        sheet.settle()
    sheet.height = math.ceil(sheet.bottom() + 3.0)
    return Drawn(sheet=sheet, title=words, alt=_alt(bars, material, kerf), scale=f"1:{frame.along}")


def _check(bars: Sequence[StockBar]) -> None:
    if not 1 <= len(bars) <= _MOST_BARS:
        raise ValueError(f"1 to {_MOST_BARS} bars can be drawn on one sheet, not {len(bars)}")
    for bar in bars:
        at = 0.0
        for piece in bar.pieces:
            if piece.start.mm < at - 1e-6 or piece.end.mm <= piece.start.mm:
                raise ValueError(f"{piece.mark} overlaps its neighbour on bar {bar.number}")
            at = piece.next_start.mm
        if at > bar.length.mm - 2 * bar.trim.mm + 1e-6:
            raise ValueError(f"bar {bar.number} is too short for its pieces")


def _frame(sheet: Sheet, bars: Sequence[StockBar], face: float) -> _Frame:
    left = margin(sheet) + (0.0 if sheet.narrow else _LABELS)
    room = sheet.width - left - (margin(sheet) if sheet.narrow else _OFFCUT_ROOM)
    longest = max(bar.length.mm for bar in bars)
    high = _HIGH if not sheet.thumbnail else 4.0
    return _Frame(
        sheet=sheet,
        left=left,
        along=next((scale for scale in _ALONG if longest / scale <= room), math.ceil(longest / room)),
        across=next((scale for scale in _ACROSS if face / scale <= high), math.ceil(face / high)),
        face=face,
    )


def _title(bars: Sequence[StockBar], material: str) -> str:
    first, last = bars[0].number, bars[-1].number
    which = (
        say("bar %(first)s", first=first)
        if first == last
        else say("bars %(first)s to %(last)s", first=first, last=last)
    )
    return say("Cutting plan, %(which)s: %(material)s", which=which, material=material)


# One bar


def _draw_bar(frame: _Frame, bar: StockBar, top: float) -> tuple[float, float]:
    """Draw a bar with what is written round it; return the y of its top edge and the y below it all."""
    sheet = frame.sheet
    if sheet.thumbnail:
        _shapes(frame, bar, top + 1.0)
        return top + 1.0, top + frame.high + 2.5
    level = not sheet.narrow and _fits_level(frame, bar)
    upper = top + (9.0 if level else 4.5) + (4.0 if sheet.narrow else 0.0)
    _bar_label(frame, bar, top, upper)
    _shapes(frame, bar, upper)
    _marks(frame, bar, upper, numbered=not level)
    _offcut_words(frame, bar, upper)
    if level:
        _lengths(frame, bar, upper)
        return upper, _running(frame, bar, upper + frame.high) + 1.5
    if sheet.narrow:
        return upper, _table(frame, bar, upper + frame.high + 3.0) + 3.0
    return upper, _listed(frame, bar, upper + frame.high + 2.5) + 1.5


def _bar_label(frame: _Frame, bar: StockBar, top: float, upper: float) -> None:
    sheet, left = frame.sheet, margin(frame.sheet)
    kept = say(", on hand") if bar.on_hand else ""
    if sheet.narrow:
        sheet.text(
            say("Bar %(bar)s, %(length)s%(kept)s", bar=bar.number, length=bar.length.text, kept=kept),
            left,
            top + 5.5,
            "note",
            weight="bold",
        )
        return
    middle = upper + frame.high / 2
    sheet.text(say("Bar %(bar)s", bar=bar.number), left, middle - 0.6, "note", weight="bold")
    sheet.text(bar.length.text, left, middle + 4.0, "note")
    if bar.on_hand:
        sheet.text(say("on hand"), left, middle + 8.4, "note")


def _shapes(frame: _Frame, bar: StockBar, top: float) -> None:
    """Draw the bar's outline, its pieces to their mitres, and hatch what is waste or left over."""
    sheet = frame.sheet
    outline = rectangle(frame.x(0), top, frame.x(bar.length.mm), top + frame.high)
    sheet.outlines[f"bar {bar.number}"] = Outline(
        name=f"bar {bar.number}",
        real=rectangle(0, 0, bar.length.mm, frame.face),
        paper=outline,
        scale=1 / frame.along,
    )
    for waste in _waste(frame, bar, top):
        sheet.hatch(waste, OFFCUT)
    sheet.line(outline, VISIBLE if not sheet.thumbnail else THUMBNAIL, closed=True)
    for piece in bar.pieces:
        _piece_shape(frame, bar, piece, top)


def _piece_shape(frame: _Frame, bar: StockBar, piece: StockPiece, top: float) -> None:
    sheet, paper = frame.sheet, _corners(frame, bar, piece, top)
    name = f"piece {piece.mark}"
    sheet.outlines[name] = Outline(name=name, real=_real(frame, piece), paper=paper, scale=1 / frame.along)
    if sheet.thumbnail:
        sheet.line(paper, THUMBNAIL, closed=True)
        return
    sheet.fill(paper, TINT)
    sheet.line(paper, CUT_NEW, closed=True)


def _real(frame: _Frame, piece: StockPiece) -> Points:
    start, end = piece.start.mm, piece.end.mm
    left, right = (frame.face * math.tan(math.radians(angle)) for angle in (piece.left, piece.right))
    return (
        (start + max(-left, 0.0), 0.0),
        (end - max(-right, 0.0), 0.0),
        (end - max(right, 0.0), frame.face),
        (start + max(left, 0.0), frame.face),
    )


def _corners(frame: _Frame, bar: StockBar, piece: StockPiece, top: float) -> Points:
    return tuple((frame.x(bar.trim.mm + x), top + y / frame.across) for x, y in _real(frame, piece))


def _waste(frame: _Frame, bar: StockBar, top: float) -> Iterator[Points]:
    """Yield what no piece fills, from edge to edge, where it is wide enough to be seen."""
    edges: list[tuple[Point, Point]] = [((frame.x(0), top), (frame.x(0), top + frame.high))]
    for piece in bar.pieces:
        upper_left, upper_right, lower_right, lower_left = _corners(frame, bar, piece, top)
        edges += [(upper_left, lower_left), (upper_right, lower_right)]
    far = frame.x(bar.length.mm)
    edges.append(((far, top), (far, top + frame.high)))
    for (above, below), (above_next, below_next) in zip(edges[::2], edges[1::2], strict=True):
        if max(above_next[0] - above[0], below_next[0] - below[0]) > 1.2:
            yield above, above_next, below_next, below


def _marks(frame: _Frame, bar: StockBar, top: float, *, numbered: bool) -> None:
    """Write each piece's mark in it; one too short for its mark gets its place on the bar, if that fits."""
    for place, piece in enumerate(bar.pieces, 1):
        for text in (piece.mark, str(place)) if numbered else (piece.mark,):
            kind = _kind_that_fits(frame, bar, piece, text)
            if kind:
                middle = frame.x(bar.trim.mm + (piece.start.mm + piece.end.mm) / 2)
                shift = (abs(frame.slope(piece.left)) - abs(frame.slope(piece.right))) / 4
                base = top + frame.high / 2 + cap(frame.sheet.em(kind), "bold") / 2
                frame.sheet.text(text, middle + shift, base, kind, anchor="middle", weight="bold")
                break


def _kind_that_fits(frame: _Frame, bar: StockBar, piece: StockPiece, text: str) -> TextKind | None:
    room = (piece.end.mm - piece.start.mm) / frame.along
    room -= abs(frame.slope(piece.left)) + abs(frame.slope(piece.right))
    kinds: tuple[TextKind, ...] = ("letter", "small letter")
    for kind in kinds:
        em = frame.sheet.em(kind)
        if extent(text, em, "bold")[0] + 2.0 <= room and cap(em, "bold") + 1.3 <= frame.high:
            return kind
    return None


def _offcut_words(frame: _Frame, bar: StockBar, top: float) -> None:
    """Say what is left over: in it where there is room, otherwise beside the bar; in the table on a phone."""
    sheet = frame.sheet
    if bar.offcut.mm <= 0 or sheet.narrow:
        return
    words, em = say("offcut %(offcut)s", offcut=bar.offcut.text), sheet.em("note")
    begin = frame.x(bar.trim.mm + (bar.pieces[-1].next_start.mm if bar.pieces else 0.0))
    end = frame.x(bar.length.mm - bar.trim.mm)
    if end - begin >= extent(words, em)[0] + 4.0 and frame.high >= 5.0:
        sheet.text(words, (begin + end) / 2, top + frame.high / 2 + cap(em) / 2, "note", anchor="middle")
        return
    at, middle = frame.x(bar.length.mm) + 1.5, top + frame.high / 2
    sheet.text(say("offcut"), at, middle - 0.7, "note")
    sheet.text(bar.offcut.text, at, middle + 3.7, "note")


# Lengths in the drawing


def _fits_level(frame: _Frame, bar: StockBar) -> bool:
    """Whether every length and running length has room on the drawing without touching its neighbour."""
    sheet = frame.sheet
    em = sheet.em("figure")
    taken = frame.x(bar.trim.mm) + extent("0", em)[0] / 2 + 0.6
    for piece in bar.pieces:
        wide = (piece.end.mm - piece.start.mm) / frame.along
        end, after = frame.x(bar.trim.mm + piece.end.mm), _after(bar, piece)
        if wide < extent(piece.length.text, em)[0] + 3.0 or not _kind_that_fits(
            frame, bar, piece, piece.mark
        ):
            return False
        if end - _SIDE - extent(piece.end.text, em, "bold")[0] < taken + 0.8:
            return False
        taken = end + _SIDE + (extent(after, em)[0] if after else 0.0)
    return taken <= sheet.width - 1.0


def _after(bar: StockBar, piece: StockPiece) -> str:
    """Where the next piece may begin; nothing where the bar is used up."""
    used_up = piece is bar.pieces[-1] and bar.offcut.mm <= 0
    return "" if used_up else piece.next_start.text


def _view(sheet: Sheet) -> View:
    return View(sheet=sheet, scale=1.0, origin=(0.0, 0.0), zone=Zone(box=Box(0, 0, sheet.width, 1e6)))


def _lengths(frame: _Frame, bar: StockBar, top: float) -> None:
    """Dimension each piece over the bar, to its long points."""
    sheet, at = frame.sheet, top - 4.0
    for piece in bar.pieces:
        start, end = (frame.x(bar.trim.mm + side.mm) for side in (piece.start, piece.end))
        sheet.line(((start, at), (end, at)), DIMENSION, "dimension")
        for x in (start, end):
            tick(_view(sheet), (x, at))
        sheet.text(piece.length.text, (start + end) / 2, at - _SIDE, "figure", anchor="middle", colour=BLUE)


def _running(frame: _Frame, bar: StockBar, bottom: float) -> float:
    """Mark the running lengths under the bar, ends bold and next starts light; return the y below."""
    sheet, em = frame.sheet, frame.sheet.em("figure")
    line, origin = bottom + 4.0, frame.x(bar.trim.mm)
    base = line + 2.0 + cap(em)
    if bar.pieces:
        end = frame.x(bar.trim.mm + bar.pieces[-1].end.mm)
        sheet.line(((origin, line), (end, line)), DIMENSION, "dimension")
    origin_ring(_view(sheet), (origin, line))
    sheet.text("0", origin, base, "figure", anchor="middle", colour=BLUE)
    for piece in bar.pieces:
        x = frame.x(bar.trim.mm + piece.end.mm)
        sheet.stroke(arrow((x, line), 0.0, BLUE))
        sheet.line(((x, bottom + 1.0), (x, base + 0.8)), DIMENSION, "dimension")
        sheet.text(piece.end.text, x - _SIDE, base, "figure", anchor="end", weight="bold", colour=BLUE)
        sheet.text(_after(bar, piece), x + _SIDE, base, "figure", colour=BLUE)
    return base + 1.0


# Lengths beside the drawing


def _listed(frame: _Frame, bar: StockBar, top: float) -> float:
    """List the pieces in words where the drawing is too crowded; return the y below."""
    sheet = frame.sheet
    words = "; ".join(_words_of_runs(frame, bar))
    return paragraph(sheet, f"{words}.", frame.left, top, sheet.width - frame.left - margin(sheet)) + 2.0


def _words_of_runs(frame: _Frame, bar: StockBar) -> Iterator[str]:
    """Each piece in words; those of one length whose marks count up are told in one."""
    at = 0
    for _, same in groupby(bar.pieces, key=lambda piece: (piece.length.text, piece.left, piece.right)):
        alike = list(same)
        for part in in_runs([piece.mark for piece in alike]):
            run = alike[part]
            yield _words(frame, bar, run[0], at + 1) if len(run) == 1 else _of_run(bar, run, at + 1)
            at += len(run)


def _of_run(bar: StockBar, run: Sequence[StockPiece], place: int) -> str:
    """Pieces alike, by the first end and how far on each next one ends."""
    first, last, after = run[0], run[-1], _after(bar, run[-1])
    follows = say(", next from %(after)s", after=after) if after else ""
    step = f"{run[1].end.mm - first.end.mm:.1f}".removesuffix(".0")
    return say(
        "%(place)s to %(run)s are %(mark)s to %(mark_2)s, %(length)s each: ends %(end)s and every %(step)s "
        "to %(end_2)s%(follows)s",
        place=place,
        run=place + len(run) - 1,
        mark=first.mark,
        mark_2=last.mark,
        length=first.length.text,
        end=first.end.text,
        step=step,
        end_2=last.end.text,
        follows=follows,
    )


def _words(frame: _Frame, bar: StockBar, piece: StockPiece, place: int) -> str:
    after = _after(bar, piece)
    follows = say(", next from %(after)s", after=after) if after else ""
    number = "" if _kind_that_fits(frame, bar, piece, piece.mark) else say("%(place)s is ", place=place)
    return say(
        "%(number)s%(mark)s %(length)s, ends %(end)s%(follows)s",
        number=number,
        mark=piece.mark,
        length=piece.length.text,
        end=piece.end.text,
        follows=follows,
    )


def _table(frame: _Frame, bar: StockBar, top: float) -> float:
    """Set the pieces as rows under the bar, for a narrow sheet; return the y below."""
    sheet, left = frame.sheet, margin(frame.sheet)
    right = sheet.width - left
    columns = (right - 34.0, right - 17.0, right)
    rows = [("", "", say("length"), say("ends"), say("next"))]
    rows += [
        (str(place), piece.mark, piece.length.text, piece.end.text, _after(bar, piece))
        for place, piece in enumerate(bar.pieces, 1)
    ]
    y = top
    for at, (place, mark, *figures) in enumerate(rows):
        y = _row(sheet, place, mark, figures, columns, y)
        if at == 0:
            sheet.line(((left, y), (right, y)), RULE_FINE)
    sheet.line(((left, y), (right, y)), RULE_FINE)
    if bar.offcut.mm > 0:
        sheet.text(
            say("offcut %(offcut)s", offcut=bar.offcut.text), left, y + 1.8 + cap(sheet.em("note")), "note"
        )
        y += 6.0
    return y


def _row(
    sheet: Sheet, place: str, mark: str, figures: Sequence[str], columns: Sequence[float], top: float
) -> float:
    left, head = margin(sheet), not place
    base = top + 1.5 + cap(sheet.em("figure"))
    sheet.text(place, left + 4.0, base, "figure", anchor="end")
    sheet.text(mark, left + 6.5, base, "note", weight="bold")
    for column, (x, text) in enumerate(zip(columns, figures, strict=True)):
        weight = "bold" if column == 1 and not head else "regular"
        colour = INK if head else BLUE
        kind: TextKind = "note" if head else "figure"
        sheet.text(text, x, base, kind, anchor="end", weight=weight, colour=colour)  # type: ignore[arg-type]
    return base + 1.8


# A cut between two mitres, enlarged


@dataclass(frozen=True, slots=True, kw_only=True)
class _Joint:
    """Two neighbours on a bar whose facing ends are not both square."""

    bar: StockBar
    one: StockPiece
    two: StockPiece

    @property
    def gap(self) -> float:
        """What the saw takes along the long edge."""
        return self.two.start.mm - self.one.end.mm


def _joint(frame: _Frame, bars: Sequence[StockBar]) -> _Joint | None:
    """The cut worth enlarging: between two mitres, best where the pieces are long."""
    joints = [
        _Joint(bar=bar, one=one, two=two)
        for bar in bars
        for one, two in zip(bar.pieces, bar.pieces[1:], strict=False)
        if one.right > 0 and two.left > 0
    ]
    return max(joints, key=lambda joint: min(joint.one.length.mm, joint.two.length.mm), default=None)


def _draw_detail(frame: _Frame, joint: _Joint, tops: dict[str, float], centre: Point) -> str:
    """Draw the cut in a ring, true to scale, and ring its place on the bar; return the detail's scale."""
    sheet = frame.sheet
    slopes = [frame.face * math.tan(math.radians(angle)) for angle in (joint.one.right, joint.two.left)]
    foot = sum(slopes) + joint.gap
    scale = next((s for s in _DETAILS if foot / s <= 36.0 and frame.face / s <= 22.0), _DETAILS[-1])
    disc = Disc(centre[0], centre[1], _RADIUS)
    sheet.line(circle(centre, _RADIUS), RING, closed=True)
    sheet.rings.append(disc)
    view = View(
        sheet=sheet,
        scale=1 / scale,
        origin=(centre[0] - joint.gap / 2 / scale, centre[1] - frame.face / 2 / scale),
        zone=Zone(box=_box(disc), disc=disc),
    )
    _cut_faces(view, frame, joint, slopes, _RADIUS * scale)
    _detail_sizes(view, frame, joint, slopes)
    _ring_on_bar(frame, joint, tops[joint.bar.number])
    return f"1:{scale}"


def _box(disc: Disc) -> Box:
    return Box(disc.x - disc.radius, disc.y - disc.radius, disc.x + disc.radius, disc.y + disc.radius)


def _cut_faces(view: View, frame: _Frame, joint: _Joint, slopes: Sequence[float], far: float) -> None:
    """Draw both pieces and the waste between them; nought is where the first piece's long edge ends."""
    face, gap = frame.face, joint.gap
    one = ((-2 * far, 0.0), (0.0, 0.0), (-slopes[0], face), (-2 * far, face))
    two = ((gap, 0.0), (2 * far, 0.0), (2 * far, face), (gap + slopes[1], face))
    view.part("first face", one, "new work in elevation")
    view.part("second face", two, "new work in elevation")
    depth = gap * face / sum(slopes)
    waste = (
        (gap - slopes[0] * depth / face, depth),
        (gap + slopes[1] - gap, face),
        (gap - slopes[0], face),
    )
    if depth < face and view.disc is not None:
        seen = clip_to_disc(view.all_at(waste), view.disc)
        if seen:
            view.sheet.hatch(seen, OFFCUT)
            view.sheet.line(seen, VISIBLE, closed=True)
    for mark, points in ((joint.one.mark, one), (joint.two.mark, two)):
        view.letter(mark, mark, points)


def _detail_sizes(view: View, frame: _Frame, joint: _Joint, slopes: Sequence[float]) -> None:
    above, below = view.at(0, 0)[1] - 5.5, view.at(0, frame.face)[1] + 6.5
    gap, feet = _figure(joint.gap), _figure(joint.gap + sum(slopes))
    dimension(
        view,
        view.at(0, 0),
        view.at(joint.gap, 0),
        above,
        gap,
        say("the saw takes %(gap)s along the edge", gap=gap),
    )
    ends = view.at(-slopes[0], frame.face), view.at(joint.gap + slopes[1], frame.face)
    dimension(view, *ends, below, feet, say("%(feet)s between the short points", feet=feet))


def _figure(mm: float) -> str:
    return f"{mm:.1f}".removesuffix(".0")


def _ring_on_bar(frame: _Frame, joint: _Joint, top: float) -> None:
    sheet = frame.sheet
    at = frame.x(joint.bar.trim.mm + joint.one.end.mm), top + frame.high / 2
    radius = frame.high / 2 + 1.4
    sheet.stroke(Stroke(points=circle(at, radius), pen=RING, closed=True, exempt=True))
    ring_letter(_view(sheet), "Z", at, radius)


# Notes

_Note = tuple[str, str]


def _closing(
    frame: _Frame, joint: _Joint | None, tops: dict[str, float], top: float, notes: Sequence[_Note]
) -> None:
    """Set the detail and the notes: side by side on paper, under one another on a phone."""
    sheet, left = frame.sheet, margin(frame.sheet)
    if joint is None:
        _note_column(sheet, notes, left, top, sheet.width - 2 * left)
        return
    centre = (left + _RADIUS if not sheet.narrow else sheet.width / 2, top + 7.5 + _RADIUS)
    scale = _draw_detail(frame, joint, tops, centre)
    words = say("Detail Z, %(scale)s", scale=scale)
    sheet.text(
        words, centre[0], top + cap(sheet.em("title"), "bold"), "title", anchor="middle", weight="bold"
    )
    if sheet.narrow:
        _note_column(sheet, notes, left, top + 2 * _RADIUS + 12.0, sheet.width - 2 * left)
        return
    column = left + 2 * _RADIUS + 8.0
    _note_column(sheet, notes, column, top, sheet.width - column - left)


def _note_column(sheet: Sheet, notes: Sequence[_Note], left: float, top: float, width: float) -> None:
    for head, words in notes:
        for line in wrapped(head, sheet.em("title"), width, "bold"):
            top = heading(sheet, line, left, top)
        top = paragraph(sheet, words, left, top - 0.6, width) + 2.2


def _marked(marks: str) -> tuple[_Note, ...]:
    return ((say("Marks"), marks),) if marks else ()


def _running_lengths(bars: Sequence[StockBar], kerf: Size) -> _Note:
    return say("Running lengths"), f"{_from_the_end(bars)} {_after_the_saw(bars, kerf)}"


def _scales(frame: _Frame, joint: _Joint | None, profile: str) -> _Note:
    steep = (
        say(", so mitres look steep; they are true in detail Z")
        if joint and frame.across < frame.along
        else ""
    )
    far = say(" The long edge lies away from you.") if joint else ""
    words = say(
        "Along 1:%(along)s, across 1:%(across)s%(steep)s.%(far)s Hatched is offcut and waste. All in mm.",
        along=frame.along,
        across=frame.across,
        steep=steep,
        far=far,
    )
    return say("How it is drawn"), f"{words} {_turning(profile)}".strip()


def _from_the_end(bars: Sequence[StockBar]) -> str:
    trims = {bar.trim.text for bar in bars if bar.trim.mm > 0}
    if len(trims) == 1:
        return say("Square each end by %(trims)s first and measure from the left end.", trims=trims.pop())
    return say("Measure from the left end.")


def _after_the_saw(bars: Sequence[StockBar], kerf: Size) -> str:
    taken = sorted(
        {round(piece.next_start.mm - piece.end.mm, 3) for bar in bars for piece in bar.pieces[:-1]}
    )
    each = " or ".join(_figure(mm) for mm in taken)
    allowed = say(", %(each)s along the edge", each=each) if each and each != kerf.text else ""
    return say(
        "Bold is the end of a piece, light where the next may begin: saw cut %(kerf)s%(allowed)s.",
        kerf=kerf.text,
        allowed=allowed,
    )


def _turning(profile: str) -> str:
    if profile in ("", "square"):
        return ""
    return say(
        "A moulding cannot be turned end for end: left and right are a pair, and no mitre nests in another."
    )


def _alt(bars: Sequence[StockBar], material: str, kerf: Size) -> str:
    each = " ".join(_alt_bar(bar) for bar in bars)
    return say(
        "Cutting plan for %(material)s, saw cut %(kerf)s mm. %(each)s",
        material=material,
        kerf=kerf.text,
        each=each,
    )


def _alt_bar(bar: StockBar) -> str:
    pieces = ", ".join(
        say("%(mark)s %(length)s to %(end)s", mark=piece.mark, length=piece.length.text, end=piece.end.text)
        for piece in bar.pieces
    )
    left = say("; offcut %(offcut)s", offcut=bar.offcut.text) if bar.offcut.mm > 0 else ""
    kept = say(", on hand") if bar.on_hand else ""
    return say(
        "Bar %(bar)s of %(length)s mm%(kept)s: %(pieces)s%(left)s.",
        bar=bar.number,
        length=bar.length.text,
        kept=kept,
        pieces=pieces,
        left=left,
    )
