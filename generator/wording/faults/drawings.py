"""Faults found while drawings are ordered."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "drawing-unknown": Fault(
        "There is no drawing called “%(name)s”.",
        "The drawings are %(known)s.",
    ),
    "picture-unknown": Fault(
        "No step shows a drawing called “%(name)s” to stand for the method.",
        "The steps show %(known)s.",
    ),
    "drawing-value": Fault(
        "The drawing needs “%(parameter)s”, and nothing called “%(name)s” was worked out.",
        "Name its value under `with:`, such as `with: {%(parameter)s: some_quantity}`.",
    ),
    "drawing-values": Fault(
        "The drawing needs %(count)s values that nothing here is called by: %(known)s.",
        "It is made for work that has them. Take it out, or name each under `with:`, "
        "such as `with: {%(first)s: some_quantity}`.",
    ),
    "drawing-parameter": Fault(
        "The drawing “%(drawing)s” takes nothing called “%(name)s”.",
        "It takes %(known)s.",
    ),
    "drawing-text": Fault(
        "The drawing takes no text as its “%(parameter)s”, and “%(text)s” stands in quotes.",
        "Name a quantity, without quotes. Text in quotes serves where the drawing takes a word.",
    ),
    "drawing-word": Fault(
        "The drawing cannot take the word “%(word)s” as its “%(parameter)s”. It takes: %(known)s.",
        "Write one of those, or let the size it names choose among them.",
    ),
    "drawing-kind": Fault(
        "The drawing cannot take “%(name)s” as its “%(parameter)s”.",
        "A size wants a length, an angle an angle, readings the quantity that holds an even packer.",
    ),
}
