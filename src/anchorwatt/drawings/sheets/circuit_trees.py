"""Circuits as trees: what hangs on what, from the wire schedule alone."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping, Sequence

from anchorwatt.drawings.sheets.tree import Branch, Link, Thing, Tree

Before = Callable[[str], bool]


def trees(links: Sequence[Link], known: Mapping[str, Thing], root: str, left: Before) -> tuple[Tree, ...]:
    """Trees that hold every link once.

    Parameters
    ----------
    links : in the order of the schedule
    known : things by their tags
    root : tag of the thing in the middle of the first tree; what it does not reach gets trees of its own
    left : whether a thing that hangs on the root stands on its left

    Several links between the same two things go side by side. A link that closes a ring is drawn between neighbours:
    one of its things is put right below the other, which hangs on the same parent.
    """
    made = []
    pending = list(links)
    while pending:
        tags = {tag for link in pending for tag in (link.start, link.end)}
        middle = root if root in tags else pending[0].start
        tree, pending = _tree(pending, known, middle, left if middle == root else _nothing)
        made.append(tree)
    return tuple(made)


def _nothing(_: str) -> bool:
    return False


def _tree(links: Sequence[Link], known: Mapping[str, Thing], root: str, left: Before) -> tuple[Tree, list[Link]]:
    """The tree of one thing, and the links that it does not reach."""
    near: dict[str, list[Link]] = {}
    for link in links:
        near.setdefault(link.start, []).append(link)
        near.setdefault(link.end, []).append(link)
    parent, order = {root: ""}, [root]
    for tag in order:  # it grows meanwhile: breadth first, so that things stand as near to the middle as can be
        for link in near.get(tag, ()):
            other = link.end if link.start == tag else link.start
            if other not in parent:
                parent[other] = tag
                order.append(other)
    up: dict[str, list[Link]] = {}
    rings: list[Link] = []
    for link in links:
        if link.start not in parent:
            continue
        if parent[link.end] == link.start:
            up.setdefault(link.end, []).append(link)
        elif parent[link.start] == link.end:
            up.setdefault(link.start, []).append(link)
        else:
            rings.append(link)
    children: dict[str, list[str]] = {}
    for tag in order[1:]:
        children.setdefault(parent[tag], []).append(tag)
    after = _neighbours(rings, children, parent, order, lambda tag: parent[tag] == root and left(tag))

    def branch(tag: str, before: Link | None) -> Branch:
        inner = _branches(children.get(tag, ()), branch, after)
        return Branch(known[tag], tuple(up[tag]), inner, before, after.get(tag))

    hanging = children.get(root, ())
    sides = [_branches([tag for tag in hanging if left(tag) is side], branch, after) for side in (True, False)]
    drawn = {id(link) for near_by in (*up.values(), after.values()) for link in near_by}
    return Tree(known[root], sides[0], sides[1]), [link for link in links if id(link) not in drawn]


def _neighbours(
    rings: Sequence[Link],
    children: dict[str, list[str]],
    parent: Mapping[str, str],
    order: Sequence[str],
    left: Before,
) -> dict[str, Link]:
    """The connection of a thing with the one below it, by its tag; things that rings join are put below each other.

    A ring between things that cannot stand so, because they hang on different things or have such a neighbour already,
    is left out: it gets a tree of its own.
    """
    after: dict[str, Link] = {}
    joined: set[str] = set()
    for link in rings:
        one, other = sorted((link.start, link.end), key=order.index)
        if parent[one] != parent[other] or left(one) is not left(other) or one in after or other in joined:
            continue
        if other in after:  # it brings its own neighbour along, which would come between
            continue
        hanging = children[parent[one]]
        hanging.remove(other)
        hanging.insert(hanging.index(one) + 1, other)
        after[one] = link
        joined.add(other)
    return after


def _branches(
    tags: Sequence[str], branch: Callable[[str, Link | None], Branch], after: Mapping[str, Link]
) -> tuple[Branch, ...]:
    made = []
    before: Link | None = None
    for tag in tags:
        made.append(branch(tag, before))
        before = after.get(tag)
    return tuple(made)


def first(tree: Tree, ranks: Callable[[str], int]) -> Tree:
    """The tree with what hangs on its middle in another order: the lowest rank first, neighbours kept together."""
    return dataclasses.replace(tree, left=_ranked(tree.left, ranks), right=_ranked(tree.right, ranks))


def _ranked(branches: Sequence[Branch], ranks: Callable[[str], int]) -> tuple[Branch, ...]:
    groups: list[list[Branch]] = []
    for branch in branches:
        if branch.before is not None and groups:
            groups[-1].append(branch)
        else:
            groups.append([branch])
    groups.sort(key=lambda group: ranks(group[0].thing.tag))
    return tuple(branch for group in groups for branch in group)
