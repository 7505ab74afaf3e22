"""Load the whole of `rules/` once, check it, freeze it. Raises Faults with file and line of each fault."""

from __future__ import annotations

import gc
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property
from importlib.resources.abc import Traversable
from typing import Any

from inspector.knowledge.cache import cached
from inspector.knowledge.checks import check
from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.limits import Limit
from inspector.knowledge.machines import Machine, MachineFile, resolve
from inspector.knowledge.model import Caution, Model, Source, Tool, read_model
from inspector.knowledge.observables import Property
from inspector.knowledge.rules import Rule
from inspector.knowledge.shipped import shipped, yaml_files
from inspector.knowledge.stakes import Stakes
from inspector.knowledge.walk_round import WalkRound
from inspector.knowledge.wear import WearPrior
from inspector.knowledge.yamlfile import Document, decode, parse


@dataclass(frozen=True)
class Knowledge:
    """Everything in `rules/`, validated and frozen."""

    properties: Mapping[str, Mapping[str, Property]]
    systems: Mapping[tuple[str, str], str]
    limits: Mapping[tuple[str, str], Mapping[str, Limit]]
    machines: Mapping[str, Machine]
    rules: Mapping[str, Rule]
    sources: Mapping[str, Source]
    cautions: Mapping[str, Caution]
    tools: Mapping[str, Tool]
    words: Mapping[str, str]
    wear: Mapping[tuple[str, str], WearPrior]
    stakes: Stakes
    walk_round: WalkRound
    worked_out: dict[Any, dict[Any, Any]] = field(default_factory=dict, init=False, compare=False, repr=False)

    def __getstate__(self) -> dict[str, Any]:
        """What was worked out from it is made anew where it is needed."""
        return {**self.__dict__, "worked_out": {}}

    @cached_property
    def limit_weights(self) -> Mapping[tuple[str, str, str], int]:
        """For every limit how bad the worst rule is that stands when it is not kept: 0 none to 3 dangerous."""
        weights = {"none": 0, "minor": 1, "major": 2, "dangerous": 3}
        found: dict[tuple[str, str, str], int] = {}
        for rule in self.rules.values():
            for tests in rule.cases():
                for name, test in tests.items():
                    if test.word == "beyond":
                        key = (rule.about, name, test.values[0])
                        found[key] = max(found.get(key, 0), weights[rule.class_])
        return found

    def limits_of(self, part: str, name: str) -> Mapping[str, Limit]:
        """All limits of a property, with the one its wear runs towards."""
        own = self.limits.get((part, name), {})
        prior = self.wear.get((part, name))
        if prior is None or prior.limit_of is None:
            return own
        return {**own, prior.limit: self.limits[part, prior.limit_of][prior.limit]}

    def given_limit(self, part: str, name: str) -> str | None:
        """Name of the limit that the stamp or the manual may replace, if there is one."""
        for limit_name, limit in self.limits.get((part, name), {}).items():
            if limit.given_by_machine:
                return limit_name
        return None


class Loader:
    """Reads every file, keeps every document for later faults, goes on after a fault."""

    def __init__(self, folder: Traversable) -> None:
        self.folder = folder
        self.faults: list[Fault] = []
        self.documents: dict[tuple[Any, ...], tuple[Document, tuple[str | int, ...]]] = {}

    def load(self) -> Knowledge:
        """Read, check, freeze. Raises Faults."""
        properties, systems = self._properties()
        knowledge = Knowledge(
            properties=properties,
            systems=systems,
            limits=self._limits(),
            machines=self._machines(),
            rules=self._rules(),
            sources=self._table("sources.yaml", Source),
            cautions=self._table("cautions.yaml", Caution),
            tools=self._table("tools.yaml", Tool),
            words=self._words(),
            wear=self._wear(),
            stakes=self._single("stakes", Stakes),
            walk_round=self._single("walk_round", WalkRound),
        )
        if not self.faults:
            self.faults += check(knowledge, self.documents)
        if self.faults:
            raise Faults(self.faults)
        return knowledge

    def _documents(self, folder: str) -> list[Document]:
        documents = []
        for name, file in yaml_files(self.folder / folder, f"rules/{folder}"):
            document = self._document(name, file)
            if document is not None:
                documents.append(document)
        return documents

    def _document(self, name: str, file: Traversable) -> Document | None:
        try:
            document = parse(decode(file.read_bytes(), name), name)
        except Faults as faults:
            self.faults += faults.faults
            return None
        if not isinstance(document.data, dict):
            self.faults.append(document.fault((), "the file must have headings"))
            return None
        return document

    def _mappings(self, document: Document) -> Iterator[tuple[str, dict[str, Any]]]:
        """The headings of a file that have headings below them; any other is a fault."""
        for heading, entries in document.data.items():
            if isinstance(entries, dict):
                yield heading, entries
            else:
                self.faults.append(document.fault((heading,), f"`{heading}` must have headings below it"))

    def _properties(self) -> tuple[dict[str, dict[str, Property]], dict[tuple[str, str], str]]:
        found: dict[str, dict[str, Property]] = {}
        systems: dict[tuple[str, str], str] = {}
        for document in self._documents("observable"):
            system = document.name.rsplit("/", 1)[1].removesuffix(".yaml")
            for part, entries in self._mappings(document):
                for name, data in entries.items():
                    if name in found.get(part, {}):
                        self.faults.append(
                            document.fault((part, name), f"`{part}` has `{name}` already", key=True)
                        )
                    entry = read_model(Property, data, document, (part, name), self.faults)
                    if entry is not None:
                        found.setdefault(part, {})[name] = entry
                        systems[part, name] = system
                        self.documents["property", part, name] = (document, (part, name))
        return found, systems

    def _limits(self) -> dict[tuple[str, str], dict[str, Limit]]:
        found: dict[tuple[str, str], dict[str, Limit]] = {}
        for document in self._documents("limits"):
            for address, entries in self._mappings(document):
                part, _, name = address.rpartition(" ")
                for limit_name, data in entries.items():
                    path = (address, limit_name)
                    entry = read_model(Limit, data, document, path, self.faults)
                    if entry is not None:
                        found.setdefault((part, name), {})[limit_name] = entry
                        self.documents["limit", part, name, limit_name] = (document, path)
        return found

    def _machines(self) -> dict[str, Machine]:
        files: dict[str, MachineFile] = {}
        for document in self._documents("machines"):
            kind = document.name.rsplit("/", 1)[1].removesuffix(".yaml")
            entry = read_model(MachineFile, document.data, document, (), self.faults)
            if entry is not None:
                files[kind] = entry
                self.documents["machine", kind] = (document, ())
        for kind in files:
            chain = [kind]
            while (above := files[chain[-1]].is_a) is not None:
                if above not in files or above in chain:
                    document = self.documents["machine", kind][0]
                    self.faults.append(document.fault(("is_a",), f"`is_a: {above}` leads nowhere"))
                    return {}
                chain.append(above)
        return {kind: resolve(files, kind) for kind in files}

    def _rules(self) -> dict[str, Rule]:
        found: dict[str, Rule] = {}
        for document in self._documents("findings"):
            identity = document.name.removeprefix("rules/findings/").removesuffix(".yaml")
            if "id" in document.data:
                text = "`id` is not written: the path of the file is the id"
                self.faults.append(document.fault(("id",), text, key=True))
            entry = read_model(Rule, {**document.data, "id": identity}, document, (), self.faults)
            if entry is not None:
                found[identity] = entry
                self.documents["rule", identity] = (document, ())
        return found

    def _table(self, file: str, kind: type[Model]) -> dict[str, Model]:
        document = self._document(f"rules/{file}", self.folder / file)
        found: dict[str, Model] = {}
        for name, data in (document.data if document else {}).items():
            assert document is not None
            entry = read_model(kind, data, document, (name,), self.faults)
            if entry is not None:
                found[name] = entry
                self.documents[kind.__name__.lower(), name] = (document, (name,))
        return found

    def _wear(self) -> dict[tuple[str, str], WearPrior]:
        by_address = self._table("wear.yaml", WearPrior)
        return {
            (address.rpartition(" ")[0], address.rpartition(" ")[2]): prior
            for address, prior in by_address.items()
        }

    def _single(self, name: str, kind: type[Model]) -> Model:
        """A file that holds one entry and that nothing works without. Raises Faults."""
        document = self._document(f"rules/{name}.yaml", self.folder / f"{name}.yaml")
        found = read_model(kind, document.data, document, (), self.faults) if document else None
        if document is None or found is None:
            raise Faults(self.faults)
        self.documents[name,] = (document, ())
        return found

    def _words(self) -> dict[str, str]:
        document = self._document("rules/words.yaml", self.folder / "words.yaml")
        if document is None:
            return {}
        for word, text in document.data.items():
            if not isinstance(text, str):
                self.faults.append(document.fault((word,), f"`{word}` is explained in one plain text"))
        return dict(document.data)


@cache
def knowledge() -> Knowledge:
    """The knowledge that ships with the program, loaded once a process."""
    folder = shipped("rules")
    # nothing that is read here is garbage; looking for some costs as much as the reading
    collecting = gc.isenabled()
    gc.disable()
    try:
        return cached(yaml_files(folder, "rules"), Loader(folder).load, Knowledge)
    finally:
        if collecting:
            gc.enable()
