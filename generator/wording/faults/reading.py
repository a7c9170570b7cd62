"""Faults the reading room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

_FILES: Mapping[str, Fault] = {
    "file-missing": Fault(
        "There is no file here.",
        "Check the spelling of the path and the folder it is given from.",
    ),
    "file-unreadable": Fault(
        "The file cannot be read: %(reason)s.",
        "Expected a text file that you may open.",
    ),
    "file-too-large": Fault(
        "The file is larger than %(most)s bytes and is not read.",
        "A method, a job or a survey is a few hundred lines of text. Check that this is the right file.",
    ),
    "file-utf16": Fault(
        "The file is saved as UTF-16, not as UTF-8.",
        "Open it in the editor and save it again with the encoding UTF-8.",
    ),
    "file-encoding": Fault(
        "The byte %(byte)s on line %(line)s is not UTF-8. It looks like “%(letter)s” saved as Windows-1252.",
        "Open the file in the editor and save it again with the encoding UTF-8.",
    ),
    "file-unseen-character": Fault(
        "A character that does not show stands here (%(character)s).",
        "Delete it. It often comes along when text is copied from elsewhere.",
    ),
}

_YAML: Mapping[str, Fault] = {
    "yaml-tab": Fault(
        "A tab stands here.",
        "Use spaces: each editor makes a tab as wide as it likes, so it cannot show what belongs together.",
    ),
    "yaml-odd-space": Fault(
        "This line is set in with something that looks like a space and is none (%(character)s).",
        "Delete it and type ordinary spaces. It often comes along when text is copied from elsewhere.",
    ),
    "yaml-empty": Fault(
        "The file holds nothing to read.",
        "Expected keys with their values, beginning with “format: 1”.",
    ),
    "yaml-several-documents": Fault(
        "A second document begins here.",
        "Expected one document a file. Put the rest in a file of its own, or delete the line of dashes.",
    ),
    "yaml-too-many": Fault(
        "The file holds more than %(most)s values and is not read further.",
        "Expected a few hundred. Check that this is the right file.",
    ),
    "yaml-too-deep": Fault(
        "More than %(most)s lists and mappings stand one inside another here.",
        "Expected six or seven at most. Look for brackets opened and not closed.",
    ),
    "yaml-alias": Fault(
        "“%(mark)s” asks for a copy of something marked elsewhere in the file, and copies are not allowed.",
        "Write the value out again. If the star is part of a text, put the text in double quotes.",
    ),
    "yaml-anchor": Fault(
        "“%(mark)s” marks this value for copying, and copies are not allowed.",
        "Delete the mark. If it is part of a text, put the text in double quotes.",
    ),
    "yaml-tag": Fault(
        "“%(mark)s” is read as a type for the value after it, and types are not allowed.",
        "Delete it. If the exclamation mark is part of a text, put the text in double quotes.",
    ),
    "yaml-key-doubled": Fault(
        "The key “%(key)s” stands here a second time; the first is on line %(first)s.",
        "Each key stands once in its mapping. Keep one of the two, or join what they say.",
    ),
    "yaml-key-empty": Fault(
        "There is no key before this colon.",
        "Expected a key, a colon, a space and the value, such as “label: First quirk”.",
    ),
    "yaml-key-not-text": Fault(
        "A list or a mapping stands where a key was expected.",
        "Expected a plain word before the colon. Literal braces in a text: put the text in double quotes.",
    ),
    "yaml-key-no-colon": Fault(
        "“%(key)s” has no colon and no value after it, so it was read as a key with nothing in it.",
        "Between braces write “key: value” pairs with commas between them. A text with a comma in it goes in "
        "double quotes.",
    ),
    "yaml-comma-split": Fault(
        "The comma ended the value of “%(key)s”, and “%(part)s” was read as a key of its own.",
        "Between braces a text with a comma goes in quotes: %(key)s: %(whole)s",
    ),
    "yaml-comma-decimal": Fault(
        "A comma stands in a number, and between braces it ended the value of “%(key)s”.",
        "Decimals have a point: %(key)s: %(whole)s",
    ),
    "yaml-comment-in-text": Fault(
        "From # on this line is a comment, and “%(lost)s” is not printed.",
        "Put the whole value in quotes if it belongs to it; write “# ” with a space where a remark is meant.",
    ),
    "yaml-curly-quotes": Fault(
        "The quotes round this text are typographic: YAML takes them for letters.",
        "Write straight ones: %(quoted)s",
    ),
    "yaml-brace-text": Fault(
        "“%(text)s” without quotes was read as a mapping, not as text.",
        "Put the whole text in quotes: %(quoted)s",
    ),
}

_SYNTAX: Mapping[str, Fault] = {
    "yaml-starts-with": Fault(
        "A text without quotes cannot begin with “%(mark)s”.",
        "Put the whole text in double quotes.",
    ),
    "yaml-quote-unclosed": Fault(
        "The quote opened here is not closed where it should be.",
        "Close it at the end of the text, with the same kind of quote.",
    ),
    "yaml-text-after-quote": Fault(
        "Text goes on after the closing quote.",
        "Put the quotes round the whole text. Inside single quotes an apostrophe is written twice (it''s); "
        'inside double quotes a double quote is written \\".',
    ),
    "yaml-text-in-brackets": Fault(
        "This text begins with “%(mark)s”, so it was read as a mapping or a list up to the closing bracket.",
        "Put the whole text in quotes: %(quoted)s",
    ),
    "yaml-text-after-bracket": Fault(
        "Text goes on after the closing “%(mark)s”.",
        "Expected the end of the line, or a comma. A text that begins with “{” or “[” goes in double quotes "
        "as a whole.",
    ),
    "yaml-escape": Fault(
        "Inside double quotes a backslash begins a special character, and this is not one.",
        "Write the text in single quotes, or the backslash twice.",
    ),
    "yaml-block-header": Fault(
        "After “|” or “>” the text begins on the next line.",
        "Move this to the next line, set in two spaces further than its key.",
    ),
    "yaml-colon-in-text": Fault(
        "A second colon followed by a space stands in this value, so it was read as another key.",
        "Put the whole value in double quotes, or begin each key on a line of its own.",
    ),
    "yaml-colon-space": Fault(
        "There is no space after the colon of “%(key)s”.",
        "Write “%(key)s: %(value)s”.",
    ),
    "yaml-bracket-unclosed": Fault(
        "“%(mark)s” is opened here and not closed where it should be.",
        "Close it with “%(closing)s”. A text that begins with “%(mark)s” goes in double quotes as a whole.",
    ),
    "yaml-bracket-comma": Fault(
        "This does not follow on from what stands before it between “%(mark)s” and “%(closing)s”.",
        "Expected a comma before the next part, or “%(closing)s” at the end.",
    ),
    "yaml-bracket-stray": Fault(
        "“%(mark)s” closes something that was not opened.",
        "Delete it, or put the whole text in double quotes.",
    ),
    "yaml-set-in": Fault(
        "This line is set in as if it belonged to line %(above)s, which has its value already.",
        "Begin it at the same column as the key it stands beside. A text over several lines begins with “|” "
        "on the line of its key.",
    ),
    "yaml-space-after": Fault(
        "What stands here looks like a space and is none (%(character)s).",
        "Delete it and type an ordinary space. It often comes along when text is copied from elsewhere.",
    ),
    "yaml-dash": Fault(
        "“%(mark)s” does not begin an item of a list here.",
        "An item begins with an ordinary dash and a space: “- ”.",
    ),
    "yaml-text-not-set-in": Fault(
        "This line is not set in far enough to belong to the text begun with “|” on line %(above)s.",
        "Set every line of such a text in two spaces further than its key.",
    ),
    "yaml-line-no-key": Fault(
        "This line has no key: it has no colon followed by a space.",
        "Expected “key: value”, or “- ” before each item of a list. A text over several lines begins with "
        "“|” on the line of its key.",
    ),
    "yaml-item-on-line": Fault(
        "A list cannot begin on the line of its key.",
        "Begin each “- ” on a line of its own, set in two spaces further than the key.",
    ),
    "yaml-item-among-keys": Fault(
        "A list item stands among keys; they began on line %(first)s, column %(first_column)s.",
        "Set the “- ” in further than the key it belongs to, or give the line a key.",
    ),
    "yaml-key-among-items": Fault(
        "This line stands among list items, which began on line %(first)s with “- ”.",
        "Begin it with “- ” if it is one more item. A key begins at the column of the key that "
        "holds the list.",
    ),
    "yaml-indentation": Fault(
        "This line begins at column %(column)s; the line above it begins at column %(above)s, and what holds "
        "both at column %(first_column)s (line %(first)s).",
        "Begin it at the same column as the lines it belongs with.",
    ),
    "yaml-after-end": Fault(
        "The file is complete before this line.",
        "Expected one mapping or one list a file, begun at the first column.",
    ),
    "yaml-syntax": Fault(
        "This cannot be read as YAML from here on.",
        "Expected “key: value” lines, or “- ” before each item of a list. Look at this line and the one "
        "above for a missing quote, colon or bracket.",
    ),
}

_SURVEYS: Mapping[str, Fault] = {
    "survey-empty": Fault(
        "The survey is empty.",
        "Expected a line of headings separated by commas, then one line for each face of each opening.",
    ),
    "survey-separator": Fault(
        "The columns are separated by %(separators)s, not by commas.",
        "Save the survey again as “CSV, comma separated”, in UTF-8.",
    ),
    "survey-too-wide": Fault(
        "The survey has %(count)s columns; %(most)s are the most that are read.",
        "Expected one column for each size or reading.",
    ),
    "survey-too-long": Fault(
        "The survey has more than %(most)s rows and is not read.",
        "Expected one line for each face of each opening. Check that this is the right file.",
    ),
    "survey-heading-blank": Fault(
        "Column %(column)s has no heading.",
        "Expected the name of a size, or delete the column with all its commas.",
    ),
    "survey-heading-doubled": Fault(
        "The heading “%(heading)s” stands here a second time; the first is at column %(first)s of this line.",
        "Each size has one column. Readings differ by their place, such as “set_back@left:100”.",
    ),
    "survey-row-long": Fault(
        "This row has %(count)s cells and the heading has %(expected)s: there is no heading over this cell.",
        "Delete what is too much, or give it a heading. A number is written with a point (7.5, not 7,5), and "
        "a text with a comma goes in double quotes.",
    ),
    "survey-row-short": Fault(
        "This row has %(count)s cells and the heading has %(expected)s: the row ends before “%(missing)s”.",
        "Write a comma for each missing cell; a cell with nothing in it means not known.",
    ),
    "survey-quote": Fault(
        "The quote opened here is not closed at the end of its cell.",
        "A quoted cell begins and ends with a double quote and stays on one line; a double quote inside it "
        "is written twice.",
    ),
}

FAULTS: Mapping[str, Fault] = {**_FILES, **_YAML, **_SYNTAX, **_SURVEYS}
