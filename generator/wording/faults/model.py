"""Faults the model room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

_TRANSLATIONS: Mapping[str, Fault] = {
    "language-unknown": Fault(
        "The folder “%(tag)s” names no language that the tool speaks.",
        "Expected the tag of one of: %(known)s.",
    ),
    "translation-method": Fault(
        "No method has the number “%(method)s”.", "Expected the number of a method of this folder."
    ),
    "translation-doubled": Fault(
        "This English was translated further up already.", "Expected each sentence once."
    ),
    "translation-stale": Fault(
        "This English stands nowhere in %(method)s, so the page shows the English of the method.",
        "Look at what was changed, bring both lines up to it, or take them out.",
        "The nearest there: “%(nearest)s”",
    ),
    "translation-value": Fault(
        "%(value)s does not stand in the English sentence.", "Its values are: %(known)s."
    ),
    "translation-values": Fault(
        "The values of the translation are not those of the English sentence.",
        "Each must stand as often as in the English: %(known)s.",
    ),
}

_KINDS: Mapping[str, Fault] = {
    "kind-wrong": Fault("%(found)s stands here.", "Expected %(expected)s."),
    "text-empty": Fault("This text is empty.", "Expected %(expected)s."),
    "list-empty": Fault("This list is empty.", "At least one line was expected, beginning with “- ”."),
    "text-retyped": Fault(
        "“%(value)s” is text here, and an editor takes it for something else.",
        'Write it in quotes: "%(value)s".',
    ),
    "text-braces": Fault(
        "A brace stands in a name or title, where no value can be put in.",
        "Values go into sentences only; write this without braces.",
    ),
    "flag-unknown": Fault("“%(value)s” is neither yes nor no.", "Write yes or no, in small letters."),
    "count-form": Fault(
        "“%(value)s” is not a whole number.",
        "Write digits alone, such as 90 or 1998: no unit, no point, no colon, no nought in front.",
    ),
    "date-form": Fault("“%(value)s” is not a date.", "Write year, month and day, such as 2026-11-11."),
    "dates-order": Fault("%(last)s lies before %(first)s.", "The later of the two dates was expected here."),
    "year-to-come": Fault(
        "The building is said to be begun in %(year)s, and the work ends in %(last)s.",
        "Write the year in which the oldest part was begun; leave the line out where it is not known.",
    ),
    "choice-unknown": Fault("“%(value)s” is not one of the choices.", "Expected one of: %(allowed)s."),
    "colour-form": Fault(
        "“%(value)s” is not a colour.", 'Write six digits or letters A to F after #, in quotes: "#1B4A86".'
    ),
    "web-address-form": Fault(
        "“%(value)s” is not the address of a place on the web.",
        'Write where the site stands, in quotes: "https://example.org/methods".',
    ),
}

_VALUES: Mapping[str, Fault] = {
    "value-not-number": Fault("“%(value)s” is not a value.", "Write a number and its unit, such as 768 mm."),
    "value-number-form": Fault(
        "“%(value)s” is not written as a number.",
        "Write digits with a point for the decimals and nothing between thousands, such as 1990.5 mm.",
    ),
    "value-unit": Fault(
        "“%(unit)s” is not a unit.",
        "Units are mm, cm, m, mm2, m2, ml, l, g, kg, min, h, days, deg, dB, £ and %%.",
    ),
    "amount-unit-missing": Fault("“%(value)s” has no unit.", "Write the unit too, such as %(example)s."),
    "amount-negative": Fault("“%(value)s” is less than nought.", "Write a value that is not negative."),
    "limit-misplaced": Fault(
        "“%(value)s” has a limit either way, which stands with a size only.",
        "Write the value alone, such as 2 mm.",
    ),
    "limit-unlike": Fault(
        "The limit “%(limit)s” is not of the kind of “%(value)s”.",
        "Write both with their units, such as 762 mm +- 1 mm, or both without.",
    ),
    "amount-dimension": Fault("“%(value)s” is %(found)s.", "Expected %(expected)s."),
}

_KEYS: Mapping[str, Fault] = {
    "key-unknown": Fault("“%(key)s” is not a key of %(noun)s.", "Keys here are: %(known)s."),
    "key-missing": Fault("“%(key)s” is missing from %(noun)s.", "Write “%(key)s:” and after it %(purpose)s."),
    "key-empty": Fault(
        "“%(key)s” has no value.",
        "Write after the colon %(purpose)s.",
    ),
    "key-empty-spare": Fault(
        "“%(key)s” has no value.",
        "Write after the colon %(purpose)s; or take the key out if it is not needed.",
    ),
    "key-commented-out": Fault(
        "“%(key)s” has no value: what follows # is a comment.",
        "Put the value in quotes: expected was %(purpose)s.",
    ),
    "name-empty": Fault("Nothing stands after “%(name)s:”.", "Write its value, or take the name out."),
    "name-snake": Fault(
        "“%(value)s” cannot be a name here.",
        "Names have small letters, digits and _ and begin with a letter, such as first_quirk.",
    ),
    "name-kebab": Fault(
        "“%(value)s” cannot be a key here.", "Keys have small letters, digits and -, such as chop-saw."
    ),
    "name-dotted": Fault(
        "“%(value)s” does not name a value.", "Write a name, or a name and one field: packer or packer.mean."
    ),
    "name-code": Fault(
        "“%(value)s” cannot be a code.", "Codes have up to 20 letters, digits, dots and dashes, such as P3."
    ),
    "name-term": Fault(
        "“%(value)s” cannot be a term.", "Write the term in up to 60 letters, without braces or colons."
    ),
    "format-unknown": Fault(
        "Format “%(value)s” is not known.", "This version reads format %(known)s. Write “format: %(known)s”."
    ),
    "format-not-first": Fault(
        "“%(first)s” stands before the format.", "The line “format: 1” comes first in the file."
    ),
}

_PROSE: Mapping[str, Fault] = {
    "braces-open": Fault(
        "This brace is not closed on its line.",
        "Write {name} to put a value in, or {{ for a brace that is printed.",
    ),
    "braces-stray": Fault(
        "This brace closes nothing.", "Write {name} to put a value in, or }} for a brace that is printed."
    ),
    "braces-empty": Fault("No figure stands after “=”.", "Write the figure that is meant, such as {= 5 mm}."),
    "braces-reference": Fault(
        "“%(inside)s” does not name a value.",
        "Write {name}, {name.field} or {name in m}; a typed figure that is meant is {= 5 mm}.",
    ),
}

_SIZES: Mapping[str, Fault] = {
    "size-no-kind": Fault(
        "“%(name)s” is neither chosen, measured nor policy.",
        "Write one of “chosen: {default: ...}”, “measured: {example: ...}”, “policy: {default: ...}”.",
    ),
    "size-kinds": Fault(
        "“%(name)s” is both %(given)s.", "A size is only one of chosen, measured and policy."
    ),
    "size-bounds": Fault(
        "The least, %(least)s, is more than the most, %(most)s.", "The least comes first and is the smaller."
    ),
    "size-word-bounds": Fault(
        "“%(name)s” is chosen from words and has a bound.", "Take out least and most, or take out from."
    ),
    "size-word": Fault(
        "“%(value)s” is not a value of “%(name)s”.",
        "Write a number and its unit; or, if the size is a word, list the words: “from: [left, right]”.",
    ),
    "size-several": Fault(
        "“%(name)s” has one value, and a list stands here.",
        "Write one value; or “readings: yes” in the method, if several readings are taken of it.",
    ),
    "size-list-empty": Fault(
        "“%(name)s” has an empty list to start from.",
        "Give at least one value here; a job may write [] where there are none.",
    ),
    "size-low": Fault("%(value)s is less than the least allowed.", "“%(name)s” is at least %(least)s."),
    "size-high": Fault("%(value)s is more than the most allowed.", "“%(name)s” is at most %(most)s."),
    "size-unknown": Fault("Method %(method)s has no size “%(name)s”.", "Name a size of the method."),
    "size-not-given": Fault(
        "“%(name)s” is measured on site, and neither job nor survey gives it.",
        "%(label)s: write it under sizes in the job, or as a column of the survey.",
    ),
    "size-not-given-take": Fault(
        "“%(name)s” is measured on site, and neither job nor survey gives it.",
        "%(label)s: write it under sizes in the job, or as a column of the survey. How to take it: %(take)s",
    ),
    "size-blank": Fault(
        "“%(name)s” is blank for opening %(opening)s.",
        "Blank is unknown, never nought. %(label)s: measure it and write it here.",
    ),
    "policy-unknown": Fault("No method has a policy size “%(name)s”.", "Name a policy size of a method."),
}

_METHODS: Mapping[str, Fault] = {
    "control-no-rank": Fault(
        "This control does not say how strong it is.",
        "Write it under one of: eliminate, substitute, engineer, administer, ppe.",
    ),
    "control-ranks": Fault("This control is both %(given)s.", "Write two controls, one under each word."),
    "section-unanswered": Fault(
        "“%(name)s” says neither what applies nor that it does not.",
        "Write what applies as text; or “applies: no”, “because:” and “decided_by:”.",
    ),
    "section-no-reason": Fault(
        "“%(name)s” gives no reason why it does not apply.", "Write “because:” and a full sentence."
    ),
    "material-unknown": Fault(
        "The catalogue has no material “%(name)s”.", "Name a catalogue key, or add it in methods/catalogue/."
    ),
    "tool-unknown": Fault(
        "The catalogue has no tool “%(name)s”.", "Name a catalogue key, or add it in methods/catalogue/."
    ),
    "place-unknown": Fault(
        "The catalogue has no kind of place “%(name)s”.",
        "Name a key under kinds_of_place in the catalogue, or add it in methods/catalogue/.",
    ),
    "activity-unknown": Fault(
        "The catalogue has no kind of work “%(name)s”.",
        "Name a key under kinds_of_work in the catalogue, or add it in methods/catalogue/.",
    ),
    "person-kind-unknown": Fault(
        "The catalogue has no kind of person “%(name)s”.",
        "Name a key under kinds_of_people in the catalogue, or add it in methods/catalogue/.",
    ),
    "counts-as-unknown": Fault(
        "The shipped catalogue has no entry “%(name)s” that this could count as.",
        "Name the key of a shipped entry of the same kind.",
    ),
    "need-no-form": Fault(
        "This need says nothing that a method could write.",
        "Begin it with one of: eliminate, substitute, engineer, administer, ppe, say.",
    ),
    "need-forms": Fault("This need stands under more than one word: %(given)s.", "Make a line of each."),
    "need-nowhere": Fault(
        "This need is a sentence, and it is not said where the sentence has to stand.",
        "Write “in:” with the keys of sections, or with people, emergency, stop_if, steps or holds.",
    ),
    "when-empty": Fault(
        "Nothing is named that would make this rule apply.",
        "Name tools, materials, activities, places, people or the like; or write “always: yes”.",
    ),
    "step-tool": Fault("“%(name)s” is not among the tools of the method.", "List it under tools as well."),
    "role-unknown": Fault(
        "“%(name)s” is not a material of the method.", "Name a role listed under materials."
    ),
    "hazard-unknown": Fault("“%(name)s” is not a hazard of the method.", "Describe it under hazards."),
    "hazard-doubled": Fault(
        "“%(name)s” is described twice.", "It stands on line %(first)s already; keep one of them."
    ),
    "criterion-unknown": Fault(
        "“%(name)s” is not a criterion of the method.", "List it under criteria with its words."
    ),
    "step-after": Fault(
        "Step %(number)s cannot come after step %(step)s.",
        "Expected numbers of steps that stand before it, or [] for a step that comes after none.",
    ),
    "step-no-crew": Fault("A step without anyone to do it.", "Expected how many people it takes, 1 or more."),
    "step-runs-tool": Fault(
        "“%(name)s” runs in a step that does not use it.", "Name a tool that stands under uses of this step."
    ),
    "step-runs-long": Fault(
        "The tools run %(ran)s min in a step of %(minutes)s min.",
        "Expected no more, all told, than the minutes of the step for each person of its crew.",
    ),
    "bands-order": Fault(
        "The bands of rating are not in order.",
        "Expected the first from 1, and each from more than the one before it.",
    ),
    "day-length": Fault("A working day of %(value)s.", "Expected more than 0 h and at most 24 h."),
    "step-unknown": Fault(
        "There is no step %(step)s.", "Steps are counted from 1; this method has %(count)s."
    ),
    "choice-quantity": Fault(
        "The method has no quantity “%(name)s” to choose a way of.", "Name a quantity that compares ways."
    ),
    "value-unknown": Fault("The method has no size or quantity “%(name)s”.", "Name one that it has."),
    "name-doubled": Fault(
        "“%(name)s” is a size and a quantity.", "It is a size on line %(first)s; give one another name."
    ),
    "method-doubled": Fault("Method “%(name)s” stands twice.", "%(first)s has this number already."),
}

_JOBS: Mapping[str, Fault] = {
    "document-doubled": Fault(
        "Two jobs have the document number “%(number)s”.",
        "%(first)s has it already; each statement has a number of its own.",
    ),
    "method-unknown": Fault("There is no method “%(name)s”.", "Methods here are: %(known)s."),
    "role-not-of-method": Fault(
        "Method %(method)s has no material “%(name)s”.", "Name a role listed under its materials."
    ),
    "survey-key": Fault("The key of a survey names the opening.", "Write “key: [opening, face]”."),
    "survey-missing": Fault(
        "There is no survey “%(name)s”.",
        "A CSV file of that name was expected beside the job, in %(folder)s.",
    ),
    "survey-no-key": Fault(
        "The survey has no column “%(name)s”.", "Its first line was expected to name that column."
    ),
    "survey-no-rows": Fault(
        "The survey lists no opening.", "One line for each face was expected below this."
    ),
    "column-unknown": Fault(
        "The method has no size “%(name)s”.", "A heading is opening, face, name or a size of the method."
    ),
    "column-place": Fault(
        "“%(name)s” is read at several places, and this column does not say where.",
        "Write the member and the distance from its start: %(name)s@left:100.",
    ),
    "column-not-readings": Fault(
        "“%(name)s” is a single size, not readings at several places.", "Write its name alone: %(name)s."
    ),
    "column-member": Fault("“%(member)s” is not a member of the frame.", "Expected one of: %(known)s."),
    "column-distance": Fault(
        "“%(heading)s” does not say how far along the member it was read.",
        "Write the distance from the member's start after a colon, such as set_back@left:100.",
    ),
    "column-doubled": Fault(
        "“%(heading)s” is the same place as “%(first)s”.", "Each place has one column; take one out."
    ),
    "row-unnamed": Fault("“%(column)s” is blank.", "It tells the rows apart and cannot be blank."),
    "row-doubled": Fault("“%(key)s” stands twice.", "It is on line %(first)s already."),
}

_CATALOGUE: Mapping[str, Fault] = {
    "geometry-unknown": Fault(
        "“%(name)s” is not a measure of the profile “%(shape)s”.", "Its measures are: %(known)s."
    ),
    "geometry-missing": Fault(
        "The profile “%(shape)s” lacks “%(name)s”.", "Write it under geometry, as a length."
    ),
    "assumed-unknown": Fault(
        "“%(name)s” is marked as assumed and has no value here.", "Name a key of this entry that has a value."
    ),
    "catalogue-doubled": Fault(
        "“%(key)s” stands twice in the catalogue.", "It is at %(file)s:%(line)s already."
    ),
    "catalogue-taken": Fault(
        "“%(key)s” is a shipped entry (%(label)s).",
        "Choose another key; or write “replaces: yes” to put this entry in its place.",
    ),
    "catalogue-replaces": Fault("There is no shipped “%(key)s” to replace.", "Take out “replaces: yes”."),
}

_FOLDER: Mapping[str, Fault] = {
    "folder-no-methods": Fault(
        "%(folder)s holds no method.",
        "One YAML file a method was expected there. “storeyrod start” lays one out.",
    ),
    "file-ending": Fault("“%(name)s” is not read because of its ending.", "Name it “%(better)s”."),
}

FAULTS: Mapping[str, Fault] = {
    **_KINDS, **_VALUES, **_KEYS, **_PROSE, **_SIZES, **_METHODS, **_JOBS, **_CATALOGUE, **_FOLDER,
    **_TRANSLATIONS,
}  # fmt: skip
