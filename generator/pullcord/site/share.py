"""A share of the work: all that is made of some of the procedures alone."""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping
from dataclasses import dataclass, replace

from pullcord.pages.imprint import dated
from pullcord.pages.page import Page
from pullcord.pages.site import own_pages
from pullcord.site.bound import single_files
from pullcord.site.prints import procedure_papers
from pullcord.site.read import ReadSite


@dataclass(frozen=True)
class Share:
    """Pages, and files that are made when they are called for, by address."""

    pages: tuple[Page, ...]
    later: Mapping[str, Callable[[], bytes]]


def share_of(site: ReadSite, names: Container[str]) -> Share:
    """Return what is made of the procedures with these names.

    Raises PullcordError as `make_site`.
    """
    held = {name: read for name, read in site.project.files.items() if name in names}
    part = replace(site.project, files=held)
    pages = tuple(dated(site.kit, page) for page in own_pages(site.kit, part))
    bound = single_files(site.kit, pages, site.assets)
    return Share(pages, {**bound, **procedure_papers(site.kit, part)})
