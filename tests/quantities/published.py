"""Worked numbers that the calculators must give, each with where it comes from and how it is known.

`known` is "own derivation" (arithmetic on a drawing, checked by an independent construction),
"common practice, no source", "published", or "published, told from memory and not seen again".
Which calculators are held against what else is told in `evidence.py`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.quantities.calculator import InputText

OWN = "own derivation"
PRACTICE = "common practice, no source"
PUBLISHED = "published"
REMEMBERED = "published, told from memory and not seen again"


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A calculator's inputs with what comes out, as printed, and the source of both."""

    calculator: str
    inputs: Mapping[str, InputText]
    gives: Mapping[str, str]
    source: str
    known: str


LEG = (
    "left:0 3.1 mm",
    "left:400 3.6 mm",
    "left:800 4.4 mm",
    "left:1200 4 mm",
    "left:1600 2.7 mm",
    "left:2000 3.4 mm",
)

PUBLISHED_VALUES = (
    Worked(
        calculator="architrave_set",
        inputs={
            "opening_width": "775 mm",
            "opening_height": "1994 mm",
            "quirk": "6 mm",
            "head_width": "68 mm",
            "floor_gap": "3 mm",
        },
        gives={
            "head_short_point": "787 mm",
            "head_long_point": "923 mm",
            "leg_short_point": "1997 mm",
            "leg_long_point": "2065 mm",
            "metres": "5053 mm",
            "head_saw_angle": "45°",
        },
        source="ring of three pieces round a square opening, by hand and as polygons",
        known=OWN,
    ),
    Worked(
        calculator="even_packer",
        inputs={"readings": LEG, "step": "0.5 mm"},
        gives={
            "thickness": "4 mm",
            "mean": "3.5 mm",
            "spread": "1.7 mm",
            "widest_wall_gap": "1.3 mm",
            "widest_frame_gap": "0.4 mm",
            "never_proud": "4.5 mm",
        },
        source="mean of the readings taken slightly up rather than down",
        known=PRACTICE,
    ),
    Worked(
        calculator="packer_fit",
        inputs={
            "frame_edge": "34 mm",
            "first_quirk": "5 mm",
            "second_quirk": "4 mm",
            "packer_width": "26 mm",
            "overlap": "0 mm",
            "clearance": "1 mm",
            "least_bearing": "10 mm",
        },
        gives={"needed": "31 mm", "room": "33 mm", "bearing": "22 mm"},
        source="section across the lining's edge",
        known=OWN,
    ),
    Worked(
        calculator="glue_bead",
        inputs={"length": "1 m", "diameter": "6 mm"},
        gives={"volume": "28.3 ml"},
        source="1 mm² of section over 1 m is 1 ml",
        known=OWN,
    ),
    Worked(
        calculator="glue_bead",
        inputs={"length": "15.8 m", "diameter": "5 mm"},
        gives={"volume": "310.2 ml"},
        source="a 310 ml cartridge runs 15.8 m as a round bead of 5 mm",
        known=OWN,
    ),
    Worked(
        calculator="fillet_bead",
        inputs={"length": "17.2 m", "width": "6 mm", "depth": "6 mm"},
        gives={"volume": "309.6 ml"},
        source="a 310 ml cartridge runs 17.2 m as a fillet of 6 mm",
        known=OWN,
    ),
    Worked(
        calculator="packs",
        inputs={"amount": "843.5 ml", "pack": "310 ml"},
        gives={"": "3"},
        source="42.6 m of 6 mm fillet with a tenth over",
        known=OWN,
    ),
    Worked(
        calculator="pins",
        inputs={"length": "923 mm", "spacing": "300 mm", "end": "50 mm"},
        gives={"count": "4", "pitch": "274.3 mm"},
        source="even bays no longer than the spacing",
        known=OWN,
    ),
    Worked(
        calculator="pins",
        inputs={"length": "400 mm", "spacing": "300 mm", "end": "50 mm"},
        gives={"count": "2", "pitch": "300 mm"},
        source="one whole bay",
        known=OWN,
    ),
    Worked(
        calculator="pins",
        inputs={"length": "100 mm", "spacing": "300 mm", "end": "50 mm"},
        gives={"count": "1", "pitch": "0 mm"},
        source="a piece no longer than both ends takes one in the middle",
        known=OWN,
    ),
    Worked(
        calculator="marks",
        inputs={"length": "1995 mm", "spacing": "300 mm"},
        gives={"count": "8", "last_bay": "195 mm"},
        source="a mark every 300 mm or so",
        known=PRACTICE,
    ),
    Worked(
        calculator="door_swing",
        inputs={"pin_projection": "5 mm", "depth": "18 mm", "quirk": "6 mm"},
        gives={"angle": "135.2°"},
        source="square-edged architrave, flush frame, leaf turned by trial",
        known=OWN,
    ),
    Worked(
        calculator="door_swing",
        inputs={"pin_projection": "5 mm", "depth": "24 mm", "quirk": "6 mm"},
        gives={"angle": "122.1°"},
        source="the same with 6 mm more in front of the frame",
        known=OWN,
    ),
    Worked(
        calculator="door_swing",
        inputs={"pin_projection": "5 mm", "depth": "24 mm", "quirk": "12 mm"},
        gives={"angle": "135.1°"},
        source="a second quirk of 6 mm gives back what the set-back took",
        known=OWN,
    ),
    Worked(
        calculator="mitred_set",
        inputs={"shape": "opening_shape", "quirk": "6 mm", "head_width": "68 mm"},
        gives={"head_short_point": "867 mm", "head_long_point": "1003.6 mm", "right_foot_saw": "−0.2°"},
        source="corners (0,0) (840,0) (846,2010) (−9,2003) set out by coordinates, read to 0.1 mm",
        known=OWN,
    ),
    Worked(
        calculator="sprung_mitre",
        inputs={"spring": "38 deg", "corner": "90 deg", "turns": "internal", "width": "96 mm"},
        gives={"mitre": "31.6°", "bevel": "33.9°"},
        source="table of crown settings in mitre-saw manuals, 38° spring, 90° corner: 31.6 and 33.9",
        known=PUBLISHED,
    ),
    Worked(
        calculator="sprung_mitre",
        inputs={"spring": "45 deg", "corner": "90 deg", "turns": "internal", "width": "96 mm"},
        gives={"mitre": "35.3°", "bevel": "30°"},
        source="table of crown settings in mitre-saw manuals, 45° spring, 90° corner: 35.3 and 30.0",
        known=PUBLISHED,
    ),
    *(
        Worked(
            calculator="sprung_mitre",
            inputs={
                "spring": f"{spring} deg", "corner": f"{corner} deg", "turns": turns, "width": "96 mm",
            },
            gives={"mitre": f"{mitre}°", "bevel": f"{bevel}°"},
            source=f"table of crown settings in mitre-saw manuals, {spring}° spring, {corner}° corner",
            known=REMEMBERED,
        )
        for spring, corner, turns, mitre, bevel in (
            (38, 67, "external", "42.9", "41.1"),
            (38, 91, "internal", "31.2", "33.5"),
            (38, 135, "internal", "14.3", "17.6"),
            (45, 91, "external", "34.8", "29.7"),
            (45, 135, "internal", "16.3", "15.7"),
        )
    ),
    Worked(
        calculator="sprung_mitre",
        inputs={"spring": "52 deg", "corner": "90 deg", "turns": "internal", "width": "96 mm"},
        gives={"mitre": "38.2°", "bevel": "25.8°", "drop": "59.1 mm", "projection": "75.6 mm"},
        source="the 38° moulding turned about: drop and projection change places",
        known=OWN,
    ),
    Worked(
        calculator="cornice_ground",
        inputs={
            "spring": "45 deg", "width": "100 mm", "thickness": "20 mm", "edge": "0 mm", "clearance": "2 mm",
            "least_depth": "15 mm",
        },
        gives={"up": "39.6 mm", "out": "39.6 mm", "depth": "28 mm", "ceiling_flat": "28.3 mm"},
        source="100 ÷ √2 less 20 × √2 and 2 × √2; half of 100 less 20 and 2 to the corner",
        known=OWN,
    ),
    Worked(
        calculator="moulding_section",
        inputs={
            "shape": "ovolo",
            "width": "119 mm",
            "thickness": "18 mm",
            "radius": "8 mm",
            "fillet_depth": "2 mm",
            "fillet_breadth": "3 mm",
        },
        gives={"area": "2106 mm²"},
        source="119 × 18 less (1 − π/4) × 8² and a fillet 2 deep over 8 + 3",
        known=OWN,
    ),
    Worked(
        calculator="leading_edge",
        inputs={
            "leaf_width": "762.5 mm",
            "leaf_thickness": "44 mm",
            "pin_inset": "1.25 mm",
            "pin_projection": "6 mm",
            "latch_gap": "3 mm",
            "most_bevel": "3 mm",
            "rating": "plain",
        },
        gives={"gap_needed": "1.6 mm", "bevel_angle": "2.1°"},
        source="leaf turned on its pin by trial: 1.635 mm",
        known=OWN,
    ),
    Worked(
        calculator="leaf_mass",
        inputs={"width": "762 mm", "height": "1981 mm", "thickness": "44 mm", "density": "600 kg/m3"},
        gives={"mass": "39.9 kg"},
        source="width by height by thickness by density of the whole leaf, about 40 kg",
        known=OWN,
    ),
    Worked(
        calculator="hinge_set_out",
        inputs={
            "leaf_height": "1981 mm",
            "hinges": "3",
            "hinge_height": "100 mm",
            "from_top": "150 mm",
            "from_foot": "225 mm",
            "head_gap": "3 mm",
            "rating": "plain",
        },
        gives={"first": "200 mm", "last": "1706 mm", "spacing": "753 mm"},
        source="top hinge 150 down, bottom hinge 225 up, the third midway",
        known=PRACTICE,
    ),
    Worked(
        calculator="movement",
        inputs={"width": "232 mm", "coefficient": "0.00245", "moisture_now": "8", "moisture_then": "11"},
        gives={"change": "1.7 mm", "width": "233.7 mm"},
        source="USDA Wood Handbook FPL-GTR-190 chapter 13, flat-sawn white fir",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "red oak", "sawn": "quarter"},
        gives={"": "0.00158"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "red oak", "sawn": "flat"},
        gives={"": "0.00369"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "white oak", "sawn": "quarter"},
        gives={"": "0.0018"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "american beech", "sawn": "flat"},
        gives={"": "0.00431"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "sugar maple", "sawn": "flat"},
        gives={"": "0.00353"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="movement_coefficient",
        inputs={"species": "black cherry", "sawn": "quarter"},
        gives={"": "0.00126"},
        source="USDA Wood Handbook FPL-GTR-190 Table 13-5",
        known=PUBLISHED,
    ),
    Worked(
        calculator="skirting_run",
        inputs={
            "room": "room",
            "thickness": "15 mm",
            "door_walls": ("1", "5"),
            "door_starts": ("1000 mm", "600 mm"),
            "door_widths": ("923 mm", "1003 mm"),
            "longest": "6 m",
            "joint_clear": "300 mm",
        },
        gives={"net": "16674 mm", "metres": "16704 mm", "piece_count": "8", "mitres": "1", "headings": "0"},
        source="an L-shaped room with two doors, by hand and as an inset polygon",
        known=OWN,
    ),
    Worked(
        calculator="partition_frame",
        inputs={
            "length": "4873 mm",
            "height": "2400 mm",
            "spacing": "600 mm",
            "stud_thickness": "47 mm",
            "plate_thickness": "47 mm",
            "noggin_rows": "2",
        },
        gives={"studs": "10"},
        source="studs counted on a drawn grid; length over spacing plus one says 9",
        known=OWN,
    ),
    Worked(
        calculator="partition_frame",
        inputs={
            "length": "2456 mm",
            "height": "2400 mm",
            "spacing": "600 mm",
            "stud_thickness": "47 mm",
            "plate_thickness": "47 mm",
            "noggin_rows": "2",
        },
        gives={"studs": "6"},
        source="the stud on the last centre stands tight beside the end stud",
        known=OWN,
    ),
    Worked(
        calculator="straight_stair",
        inputs={"total_rise": "2600 mm", "going": "225 mm", "risers": "13"},
        gives={"rise": "200 mm", "pitch": "41.6°", "stride": "625 mm"},
        source="Approved Document K 2013 Table 1.1: rise 150 to 220, going 220 to 300, at most 42°",
        known=PUBLISHED,
    ),
    Worked(
        calculator="balusters",
        inputs={"run": "2400 mm", "baluster": "41 mm", "most_gap": "99 mm"},
        gives={"count": "17", "gap": "94.6 mm", "fillet": "94.6 mm"},
        source="one baluster fewer would leave gaps of 102.7 mm",
        known=OWN,
    ),
    Worked(
        calculator="flight_survey",
        inputs={
            "rises": ("169 mm", "170 mm"),
            "goings": ("262 mm",),
            "total_rise": "339 mm",
            "read_to": "1 mm",
            "even_within": "5 mm",
        },
        gives={"rise": "169.5 mm", "rises_apart": "1 mm", "by_reading": "1.5 mm"},
        source="the height read in one, shared out over the risers",
        known=OWN,
    ),
    Worked(
        calculator="guarding",
        inputs={
            "flight": "900 mm", "landing": "1100 mm", "gap": "99 mm", "sphere": "100 mm", "building": "other",
        },
        gives={"flight": "900 mm", "landing": "1100 mm"},
        source="Approved Document K 2013 Diagram 3.1: 900 on flights, mostly 1100 otherwise",
        known=PUBLISHED,
    ),
    Worked(
        calculator="baluster_cut",
        inputs={
            "balusters": "balusters", "height": "950 mm", "base_up": "0 mm", "handrail_depth": "59 mm",
            "base_depth": "32 mm", "groove": "0 mm", "baluster": "41 mm", "fillet_thickness": "8 mm",
        },
        gives={"length": "827.5 mm", "lean": "36.9 mm"},
        source="950 less 91 / cos 42°; 41 × tan 42°",
        known=OWN,
    ),
    Worked(
        calculator="window_board",
        inputs={
            "reveal_width": "1200 mm",
            "left_depth": "150 mm",
            "right_depth": "150 mm",
            "projection": "30 mm",
            "ear": "45 mm",
            "frame_gap": "2 mm",
            "packer_spacing": "400 mm",
            "packer_end": "75 mm",
        },
        gives={"width": "178 mm", "left_notch": "148 mm", "packers": "4", "packer_pitch": "350 mm"},
        source="depth to the plaster and the nosing, less the joint at the frame",
        known=OWN,
    ),
    *(
        Worked(
            calculator="bead_reach",
            inputs={"pack": "310 ml", "section": section},
            gives={"": reach},
            source=f"what a 310 ml cartridge gives of a {bead}; the usual table of a tube, by arithmetic",
            known=OWN,
        )
        for bead, section, reach in (
            ("joint 6 by 6 mm", "36 mm2", "8611.1 mm"),
            ("joint 10 by 5 mm", "50 mm2", "6200 mm"),
            ("three-cornered bead of 6 mm", "18 mm2", "17222.2 mm"),
            ("round bead of 5 mm", "19.634954 mm2", "15788.2 mm"),
            ("round bead of 6 mm", "28.274334 mm2", "10964 mm"),
        )
    ),
    Worked(
        calculator="tooled_bead",
        inputs={"length": "1 m", "radius": "8 mm"},
        gives={"section": "14 mm²", "volume": "13.7 ml"},
        source="square less a quarter circle of radius 8 mm, 13.73 mm²",
        known=OWN,
    ),
    Worked(
        calculator="wavy_bead",
        inputs={"length": "1 m", "swing": "60 mm", "period": "120 mm", "diameter": "6 mm"},
        gives={"length": "1414.2 mm"},
        source="strokes at 45 degrees are longer than the piece by the root of two",
        known=OWN,
    ),
    Worked(
        calculator="opening_shape",
        inputs={
            "width_top": "3 m", "width_floor": "3 m", "height_left": "4 m", "height_right": "4 m",
            "diagonal_left_foot": "5 m", "diagonal_right_foot": "5 m", "read_to": "1 mm",
        },
        gives={"left_top": "90°", "right_top": "90°", "left_foot": "90°", "right_foot": "90°"},
        source="3, 4 and 5 make a right angle: Euclid, Elements, I.48",
        known=PUBLISHED,
    ),
    Worked(
        calculator="room",
        inputs={
            "walls": ("7280.11 mm", "7615.773 mm", "4242.641 mm", "4123.106 mm", "2828.427 mm"),
            "corners": ("82.7468 deg", "68.1986 deg", "120.9638 deg", "239.0362 deg", "29.0546 deg"),
        },
        gives={"area": "30 m²", "apart": "0 mm"},
        source="corners (3,4) (5,11) (12,8) (9,5) (5,6), area 30: the usual example of the shoelace formula",
        known=PUBLISHED,
    ),
    Worked(
        calculator="joint_bead",
        inputs={"length": "1 m", "width": "1 mm", "depth": "1 mm"},
        gives={"volume": "1 ml"},
        source="the litre is a cubic decimetre: BIPM, The International System of Units, 9th ed., Table 8",
        known=PUBLISHED,
    ),
    Worked(
        calculator="ladder_set_up",
        inputs={"height": "4 m"},
        gives={"foot_out": "1000 mm", "angle": "76°"},
        source="a leaning ladder stands one out for four up, about 75 degrees: HSE, INDG455",
        known=PUBLISHED,
    ),
    Worked(
        calculator="screw_rows",
        inputs={
            "length": "2065 mm", "width": "60 mm", "spacing": "300 mm", "row_spacing": "300 mm",
            "end": "50 mm", "edge": "30 mm",
        },
        gives={"rows": "1", "in_row": "8", "count": "8", "pitch": "280.7 mm"},
        source="eight places at 280.7 mm along 2065 mm, 50 mm from the ends, one row in the middle",
        known=OWN,
    ),
)  # fmt: skip

# Worked examples of engines that are no calculator of a method; each is held where `evidence.py` says.

# A plant built in fourteen activities: weeks of work by activity, and what each comes after. The longest way
# through takes 44 weeks. Hillier and Lieberman, Introduction to Operations Research, 7th edition, chapter 10.
PLANT_WEEKS = {
    "A": 2, "B": 4, "C": 10, "D": 6, "E": 4, "F": 5, "G": 7, "H": 9, "I": 7, "J": 8, "K": 4, "L": 5, "M": 2,
    "N": 6,
}  # fmt: skip
PLANT_AFTER = {
    "A": "", "B": "A", "C": "B", "D": "C", "E": "C", "F": "E", "G": "D", "H": "EG", "I": "C", "J": "FI",
    "K": "J", "L": "J", "M": "H", "N": "KL",
}  # fmt: skip
PLANT_LONGEST, PLANT_CRITICAL, PLANT_KNOWN = 44, "ABCEFJLN", REMEMBERED

# Rolls of 13 widths from rolls of 5600 mm: 73 of them, with 0.401 % left over. The standing example of the
# encyclopaedia article on the cutting stock problem.
ROLL, ROLL_FEWEST, ROLL_LEFT, ROLL_KNOWN = 5600, 73, 0.00401, REMEMBERED
ROLL_WIDTHS = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14,
    2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip

# (10 + x + r) × (10 − x + s) for x within 2, r and s within 1 of nought: 49 to 169 by intervals alone, 71 to
# 129 where what the two have in common stays in common. Stolfi and de Figueiredo, An introduction to affine
# arithmetic, TEMA 4 (2003).
SHARED_PRODUCT, APART_PRODUCT, PRODUCT_KNOWN = (71.0, 129.0), (49.0, 169.0), REMEMBERED

# Temperature in °C, relative humidity, moisture content in per cent as printed to one decimal; the equation
# agrees with the table to 0.06. USDA Wood Handbook FPL-GTR-190 (2010), Table 4-2, as others report it.
MOISTURE_TABLE = (
    ("21.1", "30 %", 6.2),
    ("21.1", "50 %", 9.2),
    ("21.1", "65 %", 12.0),
    ("21.1", "80 %", 16.0),
    ("4.4", "50 %", 9.5),
    ("37.8", "65 %", 11.2),
)
