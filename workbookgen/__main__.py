"""`workbookgen`, and `python -m workbookgen`.

Whoever asks for help only wants to look around. Loading what the command needs would take
several times as long as starting Python, so that page lies ready in help.txt; a test holds
it against what the command itself would print.
"""

import sys


def main() -> None:
    if sys.argv[1:] == ["--help"]:
        with open(f"{__file__.removesuffix('__main__.py')}help.txt", encoding="utf-8") as page:
            print(page.read(), end="")
    else:
        from workbookgen.cli import main as command

        command()


if __name__ == "__main__":
    main()
