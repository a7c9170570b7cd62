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
        expected="Rule %(rule)s: %(why)s Answer the section, or correct the year.",
    ),
    "contradicted-by-no-year": Fault(
        says="“%(title)s” is said not to apply, but the year of the building is not given (%(place)s).",
        expected=(
            "Rule %(rule)s: %(why)s Answer the section, "
            "or find out the year and give “building_begun:” under “site:”."
        ),
    ),
    "contradicted-by-tool": Fault(
        says="“%(title)s” is said not to apply, but the tool “%(name)s” is used (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section, or take the tool out.",
    ),
    "contradicted-by-material": Fault(
        says="“%(title)s” is said not to apply, but the material “%(name)s” is used (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section, or take the material out.",
    ),
    "contradicted-by-step": Fault(
        says="“%(title)s” is said not to apply, but step %(name)s says otherwise (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section, or change the step.",
    ),
    "claim-contradicted-by-tool": Fault(
        says="“%(title)s” says “%(words)s”, but the tool “%(name)s” is used (%(place)s).",
        expected="Rule %(rule)s: %(why)s Correct the section, or take the tool out.",
    ),
    "claim-contradicted-by-material": Fault(
        says="“%(title)s” says “%(words)s”, but the material “%(name)s” is used (%(place)s).",
        expected="Rule %(rule)s: %(why)s Correct the section, or take the material out.",
    ),
    "claim-contradicted-by-step": Fault(
        says="“%(title)s” says “%(words)s”, but step %(name)s says otherwise (%(place)s).",
        expected="Rule %(rule)s: %(why)s Correct the section, or change the step.",
    ),
    "contradicted-by-place": Fault(
        says="“%(title)s” is said not to apply, but the work is in a place “%(name)s” (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section, or take the place out.",
    ),
    "contradicted-by-person": Fault(
        says="“%(title)s” is said not to apply, but someone here counts as “%(name)s” (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section.",
    ),
    "contradicted-by-exposure": Fault(
        says="“%(title)s” is said not to apply, but the day's work comes to “%(name)s” (%(place)s).",
        expected="Rule %(rule)s: %(why)s Answer the section.",
    ),
    "claim-contradicted-by-place": Fault(
        says="“%(title)s” says “%(words)s”, but the work is in a place “%(name)s” (%(place)s).",
        expected="Rule %(rule)s: %(why)s Correct the section, or take the place out.",
    ),
    "rule-control": Fault(
        says="Rule %(rule)s, “%(title)s”, applies here and misses a control: %(form)s: “%(offer)s”",
        expected=(
            "%(hazard)s Write such a control in your own words under a hazard that step %(steps)s names. "
            "It is found by: %(phrases)s. Source: %(source)s."
        ),
    ),
    "rule-control-anywhere": Fault(
        says="Rule %(rule)s, “%(title)s”, applies here and misses a control: %(form)s: “%(offer)s”",
        expected=(
            "%(hazard)s Write such a control in your own words under a hazard of the method. "
            "It is found by: %(phrases)s. Source: %(source)s."
        ),
    ),
    "rule-sentence": Fault(
        says="Rule %(rule)s, “%(title)s”, applies here and misses a sentence: “%(offer)s”",
        expected="%(hazard)s Say it in %(where)s. It is found by: %(phrases)s. Source: %(source)s.",
    ),
    "rule-step-hazard": Fault(
        says="Rule %(rule)s, “%(title)s”, applies, and step %(step)s names no hazard that deals with it.",
        expected="Add one of these to the hazards of the step: %(hazards)s.",
    ),
    "book-past-review": Fault(
        says="The sources of the shipped book were to be read again by %(by)s: %(groups)s.",
        expected=(
            "Look for a newer version of storeyrod; until then, hold the law cited against what is in force."
        ),
    ),
    "source-past-review": Fault(
        says="The source “%(cite)s” was to be read again by %(by)s.",
        expected="Read it again, correct the rule where it has changed, and give “review_by:” a later day.",
    ),
    "rule-doubled": Fault(
        says="There is a rule %(rule)s already (%(place)s).",
        expected="Give this rule a number of its own.",
    ),
    "rule-unknown": Fault(
        says="There is no rule %(rule)s.",
        expected="“storeyrod rules” prints every rule with its number.",
    ),
    "set-aside-bare": Fault(
        says="“%(reason)s” is no reason for setting rule %(rule)s aside.",
        expected="A full sentence that names the fact; it is printed in every document the rule applies to.",
    ),
    "rule-name-unknown": Fault(
        says="Nothing in the catalogue is called “%(name)s”, so it can set off no rule.",
        expected="Name a key, a kind, or one of the words of what a tool does or how a material harms.",
    ),
    "rule-section-unknown": Fault(
        says="There is no section “%(key)s”.",
        expected="Known here: %(known)s.",
    ),
    "phrase-empty": Fault(
        says="A part of “%(phrase)s” is empty, so it would be found anywhere.",
        expected="Words on both sides of each + and each /.",
    ),
    "house-section-taken": Fault(
        says="There is a required section “%(key)s” already.",
        expected="Give this section a key of its own.",
    ),
    "tool-without-rule": Fault(
        says="No rule names the tool “%(tool)s” of the kind “%(kind)s”, so it would be taken for harmless.",
        expected=(
            "Write “counts_as:” with the key of the shipped tool it is most like, "
            "or add a rule for it in house-rules.yaml."
        ),
    ),
    "control-empty": Fault(
        says="“%(words)s” is not a control.",
        expected="Say %(better)s, such as %(write)s",
    ),
    "control-bare": Fault(
        says="“%(text)s” is too bare to be a control.",
        expected="Say %(better)s.",
    ),
    "control-worn": Fault(
        says="This control stands under “%(rank)s” and speaks of what is worn (%(name)s).",
        expected="Put what is worn under “ppe:”; keep here what removes, replaces or contains the hazard.",
    ),
    "words-vague": Fault(
        says="“%(words)s” tells nobody what to do.",
        expected="Write such as %(write)s",
    ),
    "hazard-ppe-alone": Fault(
        says="The only controls of “%(hazard)s” are things that are worn.",
        expected="Something stronger first: removed, replaced, guarded, a way of working; then what is worn.",
    ),
    "remains-missing": Fault(
        says="Nothing is said of what remains of “%(hazard)s” with its controls in place.",
        expected="“remains:” with the risk that is left and why it is no more, in a sentence.",
    ),
    "remains-without-reason": Fault(
        says="“%(text)s” gives no reason why no more remains of “%(hazard)s”.",
        expected="The risk that is left and why, in a full sentence.",
    ),
    "remains-all-alike": Fault(
        says="All %(count)s hazards are said to leave the same behind.",
        expected="What is left of each, by what its own controls do.",
    ),
    "permit-not-given": Fault(
        says="Step %(step)s needs a permit for %(permit)s, and the job does not say who gives it.",
        expected="A line under “permits:” with “permit: %(permit)s”, “given_by:” and “until:”.",
    ),
    "permit-not-needed": Fault(
        says="No step of the method needs a permit for %(permit)s.",
        expected="The name as the step writes it, or take the line out.",
    ),
    "permit-denied": Fault(
        says="The permits are said not to apply, and a step needs one for %(permit)s.",
        expected="An answer in place of “applies: no”.",
    ),
    "rating-without-scales": Fault(
        says="“%(hazard)s” is rated, and the house rules give no scales.",
        expected="“rating:” in house-rules.yaml with likelihood, severity and bands, or no rating here.",
    ),
    "rating-off-scale": Fault(
        says="The %(kind)s %(number)s is not on the scale of the house rules.",
        expected="A number from 1 to %(most)s.",
    ),
    "rating-severity": Fault(
        says="“%(hazard)s” is rated less severe than before, and no control changes how bad the harm is.",
        expected=(
            "The severity as before. What people do or wear changes how likely it is; a guard, another way "
            "or another material may change how bad."
        ),
    ),
    "rating-rises": Fault(
        says="The rating rises from %(before)s to %(after)s with the controls in place.",
        expected="A rating no higher than before, or other controls.",
    ),
    "rating-leap": Fault(
        says="The likelihood falls by more than %(most)s steps.",
        expected="A fall that the controls bear out; say in “remains:” what shows it.",
    ),
    "rating-by-ppe": Fault(
        says="The rating of “%(hazard)s” falls by protective equipment alone.",
        expected="A control of a stronger rank, or the rating as before.",
    ),
    "rating-stops": Fault(
        says="“%(hazard)s” is left at %(score)s, in the band “%(band)s”, in which work may not begin.",
        expected="Stronger controls and an honest rating below that band.",
    ),
    "ratings-alike": Fault(
        says="All %(count)s rated hazards are left with the same rating.",
        expected="What is left of each, by what its own controls do.",
    ),
    "person-not-listed": Fault(
        says="%(name)s has no line under “people:”.",
        expected="A line with part, name and telephone number.",
    ),
    "name-not-listed": Fault(
        says="“%(name)s” reads like a person's name, and nobody under “people:” is called so.",
        expected="Add a line with part and number there; or write {= %(name)s} where it names no person.",
    ),
    "person-nameless": Fault(
        says="The %(part)s has no name.",
        expected="“name:” with the person's name.",
    ),
    "person-unreachable": Fault(
        says="The %(part)s has no telephone number.",
        expected="“phone:” with a number that is answered during the work.",
    ),
    "law-revoked": Fault(
        says="“%(name)s” no longer holds.",
        expected="What holds now: %(now)s. Look up the current text.",
    ),
    "law-foreign": Fault(
        says="“%(name)s” is of %(country)s and is no law here.",
        expected="Name the law of the nation under “site:”, or write “nation: elsewhere”.",
    ),
    "blank-left": Fault(
        says="A blank is left here: “%(blank)s”.",
        expected="The fact itself; or, where it is not known, who is asked and what waits for the answer.",
    ),
    "hazard-in-no-step": Fault(
        says="No step names the hazard “%(hazard)s”.",
        expected="Name it under “hazards:” of each step that meets it, or take it out.",
    ),
    "step-without-hazard": Fault(
        says="Step %(step)s names no hazard.",
        expected="“hazards:” with the keys of those it meets.",
    ),
    "tool-not-on-list": Fault(
        says="This speaks of a tool “%(tool)s” that is not on the list of tools.",
        expected="Add “%(key)s” to “tools:” and to “uses:” of the step, or take it out here.",
    ),
    "too-long-to-use": Fault(
        says="The steps, hazards and sections have %(words)s words to read on site.",
        expected="At most %(most)s, so that the core is read and not filed: cut what is said twice.",
    ),
    "basis-without-revision": Fault(
        says="“%(word)s” names no revision: what it means changes after this is signed.",
        expected="The revision or the date of the document, such as “Drawing A-101, revision C”.",
    ),
    "approver-is-author": Fault(
        says="%(name)s wrote this and approves it too.",
        expected="Another person's approval; a firm of one person leaves it and says so.",
    ),
    "other-jobs-name": Fault(
        says="“%(name)s” belongs to another job, “%(job)s” (%(place)s).",
        expected="This job's own name here; a method names no place, since it serves every job.",
    ),
}
