"""A window board: its width and length, the notch at each ear, packers under it and its fall."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, Margin, calculator
from generator.quantities.functions import greatest, least, round_up
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, plain
from generator.quantities.workings import print_worked


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowBoard:
    """A board between frame and nosing, with ears past the reveal.

    `width` and `length` are the piece to cut; a notch is as long as the ear, and `left_notch` and
    `right_notch` are how far it runs from the board's edge at the frame to the face of the plaster.
    """

    width: Worked
    length: Worked
    left_notch: Worked
    right_notch: Worked
    out_of_parallel: Worked
    packers: Worked
    packer_pitch: Worked
    nosing: Worked
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "reveal_width": "1210 mm",
            "left_depth": "148 mm",
            "right_depth": "152 mm",
            "projection": "30 mm",
            "ear": "40 mm",
            "frame_gap": "2 mm",
            "packer_spacing": "450 mm",
            "packer_end": "60 mm",
        },
        gives={
            "width": "180 mm",
            "length": "1290 mm",
            "left_notch": "146 mm",
            "right_notch": "150 mm",
            "packers": "4",
            "packer_pitch": "363.3 mm",
        },
    )
)
def window_board(
    *,
    reveal_width: Length,
    left_depth: Length,
    right_depth: Length,
    projection: Margin,
    ear: Margin,
    frame_gap: Margin,
    packer_spacing: Length,
    packer_end: Margin,
    tongue: Margin | None = None,
    board_thickness: Length | None = None,
    thickness_for_span: Length | None = None,
    most_taper: Margin | None = None,
) -> WindowBoard:
    """A window board's width, length and notches, from the reveal at the board's level.

    Lengths in; lengths and a count out. Depths run from the frame to the face of the plaster. `frame_gap`
    is left along the frame for sealant, `tongue` goes into a groove of the sill instead. `projection` is
    the nosing past the plaster, `ear` the board past the reveal at each side. The middles of the end
    packers stand `packer_end` in from the reveal. A reveal out of parallel by more than `most_taper` is
    refused. Own derivation; the spacing of packers is common practice, no source.
    """
    if tongue is not None and tongue.magnitude and frame_gap.magnitude:
        raise InputRefused("tongue-and-gap", "tongue")
    deepest, shallowest = greatest((left_depth, right_depth)), least((left_depth, right_depth))
    at_frame = -tongue if tongue is not None and tongue.magnitude else frame_gap
    between = reveal_width - 2 * packer_end
    if between.number <= 0:
        raise InputRefused("packers-past-reveal", "packer_end", found=print_worked(packer_end).text())
    bays = round_up(between / packer_spacing, plain(1))
    taper = deepest - shallowest
    return WindowBoard(
        width=deepest + projection - at_frame,
        length=reveal_width + 2 * ear,
        left_notch=left_depth - at_frame,
        right_notch=right_depth - at_frame,
        out_of_parallel=taper,
        packers=bays + 1,
        packer_pitch=between / bays,
        nosing=reveal_width + 2 * ear + 2 * projection,
        notes=_notes(reveal_width, board_thickness, thickness_for_span),
        refused=found(
            (
                most_taper is not None and taper > most_taper,
                Finding(code="reveal-tapers", limit=most_taper, actual=taper),
            ),
            (
                ear.magnitude > 0 and projection.magnitude == 0,
                Finding(code="ear-without-nosing", actual=ear),
            ),
        ),
    )


_LONG_SPAN = 1500


def _notes(reveal: Worked, thickness: Worked | None, wanted: Worked | None) -> Findings:
    """A long board needs more thickness or nearer packers: common practice, no source."""
    if thickness is None or wanted is None or reveal.number <= _LONG_SPAN or thickness >= wanted:
        return ()
    return (Finding(code="board-thin-for-span", limit=wanted, actual=thickness),)
