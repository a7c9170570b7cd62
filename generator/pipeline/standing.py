"""How a statement stands to what was issued of it, said on its first page, and the ways to its issues."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from generator.documents.blocks import Document, FrontPage, Link
from generator.model.jobs import DocumentControl
from generator.register.lines import Issued
from generator.wording import Language

ISSUES = "issued"
"""The folder of the site with the copies of what was issued."""


def with_standing(
    document: Document, control: DocumentControl, content: str, issued: tuple[Issued, ...], language: Language
) -> Document:
    """The statement with the line that says whether its content is what was issued last."""
    front, *rest = document.blocks
    if not isinstance(front, FrontPage):
        raise TypeError("a statement begins with its first page")
    issue = replace(front.issue, standing=_standing(control, content, issued, language))
    return replace(document, issue=issue, blocks=(replace(front, issue=issue), *rest))


def _standing(control: DocumentControl, content: str, issued: tuple[Issued, ...], language: Language) -> str:
    say = language.say
    if not issued:
        revision = control.revision.value
        return say("Revision %(revision)s is not in the register of issues.", revision=revision)
    last = issued[-1]
    now = (control.revision.value, control.status.value, content)
    if (last.revision, last.status, last.content) == now:
        return say(
            "Issued as revision %(revision)s on %(date)s; this page is that content.",
            revision=last.revision,
            date=day_of(last, language),
        )
    return say(
        "Changed since revision %(revision)s was issued: not to be worked from until it is issued again.",
        revision=last.revision,
    )


def day_of(issued: Issued, language: Language) -> str:
    """The day of an issue as it is written in a sentence."""
    return language.day(date.fromisoformat(issued.date))


def ways_to_issues(issued: tuple[Issued, ...], language: Language) -> tuple[Link, ...]:
    """The ways from a statement to what was issued of it, the newest first."""
    say = language.say
    return tuple(
        Link(
            text=say(
                "Superseded: revision %(revision)s, issued on %(date)s",
                revision=each.revision,
                date=day_of(each, language),
            ),
            href=f"{ISSUES}/{each.folder}.html",
        )
        if each is not issued[-1]
        else Link(
            text=say(
                "Issued revision %(revision)s, %(date)s", revision=each.revision, date=day_of(each, language)
            ),
            href=f"{ISSUES}/{each.folder}/{page_of(each)}",
        )
        for each in reversed(issued)
    )


def page_of(issued: Issued) -> str:
    """The name of the page among the files of an issue."""
    return f"statement-{issued.job}.html"
