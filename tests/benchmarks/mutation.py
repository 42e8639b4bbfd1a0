"""Mutation study: do the tests notice when a rule is turned round? Run by hand, needs `pip install mutmut==3.8.1`.

    python -m tests.benchmarks.mutation forecast/learning --tests tests/forecast/learning --sample 150 --seed 1

mutmut says how the source may be changed: one operator, number, argument, branch or assignment at a time, the
constants of a module too. Each change drawn is written into a copy of the tree in a temporary folder, and the tests
given run over it in a process of their own until the first one fails. Code under a decorator is left as it is, which
is mutmut's rule.
"""

import argparse
import difflib
import importlib
import math
import os
import random
import resource
import shutil
import signal
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = Path("cookstove_gui")
COPIED = (PACKAGE, Path("tests"), Path("resources"), Path("sample_sessions"), Path("pyproject.toml"))
# Imported once, before the processes that run the tests are forked: what takes long to import and is never mutated.
HEAVY = ("numpy", "scipy.stats", "pandas", "hypothesis.strategies", "pytest", "xdist.plugin", "PySide6.QtTest")
# hypothesis was imported before pytest could rewrite its asserts, which does not matter here.
QUIET = ["-x", "-q", "-n", "0", "--tb=no", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning"]


@dataclass(frozen=True)
class Mutant:
    """One changed source file: where, what it says now, and the change as a diff."""

    path: Path
    text: str
    diff: str


def main() -> int:
    """Draw the mutants, run the tests over each, print what survives and the share killed."""
    asked = _arguments()
    files = [file for room in asked.rooms for file in _files(ROOT / PACKAGE / room, "*.py")]
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        _move_to_a_copy(Path(folder))
        for name in (*HEAVY, *_untouched_by(files)):
            importlib.import_module(name)
        changes = [change for file in files for change in _changes(file.relative_to(ROOT))]
        drawn = random.Random(asked.seed).sample(changes, min(asked.sample or len(changes), len(changes)))
        tests = [file for given in asked.tests for file in _files(Path(given), "test_*.py")]
        if _verdict(tests, 600) != "survived":
            print("The tests given fail on the tree as it is.", file=sys.stderr)
            return 2
        _forget_bytecode()
        patience = 20 + 4 * math.ceil(resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime)
        print(f"{len(changes)} mutants of {len(files)} files, {len(drawn)} drawn (seed {asked.seed})", flush=True)
        found: list[tuple[Mutant, str]] = []
        for count, change in enumerate(drawn, 1):
            mutant = change()
            unchanged = mutant.path.read_text(encoding="utf-8")
            mutant.path.write_text(mutant.text, encoding="utf-8")
            found.append((mutant, _first_to_object(_nearest_first(tests, mutant.path.stem), patience)))
            mutant.path.write_text(unchanged, encoding="utf-8")
            if found[-1][1] == "survived":
                print(f"\n{count}. survived\n{mutant.diff}", flush=True)
            elif count % 10 == 0:
                print(f"{count} judged", flush=True)
    _print_shares(found)
    return 0


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("rooms", nargs="+", help="folders or files of cookstove_gui, such as forecast/learning")
    parser.add_argument("--tests", nargs="+", required=True, help="test folders or files to run over each mutant")
    parser.add_argument("--sample", type=int, help="how many mutants to draw; all without it")
    parser.add_argument("--seed", type=int, default=1)
    return parser.parse_args()


def _files(room: Path, pattern: str) -> list[Path]:
    return [room] if room.suffix == ".py" else sorted(room.rglob(pattern))


def _untouched_by(files: list[Path]) -> list[str]:
    """The package's modules that neither are mutated nor import what is; without the gui, whose imports start Qt."""
    import grimp

    graph = grimp.build_graph(PACKAGE.name, cache_dir=None)
    mutated = {".".join(file.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for file in files}
    above = {module for name in mutated for module in graph.find_downstream_modules(name)}
    qt = (f"{PACKAGE.name}.gui", f"{PACKAGE.name}.__main__")
    touched = mutated | above
    # To import a module is to import the packages around it, which the graph does not say.
    return sorted(
        name
        for name in graph.modules - touched
        if not name.startswith(qt) and not any(name.startswith(f"{package}.") for package in touched)
    )


def _nearest_first(tests: list[Path], subject: str) -> list[list[Path]]:
    """The tests that bear a file's name, then all others."""
    near = [test for test in tests if test.stem.startswith(f"test_{subject}")]
    return [some for some in (near, [test for test in tests if test not in near]) if some]


def _first_to_object(groups: list[list[Path]], patience: int) -> str:
    verdicts = (_verdict(tests, patience) for tests in groups)
    return next((verdict for verdict in verdicts if verdict != "survived"), "survived")


def _move_to_a_copy(folder: Path) -> None:
    """Copy the tree into a folder and make it the one that is imported from."""
    for part in COPIED:
        if (ROOT / part).is_dir():
            shutil.copytree(ROOT / part, folder / part, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(ROOT / part, folder / part)
    os.chdir(folder)
    for name in [name for name in sys.modules if name.split(".")[0] in ("tests", PACKAGE.name)]:
        del sys.modules[name]
    sys.path[:] = [str(folder), *(entry for entry in sys.path if Path(entry or ".").resolve() not in (ROOT, folder))]
    os.environ["PYTHONPATH"] = str(folder)


def _changes(path: Path) -> list[Callable[[], Mutant]]:
    """Every change of one file that mutmut knows; the changed text is written only for those that are drawn."""
    from mutmut.mutation.file_mutation import create_mutations

    text = path.read_text(encoding="utf-8")
    module, mutations, *_ = create_mutations(str(path), text)

    def mutant(mutation: Any) -> Mutant:
        changed = module.deep_replace(mutation.original_node, mutation.mutated_node).code
        lines = difflib.unified_diff(text.splitlines(), changed.splitlines(), str(path), str(path), n=1, lineterm="")
        return Mutant(path, changed, "\n".join(list(lines)[1:]))

    return [partial(mutant, mutation) for mutation in mutations]


def _verdict(tests: list[Path], patience: int) -> str:
    """What the tests make of the tree as it stands: "killed", "survived" or "timeout".

    `patience` is in seconds of the processor, so that a busy machine changes nothing.
    """
    child = os.fork()
    if not child:
        resource.setrlimit(resource.RLIMIT_CPU, (patience, patience + 5))
        _run_tests(tests)
    _, status = os.waitpid(child, 0)
    if os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGXCPU, signal.SIGKILL):
        return "timeout"
    return "survived" if status == 0 else "killed"


def _run_tests(tests: list[Path]) -> None:
    """Run the tests in this process and end it with their exit code."""
    import hypothesis
    import pytest

    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    # A failing example need not be made small here.
    phases = (hypothesis.Phase.explicit, hypothesis.Phase.generate)
    hypothesis.settings.register_profile("mutants", deadline=None, derandomize=True, database=None, phases=phases)
    code = 1
    try:
        code = int(pytest.main([*QUIET, "--hypothesis-profile=mutants", *map(str, tests)]))
    finally:
        os._exit(code)


def _forget_bytecode() -> None:
    """From now on the package's source is compiled anew each time; that of the tests is kept."""
    for cache in PACKAGE.rglob("__pycache__"):
        shutil.rmtree(cache)
    sys.dont_write_bytecode = True


def _print_shares(found: list[tuple[Mutant, str]]) -> None:
    print(f"\n{'file':60} killed  timeout  survived")
    for path in sorted({mutant.path for mutant, _ in found}):
        count = Counter(verdict for mutant, verdict in found if mutant.path == path)
        print(f"{path!s:60} {count['killed']:6}  {count['timeout']:7}  {count['survived']:8}")
    survived = sum(verdict == "survived" for _, verdict in found)
    print(f"\n{len(found) - survived} of {len(found)} killed ({100.0 * (1.0 - survived / max(len(found), 1)):.0f} %)")


if __name__ == "__main__":
    sys.exit(main())
