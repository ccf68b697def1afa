"""The walk-away list: how a machine is left, whatever was found and wherever one stopped."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pullcord.printing.press import Topic


def leaving_part(topic: Topic) -> Mapping[str, Any]:
    """Return the walk-away list of a procedure as data for the template.

    Steps and remedies after which the same has to be seen to stand together.
    """
    frame, _ = topic.frames("leaving_title")
    kit, words, posts = topic.press.kit, topic.press.words, topic.posts
    nodes = [f"step:{name}" for name in posts.order.steps]
    nodes += [f"cause:{name}" for name in posts.order.causes]
    groups: dict[tuple[str, ...], list[str]] = {}
    for node in nodes:
        groups.setdefault(topic.notes.walk_away[node], []).append(node)
    groups.pop((), None)
    return {
        "kind": "leaving",
        **frame.data(),
        "always": words["leaving_always"],
        "standing": kit.standing.walk_away,
        "stopped": words["leaving_stopped"],
        "groups": [
            {
                "after": [_label(topic, node) for node in held],
                "items": [kit.walk_away[item] for item in items],
            }
            for items, held in groups.items()
        ],
        "otherwise": words["leaving_otherwise" if groups else "leaving_nothing"],
        "write": words["leaving_write"],
    }


def _label(topic: Topic, node: str) -> str:
    kind, _, name = node.partition(":")
    posts = topic.posts
    parts = posts.procedure.steps if kind == "step" else posts.procedure.causes
    label = posts.words[f"way_{kind}"].format(number=posts.order.numbers[node])
    return f"{label}: {parts[name].title}"
