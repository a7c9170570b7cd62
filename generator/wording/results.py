"""What calculators find, in words: refusals, remarks, what a way out does, uses, leaves and asks for.

`%(limit)s`, `%(actual)s` and `%(about)s` are the finding's own.
"""

from __future__ import annotations

from collections.abc import Mapping

FINDINGS: Mapping[str, str] = {
    "one-reading": "there is one reading alone; the packer rests on it",
    "member-unread": "nothing was read on the member called %(about)s",
    "no-packer": "the mean set-back is %(actual)s, so no packer is needed",
    "gap-over-filler": "the gap left at the wall is %(actual)s at its widest and the filler takes %(limit)s; "
    "tapered packers, or one for each member, would leave less",
    "twisted": "readings lie on both sides of the frame's edge, %(actual)s from least to greatest, with "
    "%(limit)s allowed on each side; an even packer cannot follow a twist",
    "packer-too-thin": "the strip would be %(actual)s thick and nothing under %(limit)s is ripped",
    "packer-too-thick": "the packer would be %(actual)s thick and the most is %(limit)s",
    "packer-too-wide": "the packer is %(actual)s wide and the edge has room for %(limit)s",
    "bearing-too-small": "the architrave would bear %(actual)s on the packer and the least is %(limit)s",
    "joint-too-wide": "the joint is %(actual)s wide and the sealant's maker allows %(limit)s",
    "end-too-near": "screws would stand %(actual)s from the end and need %(limit)s",
    "edge-too-near": "screws would stand %(actual)s from the edge and need %(limit)s",
    "no-screw": "no stock screw is at least %(actual)s long, to bite, and at most %(limit)s, not to come "
    "through",
    "no-pin": "no stock pin is at least %(actual)s long, to hold, and at most %(limit)s, not to come through",
    "square-edge-assumed": "the opening angle is for a square-edged architrave; a moulded edge opens further",
    "swing-too-small": "the leaf would open to %(actual)s and the least is %(limit)s",
    "skirting-too-near": "the architrave would stand %(actual)s in front of the skirting and "
    "the least is %(limit)s",
    "edge-too-thin": "the rebate would leave %(actual)s at the outer edge and the least is %(limit)s",
    "rebate-takes-back": "the rebate would be %(actual)s wide, the whole back of a %(limit)s architrave",
    "rebate-not-needed": "the architrave does not reach the plaster, so there is nothing to rebate",
    "no-set-back": "the plaster stands in front of the frame at no reading; %(actual)s is the most",
    "rebate-uneven": "readings differ by %(actual)s and a rebate of one depth allows %(limit)s",
    "strip-too-thick": "the strip would be %(actual)s thick and the most is %(limit)s",
    "plaster-uneven": "plaster would stand up to %(actual)s off the moved lining; the filler takes %(limit)s",
    "set-back-too-great": "plaster was read up to %(actual)s proud and the most for a packer is %(limit)s",
    "lining-stands": "the lining stands at the mean of the plaster already, so there is nothing to move",
    "eased-too-deep": "%(actual)s of plaster would come off and the most is %(limit)s",
    "plaster-too-thin": "%(actual)s of plaster would come off and it is %(limit)s thick",
    "wall-gap-filled": "a gap of up to %(actual)s behind the outer edge, at the wall: flexible filler",
    "plaster-eased": "plaster up to %(actual)s proud of the packer, at the frame: eased",
    "rebate-size": "a rebate %(limit)s wide and %(actual)s deep",
    "edge-needed": "the outer edge is %(actual)s thick; to stand clear of the skirting it needs %(limit)s",
    "gap-behind-rebate": "a gap of up to %(actual)s behind the rebate where the plaster is lowest",
    "strip-size": "a strip %(actual)s thick before planing",
    "planed-off": "up to %(actual)s planed off where the plaster is lowest",
    "joint-in-lining": "a joint in the face of the lining, to be filled and painted",
    "lining-moved": "the lining comes forward %(actual)s on this face and goes back as much on the other",
    "still-uneven": "plaster up to %(actual)s off the lining, since the lining is straight",
    "eased-band": "a band %(limit)s wide behind the architrave, up to %(actual)s deep",
    "six-disagree": "the six measurements do not meet: %(actual)s is left over at the top, and reading them "
    "to the step given explains %(limit)s",
    "measure-again": "take %(about)s again: it reads %(actual)s and the other five call for %(limit)s",
    "corner-far-off": "the corner at the %(about)s comes to %(actual)s; no door opening stands like that, so "
    "a size was taken wrongly",
    "square-enough": "no corner is more than %(actual)s off square, within the %(limit)s allowed: plain cuts "
    "will do",
    "certificate-decides": "it is a fire door: what may be trimmed, the gaps and the hinge places stand in "
    "its certificate and its maker's data, and nothing is worked out here",
    "leaf-too-narrow": "the leaf is %(actual)s wide and the opening with its gaps needs %(limit)s",
    "leaf-too-short": "the leaf is %(actual)s high and the opening with its gaps needs %(limit)s",
    "edge-trim-over": "%(actual)s would come off each long edge and the leaf allows %(limit)s",
    "end-trim-over": "%(actual)s would come off the height and the leaf allows %(limit)s",
    "edge-binds": "a square leading edge needs %(actual)s and the gap is %(limit)s: bevel it",
    "edge-clears": "a square leading edge needs %(actual)s of the %(limit)s gap; a bevel is for paint and "
    "swelling",
    "bevel-too-deep": "the bevel would take %(actual)s off the edge and the most is %(limit)s",
    "hinges-overlap": "the hinges would stand %(actual)s apart and each is %(limit)s high",
    "latch-out-of-leaf": "the latch would stand %(actual)s from the foot of a leaf %(limit)s high",
    "leaf-over-hinges": "the leaf weighs %(actual)s and its hinges are rated for %(limit)s",
    "carried-by-two": "the leaf weighs %(actual)s, more than the %(limit)s one person lifts: two people",
    "floor-catches": "the floor rises under the swing, so the gap at the foot must be %(actual)s and is "
    "%(limit)s",
    "way-too-narrow": "the way through, leaf open square, is %(actual)s and the least is %(limit)s",
    "piece-over-stock": "%(about)s is %(actual)s long and the longest piece its stock gives is %(limit)s",
    "stock-runs-out": "there are too few lengths on hand, and none to buy",
    "corners-disagree": "the corner angles are %(actual)s over what so many corners have together, and "
    "%(limit)s either way is allowed: take the angles again",
    "room-open": "going round, the last wall ends %(actual)s from where the first began, and %(limit)s is "
    "allowed: take walls and angles again",
    "skirting-past-architrave": "at door %(about)s the architrave stands %(actual)s in front of the "
    "skirting and the least is %(limit)s",
    "no-heading-place": "piece %(about)s would be %(actual)s, the longest length is %(limit)s, and no "
    "heading keeps clear of ends, doors and radiators",
    "cornice-over-stock": "piece %(about)s is %(actual)s and the longest length is %(limit)s: carry longer "
    "stock, for a joint in the length is not set out here",
    "cornice-short-at-saw": "piece %(about)s is %(actual)s along its shorter edge, too short to be held at "
    "the saw (%(limit)s): cut one end on a longer length, and saw it off last",
    "ground-too-thin": "the ground is %(actual)s deep behind the moulding and a pin needs %(limit)s",
    "behind-radiator": "piece %(about)s, %(actual)s long, runs behind a radiator: one length, fitted with "
    "the radiator off or before it is hung",
    "block-not-run": "piece %(about)s is %(actual)s long: make it a block",
    "scribed-both-ends": "piece %(about)s, %(actual)s, closes the room and is scribed at both ends",
    "beyond-6-to-14": "moisture of %(actual)s per cent lies outside the 6 to 14 per cent for which the "
    "movement is known",
    "no-swelling": "the floor is laid as damp as it will ever be, so it only shrinks",
    "maker-not-asked": "the maker's own gap is not given; it governs where there is one",
    "rows-shared": "the last row would be too narrow, so first and last are both ripped to %(actual)s",
    "rows-shifted": "a strip along a wall would be too narrow, so row 1 is ripped to %(actual)s and all rows "
    "shift with it",
    "strip-narrow": "no width of row 1 keeps every strip along a wall to %(limit)s; the narrowest is "
    "%(actual)s",
    "mixed-lengths": "boards come in mixed lengths, %(actual)s on the mean, so the count is a likely one",
    "no-floor": "no way of starting the rows keeps least end and stagger with boards of %(limit)s in rows of "
    "%(actual)s",
    "bay-closed": "between studs %(about)s there is only %(actual)s: no noggin",
    "stud-over-stock": "studs are %(actual)s and the longest length is %(limit)s",
    "joint-at-door": "a board joint at %(actual)s falls at the edge of opening %(about)s: cut a board round",
    "reveal-tapers": "the reveal is out of parallel by %(actual)s and %(limit)s can be scribed",
    "ear-without-nosing": "the board has ears of %(actual)s and no nosing to return along",
    "board-thin-for-span": "the board is %(actual)s thick and over so long a reveal %(limit)s is usual: set "
    "packers nearer",
    "sphere-passes": "the gap is %(actual)s, and a sphere of %(limit)s would pass",
    "held-low": "%(about)s is %(actual)s, the least is %(limit)s and nobody is named who decided on it",
    "held-high": "%(about)s is %(actual)s, the most is %(limit)s and nobody is named who decided on it",
    "held-reached": "%(about)s is %(actual)s, it must be less than %(limit)s and nobody is named who "
    "decided on it",
    "held-may-cross": "%(about)s stands inside as worked and may come to %(actual)s, where %(limit)s is the "
    "limit",
    "rises-disagree": "the rises read one by one are %(actual)s off the whole height, and reading them to "
    "the step given explains %(limit)s: read them again",
    "end-gap-wide": "with fillets cut to the step given the gap at the newels is %(actual)s and the most is "
    "%(limit)s: cut them to a finer step",
    "end-gap-none": "fillets cut to the step given are %(actual)s too long for the run at either newel: "
    "cut them to a finer step",
    "rail-too-low": "between the rails there is only %(actual)s for a baluster",
    "packer-may-differ": "within the limits of the readings the packer comes to anything from %(limit)s "
    "to %(actual)s: rip it after reading again, or rip for both",
    "packer-may-stand-proud": "the packer is worked to stand %(limit)s proud of the plaster at the wall and "
    "may stand %(actual)s proud",
    "plaster-may-stand-proud": "plaster is worked to stand %(limit)s proud of the packer and may stand "
    "%(actual)s proud",
    "packer-may-not-fit": "the packer is worked to fit with %(limit)s to spare and may be %(actual)s too "
    "wide",
    "mitre-may-open": "cut as worked, the mitre at the %(about)s may open by %(actual)s: its corner is known "
    "to %(limit)s either way",
    "skirting-may-stand-past": "the architrave is worked to stand %(limit)s in front of the skirting, which "
    "may stand %(actual)s past it",
    "headroom-not-given": "the headroom was not given; it must be at least %(limit)s",
}

WAYS: Mapping[str, str] = {
    "packer": "Packer with a double quirk",
    "rebate": "Rebated back",
    "extension": "Extension strip",
    "lining": "Reset the lining",
    "plaster": "Ease the plaster",
}

OPERATIONS: Mapping[str, str] = {
    "rip-packers": "rip three packers to one thickness",
    "bare-edge": "bare the edge of the lining",
    "glue-packers": "glue and pin the packers to the first quirk",
    "mark-second-quirk": "mark the second quirk on the packers",
    "fit-architrave": "mitre and fit the architrave",
    "test-piece": "try the rebate on a test piece",
    "rebate-back": "run a rebate along the back of head and legs",
    "seal-rebate": "seal the cut face",
    "rip-strips": "rip three strips as wide as the lining's edge",
    "glue-strips": "glue and pin the strips flush with the lining's face",
    "plane-strips": "plane the strips down to the plaster",
    "fill-joint": "fill and rub down the joint in the lining's face",
    "take-off-door": "take off the door and the stops",
    "free-lining": "cut the fixings and free the lining",
    "set-lining": "set the lining again, plumb, level and out of wind",
    "make-good": "make good both faces of the wall",
    "hang-door": "hang the door again and set its gaps",
    "find-services": "find cables and pipes beside the opening",
    "score-plaster": "score the plaster along the architrave's outer edge",
    "pare-plaster": "pare the plaster back to the frame, dust taken at the blade",
}

COSTS: Mapping[str, str] = {
    "packer": "packer",
    "architrave": "architrave",
    "rebate": "rebate run along the back",
    "strip": "extension strip",
    "eased": "plaster eased along the outer edge",
}

ASKS: Mapping[str, str] = {
    "painted-lining": "is the lining to be painted, so that the joint may be filled?",
    "other-face": "what happens at the other face, where the lining goes back by as much?",
    "fire-door": "is it a fire door, whose frame is not moved without the door's own evidence?",
    "services": "is there a cable or pipe behind or beside the lining?",
    "moulding-thickness": "is the moulding thick enough over the whole of the rebate?",
    "asbestos": "does the asbestos survey cover this plaster?",
}

HELD: Mapping[str, str] = {
    "rise": "rise",
    "going": "going",
    "stride": "twice the rise and the going",
    "pitch": "pitch",
    "headroom": "headroom",
    "rises-apart": "greatest rise less least",
    "goings-apart": "greatest going less least",
    "highest": "highest step",
    "lowest": "lowest step",
    "shortest": "shortest going",
    "guard-flight": "guarding over the pitch line",
    "guard-landing": "guarding over the landing",
    "handrail": "handrail over the pitch line",
    "gap": "widest gap between balusters",
}

HELD_AGAINST: Mapping[str, str] = {
    "private": "Approved Document K (England, 2013) Table 1.1, private stair",
    "utility": "Approved Document K (England, 2013) Table 1.1, utility stair",
    "general access": "Approved Document K (England, 2013) Table 1.1, general access stair",
    "stride": "Approved Document K (England, 2013) paragraph 1.3",
    "headroom": "Approved Document K (England, 2013), headroom",
    "even": "this firm's own number, for steps that should be all alike",
    "dwelling": "Approved Document K (England, 2013) Diagram 3.1, single family dwelling",
    "other": "Approved Document K (England, 2013) Diagram 3.1, most other buildings",
    "handrail": "Approved Document K (England, 2013), handrails",
    "sphere": "Approved Document K (England, 2013) section 3, where children under five may be",
}

HELD_RANGES: Mapping[str, str] = {
    "least most": "from %(least)s to %(most)s",
    "least": "%(least)s or more",
    "most": "%(most)s or less",
    "under": "less than %(under)s",
}

HELD_VERDICTS: Mapping[str, str] = {
    "inside": "inside",
    "nobody yet": "outside, and nobody has decided on it yet",
    "designer": "outside; the designer has decided on it in writing",
    "building control": "outside; building control has decided on it in writing",
}
