"""`workbookgen`, and `python -m workbookgen`.

Whoever asks for help only wants to look around. Loading what the command needs would take several times as long as
starting Python, so that page lies ready in help.txt; a test holds it against what the command itself would print.
"""

import gc
import sys

# Python looks for dead objects that hold each other after each 700 new ones. A command makes a million that stay,
# hardly any that die so, and would spend a tenth of its time on looking. A process that it starts runs this line too.
gc.set_threshold(50_000)


def main() -> None:
    if sys.argv[1:] == ["--help"]:
        with open(f"{__file__.removesuffix('__main__.py')}help.txt", encoding="utf-8") as page:
            print(page.read(), end="")
    else:
        from workbookgen.cli import main as command

        command()


if __name__ == "__main__":
    main()
