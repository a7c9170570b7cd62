"""Faults the safety room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "section-missing": Fault(
        says="Section %(id)s, “%(title)s”, is not answered.",
        expected="Write “%(key)s: |” under “sections:” and the answer below it. It asks: %(asks)s",
    ),
    "section-missing-or-not-applicable": Fault(
        says="Section %(id)s, “%(title)s”, is not answered.",
        expected=(
            "Write “%(key)s: |” under “sections:” and the answer below it. It asks: %(asks)s "
            "Write “applies: no” with “because:” and “decided_by:” only on this ground: %(honest)s"
        ),
    ),
    "section-unknown": Fault(
        says="There is no section “%(key)s” to be answered here.",
        expected="Sections answered here: %(known)s.",
    ),
    "section-is-the-jobs": Fault(
        says="“%(title)s” differs from place to place, so a method may not answer it.",
        expected="Take it out here and answer it in each job. The guide asks it as a question.",
    ),
    "section-is-the-methods": Fault(
        says="“%(title)s” belongs to the method, so a job may not answer it.",
        expected="Take it out here and answer it in the method that this job applies.",
    ),
    "section-filled-elsewhere": Fault(
        says="“%(title)s” is not written under “sections:”.",
        expected="It is filled from these parts of the file: %(parts)s.",
    ),
    "section-bare": Fault(
        says="“%(text)s” does not answer “%(title)s”.",
        expected="At least one full sentence. It asks: %(asks)s",
    ),
    "section-copied": Fault(
        says="“%(title)s” repeats word for word what another section says at %(place)s.",
        expected="What holds for this section, in its own words.",
    ),
    "section-always-applies": Fault(
        says="“%(title)s” always applies.",
        expected="An answer in place of “applies: no”. It asks: %(asks)s",
    ),
    "reason-bare": Fault(
        says="“%(reason)s” is no reason why “%(title)s” does not apply.",
        expected="A full sentence that names the fact. The only honest ground: %(honest)s",
    ),
    "reason-short": Fault(
        says="The reason why “%(title)s” does not apply has fewer than %(least)s words.",
        expected="A full sentence that names the fact. The only honest ground: %(honest)s",
    ),
    "decider-missing": Fault(
        says="“%(title)s” is said not to apply, and nobody is named who decided so.",
        expected="“decided_by:” with a person's name and role.",
    ),
    "decider-bare": Fault(
        says="“%(name)s” does not say who decided that “%(title)s” does not apply.",
        expected="A person's name and role.",
    ),
    "part-missing": Fault(
        says="“%(part)s” is not given, and “%(title)s” needs it.",
        expected="That section asks: %(asks)s",
    ),
    "contradicted-by-year": Fault(
        says="“%(title)s” is said not to apply, but the building was begun in %(name)s (%(place)s).",
        expected="%(why)s Answer the section, or correct the year.",
    ),
    "contradicted-by-no-year": Fault(
        says="“%(title)s” is said not to apply, but the year of the building is not given (%(place)s).",
        expected="%(why)s Answer the section, or find out the year and give “building_begun:” under “site:”.",
    ),
    "contradicted-by-tool": Fault(
        says="“%(title)s” is said not to apply, but the tool “%(name)s” is used (%(place)s).",
        expected="%(why)s Answer the section, or take the tool out.",
    ),
    "contradicted-by-material": Fault(
        says="“%(title)s” is said not to apply, but the material “%(name)s” is used (%(place)s).",
        expected="%(why)s Answer the section, or take the material out.",
    ),
    "contradicted-by-step": Fault(
        says="“%(title)s” is said not to apply, but step %(name)s says otherwise (%(place)s).",
        expected="%(why)s Answer the section, or change the step.",
    ),
    "claim-contradicted-by-tool": Fault(
        says="“%(title)s” says “%(words)s”, but the tool “%(name)s” is used (%(place)s).",
        expected="%(why)s Correct the section, or take the tool out.",
    ),
    "claim-contradicted-by-material": Fault(
        says="“%(title)s” says “%(words)s”, but the material “%(name)s” is used (%(place)s).",
        expected="%(why)s Correct the section, or take the material out.",
    ),
    "claim-contradicted-by-step": Fault(
        says="“%(title)s” says “%(words)s”, but step %(name)s says otherwise (%(place)s).",
        expected="%(why)s Correct the section, or change the step.",
    ),
}
