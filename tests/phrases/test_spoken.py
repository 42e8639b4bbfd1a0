"""What the voice reads needs no reading of signs; what has none stays as it is."""

import pytest

from cookstove_gui.phrases.spoken import spoken


@pytest.mark.parametrize(
    ("shown", "said"),
    [
        ("The oven is about to leave 425–475 °F.", "The oven is about to leave 425 to 475 degrees."),
        ("The oven is likely at about 200 °C.", "The oven is likely at about 200 degrees."),
        ("Read 300-350.", "Read 300 to 350."),
        ("Set the air to 60 % open.", "Set the air to 60 percent open."),
        ("Take the roast (2.3 lb) out if done.", "Take the roast (2.3 pounds) out if done."),
        ("Take the 1 lb loaf out.", "Take the 1 pound loaf out."),
        ("Ham: rest 2–3 h.", "Ham: rest 2 to 3 hours."),
        ("Dough: rest 45min.", "Dough: rest 45 minutes."),
        ("Ham: soak 1½ kg.", "Ham: soak 1 and a half kilograms."),
        ("Dough: rest ½ h.", "Dough: rest half hour."),
        ("Turn the ½ loaf.", "Turn the half loaf."),
        ("Turn the 1/2 loaf.", "Turn the half loaf."),
        ("Put the pie/cake in.", "Put the pie or cake in."),
        ("Take the pork & beans out.", "Take the pork and beans out."),
        ("Put the stew on, top back right.", "Put the stew on, top back right."),
        ("Turn the half-and-half loaf.", "Turn the half-and-half loaf."),
    ],
)
def test_signs_are_read_as_words(shown: str, said: str) -> None:
    assert spoken(shown) == said
