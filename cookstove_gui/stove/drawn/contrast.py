"""How well one colour reads on another, by WCAG 2.2."""


def relative_luminance(colour: str) -> float:
    """Relative luminance (0 to 1) of an sRGB colour #RRGGBB. Source: WCAG 2.2, definition of relative luminance."""

    def linear(channel: int) -> float:
        share = channel / 255
        return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)

    red, green, blue = (linear(int(colour[start : start + 2], 16)) for start in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio (1 to 21) of two colours. Source: WCAG 2.2, definition of contrast ratio."""
    lighter, darker = sorted((relative_luminance(one), relative_luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def text_on(background: str) -> str:
    """Black or white, whichever reads better; between them every colour is written on at 4.58 : 1 at least."""
    return max(("#000000", "#FFFFFF"), key=lambda ink: contrast(ink, background))
