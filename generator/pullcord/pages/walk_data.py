"""What the walk's scripts are told of a procedure: plain data, put into its page as JSON.

Everything is decided here, words included: a script only looks things up by a section's id.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass

from jinja2.utils import htmlsafe_json_dumps
from markupsafe import Markup

from pullcord.graph import ways_out
from pullcord.model.procedure import Step
from pullcord.model.quantity import Quantity
from pullcord.pages.address import anchor, link
from pullcord.pages.kit import Kit
from pullcord.pages.times import say_minutes
from pullcord.pages.walk_left import Left
from pullcord.pages.walk_reading import PadReading, UnitKey, pad_reading, unit_keys
from pullcord.pages.way import Signposts, answers

SAID = "script_"
"""Words whose keys begin so are handed to the scripts, by the rest of the key."""


@dataclass(frozen=True)
class WalkAnswer:
    """One answer of a step."""

    key: str
    """As it stands in the file and in a record; empty where the step only goes on."""
    said: str
    to: str
    """The id of the section it leads to; that of no section when it leads to another page."""


@dataclass(frozen=True)
class Place:
    """One step."""

    left: str
    """How long it may still take, in words."""
    causes: tuple[tuple[int, int], ...]
    """What it may still be, the likeliest first: the cause's place in the list, and percent."""
    answers: tuple[WalkAnswer, ...]
    """In the order of the page."""
    reading: PadReading | None


@dataclass(frozen=True)
class WalkData:
    """One page's walk."""

    procedure: str
    title: str
    digest: str
    """The procedure's revision."""
    machine: str
    """The machine's name; empty on the general page."""
    machine_title: str
    start: str
    """The id of the first step's section."""
    home: str
    """The link from this page to the home page."""
    page: str
    """The link from the home page to this one."""
    causes: tuple[str, ...]
    """Every cause, in words."""
    units: Mapping[str, tuple[UnitKey, ...]]
    """The keys for the unit, by quantity."""
    places: Mapping[str, Place]
    """Every step that can be reached, by its section's id."""
    words: Mapping[str, str]


def walk_data(kit: Kit, posts: Signposts, digest: str, left: Mapping[str, Left]) -> WalkData:
    """Return a page's walk; `left` is what `read_left` says of its procedure."""
    procedure, subject, home_uri = posts.procedure, posts.subject, kit.settings.home_uri
    return WalkData(
        procedure=procedure.procedure,
        title=procedure.title,
        digest=digest,
        machine=subject.name,
        machine_title=subject.title,
        start=anchor(f"step:{procedure.start}"),
        home=link(posts.uri, home_uri),
        page=link(home_uri, posts.uri),
        causes=tuple(cause.title for cause in procedure.causes.values()),
        units={quantity: unit_keys(quantity) for quantity in _quantities(posts)},
        places=dict(_places(kit, posts, left)),
        words=_words(kit),
    )


def walk_json(data: WalkData) -> Markup:
    """Return the data as JSON in which nothing can end the script element it stands in."""
    return htmlsafe_json_dumps(asdict(data), ensure_ascii=False, separators=(",", ":"))


def _words(kit: Kit) -> dict[str, str]:
    return {key.removeprefix(SAID): said for key, said in kit.walk.items() if key.startswith(SAID)}


def _quantities(posts: Signposts) -> dict[Quantity, None]:
    steps = posts.procedure.steps.values()
    return dict.fromkeys(step.reading.quantity for step in steps if step.reading)


def _places(kit: Kit, posts: Signposts, left: Mapping[str, Left]) -> Iterator[tuple[str, Place]]:
    order = {name: place for place, name in enumerate(posts.procedure.causes)}
    for name in posts.order.steps:
        if here := left.get(f"step:{name}"):
            step = posts.procedure.steps[name]
            yield (
                f"step-{name}",
                Place(
                    left=_say_left(kit, here),
                    causes=tuple((order[c.name], round(c.share * 100)) for c in here.causes),
                    answers=tuple(_answers(posts, name, step)),
                    reading=_reading(posts, name, step),
                ),
            )


def _answers(posts: Signposts, name: str, step: Step) -> Iterator[WalkAnswer]:
    said = answers(posts, name, step)
    for _, key, target in ways_out(name, step):
        if key in said:
            yield WalkAnswer(key, said[key].said, anchor(target.node))


def _reading(posts: Signposts, name: str, step: Step) -> PadReading | None:
    if step.reading is None:
        return None
    ways = answers(posts, name, step)
    return pad_reading(posts, posts.readings[name], step.reading.quantity, ways)


def _say_left(kit: Kit, left: Left) -> str:
    likely, most = (say_minutes(kit.words, minutes) for minutes in (left.likely, left.most))
    key = "left_one" if likely == most else "left_range"
    return kit.walk[key].format(likely=likely, most=most)
