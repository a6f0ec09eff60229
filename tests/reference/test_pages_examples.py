"""Every page ends with an example whose answer can be checked in the head, or is published; here all of them run."""

import pytest

from .examples import page_of, public_calculations, run


@pytest.fixture(params=public_calculations(), ids=[name for name, _ in public_calculations()])
def calculation(request):
    return request.param[1]


def test_an_example_calls_the_calculation_and_shows_an_answer(calculation):
    examples = page_of(calculation).examples
    assert any(f"{calculation.__name__}(" in line.source and line.want for line in examples)
    assert sum(len((line.source + line.want).splitlines()) for line in examples) <= 6


def test_the_answer_is_the_one_printed(calculation):
    assert not run(page_of(calculation))
