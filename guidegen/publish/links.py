"""The link check: every reference in the staged guide resolves, and nothing is fetched from elsewhere.

MkDocs checks Markdown links only, and ours are in templates and drawings.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterator, Mapping
from pathlib import Path
from urllib.parse import unquote, urlsplit

from guidegen.errors import OutputError
from guidegen.locale import _
from guidegen.publish.references import Document, Reference, read_document

_FAULTS_TOLD = 20


def check_links(site: Path) -> None:
    """Raise OutputError naming the broken references of the folder's HTML, CSS and SVG files."""
    documents = dict(_read_documents(site))
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    faults = [fault for name in documents for fault in _faults(name, documents, files)]
    if faults:
        raise OutputError("\n".join([_("The guide has broken links:"), *faults[:_FAULTS_TOLD]]))


def _read_documents(site: Path) -> Iterator[tuple[str, Document]]:
    """Every file that can refer to others, by relative path."""
    for path in sorted(site.rglob("*")):
        if path.suffix in (".html", ".css", ".svg"):
            name = path.relative_to(site).as_posix()
            yield name, _readable(name, path)


def _readable(name: str, path: Path) -> Document:
    try:
        return read_document(path)
    except ValueError as error:  # not UTF-8
        text = _("The file {file} of the theme cannot be read: {reason}")
        raise OutputError(text.format(file=name, reason=error)) from error


def _faults(name: str, documents: Mapping[str, Document], files: set[str]) -> Iterator[str]:
    """What is wrong with the references and ids of one document, a line each."""
    document = documents[name]
    for repeated in document.repeated_ids:
        yield _("  {file}: the id {id!r} comes up twice").format(file=name, id=repeated)
    for reference in document.references:
        fault = _fault(name, reference, documents, files)
        if fault:
            yield _("  {file}: {reference!r} {fault}").format(file=name, reference=reference.url, fault=fault)


def _fault(name: str, reference: Reference, documents: Mapping[str, Document], files: set[str]) -> str:
    """Why the reference is broken; empty when it is right."""
    parts = urlsplit(reference.url)
    if parts.scheme or parts.netloc:
        return _outside_fault(parts.scheme, reference)
    target = _resolve(name, parts.path)
    if target not in files:
        return _("is not a file of the guide")
    fragment = unquote(parts.fragment)
    page = documents.get(target)
    if page is not None and fragment not in ("", "top", *page.ids):
        return _("names a place that {file} does not have").format(file=target)
    return ""


def _outside_fault(scheme: str, reference: Reference) -> str:
    """A reader may follow a link out of the guide; the page itself fetches nothing."""
    if reference.is_link and scheme in ("http", "https", "mailto"):
        return ""
    if scheme == "data" and not reference.is_link:
        return ""
    return _("leads out of the guide")


def _resolve(name: str, path: str) -> str:
    """The path from the guide's folder that `path`, as written in document `name`, leads to."""
    return posixpath.normpath(posixpath.join(posixpath.dirname(name), unquote(path))) if path else name
