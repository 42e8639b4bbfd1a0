"""What the program tells a cook, collected at many moments of invented firings and held to plain rules.

`python -m tests.voice [--firings N] [--stretches N]` prints how often each rule is broken, with examples.
"""
