"""Every page ends with an example whose answer can be checked in the head, or is published; here all of them run."""

from .examples import page_of, public_calculations, run


def test_an_example_calls_the_calculation_and_shows_an_answer():
    def fits(calculation) -> bool:
        examples = page_of(calculation).examples
        lines = sum(len((line.source + line.want).splitlines()) for line in examples)
        return lines <= 6 and any(f"{calculation.__name__}(" in line.source and line.want for line in examples)

    assert [name for name, calculation in public_calculations() if not fits(calculation)] == []


def test_the_answer_is_the_one_printed():
    assert "".join(run(page_of(calculation)) for _, calculation in public_calculations()) == ""
