"""Bolts: whether a torque fits the bolt it was meant for, how hard it pulls, and how deep the bolt sits."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.bolt_figures import BOLT_SIZES, CLASSES, torque_bears
from inspector.quantities.fasteners import pull_against_meant, share_of_proof
from inspector.quantities.threads import engagement, first_to_give
from inspector.reading.inspection import Measured, Silent, Word


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


def proof_share(looks: Looks) -> Measured | Silent:
    """Share of its proof load that the torque puts on the bolt, with its thread as it was found."""
    torque = looks.measured("torque_applied") or looks.measured("torque_required")
    size, strength, surface = (looks.word(name) for name in ("bolt_size", "bolt_class", "thread_found"))
    if torque is None or size is None or surface is None or strength not in CLASSES or torque.amount.base <= 0:
        return NOT_LOOKED_AT
    share, doubt = share_of_proof(torque.amount.base, strength, BOLT_SIZES[size], surface)
    return worked_out(100 * share, "percent", "%", 100 * doubt)


def gives_first(looks: Looks) -> Word | Silent:
    """What gives way first when the bolt is turned too far in light metal; in steel it does not apply."""
    depth, size, strength = looks.measured("engagement_depth"), looks.word("bolt_size"), looks.word("bolt_class")
    into = looks.word("bolt_into")
    if into == "steel":
        return Silent("does not apply")
    if into is None or depth is None or size is None or strength not in CLASSES or depth.amount.base <= 0:
        return NOT_LOOKED_AT
    return Word(first_to_give(depth.amount.base, *BOLT_SIZES[size], strength))


def thread_pull(looks: Looks) -> Word | Silent:
    """How hard the torque pulls the bolt, when its thread is not as the figure means it."""
    asked, found = looks.word("thread_asked"), looks.word("thread_found")
    return NOT_LOOKED_AT if asked is None or found is None else Word(pull_against_meant(asked, found))
