"""Questions about weights that are too small for the scale; see `plausible`."""

from collections.abc import Mapping

from workbookgen.language.quantities import MASS
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING


def coarse_swatch(system: str, follows: str = "the yarn") -> tuple[Rule, ...]:
    """A swatch of less than ten steps of the scale: half a step is more than 5% of it, and of all reckoned by it."""
    return _of_few_steps(system, ("swatch_mass",), "Its weight: so light a swatch may be off by 5% and more on a scale with steps of {step}, "
                         f"and {follows} with it. Make a larger one, or weigh it on a finer scale.")


def coarse_length(system: str, label: str = "Weight") -> tuple[Rule, ...]:
    """The same of a length that is wound off and weighed, for its grist."""
    return _of_few_steps(system, ("mass",), f"{label}: so light a length may be off by 5% and more on a scale with steps of {{step}}. "
                         "Wind off more, or weigh on a finer scale.")


def coarse_difference(system: str) -> tuple[Rule, ...]:
    """Two weights less than ten steps of the scale apart: half a step of each makes more than 10% of the difference."""
    return _of_few_steps(system, ("before", "after"), "Ball after: so little less than before may be off by 10% and more on a scale with steps of {step}, "
                         "and the rows with it. Work more rows between, or weigh on a finer scale.")


def coarse_start(system: str) -> tuple[Rule, ...]:
    """A shawl of which so little is made that half a step of the scale is more than 5% of it."""
    return _of_few_steps(system, ("used",), "Yarn used so far: so little may be off by 5% and more on a scale with steps of {step}, "
                         "and the rows with it. Work on and weigh again, or weigh on a finer scale.")


def coarse_loss(system: str) -> tuple[Rule, ...]:
    """A sample of less than twenty steps: half a step of both is 5% of it, and its lot expects its loss of all."""
    return _of_few_steps(system, ("fiber_in", "yarn_out"), "Fiber in: so light a sample may show a loss that is off by 5% and more, with steps of {step}. "
                         "Spin more, or weigh on a finer scale.", among=("fiber_in",), steps=20)


def _of_few_steps(system: str, read: tuple[str, ...], question: str, among: tuple[str, ...] = (), steps: int = 10) -> tuple[Rule, ...]:
    """A weight, or the difference of two: a question for each step in which scales show weights, the coarsest first.

    What is no multiple of a step was not weighed on such a scale. `among` are the weights whose difference is of few
    steps, all that were read unless given.
    """
    grams = MASS.unit(system).value
    scales = ((1, 0.1), "g") if grams == 1 else ((0.1, 0.05, 0.01), "oz")
    return tuple(_of_fewer_than(steps, step, grams, read, among or read, f"{ASKING} {question.format(step=f'{step:g} {scales[1]}')}") for step in scales[0])


def _of_fewer_than(most: int, step: float, grams: float, read: tuple[str, ...], among: tuple[str, ...], sentence: str) -> Rule:
    shown, few = "" if grams == 1 else f" / {grams}", most - 0.000001
    whole = ", ".join(f"ABS({word}{shown} / {step} - ROUND({word}{shown} / {step}, 0)) < 0.000001" for word in read)

    def holds(values: Mapping[str, float]) -> bool:
        steps = {word: values[word] / step for word in read}
        first, *rest = (steps[word] for word in among)
        return all(abs(each - round(each)) < 1e-6 for each in steps.values()) and first - sum(rest) < few

    return Rule(f"AND({whole}, ({' - '.join(among)}){shown} / {step} < {few})", holds, sentence)
