"""How large type and keys are drawn: a step for the window's size, times the size of text the cook chose."""

TEXT_SIZES = (0.8, 0.9, 1.0, 1.1, 1.25, 1.4, 1.5)

# (least width, least height, step) of the window's inside [px], the largest first.
_STEPS = ((2300, 1300, 1.5), (1500, 900, 1.28), (1200, 0, 1.0), (0, 0, 0.92))
_LEAST = (900, 500)  # px of the design that a page needs at least; what is lower is scrolled to
_scale = 1.0


def step(width: float, height: float) -> float:
    """The step of type and keys for a window's inside of that size [px]."""
    return next(step for wide, high, step in _STEPS if width >= wide and height >= high)


def fitting(width: float, height: float, text_size: float) -> float:
    """The step times the size of text, but never so large that the window's inside cannot hold the pages [px]."""
    return round(min(step(width, height) * text_size, width / _LEAST[0], height / _LEAST[1]), 3)


def scale() -> float:
    """Pixels drawn for one pixel of the design."""
    return _scale


def set_scale(wanted: float) -> None:
    """Only the look does this, for it tells every view afterwards."""
    global _scale
    _scale = wanted


def px(length: float) -> int:
    """A length of the design [px] as it is drawn now [px]."""
    return round(length * _scale)
