"""Faults of themes: their colours, words and templates."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "theme-unknown": Fault(
        "There is no theme called “%(name)s”, neither in this folder's “themes” nor among those shipped.",
        "Known are: %(known)s.",
    ),
    "token-unknown": Fault("No colour of a theme is called “%(name)s”.", "Known are: %(known)s."),
    "theme-contrast": Fault(
        "On a %(mode)s screen “%(text)s” (%(colour)s) on “%(ground)s” (%(other)s) has a contrast of only "
        "%(ratio)s to 1.",
        "It needs %(least)s to 1 or more, so that everyone can read it in poor light.",
    ),
    "accent-contrast": Fault(
        "The company's colour %(colour)s against %(ground)s (%(other)s) has a contrast of only "
        "%(ratio)s to 1.",
        "It needs 4.5 to 1 or more, since links and numbers are set in it; take a darker shade.",
    ),
    "logo-missing": Fault(
        "There is no picture called “%(name)s” in %(folder)s.",
        "A logo is an SVG or PNG file beside the house rules, named with its ending.",
    ),
    "logo-heavy": Fault(
        "The logo %(name)s has %(bytes)s bytes.",
        "It may have %(most)s at most, since every statement carries it.",
    ),
    "logo-unfit": Fault(
        "The logo %(name)s cannot be used: it has %(why)s.",
        "It must be a picture alone: an SVG with a viewBox and without scripts, links, styles or anything "
        "fetched, or a PNG.",
    ),
    "name-label": Fault(
        "“%(value)s” cannot be a sentence of this tool.",
        "Write the sentence letter for letter as documents print it, in quotes, then a colon and your words.",
    ),
    "label-unknown": Fault(
        "No page or sheet says “%(said)s”.",
        "A label replaces a whole sentence of the tool, given letter for letter.",
    ),
    "label-placeholders": Fault(
        "“%(label)s” does not take up what the sentence carries.",
        "It must hold each of these once, and no other per cent sign that is not doubled: %(wanted)s.",
    ),
    "template-syntax": Fault(
        "This template cannot be read: %(reason)s.",
        "Mend it, or delete the file: the default theme's own is then used.",
    ),
    "template-name": Fault(
        "Nothing is called “%(name)s” in a template.",
        "Use a name that the default theme's templates use.",
    ),
    "template-fails": Fault(
        "This template fails while a page is laid out: %(reason)s.",
        "Hold it against the default theme's template of the same name.",
    ),
}
