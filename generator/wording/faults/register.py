"""Faults of the register of issued statements, and of a statement that is to be issued."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

RESTORE = "Put back the register as it was when the statement was issued, from a copy kept elsewhere."

FAULTS: Mapping[str, Fault] = {
    "register-no-line": Fault("This is no line of a register of issued statements.", RESTORE),
    "register-line-changed": Fault(
        "This line of the register, for revision %(revision)s, has been changed since it was entered.",
        RESTORE,
    ),
    "register-chain-broken": Fault(
        "This line does not follow the one before it: a line was taken out, put in or moved.", RESTORE
    ),
    "register-file-changed": Fault("The issued file %(file)s has been changed since it was issued.", RESTORE),
    "register-file-missing": Fault("The issued file %(file)s is no longer there.", RESTORE),
    "register-file-added": Fault("The file %(file)s was not part of the issue.", "Move it elsewhere."),
    "register-folder-unknown": Fault(
        "No line of the register speaks of %(folder)s: a line was taken out, or the folder put in.",
        RESTORE,
    ),
    "issue-status": Fault(
        "A statement with the status %(status)s is not issued.",
        "Expected one that is for comment or for construction.",
    ),
    "issue-unsigned": Fault(
        "The statement cannot be issued: %(missing)s is not given.",
        "Expected written, checked and approved, each with name and date, and the date under issued.",
    ),
    "issue-revision-taken": Fault(
        "Revision %(revision)s of %(number)s was issued on %(date)s, %(status)s, and differs from this.",
        "What has been issued is never changed. Give this the next revision, and say under changed "
        "what is new.",
    ),
    "issued-since-changed": Fault(
        "The statement differs from its revision %(revision)s, issued on %(date)s.",
        "Work goes by the issued copy. Give this the next revision and issue it.",
    ),
}
