"""Every page ends with an example whose answer can be checked in the head, or is published; here all of them run."""

import doctest
import inspect
import sys

import numpy as np
import pytest

from workbookgen.units import Quantity

from .examples import public_calculations

PARSER, RUNNER = doctest.DocTestParser(), doctest.DocTestRunner(verbose=False)


@pytest.fixture(params=public_calculations(), ids=[name for name, _ in public_calculations()])
def example(request):
    """The example of a page, in the names of its own module, with quantities and numpy at hand."""
    name, calculation = request.param
    names = {**vars(sys.modules[calculation.__module__]), "np": np, "Quantity": Quantity}
    return calculation.__name__, PARSER.get_doctest(inspect.getdoc(calculation), names, name, None, 0)


def test_an_example_calls_the_calculation_and_shows_an_answer(example):
    name, page = example
    assert any(f"{name}(" in line.source and line.want for line in page.examples)
    assert sum(len((line.source + line.want).splitlines()) for line in page.examples) <= 6


def test_the_answer_is_the_one_printed(example):
    _, page = example
    said: list[str] = []
    RUNNER.run(page, out=said.append)
    assert not said, "".join(said)
