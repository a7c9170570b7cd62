"""Faults the quantities room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    # Lifts
    "lift-unknown": Fault(
        "There is no quantity or material called “%(name)s” to be lifted.",
        "Expected the name of a quantity that is a mass, or a role with .mass.",
    ),
    "lift-no-mass": Fault(
        "“%(name)s” is no mass, so the lift cannot be held against the filter.",
        "Expected a quantity in kg, or a role whose catalogue entry has a mass, such as leaf.mass.",
    ),
    "lift-people": Fault(
        "The filter is not given for %(people)s people who lift together.",
        "Expected 1 to %(most)s. For more, plan the lift with a competent person and leave it out here.",
    ),
    # Names and calls
    "formula-name-unknown": Fault(
        "There is no size, quantity or material called “%(name)s”.",
        "Expected a name from sizes, quantities or materials of this method.",
    ),
    "role-alone": Fault(
        "“%(name)s” is a material, which is no value by itself.",
        "Expected one of its fields, such as %(name)s.width.",
    ),
    "material-field-unknown": Fault(
        "The material “%(key)s”, which is bound to %(role)s, has no %(field)s.",
        "It has: %(known)s.",
    ),
    "field-unknown": Fault("“%(name)s” has no field “%(field)s”.", "It has: %(known)s."),
    "field-on-value": Fault(
        "“%(name)s” is %(kind)s and has no fields.", "Expected the name alone, without a dot."
    ),
    "field-empty": Fault("%(name)s.%(field)s has no value here.", "Expected a field that was worked out."),
    "function-unknown": Fault(
        "There is no calculator called “%(name)s”.", "Expected the name of a calculator."
    ),
    "argument-by-place": Fault(
        "%(function)s takes its values by their place, and “%(argument)s =” stands before one.",
        "Expected the values alone, such as %(function)s(a, b).",
    ),
    "argument-by-name": Fault(
        "%(function)s takes its inputs by name, and this one has none.",
        "Expected name = value. Its inputs are: %(known)s.",
    ),
    "argument-unknown": Fault(
        "%(function)s has no input called “%(argument)s”.", "Its inputs are: %(known)s."
    ),
    "argument-missing": Fault(
        "%(function)s was not given “%(argument)s”.", "Expected %(argument)s = %(kind)s."
    ),
    "argument-count": Fault("%(function)s was given %(count)s values.", "It takes %(wanted)s."),
    "argument-kind": Fault("“%(argument)s” of %(function)s was given %(found)s.", "Expected %(expected)s."),
    "nothing-gathered": Fault(
        "%(function)s gathers over openings or readings, and this is one value.",
        "Expected a value of each opening, readings, or several values with commas between.",
    ),
    "operand-kind": Fault(
        "This is %(found)s, which cannot be reckoned with.", "Expected a single value here."
    ),
    "quantity-cycle": Fault(
        "“%(name)s” rests on itself: %(path)s.", "Expected each quantity to rest on sizes in the end."
    ),
    # Arithmetic
    "dimension-mismatch": Fault(
        "“%(sign)s” cannot join %(left)s and %(right)s.", "Expected both sides to be of one kind."
    ),
    "division-by-nought": Fault(
        "A division by nought for %(where)s.", "Expected a divisor that is not nought."
    ),
    "value-beyond-range": Fault(
        "The result is too large to hold for %(where)s.", "Expected sizes of real work."
    ),
    "step-not-positive": Fault(
        "Rounding to a step of nought or less for %(where)s.", "Expected a step above nought, such as 0.5 mm."
    ),
    "nothing-to-gather": Fault("There is nothing to gather for %(where)s.", "Expected at least one value."),
    "no-square-root": Fault(
        "There is no square root of this for %(where)s.", "Expected a plain number or an area, not negative."
    ),
    "no-such-angle": Fault(
        "There is no angle with this sine for %(where)s.", "Expected a number from −1 to 1."
    ),
    # Inputs a calculator cannot work with
    "input-not-above": Fault(
        "“%(argument)s” of %(function)s is %(actual)s for %(where)s.",
        "Expected more than %(limit)s. It rests on %(rests)s: measure or read it again.",
    ),
    "input-below": Fault(
        "“%(argument)s” of %(function)s is %(actual)s for %(where)s.",
        "Expected at least %(limit)s. It rests on %(rests)s: measure or read it again.",
    ),
    "input-over": Fault(
        "“%(argument)s” of %(function)s is %(actual)s for %(where)s.",
        "Expected at most %(limit)s. It rests on %(rests)s: measure or read it again.",
    ),
    "leg-without-length": Fault(
        "The gap at the floor leaves a leg of no length for %(where)s.",
        "Expected a floor gap smaller than the opening's height.",
    ),
    "measurement-disagrees": Fault(
        "At %(where)s %(measured)s reads %(read)s, and no opening can have that beside the rest.",
        "The other five call for %(called)s: take it again.",
    ),
    "opening-cannot-close": Fault(
        "Three or more of the triangles of widths, heights and diagonals cannot close for %(where)s.",
        "Expected six sizes of one opening: take all six again.",
    ),
    "word-not-offered": Fault("“%(argument)s” is “%(found)s” for %(where)s.", "Expected one of: %(known)s."),
    "moulding-measure-missing": Fault(
        "A %(shape)s moulding needs its %(measure)s for %(where)s.",
        "Expected %(measure)s from the maker's drawing.",
    ),
    "moulding-does-not-fit": Fault(
        "The %(shape)s moulding's parts come to %(needs)s and it is %(has)s %(way)s for %(where)s.",
        "Expected the measures of the maker's drawing.",
    ),
    "ogee-overhangs": Fault(
        "The ogee is %(found)s deep, more than it is broad, for %(where)s.",
        "Expected a breadth at least as large as the depth; two equal curves would overhang otherwise.",
    ),
    "spring-out-of-range": Fault(
        "The spring angle is %(found)s for %(where)s.",
        "Expected 5° to 85°, from the wall to the back of the moulding.",
    ),
    "corner-out-of-range": Fault(
        "The corner is %(found)s for %(where)s.", "Expected 30° to 175°: past that, butt or scarf the pieces."
    ),
    "cornice-corner": Fault(
        "Corner %(number)s is %(found)s between the walls for %(where)s.",
        "Expected 30° to 175°: past that, butt or scarf the pieces.",
    ),
    "cornice-runs-out": Fault(
        "The mitres of wall %(number)s leave nothing of its cornice at the ceiling for %(where)s.",
        "Expected a narrower moulding, or a wall of the length measured.",
    ),
    "no-room-for-ground": Fault(
        "The moulding leaves no room behind it for a ground, for %(where)s.",
        "Expected a thinner moulding, a wider one, or a spring angle nearer to 45°.",
    ),
    "cove-overhangs": Fault(
        "The cove is %(found)s deep, more than half its breadth, for %(where)s.",
        "Expected a shallower cove; its edges would overhang otherwise.",
    ),
    "hinge-count": Fault(
        "%(found)s hinges for %(where)s.", "Expected a whole number of hinges, from 2 to %(most)s."
    ),
    # Rooms
    "walls-too-few": Fault(
        "%(found)s walls make no room for %(where)s.",
        "Expected three walls or more, in order round the room.",
    ),
    "lists-differ": Fault(
        "“%(argument)s” has %(found)s entries for %(where)s.",
        "Expected %(wanted)s, one beside each entry of the list it belongs to.",
    ),
    "corner-straight": Fault(
        "Corner %(number)s is straight for %(where)s.", "Expected two walls in one line to be given as one."
    ),
    "corner-too-sharp": Fault(
        "Corner %(number)s is nearly closed for %(where)s.",
        "Expected an angle from 5° to 355°, taken inside the room.",
    ),
    "walls-cross": Fault(
        "The walls cross one another for %(where)s.",
        "Expected walls and corners in order, each corner taken inside the room.",
    ),
    "no-such-wall": Fault(
        "“%(argument)s” names wall %(found)s for %(where)s.", "Expected a wall number from 1 to %(most)s."
    ),
    "off-the-wall": Fault(
        "The %(kind)s numbered %(number)s ends at %(end)s on wall %(wall)s for %(where)s.",
        "Wall %(wall)s is %(length)s long: measure again from its left end.",
    ),
    "overlap-on-wall": Fault(
        "Two entries of “%(argument)s” overlap on wall %(wall)s for %(where)s: %(one)s and %(two)s.",
        "Expected each to end before the next begins.",
    ),
    "stock-too-short": Fault(
        "The longest length is no more than twice the skirting's thickness for %(where)s.",
        "Expected a length that can be lapped at a joint.",
    ),
    "humidity-beyond-equation": Fault(
        "The relative humidity is %(found)s for %(where)s.", "Expected 5 %% to 95 %% of saturation."
    ),
    "moisture-as-share": Fault(
        "“%(argument)s” is %(found)s for %(where)s, which would be less than one per cent.",
        "Expected per cent as a plain number, such as 8.",
    ),
    "gap-takes-room": Fault(
        "The gap at the walls takes the whole room for %(where)s.", "Expected a gap of millimetres."
    ),
    "corner-not-square": Fault(
        "Corner %(number)s is %(found)s for %(where)s, and a floor is worked out between square walls.",
        "Expected 90° or 270° at every corner: lay the floor to the square of the room, and scribe it to a "
        "wall that leans.",
    ),
    "corners-do-not-add-up": Fault(
        "The corners do not make a room for %(where)s: together they are %(over)s off.",
        "Expected 90° inside a corner and 270° where one stands out, four more of the first.",
    ),
    "floor-open": Fault(
        "Going round, the last wall ends %(apart)s from where the first began, for %(where)s.",
        "Expected the walls to close within the floor's gap, %(gap)s: measure them again.",
    ),
    "floor-behind-start": Fault(
        "Wall %(number)s cannot be the starting wall for %(where)s: there is floor behind it.",
        "Expected the wall furthest back on that side, since rows are counted from there.",
    ),
    "floor-too-narrow": Fault(
        "Between walls %(one)s and %(two)s the gap leaves less than %(least)s of floor for %(where)s.",
        "Expected room for the narrowest strip there: leave the place out of the room, or measure it again.",
    ),
    "pipe-outside": Fault(
        "The pipe numbered %(number)s stands outside the room for %(where)s.",
        "Expected its middle along the starting wall from that wall's left end (to the left of it below 0), "
        "and its distance from the wall.",
    ),
    "end-over-board": Fault(
        "The least end piece is longer than the shortest board, %(board)s, for %(where)s.",
        "Expected a least end that a board can give.",
    ),
    "stagger-over-half": Fault(
        "The least stagger is more than half of the shortest board, %(board)s, for %(where)s.",
        "Expected at most half a board, since a joint lies between two others.",
    ),
    # Partitions
    "spacing-within-stud": Fault(
        "Studs would stand closer than they are thick for %(where)s.", "Expected a spacing over %(stud)s."
    ),
    "partition-too-small": Fault(
        "The partition has no room for two studs and two plates for %(where)s.",
        "Expected the length between walls and the height from floor to ceiling.",
    ),
    "rows-not-whole": Fault(
        "%(found)s rows of noggins for %(where)s.", "Expected a whole number of rows, from 0 to 20."
    ),
    "opening-off-partition": Fault(
        "Opening %(number)s leaves no room for a trimmer beside it for %(where)s.",
        "Expected it two studs' thickness or more from both walls.",
    ),
    "opening-too-high": Fault(
        "Opening %(number)s reaches the head plate for %(where)s.",
        "Expected room for its head under the plate.",
    ),
    "openings-too-near": Fault(
        "Opening %(one)s and the next leave no room for two trimmers for %(where)s.",
        "Expected two studs' thickness or more between them.",
    ),
    "plate-has-no-joint": Fault(
        "No stud stands within one length of plate for %(where)s.",
        "Expected a length that reaches a stud, where plates are joined.",
    ),
    "layers-not-whole": Fault(
        "%(found)s layers of boards for %(where)s.", "Expected 1 to %(most)s layers on each face."
    ),
    "sheet-off-studs": Fault(
        "Half a sheet is no whole number of stud spacings for %(where)s.",
        "Expected a sheet whose edges and middle fall on studs, such as 1200 mm on 600 mm.",
    ),
    "tongue-and-gap": Fault(
        "The board has a tongue and a gap along the frame for %(where)s.",
        "Expected a tongue in the sill's groove, or a gap for sealant, not both.",
    ),
    "rake-too-steep": Fault(
        "The pitch is %(found)s for %(where)s.", "Expected the pitch of a stair, at most 60°."
    ),
    "risers-not-whole": Fault(
        "%(found)s risers for %(where)s.", "Expected a whole number of risers, two or more."
    ),
    "goings-not-one-fewer": Fault(
        "%(rises)s rises and %(found)s goings for %(where)s.",
        "Expected one going fewer than rises: the last rise ends at the floor above.",
    ),
    "too-many-marks": Fault(
        "“%(argument)s” gives more than %(most)s places for %(where)s.", "Expected a wider spacing."
    ),
    "packers-past-reveal": Fault(
        "Packers %(found)s in from both sides of the reveal leave nothing between them for %(where)s.",
        "Expected less than half the reveal.",
    ),
    "nothing-used-of-pack": Fault(
        "No part of a pack is used for %(where)s.", "Expected a share above 0 %%, such as 90 %%."
    ),
    # What was found
    "result-refused": Fault(
        "%(label)s, %(where)s: %(because)s.", "Expected sizes that work, or another way of doing it."
    ),
    "result-remark": Fault("%(label)s, %(where)s: %(remark)s."),
    "way-refused": Fault(
        "The way chosen, %(way)s, is refused for %(where)s: %(because)s.",
        "By these sizes there remains: %(left)s. One way is chosen for a whole job and the steps describe "
        "it, so an opening that needs another takes a job and steps of its own.",
    ),
    "no-way-left": Fault(
        "The way chosen, %(way)s, is refused for %(where)s: %(because)s.",
        "By these sizes no way that is compared remains: change what is chosen, or leave the opening out.",
    ),
    "choice-beside-steps": Fault(
        "The job chooses %(chosen)s, and the method's own choice is %(own)s.",
        "Read every step: those written for the method's own choice describe other work than this job's.",
    ),
    "choice-not-comparison": Fault(
        "“%(name)s” compares no ways, so none can be chosen.", "Expected a quantity worked by ways_out."
    ),
    "choice-way-unknown": Fault("“%(name)s” offers no way called “%(way)s”.", "It offers: %(known)s."),
    # Cutting plans
    "cutting-pieces": Fault(
        "“%(name)s” holds no pieces to cut.", "Expected the pieces of a calculator, such as %(example)s."
    ),
    "cutting-kerf": Fault(
        "The cutting plan “%(name)s” does not say what the saw takes.", "Write it as saw_kerf: 3 mm."
    ),
    "cutting-trim": Fault(
        "“%(name)s” is no single length of the whole job.", "Expected a size such as an end trim of 10 mm."
    ),
    "cutting-stock": Fault(
        "The material “%(key)s”, which is bound to %(role)s, has no stock lengths to cut from.",
        "Write them in the catalogue, such as stock: [2.1 m, 4.2 m].",
    ),
    "cutting-prices": Fault(
        "The material “%(key)s” has %(lengths)s stock lengths and %(prices)s prices.",
        "Expected a price above nought for each length, in the same order, or none at all.",
    ),
    "cutting-wider": Fault(
        "The cutting plan “%(name)s” wants pieces %(wanted)s wide, and “%(key)s”, bound to %(role)s, "
        "is %(width)s wide.",
        "Bind a wider material to %(role)s, or make the pieces narrower.",
    ),
    "cutting-nothing": Fault(
        "The cutting plan “%(name)s” is to cut piece %(mark)s, and its length comes to %(length)s.",
        "Expected more than nought: look at the sizes it is worked from with `storeyrod quantities`.",
    ),
    "cutting-refused": Fault(
        "The cutting plan “%(name)s” cannot be made: %(because)s.",
        "Expected longer stock, shorter pieces or more lengths.",
    ),
    "print-unit": Fault(
        "“%(name)s” is %(found)s and cannot be printed in %(unit)s.", "Expected a unit of the same kind."
    ),
}
