"""`python -m tests.reference`: writes resources/help/checks.md anew from the data files beside this one."""

from tests.reference.table import PAGE, write

if __name__ == "__main__":
    write()
    print(f"wrote {PAGE.relative_to(PAGE.parents[2])}")
