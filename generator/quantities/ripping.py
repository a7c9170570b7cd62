"""Ripping batches: strips of one section, over all openings, that the saw is set for once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.model.amounts import Amount
from generator.model.catalogue import Material
from generator.quantities.cut_pieces import Piece
from generator.quantities.functions import greatest, total
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.quantities.worked import Worked, named, plain

Cut = tuple[OpeningLedger, Piece]


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """Strips to be ripped to one section: how many, their length together, the longest, for which openings.

    `thickness` is what the fence is set to. `material` is the label of the entry they are cut from.
    """

    material: str
    role: str
    thickness: Worked
    width: Worked
    pieces: Worked
    metres: Worked
    longest: Worked
    openings: tuple[str, ...]


def ripping_batches(ledger: Ledger) -> tuple[Batch, ...]:
    """The batches of every cutting plan whose pieces are not of the section their material is bought in.

    Plans in the order of the method, thickest first. An opening that could not be worked out is not in them.
    """
    return tuple(
        _batch(material, cuts)
        for name, cutting in ledger.method.cutting.items()
        if (material := ledger.materials.get(cutting.of.value))
        for cuts in _by_section(list(_ripped(ledger, cutting.pieces.value, material)))
    )


def _ripped(ledger: Ledger, dotted: str, material: Material) -> Iterator[Cut]:
    name, _, field = dotted.partition(".")
    for opening in ledger.openings:
        entry = ledger.entry(name, opening)
        found = getattr(entry.result, field, ()) if entry and field else entry.result if entry else ()
        for piece in found if isinstance(found, tuple) else ():
            if isinstance(piece, Piece) and piece.thickness and _is_ripped(piece, material):
                yield opening, piece


def _is_ripped(piece: Piece, material: Material) -> bool:
    sides = (("thickness", piece.thickness), ("width", piece.width))
    return any(side and not _bought(material, name, side) for name, side in sides)


def _bought(material: Material, name: str, side: Worked) -> bool:
    """Whether the material comes in this size."""
    found = material.fields.get(name)
    return isinstance(found, Amount) and found.value == side.value


def _by_section(cuts: Sequence[Cut]) -> list[list[Cut]]:
    sections: dict[tuple[float, float], list[Cut]] = {}
    for opening, piece in cuts:
        assert piece.thickness is not None
        sections.setdefault((piece.thickness.number, piece.width.number), []).append((opening, piece))
    return [cuts for _, cuts in sorted(sections.items(), key=lambda each: each[0], reverse=True)]


def _batch(material: Material, cuts: Sequence[Cut]) -> Batch:
    first = cuts[0][1]
    assert first.thickness is not None
    lengths = [_marked(opening, piece) for opening, piece in cuts]
    return Batch(
        material=material.label.value,
        role=first.role,
        thickness=first.thickness,
        width=first.width,
        pieces=plain(len(cuts)),
        metres=total(lengths),
        longest=greatest(lengths),
        openings=tuple(dict.fromkeys(opening.mark for opening, _ in cuts if opening.row)),
    )


def _marked(opening: OpeningLedger, piece: Piece) -> Worked:
    """The length to cut under the mark the piece has on the job, so that a long sum stays readable."""
    mark = f"{opening.mark}{piece.mark}" if opening.row else piece.mark
    return named(piece.cut_length, mark, piece.name)
