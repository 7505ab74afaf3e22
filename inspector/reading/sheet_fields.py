"""How the fields of the printable sheet are named, so that what was filled in can be read back.

A name is a list of steps with `|` between them; PDF gives a point in a name a meaning of its own, so it is written
in another way. Kinds of fields, by their first step:

    machine|HEADING, inspection|HEADING, remarks     text, as in the record
    work|WORK|PLACE                                  a box to tick: this was done
    value|PART|PLACE|PROPERTY|UNIT                   text; a bare number is meant in the unit printed beside it
    word|PART|PLACE|PROPERTY|WORD                    a box to tick: the answer is this word
    unseen|PART|PLACE|PROPERTY|HEADING               a box to tick: `could not see` or `does not apply`
    note|PART|PLACE|PROPERTY                         text
    tool|PART|PROPERTY|PLACES|TOOL                   a box to tick, for the values at all these places
    limit|PART|PLACES|PROPERTY|SENSE|UNIT            text: the machine's own limit, `at least` or `at most`
    origin|PART|PLACES|PROPERTY|ORIGIN               a box to tick: `stamped` or `manual`
"""

from __future__ import annotations

import re

_SPECIAL = {"%": "%25", "|": "%7C", ".": "%2E"}
_WRITTEN = re.compile("%(25|7C|2E)")
# how many steps follow the first one
STEPS = {
    "machine": 1,
    "inspection": 1,
    "remarks": 0,
    "work": 2,
    "value": 4,
    "word": 4,
    "unseen": 4,
    "note": 3,
    "tool": 4,
    "limit": 5,
    "origin": 4,
}
PLACES_BETWEEN = ", "


def field_name(*steps: str) -> str:
    """The name of a field."""
    return "|".join("".join(_SPECIAL.get(sign, sign) for sign in step) for step in steps)


def field_steps(name: str) -> tuple[str, ...] | None:
    """The steps of a field's name; None when it is no field of a sheet."""
    steps = tuple(_WRITTEN.sub(lambda match: chr(int(match[1], 16)), step) for step in name.split("|"))
    return steps if STEPS.get(steps[0]) == len(steps) - 1 else None
