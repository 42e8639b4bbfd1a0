"""What the program tells a cook, collected at many moments of invented firings and held to plain rules.

`python -m tests.voice [--sessions N] [--every MINUTES]` prints how often each rule fails.
"""
