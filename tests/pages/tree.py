"""A page's HTML as a tree, so that tests ask for elements and not for strings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

DATA = "application/json"
VOID = {"br", "hr", "img", "input", "link", "meta"}


@dataclass
class Element:
    """One element with what is in it, in document order."""

    tag: str
    attrs: dict[str, str]
    inside: list[Element | str] = field(default_factory=list)

    @property
    def classes(self) -> set[str]:
        """Return its classes."""
        return set(self.attrs.get("class", "").split())

    @property
    def text(self) -> str:
        """Return all text in it, spaces made one."""
        parts = (part if isinstance(part, str) else part.text for part in self.inside)
        return " ".join(" ".join(parts).split())

    def walk(self) -> Iterator[Element]:
        """Yield every element in it, in document order."""
        for part in self.inside:
            if isinstance(part, Element):
                yield part
                yield from part.walk()

    def all(self, css_class: str) -> list[Element]:
        """Return every element of a class in it, in document order."""
        return [element for element in self.walk() if css_class in element.classes]

    def tags(self, tag: str) -> list[Element]:
        """Return every element of a tag in it, in document order."""
        return [element for element in self.walk() if element.tag == tag]

    def runs(self) -> list[Element]:
        """Return every script in it that a browser would run: data are none."""
        return [each for each in self.tags("script") if each.attrs.get("type") != DATA]

    def by_id(self, id_: str) -> Element:
        """Return the one element with this id."""
        (found,) = [element for element in self.walk() if element.attrs.get("id") == id_]
        return found

    def ids(self) -> list[str]:
        """Return every id in it."""
        return [element.attrs["id"] for element in self.walk() if "id" in element.attrs]


def read_html(html: str) -> Element:
    """Return a page as a tree. Raises AssertionError for a tag that is not closed properly."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert [element.tag for element in reader.open] == [""], "an element is never closed"
    return reader.open[0]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open = [Element("", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inside.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            assert self.open.pop().tag == tag, f"</{tag}> closes something else"

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)
