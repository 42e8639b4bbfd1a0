"""Parts of pictures on paper as SVG text: words, lines, shapes, in the few colours of a page that reads in grey too."""

from collections.abc import Iterable
from html import escape

INK, SOFT, LINE, FAINT = "#1C2022", "#4E5558", "#767C7A", "#D3D7D0"
VERDIGRIS, BAND, DOUBT, GROUND = "#17655A", "#E1EAE8", "#DDDEDE", "#FFFFFF"  # the heat wanted, and how sure
FACE = "Source Sans 3, Noto Sans, DejaVu Sans, sans-serif"
_LETTER = 0.52  # of its size, the width of a usual letter; a little more than it is, so that words keep apart

WIDE = 698.0  # px, the width of a page's text

Point = tuple[float, float]


def picture(parts: Iterable[str], wide: float, high: float, words: str) -> str:
    """A whole picture; `words` are what is read out."""
    inside = "\n".join(parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:g} {high:g}" width="{wide:g}" height="{high:g}" '
        f'role="img" aria-label="{escape(words, quote=True)}" font-family="{FACE}" font-weight="400">\n{inside}\n</svg>'
    )


def words(at: Point, said: str, *, size: float = 12.0, ink: str = INK, anchor: str = "start", weight: int = 400) -> str:
    """Words on a baseline."""
    return (
        f'<text x="{at[0]:.1f}" y="{at[1]:.1f}" font-size="{size:g}" font-weight="{weight}" fill="{ink}" '
        f'text-anchor="{anchor}">{escape(said)}</text>'
    )


def width_of(said: str, size: float = 12.0) -> float:
    """About how wide words are."""
    return _LETTER * size * len(said)


def line(one: Point, other: Point, *, ink: str = INK, wide: float = 1.0, dots: str = "") -> str:
    """A straight line; `dots` as SVG's dash array."""
    dashed = f' stroke-dasharray="{dots}"' if dots else ""
    return (
        f'<line x1="{one[0]:.1f}" y1="{one[1]:.1f}" x2="{other[0]:.1f}" y2="{other[1]:.1f}" stroke="{ink}" '
        f'stroke-width="{wide:g}" stroke-linecap="round"{dashed}/>'
    )


def path(points: Iterable[Point], *, ink: str = INK, wide: float = 1.0, dots: str = "") -> str:
    """A line through points."""
    dashed = f' stroke-dasharray="{dots}"' if dots else ""
    return (
        f'<polyline points="{_told(points)}" fill="none" stroke="{ink}" stroke-width="{wide:g}" '
        f'stroke-linejoin="round"{dashed}/>'
    )


def shape(points: Iterable[Point], fill: str) -> str:
    """A filled shape."""
    return f'<polygon points="{_told(points)}" fill="{fill}"/>'


def box(at: Point, wide: float, high: float, fill: str) -> str:
    """A filled box by its upper left corner."""
    return f'<rect x="{at[0]:.1f}" y="{at[1]:.1f}" width="{wide:.1f}" height="{high:.1f}" fill="{fill}"/>'


def ring(at: Point, radius: float, *, ink: str = INK, wide: float = 1.4, fill: str = GROUND) -> str:
    """A circle with an edge."""
    edge = f'stroke="{ink}" stroke-width="{wide:g}"'
    return f'<circle cx="{at[0]:.1f}" cy="{at[1]:.1f}" r="{radius:g}" fill="{fill}" {edge}/>'


def _told(points: Iterable[Point]) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
