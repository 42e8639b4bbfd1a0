"""Which definitions of the package the program can reach, told from its source.

From its start on, every function, class, method and constant that reached code names is reached in turn. A bare name
means what its module defines or imports by it, `module.name` likewise; any other `.name` means every method of that
name. So what is told as unreached is certainly so, unless its name is put together at run time. Fields of dataclasses
are not looked at.
"""

import ast
import importlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path


@dataclass(slots=True)
class _Part:
    """A definition, or all that a module runs when it is imported."""

    module: str
    nodes: list[ast.AST] = field(default_factory=list)
    members: dict[str, str] = field(default_factory=dict)  # of a class: the members and their parts
    always: list[str] = field(default_factory=list)  # parts reached together with it


class Source:
    """A package's parts by dotted name. Its modules must be importable."""

    def __init__(self, root: Path) -> None:
        self._package = root.name
        self.parts: dict[str, _Part] = {}
        self._all_named: dict[str, tuple[list[str], set[str]]] = {}
        self._imports: dict[str, dict[str, str]] = {}
        for path in sorted(root.rglob("*.py")):
            steps = path.relative_to(root.parent).with_suffix("").parts
            module = ".".join(steps[:-1] if steps[-1] == "__init__" else steps)
            tree = ast.parse(path.read_text(encoding="utf-8"))
            self._imports[module] = dict(_imported(tree))
            self._divide(module, tree)

    def unreached(self, *starts: str) -> list[str]:
        """The parts that none of the starts reaches; of a class or module left out whole, only itself."""
        reached = self._reached(starts)
        left = [name for name in self.parts if name not in reached]
        return [
            name for name in left if not any(outer in self.parts and outer not in reached for outer in _outer(name))
        ]

    def within(self, name: str) -> list[str]:
        """A part and all that it holds."""
        return [part for part in self.parts if part == name or part.startswith(f"{name}.")]

    def _divide(self, module: str, tree: ast.Module) -> None:
        runs = self.parts[module] = _Part(module)
        runs.always += [outer for outer in _outer(module) if outer.startswith(self._package)]
        for node in tree.body:
            names = _defined(node)
            for name in names:
                self._add(f"{module}.{name}", node, module)
            if not names:
                runs.nodes.append(node)

    def _add(self, name: str, node: ast.AST, module: str) -> None:
        part = self.parts[name] = _Part(module, always=[module])
        if not isinstance(node, ast.ClassDef):
            part.nodes.append(node)
            return
        part.nodes += [*node.bases, *node.keywords, *node.decorator_list]
        for inner in node.body:
            members = [] if isinstance(inner, ast.AnnAssign) else _defined(inner)
            for member in members:
                part.members[member] = f"{name}.{member}"
                self._add(f"{name}.{member}", inner, module)
                if self._is_called_from_outside(module, name, member):
                    part.always.append(f"{name}.{member}")
            if not members:
                part.nodes.append(inner)

    def _is_called_from_outside(self, module: str, name: str, member: str) -> bool:
        """Whether Python or a library calls it: a special method, or one that overrides a library's."""
        if member.startswith("__"):
            return True
        found: object = importlib.import_module(module)
        for step in name.removeprefix(f"{module}.").split("."):
            found = getattr(found, step)
        bases = found.__mro__[1:] if isinstance(found, type) else ()
        return any(member in vars(base) for base in bases if base.__module__.split(".")[0] != self._package)

    def _reached(self, starts: Iterable[str]) -> set[str]:
        reached: set[str] = set()
        asked: set[str] = set()  # names of attributes
        members: dict[str, list[str]] = {}  # of all parts reached, by their short names
        waiting = list(starts)
        while waiting:
            name = waiting.pop()
            if name in reached or name not in self.parts:
                continue
            reached.add(name)
            part = self.parts[name]
            waiting += part.always
            for short, member in part.members.items():
                members.setdefault(short, []).append(member)
                if short in asked:
                    waiting.append(member)
            names, attributes = self._named(name)
            waiting += names
            for new in attributes - asked:
                waiting += members.get(new, ())
            asked |= attributes
        return reached

    def _named(self, name: str) -> tuple[list[str], set[str]]:
        if name not in self._all_named:
            self._all_named[name] = self._look_for_names(self.parts[name])
        return self._all_named[name]

    def _look_for_names(self, part: _Part) -> tuple[list[str], set[str]]:
        names: list[str] = []
        attributes: set[str] = set()
        for node in (inner for whole in part.nodes for inner in ast.walk(whole)):
            match node:
                case ast.Name(id=name):
                    names.append(self._meant(part.module, name))
                case ast.Attribute(value=ast.Name(id=owner), attr=attribute, ctx=ast.Load()):
                    attributes.add(attribute)
                    names.append(self._meant(part.module, owner, attribute))
                case ast.Attribute(attr=attribute, ctx=ast.Load()):
                    attributes.add(attribute)
                case ast.ImportFrom(module=str(module)):
                    whole = [f"{module}.{one.name}" for one in node.names]
                    names += [module, *(name for name in whole if name in self._imports)]
                case ast.Import():
                    names += [one.name for one in node.names]
                case ast.Constant(value=str(text)) if text.isidentifier():  # getattr, or an annotation as text
                    attributes.add(text)
                    names.append(self._meant(part.module, text))
        return names, attributes

    def _meant(self, module: str, *steps: str) -> str:
        """The part that a name in a module stands for, also where a package only hands it on."""
        name = ".".join((self._imports[module].get(steps[0], f"{module}.{steps[0]}"), *steps[1:]))
        seen: set[str] = set()
        while name not in self.parts and name not in seen:
            seen.add(name)
            outer, _, last = name.rpartition(".")
            name = self._imports.get(outer, {}).get(last, name)
        return name


def _imported(tree: ast.Module) -> Iterator[tuple[str, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            yield from ((one.asname or one.name, f"{node.module}.{one.name}") for one in node.names)
        elif isinstance(node, ast.Import):
            yield from ((one.asname or one.name.split(".")[0], one.name) for one in node.names)


def _defined(node: ast.AST) -> list[str]:
    match node:
        case ast.FunctionDef(name=name) | ast.AsyncFunctionDef(name=name) | ast.ClassDef(name=name):
            return [name]
        case ast.Assign():
            named = [one.id for target in node.targets for one in ast.walk(target) if isinstance(one, ast.Name)]
            return [name for name in named if not name.startswith("__")]
        case ast.AnnAssign(target=ast.Name(id=name)):
            return [name]
    return []


def _outer(name: str) -> list[str]:
    steps = name.split(".")
    return [".".join(steps[:count]) for count in range(1, len(steps))]
