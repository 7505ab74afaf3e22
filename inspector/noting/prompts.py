"""The words of one step of the interview: the question, how to look, what is left, and more on request."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Property
from inspector.knowledge.walk_round import Question
from inspector.knowledge.wording import words
from inspector.noting.answers import numbered
from inspector.noting.session import Step
from inspector.reporting.knowledge_text import answer_form
from inspector.reporting.lines import bullet, heading, paragraph
from inspector.reporting.sheet_paper import duration


def minutes_text(minutes: float) -> str:
    """Minutes in words, rounded to whole ones."""
    ask = words()["ask"]
    whole = round(minutes)
    if minutes < 0.75:
        text: str = ask["minute_less"]
    elif whole == 1:
        text = ask["minute_one"]
    else:
        text = ask["minute_many"].format(minutes=whole)
    return text


def left_text(open_questions: Sequence[Question]) -> str:
    """How many questions are left and how long they take."""
    time = duration(sum(one.minutes for one in open_questions))
    key = "left_one" if len(open_questions) == 1 else "left"
    text: str = words()["ask"][key].format(open=len(open_questions), time=time)
    return text


def stop_lines(question: Question, knowledge: Knowledge, width: int) -> list[str]:
    """The heading of a stop of the walk, and what to do there."""
    stops = knowledge.walk_round.stops
    stop = stops[question.stop]
    title = words()["ask"]["stop"].format(number=question.stop + 1, stops=len(stops), stop=stop.stop)
    return [*heading(title, width), *paragraph(stop.do, width)]


def step_lines(step: Step, knowledge: Knowledge, width: int, now: str | None) -> list[str]:
    """The question of a step, as it is printed before the prompt."""
    ask = words()["ask"]
    if step.kind == "head":
        return ["", *paragraph(ask["head"][head_name(step)], width)]
    assert step.question is not None
    if step.kind == "part":
        return ["", *paragraph(ask["has_part"].format(part=step.question.part), width)]
    prop = step.question.prop
    tools = ask["with"].format(tools=", ".join(prop.tools)) if prop.tools else ask["eyes"]
    cost = minutes_text(step.question.minutes)
    lines = ["", *paragraph(f"{step.question.address}: {step.question.name.replace('_', ' ')}", width)]
    lines += paragraph(f"{prop.ask}", width, "  ")
    lines += paragraph(f"{prop.look}", width, "  ")
    lines += paragraph(" ".join([tools, cost, *([ask["decides"]] if prop.critical else [])]), width, "  ")
    lines += _choices(prop, width)
    if now is not None:
        lines += paragraph(ask["now"].format(answer=now), width, "  ")
    return lines


def _choices(prop: Property, width: int) -> list[str]:
    if prop.kind not in ("choice", "yes_no"):
        return paragraph(answer_form(prop), width, "  ")
    if not numbered(prop):
        return paragraph(answer_form(prop), width, "  ")
    picks = ", ".join(f"{number} {word}" for number, word in enumerate(prop.words(), 1))
    return paragraph(f"{words()['ask']['choices']} {picks}", width, "  ")


def caution_lines(name: str, knowledge: Knowledge, width: int) -> list[str]:
    """A caution in full."""
    caution = knowledge.cautions[name]
    return paragraph(words()["ask"]["caution"].format(title=caution.title, text=caution.text), width, "  ", "! ")


def more_lines(step: Step, knowledge: Knowledge, width: int) -> list[str]:
    """What `?` shows: choices with their meaning, units, tools, cautions, the commands."""
    ask = words()["ask"]
    if step.kind == "head":
        text = ask["head_more"][head_name(step)].format(**_works(knowledge))
        return paragraph(text, width, "  ")
    assert step.question is not None
    if step.kind == "part":
        return paragraph(ask["has_part_more"], width, "  ")
    prop = step.question.prop
    lines = paragraph(answer_form(prop), width, "  ")
    for word, meaning in prop.choices.items():
        lines += bullet(f"{word}: {meaning}", width, indent="  ")
    if prop.means:
        lines += paragraph(ask["more_means"].format(means=prop.means), width, "  ")
    for tool in prop.tools:
        if tool in knowledge.tools:
            text = ask["more_tool"].format(tool=tool, means=knowledge.tools[tool].means)
            lines += bullet(text, width, indent="  ")
    for name in prop.cautions:
        lines += caution_lines(name, knowledge, width)
    lines += paragraph(ask["more_commands"], width, "  ")
    if "none" in prop.words():
        lines += paragraph(ask["more_none"], width, "  ")
    return lines


def head_name(step: Step) -> str:
    """The name of a line of the head among the words of the interview."""
    return step.section if step.name is None else f"{step.section} {step.name}"


def _works(knowledge: Knowledge) -> dict[str, Any]:
    works = [name.replace("_", " ") for name, prop in knowledge.properties["work"].items() if prop.work]
    places = dict.fromkeys(p for machine in knowledge.machines.values() for p in machine.parts.get("work", ()))
    return {"works": ", ".join(works), "places": ", ".join(places)}
