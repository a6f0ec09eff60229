"""A formula of several cases, of which the first that holds gives the value."""


def first_of(*cases: tuple[str, str], otherwise: str = '""') -> str:
    """Formula text of the value of the first of these (condition, value) whose condition holds."""
    text = otherwise
    for condition, value in reversed(cases):
        text = f"IF({condition},{value},{text})"
    return text
