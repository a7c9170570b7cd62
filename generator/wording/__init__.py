"""Every sentence the tool says: whole sentences with named placeholders, never glued together.

`Language` carries the catalogue of one language; English needs none, since the sentences in the source
are English.
"""

from __future__ import annotations

import gettext
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class Language:
    """A language by its BCP 47 tag with its gettext catalogue."""

    tag: str = "en-GB"
    catalogue: gettext.NullTranslations = field(default_factory=gettext.NullTranslations)

    def say(self, sentence: str, /, **values: object) -> str:
        """`sentence` in this language with its `%(name)s` placeholders filled."""
        return self.catalogue.gettext(sentence) % values if values else self.catalogue.gettext(sentence)

    def say_count(self, one: str, many: str, count: int, /, **values: object) -> str:
        """The form of the sentence for `count`, which also fills `%(count)s`."""
        return self.catalogue.ngettext(one, many, count) % {"count": count, **values}


ENGLISH = Language()
