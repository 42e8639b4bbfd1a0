"""The picture of the rooms in DEVELOPERS.md, drawn from the code's imports; `python -m tests.rooms` regenerates it."""

import tomllib
from pathlib import Path

import grimp

ROOT = Path(__file__).resolve().parent.parent
GUIDE = ROOT / "DEVELOPERS.md"
BEGINS, ENDS = "<!-- rooms: python -m tests.rooms -->", "<!-- rooms end -->"
PACKAGE = "cookstove_gui"


def floors() -> list[list[str]]:
    """Rooms floor by floor, the top one first, as the layers contract lists them."""
    tool = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["importlinter"]
    layers = next(one["layers"] for one in tool["contracts"] if one.get("exhaustive") and one["type"] == "layers")
    return [[room.strip() for room in layer.replace("|", ":").split(":")] for layer in layers]


def picture() -> str:
    """One line a room: its floor, its name, the folders in it, and the rooms it imports."""
    graph = grimp.build_graph(PACKAGE)
    rooms = floors()
    lines = []
    for height, floor in zip(range(len(rooms), 0, -1), rooms, strict=True):
        for room in floor:
            inside = {f"{PACKAGE}.{room}", *graph.find_descendants(f"{PACKAGE}.{room}")}
            used = {
                name.split(".")[1]
                for module in inside
                for name in graph.find_modules_directly_imported_by(module)
                if name.startswith(f"{PACKAGE}.")
            } - {room}
            folder = ROOT / PACKAGE / room
            parts = sorted(f"{one.name}/" for one in folder.glob("*") if (one / "__init__.py").exists())
            name = f"{room}/" if folder.is_dir() else f"{room}.py"
            below = " ".join(one for layer in rooms for one in layer if one in used)
            lines.append(f"{height:>2}  {name:<19}{' '.join(parts)}".rstrip())
            if below:
                lines.append(f"{'':>6}└▶ {below}")
    return "\n".join(["```", *lines, "```"])


def guide_with(drawn: str) -> str:
    """The guide's text with the picture in its place."""
    before, rest = GUIDE.read_text("utf-8").split(BEGINS)
    return f"{before}{BEGINS}\n{drawn}\n{ENDS}{rest.split(ENDS)[1]}"


if __name__ == "__main__":
    GUIDE.write_text(guide_with(picture()), encoding="utf-8")
