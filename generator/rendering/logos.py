"""The firm's logo: a small picture beside the house rules that asks for nothing and does nothing."""

from __future__ import annotations

import base64
import re
from pathlib import Path
from xml.etree import ElementTree

from generator.model.house import Company
from generator.problems import ProblemLog, nearest

MOST_BYTES = 50_000
_KINDS = {".svg": "image/svg+xml", ".png": "image/png"}
_PNG = b"\x89PNG\r\n\x1a\n"
_ELEMENTS = frozenset({"script", "a", "foreignObject", "iframe", "use", "image", "style", "animate", "set"})
_OUTSIDE = re.compile(r"url\(\s*['\"]?(?!#)|@import|javascript:", re.IGNORECASE)


def check_logo(company: Company | None, folder: Path, log: ProblemLog) -> None:
    """Report a logo that is not there, too heavy, no picture, or more than a picture."""
    if company is None or company.logo is None:
        return
    name, span = company.logo.value, company.logo.span
    beside = sorted(path.name for path in folder.iterdir() if path.suffix in _KINDS)
    if name not in beside:
        log.add("logo-missing", span, name=name, folder=folder.as_posix(), nearest=nearest(name, beside))
        return
    content = (folder / name).read_bytes()
    if len(content) > MOST_BYTES:
        log.add("logo-heavy", span, name=name, bytes=len(content), most=MOST_BYTES)
    elif fault := _fault(Path(name).suffix, content):
        log.add("logo-unfit", span, name=name, why=fault)


def _fault(ending: str, content: bytes) -> str:
    """What is wrong with the picture, as a part of it; empty when nothing is."""
    if ending == ".png":
        return "" if content.startswith(_PNG) else "no PNG signature"
    if b"<!DOCTYPE" in content or b"<!ENTITY" in content:
        return "<!DOCTYPE>"
    try:
        root = ElementTree.fromstring(content)
    except ElementTree.ParseError as error:
        return str(error)
    if _local(root.tag) != "svg" or "viewBox" not in root.attrib:
        return "no <svg> with a viewBox"
    return next(filter(None, map(_fault_of, root.iter())), "")


def _fault_of(element: ElementTree.Element) -> str:
    if _local(element.tag) in _ELEMENTS:
        return f"<{_local(element.tag)}>"
    for name, value in element.attrib.items():
        if _local(name) == "href" or _local(name).lower().startswith("on") or _OUTSIDE.search(value):
            return f"{_local(name)}="
    return ""


def _local(name: str) -> str:
    return name.rpartition("}")[2]


def logo_address(company: Company | None, folder: Path) -> str:
    """The logo as an address that holds it whole; empty where the house has none."""
    if company is None or company.logo is None:
        return ""
    path = folder / company.logo.value
    return f"data:{_KINDS[path.suffix]};base64,{base64.b64encode(path.read_bytes()).decode()}"
