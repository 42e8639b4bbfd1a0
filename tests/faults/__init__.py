"""What goes wrong around the program: power cuts, full disks, damage, wrong clocks, two windows, hung threads."""
