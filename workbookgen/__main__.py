"""`python -m workbookgen` is the command."""

from workbookgen.cli import main

if __name__ == "__main__":
    main()
