"""Bolts: whether a torque fits the bolt it was meant for, and whether the bolt is screwed in deep enough."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.bolt_figures import BOLT_SIZES, torque_bears
from inspector.quantities.fasteners import pull_against_meant
from inspector.quantities.threads import engagement
from inspector.reading.inspection import Silent, Word


def bolt_bears(looks: Looks) -> Word | Silent:
    """The torque set (or else the figure it was to have) against what the bolt bears."""
    torque = looks.measured("torque_applied") or looks.measured("torque_required")
    size = looks.word("bolt_size")
    if torque is None or size is None or torque.amount.base <= 0:
        return NOT_LOOKED_AT
    strength, into = looks.word("bolt_class") or "not known", looks.word("bolt_into")
    return Word(torque_bears(torque.amount.number, torque.amount.unit, size, strength, into))


def thread_depth(looks: Looks) -> Word | Silent:
    """How deep the bolt sits in its thread, against the usual depth for this material."""
    depth, size, into = looks.measured("engagement_depth"), looks.word("bolt_size"), looks.word("bolt_into")
    if depth is None or size is None or into is None or depth.amount.base <= 0:
        return NOT_LOOKED_AT
    return Word(engagement(depth.amount.base, BOLT_SIZES[size][0], into))


def thread_pull(looks: Looks) -> Word | Silent:
    """How hard the torque pulls the bolt, when its thread is not as the figure means it."""
    asked, found = looks.word("thread_asked"), looks.word("thread_found")
    return NOT_LOOKED_AT if asked is None or found is None else Word(pull_against_meant(asked, found))
