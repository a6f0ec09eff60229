"""`workbookgen`, and `python -m workbookgen`.

Someone who asks for help only wants to look around, and loading what the command needs takes several times as long as
starting Python. So that page is kept ready in help.txt; a test compares it with what the command itself would print.
"""

import gc
import sys

# By default Python looks for reference cycles after every 700 new objects. A command makes a million objects that stay
# and hardly any cycles, and would spend a tenth of its time looking. Processes that it starts run this line too.
gc.set_threshold(50_000)


def main() -> None:
    if sys.argv[1:] == ["--help"]:
        with open(f"{__file__.removesuffix('__main__.py')}help.txt", encoding="utf-8") as page:
            print(page.read(), end="")
    else:
        from workbookgen.ending import guarded

        guarded(_run)


def _run() -> None:
    """The command, imported only here, so that a slip in a module it needs is told in a sentence as well."""
    from workbookgen.cli import main as command

    command()


if __name__ == "__main__":
    main()
