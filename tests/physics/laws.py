"""What the laws of this room are tried on: few examples, always the same ones."""

from hypothesis import settings
from hypothesis import strategies as st

law = settings(max_examples=25)

stove_temperatures = st.floats(280.0, 800.0)
room_temperatures = st.floats(263.0, 315.0)
emissivities = st.floats(0.2, 1.0)
pressures = st.floats(40_000.0, 108_000.0)
altitudes = st.floats(-400.0, 8500.0)
shapes = st.sampled_from(["wall", "cylinder", "sphere"])
biots = st.floats(1e-3, 1e3)
