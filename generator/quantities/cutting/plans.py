"""The cutting plans of a ledger: one for each plan the method asks for and each section its pieces have."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from decimal import Decimal

from generator.model.catalogue import Material
from generator.model.folder import Project
from generator.model.method import Cutting
from generator.problems import ProblemLog
from generator.quantities.cut_pieces import Piece
from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, StockLength, taken_down, taken_up
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.task import plan_from, plan_of
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.results import finding_words
from generator.quantities.worked import Worked
from generator.units import LENGTH, print_value

HABIT = Decimal(10)
"""Per cent added for waste where a method says nothing: common practice, no source."""

Cut = tuple[OpeningLedger, Piece]


def cutting_plans(ledger: Ledger, project: Project, log: ProblemLog) -> tuple[CuttingPlan, ...]:
    """Every cutting plan of a method or job, worked out here; faults of the files are logged."""
    plans = tuple(plan_of(order) for order in cutting_orders(ledger, project, log))
    log_refused(ledger, plans, log)
    return plans


def plans_from(
    ledger: Ledger, orders: Sequence[CuttingOrder], made: Sequence[bytes], log: ProblemLog
) -> tuple[CuttingPlan, ...]:
    """The plans of orders from what `task.work` made of each; a refused one is logged."""
    plans = tuple(plan_from(order, each) for order, each in zip(orders, made, strict=True))
    log_refused(ledger, plans, log)
    return plans


def log_refused(ledger: Ledger, plans: Sequence[CuttingPlan], log: ProblemLog) -> None:
    """Log why each plan without bars has none, at the plan in the method."""
    for plan in plans:
        name = plan.order.name
        for finding in plan.refused:
            because = finding_words(finding, space=" ")
            log.add("cutting-refused", ledger.method.cutting[name].span, name=name, because=because)


def cutting_orders(ledger: Ledger, project: Project, log: ProblemLog) -> tuple[CuttingOrder, ...]:
    """What each cutting plan of a method wants cut, from which stock; pieces of unlike section stand apart.

    `project` is taken so that every slow step has one signature; all is in the ledger's bound materials.
    """
    return tuple(
        order
        for name, cutting in ledger.method.cutting.items()
        for order in _Asked(ledger, name, cutting, log).orders()
    )


class _Asked:
    """One cutting plan as the method asks for it."""

    def __init__(self, ledger: Ledger, name: str, cutting: Cutting, log: ProblemLog) -> None:
        self._ledger, self._name, self._cutting, self._log = ledger, name, cutting, log

    def orders(self) -> Iterator[CuttingOrder]:
        """An order for each section among the pieces; none where something is missing, which is logged."""
        material = self._ledger.materials.get(self._cutting.of.value)
        cuts, kerf, trim = self._cuts(), self._kerf(), self._trim()
        stock = self._stock(material) if material else None
        if material is None or kerf is None or trim is None or not cuts or not stock:
            return
        if self._wider(material, cuts) or self._of_nothing(cuts):
            return
        for (width, thickness), own in _by_section(cuts).items():
            yield CuttingOrder(
                name=self._name,
                label=material.label.value,
                width=width,
                thickness=thickness,
                pieces=tuple(_piece(*cut) for cut in own),
                stock=stock,
                kerf=kerf,
                trim=trim,
                habit=self._habit(),
                profile=material.profile.value if material.profile else "square",
            )

    def _cuts(self) -> list[Cut]:
        """The pieces of every opening; what could not be worked out has its fault already."""
        name, _, field = self._cutting.pieces.value.partition(".")
        cuts: list[Cut] = []
        for opening in self._ledger.openings:
            entry = self._ledger.entry(name, opening)
            found = _field(entry, field) if entry else ()
            if not isinstance(found, tuple) or not all(isinstance(piece, Piece) for piece in found):
                self._wrong_pieces()
                return []
            cuts.extend((opening, piece) for piece in found)
        return cuts

    def _wider(self, material: Material, cuts: Sequence[Cut]) -> bool:
        """Whether a piece is wider than the material it is to be cut from, which is logged."""
        widest = max((piece.width for _, piece in cuts), key=lambda width: width.magnitude)
        if material.width is None or widest.magnitude <= material.width.value.magnitude:
            return False
        wanted, width = (print_value(value).text() for value in (widest.value, material.width.value))
        role = self._cutting.of
        self._log.add(
            "cutting-wider",
            role.span,
            name=self._name,
            wanted=wanted,
            key=material.name,
            role=role.value,
            width=width,
        )
        return True

    def _of_nothing(self, cuts: Sequence[Cut]) -> bool:
        """Whether a piece has no length or less than none, which is logged for each such piece."""
        word, found = self._cutting.pieces, [cut for cut in cuts if cut[1].cut_length.magnitude <= 0]
        for opening, piece in found:
            mark, length = _mark(opening, piece), print_value(piece.cut_length.value).text()
            self._log.add("cutting-nothing", word.span, name=self._name, mark=mark, length=length)
        return bool(found)

    def _wrong_pieces(self) -> None:
        word = self._cutting.pieces
        self._log.add("cutting-pieces", word.span, name=word.value, example="architrave_lengths.pieces")

    def _kerf(self) -> Decimal | None:
        kerf = self._cutting.saw_kerf
        if kerf is None:
            self._log.add("cutting-kerf", self._cutting.span, name=self._name)
            return None
        return Decimal(str(kerf.value.magnitude))

    def _trim(self) -> int | None:
        word = self._cutting.end_trim
        if word is None:
            return 0
        name, _, field = word.value.partition(".")
        if name in self._ledger.broken:
            return None
        entry = self._ledger.entry(name)
        found = _field(entry, field) if entry else None
        if not isinstance(found, Worked) or found.dimension != LENGTH or found.magnitude < 0:
            self._log.add("cutting-trim", word.span, name=word.value)
            return None
        return taken_up(found.magnitude)

    def _habit(self) -> Decimal:
        given = self._cutting.waste_habit
        return HABIT if given is None else Decimal(str(given.value.magnitude)) * 100

    def _stock(self, material: Material) -> tuple[StockLength, ...] | None:
        """Lengths on hand, then those to buy; None where there are none or their prices do not match."""
        bought = self._bought(material)
        if bought is None:
            return None
        role = self._cutting.of
        job = self._ledger.job
        kept = job.offcuts.get(role.value, ()) if job else ()
        on_hand = Counter(taken_down(length.value.magnitude) for length in kept)
        stock = (
            *(StockLength(length=length, on_hand=count) for length, count in sorted(on_hand.items())),
            *bought,
        )
        if not stock:
            self._log.add("cutting-stock", role.span, key=material.name, role=role.value)
        return stock

    def _bought(self, material: Material) -> tuple[StockLength, ...] | None:
        prices = [int(price.value.magnitude * 100) for price in material.prices]
        if prices and (len(prices) != len(material.stock) or min(prices) <= 0):
            lengths, count = len(material.stock), len(prices)
            self._log.add("cutting-prices", material.span, key=material.name, lengths=lengths, prices=count)
            return None
        return tuple(
            StockLength(length=taken_down(length.value.magnitude), price=prices[at] if prices else None)
            for at, length in enumerate(material.stock)
        )


def _field(entry: Entry, field: str) -> object:
    return getattr(entry.result, field, None) if field else entry.result


def _by_section(cuts: Sequence[Cut]) -> dict[tuple[Decimal, Decimal | None], list[Cut]]:
    """The pieces by width and thickness, greatest first; a ripped packer shares a length with its like."""
    sections: dict[tuple[Decimal, Decimal | None], list[Cut]] = {}
    for opening, piece in cuts:
        thickness = None if piece.thickness is None else Decimal(str(piece.thickness.magnitude))
        sections.setdefault((Decimal(str(piece.width.magnitude)), thickness), []).append((opening, piece))
    return dict(sorted(sections.items(), key=lambda each: [-(size or 0) for size in each[0]]))


def _mark(opening: OpeningLedger, piece: Piece) -> str:
    """The piece's mark on the job."""
    return f"{opening.mark}{piece.mark}" if opening.row else piece.mark


def _piece(opening: OpeningLedger, piece: Piece) -> PieceToCut:
    length = taken_up(piece.cut_length.magnitude)
    return PieceToCut(
        mark=_mark(opening, piece),
        opening=opening.mark if opening.row else "",
        name=", ".join(part for part in (piece.role, piece.name) if part),
        hand=piece.hand,
        length=length,
        over=length - taken_up(piece.long_point.magnitude),
        left_end=piece.left_end.number,
        right_end=piece.right_end.number,
        left_tilt=piece.left_tilt.number if piece.left_tilt else 0.0,
        right_tilt=piece.right_tilt.number if piece.right_tilt else 0.0,
    )
