"""The stages from bought fiber to yarn, as the sheets Fiber and Buying both show them.

A lot passes skirting, scouring, preparation and spinning; the state in which it was bought says which of them are
done (stage 1 raw fleece to stage 5 yarn or thread). Each stage's loss is what was weighed, or else the spinner's own
figure, or else what the guide expects.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from workbookgen.language.fields import Input, Result
from workbookgen.language.quantities import MASS, NUMBER, SHARE
from workbookgen.language.rules import Rule
from workbookgen.language.sentences import ASKING, UNKNOWN
from workbookgen.reference import fiber
from workbookgen.sheets import lists, usual
from workbookgen.sheets.limits import LOSS, PART
from workbookgen.sheets.lookup import lookup
from workbookgen.sheets.plausible import IN_DAMP_AIR
from workbookgen.texts import folded


@dataclass(frozen=True)
class Stage:
    """A stage of processing: its number, and the name of its share in keys such as `own_skirting`.

    `later` are the weighings after it; it cannot have left less than any of them.
    """

    number: int
    share: str
    later: tuple[str, ...] = ()

    @property
    def own(self) -> str:
        return f"own_{self.share}"

    @property
    def expected(self) -> str:
        return f"expected_{self.share}"

    @property
    def own_or_guide(self) -> str:
        """Formula text of the spinner's own figure, or else the guide's."""
        return f"or_else({self.own}, {self.expected})"

    @property
    def kept(self) -> str:
        """Formula text of the share that it leaves."""
        return self.own_or_guide if self.share == "yield" else f"(1 - {self.own_or_guide})"

    @property
    def is_known(self) -> str:
        return f"given({self.own}), given({self.expected})"

    @property
    def uses(self) -> dict[str, str]:
        return {"own": self.own, "guide": self.expected}

    @property
    def weighings(self) -> dict[str, str]:
        """The arguments of its calculation for later weighings and, except for the first stage, the bought weight."""
        return {each: WEIGHED_LATER[each] for each in self.later} | ({"bought": "weight"} if self.number > 1 else {})

    @property
    def of_the_scale(self) -> tuple[str, ...]:
        """The parameters about weighings, which are left out where nothing was weighed."""
        return ("weighed", *self.weighings)


WEIGHED_LATER = {"scoured": "scoured_weighed", "prepared": "prepared_weighed", "spun": "yarn_weighed"}
SKIRTING = Stage(1, "skirting", later=("scoured", "prepared", "spun"))
SCOURING = Stage(2, "yield", later=("prepared", "spun"))
PREPARATION = Stage(3, "preparation", later=("spun",))
SPINNING = Stage(4, "spinning")


def own_losses() -> tuple[Input, ...]:
    """The spinner's own figures, which win over the guide's."""
    return (
        Input("own_skirting", "Own skirting loss", LOSS, SHARE, width=12,
              help="Your own figure: share lost in skirting (5 to 25%, common practice); it wins over the guide on the sheet Guide."),
        Input("own_yield", "Own scoured yield", PART, SHARE, usual=usual.SCOURED_YIELD, width=13,
              help="Your own figure: washed weight over skirted weight (40 to 70% of raw wool, common practice); it wins over the guide on the sheet Guide."),
        Input("own_preparation", "Own prep. loss", LOSS, SHARE, usual=usual.LOST_IN_COMBING,
              help="Your own figure: share lost in carding (2 to 10%) or left in the comb (20 to 40%, common practice); it wins over the guide on the sheet Guide."),
        Input("own_spinning", "Own spin. loss", LOSS, SHARE,
              help="Your own figure: share lost in spinning and plying (1 to 5%, common practice); it wins over the guide on the sheet Guide."),
    )


def stage() -> Result:
    """The stage of the fiber when it was bought."""
    return Result("stage", "Stage", "lookup(states_stage, states_name, state)", fiber.stage, NUMBER,
                  digits=0, width=7, note="1 raw and not skirted, 2 skirted, 3 washed, 4 prepared, 5 yarn.")


def way() -> Input:
    """Carding or combing; combs hold back several times what cards lose."""
    return Input("way", "Prepared by", lists.one_of(lists.WAYS), width=11, help="Carding, if left empty; combing leaves far more behind. Half and half: make two lots of it.")


def second_way() -> Input:
    """A second preparation, which is easily forgotten."""
    return Input("second_way", "And again by", lists.one_of(lists.WAYS), width=11,
                 help="A second preparation loses once more; empty means none. Combing after carding is one, and carding of a bought top.")


def own_second() -> Input:
    return Input("own_second", "Own second loss", LOSS, SHARE, width=12, help="Your own figure: share lost in a second preparation; it wins over the guide on the sheet Guide.")


COMBED = 'or_else(way, "carding") = "combing"'
COMBED_AGAIN = 'or_else(second_way, "carding") = "combing"'
# Whether all preparation was done before the lot was bought; a bought top that is carded again still loses.
PREPARED_BEFORE = "stage > IF({again}, 4, 3)"
DONE_BEFORE = PREPARED_BEFORE.format(again="IF(given(second_loss), second_loss > 0, given(second_way))")
WILL_BE_DONE = PREPARED_BEFORE.format(again="second_loss > 0")
ONCE = "NOT(given(second_way)), blank_or(own_second, own_second <= 0)"
FIRST, FIRST_KNOWN = PREPARATION.own_or_guide, f"OR(stage > 3, {PREPARATION.is_known})"
BOTH_KEPT = f"IF(stage > 3, 1, 1 - {FIRST}) * (1 - second_loss)"
OF_BOTH = {"own": "own_preparation", "guide": "expected_preparation", "second": "second_loss"}


def second_loss() -> Result:
    """The share lost in a second preparation; 0 if there is none."""
    guide = f"IF({COMBED_AGAIN}, breed_combing, breed_carding)"
    return Result("second_loss", "Second preparation", f"or_else(own_second, IF(given(second_way), {guide}, 0))", fiber.second_loss, SHARE, width=11,
                  uses={"way": "second_way", "own": "own_second", "carding": "breed_carding", "combing": "breed_combing"},
                  only_if=f"OR(given(own_second), NOT(given(second_way)), IF({COMBED_AGAIN}, given(breed_combing), given(breed_carding)))",
                  note="Share lost in it: your own figure, or as the guide on the sheet Guide expects.")


def guide_losses(spinning: str = SPINNING.expected) -> tuple[Result, ...]:
    """The losses that the guide expects of the chosen breed or fiber, prepared in the chosen way.

    `spinning` is the key of the loss in spinning; the sheet Fiber has another, since samples of a lot win over it.
    """
    return (
        _of_guide("expected_skirting", "Skirting", "skirting"),
        _of_guide("breed_carding", "Carding", "preparation"),
        _of_guide("breed_combing", "Combing", "combing"),
        Result("expected_preparation", "Preparation", f"IF({COMBED}, breed_combing, breed_carding)", fiber.preparation_loss, SHARE, width=11,
               uses={"carding": "breed_carding", "combing": "breed_combing"}, only_if=f"IF({COMBED}, given(breed_combing), given(breed_carding))",
               note="Share lost in carding or combing, by the guide."),
        _of_guide(spinning, "Spinning", "spinning"),
    )


def guide_yield(key: str) -> Result:
    """The scoured yield that the guide expects."""
    return _of_guide(key, "Scoured yield", "yield", "kept")


def _of_guide(key: str, label: str, step: str, what: str = "lost") -> Result:
    column = f"guide_used_{step}"
    return lookup(key, label, column, "kind", SHARE, width=11, note=f"Share {what}, as the guide on the sheet Guide expects.")


def weights_down() -> tuple[Result, ...]:
    """The weight after each stage, from the bought weight down to yarn.

    A weighed stage does not depend on those before it, and an expected one is no less than any later weighing.
    """
    return (
        _after(SKIRTING, "weight", "skirted", "Skirted", fiber.after_skirting),
        _after(SCOURING, "skirted", "scoured", "Washed", fiber.after_scouring),
        _after_preparing(),
        _after(SPINNING, "prepared", "yarn", "Yarn", fiber.after_spinning),
    )


def _no_less(stage: Stage, before: str, expected: str) -> str:
    weighed = "".join(f", or_else({each}, 0)" for each in (WEIGHED_LATER[later] for later in stage.later))
    return f"MIN({before}, MAX({expected}{weighed}))" if weighed else expected


def _no_gain(weighed: str, before: str) -> str:
    """Condition that a weighing is no more than the stage before, or, if that is unknown, than was bought.

    Damp air may add a little.
    """
    least = "weight" if before == "weight" else f"or_else({before}, weight)"
    return f"ROUND({weighed} / {least}, 9) <= {IN_DAMP_AIR}"


def _after(stage: Stage, before: str, key: str, label: str, reference: Callable) -> Result:
    weighed = f"{key}_weighed"
    known = f"OR(stage > {stage.number}, {stage.is_known})"
    if before != "weight":  # every lot has a weight
        known = f"AND(given({before}), {known})"
    return Result(
        key,
        label,
        f"IF(stage > {stage.number}, {before}, or_else({weighed}, {_no_less(stage, before, f'{before} * {stage.kept}')}))",
        reference,
        MASS,
        uses=stage.uses | stage.weighings | {"weighed": weighed},
        only_if=f"IF(AND(stage <= {stage.number}, given({weighed})), {_no_gain(weighed, before)}, {known})",
        note="Weighed, or expected.",
    )


def _after_preparing() -> Result:
    return Result(
        "prepared", "Prepared",
        f"IF({DONE_BEFORE}, scoured, or_else(prepared_weighed, {_no_less(PREPARATION, 'scoured', f'scoured * {BOTH_KEPT}')}))",
        fiber.after_preparation, MASS, uses=OF_BOTH | PREPARATION.weighings | {"weighed": "prepared_weighed"},
        # An invalid entry for the second loss leaves it unknown, and must not be ignored.
        only_if=f"AND(OR(NOT(given(own_second)), given(second_loss)), IF(AND(NOT({DONE_BEFORE}), given(prepared_weighed)), {_no_gain('prepared_weighed', 'scoured')}, "
                f"AND(given(scoured), OR({DONE_BEFORE}, AND(given(second_loss), {FIRST_KNOWN})))))",
        note="Weighed, or expected.",
    )


def shares_lost() -> tuple[Result, ...]:
    """The share that each stage lost, or is expected to lose."""
    return tuple(
        Result(f"lost_{step}", label, f"MAX(0, 1 - {after} / {before})", fiber.share_lost, SHARE, width=11, uses={"before": before, "after": after})
        for step, label, before, after in (
            ("skirting", "Skirting", "weight", "skirted"),
            ("scouring", "Scouring", "skirted", "scoured"),
            ("preparation", "Preparation", "scoured", "prepared"),
            ("spinning", "Spinning", "prepared", "yarn"),
        )
    )


def asked_about() -> tuple[Result, ...]:
    """What the questions about the weighings of a lot need to know."""
    steps = (SKIRTING, SCOURING, PREPARATION, SPINNING)
    keeps = " * ".join(f"IF(stage > {number}, 1, {share})" for number, share in ((1, SKIRTING.kept), (2, SCOURING.kept), (4, BOTH_KEPT), (4, SPINNING.kept)))
    figures = {f"{whose}_{each.share}": f"{prefix}_{each.share}" for each in steps for whose, prefix in (("own", "own"), ("guide", "expected"))}
    after = "or_else(scoured_weighed, or_else(prepared_weighed, or_else(yarn_weighed, 0)))"
    before = "or_else(skirted_weighed, weight)"
    kept = "or_else(own_yield, or_else(expected_yield, 1))"
    over = (("skirted_weighed", "stage > 1"), ("scoured_weighed", "stage > 2"), ("prepared_weighed", DONE_BEFORE), ("yarn_weighed", "stage > 4"))
    return (
        Result("beside_expected", "Yarn, beside what the figures tell", f"yarn / (weight * {keeps})", fiber.beside_expected, NUMBER,
               uses={"second": "second_loss"} | figures, only_if=f"AND({', '.join(f'OR(stage > {each.number}, {each.is_known})' for each in steps)})"),
        Result("not_counted", "Weighings not counted",
               " + ".join(f"IF(given({each}), IF(AND({is_over}, {each} < 0.999999999 * weight), 1, 0), 0)" for each, is_over in over),
               fiber.not_counted, NUMBER, digits=0, uses={"skirted": "skirted_weighed", "second": "second_loss"} | WEIGHED_LATER,
               note="Of steps that were over when it was bought, and less than it weighed then."),
        Result("hardly_washed", "Hardly washed",
               f"IF(AND(stage < 3, ROUND(1 - {after} / {before}, 9) < {LEAST_WASHED_OUT} * (1 - {kept})), 1, 0)",
               fiber.hardly_washed, NUMBER, digits=0, uses=SCOURING.uses | {"skirted": "skirted_weighed"} | WEIGHED_LATER,
               note="Of a fleece that is hardly lighter than before."),
        Result("spun_of_it", "Spun, of its weight", "spun / weight", fiber.spun_of_lot, NUMBER),
    )


LEAST_WASHED_OUT = 0.5  # of the loss in washing that breed, handful or own figure let one expect; common practice, no source
FAR_LESS = 0.6  # of what was expected: half a lot, and a little more of it than usual; common practice, no source


def weighed_in_part() -> Rule:
    """A question about a weighing of a part of the lot, typed for the whole."""
    return Rule(f"ROUND(beside_expected, 9) < {FAR_LESS}", lambda values: round(values["beside_expected"], 9) < FAR_LESS,
                f"{ASKING} Far less is left than expected. Of a part of the lot, leave the weight out until all is done, or give that part a line of its own.")


def hardly_washed() -> Rule:
    """A question about a fleece hardly lighter than it was before the wash: still wet, or weighed in another unit."""
    return Rule("hardly_washed > 0.5", lambda values: values["hardly_washed"] > 0.5,
                f"{ASKING} Washed: it lost less than half of what such a fleece loses in the wash. Let it dry, weigh again; look at each weight.")


def of_a_step_before() -> Rule:
    """A question about a weighing that counts for nothing, such as the rest of a cone at Yarn."""
    return Rule("not_counted > 0.5", lambda values: values["not_counted"] > 0.5,
                f"{ASKING} A weight is of a step before it was bought, and does not count. If less is left, correct Weight.")


OF_ANOTHER_LOT = 1.25  # of a lot in its skeins: no water weighs so much; common practice, no source


def of_a_lot_spun() -> Rule:
    """A question about a lot whose skeins weigh far more than it did: one of them may be of another lot."""
    return Rule(
        f"ROUND(lot_spun, 9) > {OF_ANOTHER_LOT}",
        lambda values: round(values["lot_spun"], 9) > OF_ANOTHER_LOT,
        f"{ASKING} Fiber lot: the skeins of this lot weigh more than the whole lot. Is one of them of another lot? Look at their weights, too.",
    )


OUT = "prepared_weighed + noil_weighed"
NOIL = "or_else(noil_weighed, 0)"


def out_of_fed() -> tuple[Result, ...]:
    """The shares of the fiber fed to cards or combs: top, noil, and waste."""
    return (
        Result("top_share", "Top", "MIN(1, prepared_weighed / scoured)", fiber.share_of_fed, SHARE, uses={"part": "prepared_weighed", "fed": "scoured"},
               only_if=f"AND(stage <= 3, ROUND(prepared_weighed / scoured, 9) <= {IN_DAMP_AIR})", note="Share of what was fed that is ready to spin."),
        Result("noil_share", "Noil", "MIN(1, noil_weighed / scoured)", fiber.share_of_fed, SHARE, uses={"part": "noil_weighed", "fed": "scoured"},
               only_if=f"AND(stage <= 3, ROUND(noil_weighed / scoured, 9) <= {IN_DAMP_AIR})"),
        Result("waste", "Waste", f"IF(scoured - prepared_weighed - {NOIL} < 0.000000001 * scoured, 0, scoured - prepared_weighed - {NOIL})", fiber.waste_of_fed, MASS,
               uses={"fed": "scoured", "prepared": "prepared_weighed", "noil": "noil_weighed"},
               only_if=f"AND(stage <= 3, ROUND((prepared_weighed + {NOIL}) / scoured, 9) <= {IN_DAMP_AIR}, OR(given(noil_weighed), NOT({COMBED})))",
               note="What was fed and is neither top nor noil."),
        Result("waste_share", "Waste, share", "waste / scoured", fiber.waste_share, SHARE, uses={"fed": "scoured"}),
    )


def cannot_gain() -> tuple[Rule, ...]:
    """Rules against a stage that weighs more than one before it by more than damp air: wet fiber, or a typing error."""
    alone = tuple(
        Rule(f"ROUND({later} / {_least_of(earlier)}, 9) > {IN_DAMP_AIR}", _more(later, earlier), f"{label}: more than before. Dry it, or correct the earlier weight.")
        for later, label, earlier in (
            ("skirted_weighed", "Skirted", ()),
            ("scoured_weighed", "Washed", ("skirted_weighed",)),
            ("prepared_weighed", "Prepared", ("skirted_weighed", "scoured_weighed")),
            ("yarn_weighed", "Yarn", ("skirted_weighed", "scoured_weighed", "prepared_weighed")),
        )
    )
    fed = ("scoured_weighed",)
    return (*alone, Rule(f"ROUND(({OUT}) / {_least_of(fed)}, 9) > {IN_DAMP_AIR}", _both_more(fed), "Noil: with what is prepared, more than was fed. Let it dry, weigh again."))


def _least_of(earlier: tuple[str, ...]) -> str:
    """Formula text of the least weight before a stage, of the bought weight and earlier weighings."""
    return f"MIN(weight, {', '.join(f'or_else({each}, weight)' for each in earlier)})" if earlier else "weight"


def _lightest(values: Mapping[str, float | None], earlier: tuple[str, ...]) -> float:
    return min(values[each] for each in ("weight", *earlier) if values[each] is not None)


def _more(later: str, earlier: tuple[str, ...]) -> Callable[[Mapping], bool]:
    return lambda values: round(values[later] / _lightest(values, earlier), 9) > IN_DAMP_AIR


def _both_more(fed: tuple[str, ...]) -> Callable[[Mapping], bool]:
    return lambda values: round((values["prepared_weighed"] + values["noil_weighed"]) / _lightest(values, fed), 9) > IN_DAMP_AIR


FOLDED = "behind the + above the columns"
STILL_THERE = 'blank_or(gone, gone = "set aside")'


AFTER = ("skirted", "scoured", "prepared", "yarn")  # what is there after each stage


def unknown_losses(*, has_guide: bool) -> tuple[Rule, ...]:
    """What a lot lacks for its yarn to be known.

    Without a guide: the figure of the first stage after which neither a weight nor a loss is known.
    """
    if has_guide:
        return (
            _lacking("NOT(given(yarn)), NOT(given(kind))", lambda values: values["yarn"] is None and not values["kind"],
                     "what it loses on its way to yarn is not known. Choose its breed or fiber, or type your own losses."),
            _lacking("NOT(given(yarn))", lambda values: values["yarn"] is None,
                     "the guide lacks a loss or the yield of its fiber. Type your own figures, or what you weighed."),
        )
    again = _lacking("given(scoured), NOT(given(second_loss)), NOT(given(yarn))",
                     lambda values: values["scoured"] is not None and values["second_loss"] is None and values["yarn"] is None,
                     f"type Own second loss, or Prepared once it is weighed, {FOLDED}.")
    return (
        _lacking_from("skirted", f"type Own skirting loss, or Skirted once it is weighed, {FOLDED}."),
        _lacking_from("scoured", f"type Own scoured yield, or Washed once it is weighed, {FOLDED}."),
        again,
        _lacking_from("prepared", f"type Own prep. loss, or Prepared once it is weighed, {FOLDED}."),
        _lacking_from("yarn", f"type Own spin. loss, {FOLDED}; or Yarn, once all of it is spun."),
    )


def _lacking_from(first: str, sentence: str) -> Rule:
    """A lot of which nothing is known after this stage or any later one."""
    unknown = AFTER[AFTER.index(first):]
    return _lacking(", ".join(f"NOT(given({each}))" for each in unknown), lambda values: all(values[each] is None for each in unknown), sentence)


def _lacking(when: str, is_lacking: Callable[[Mapping], bool], sentence: str) -> Rule:
    def asked(values: Mapping) -> bool:
        gone = values["gone"]
        return is_lacking(values) and (not gone or isinstance(gone, str) and folded(gone) == "set aside")

    return Rule(f"AND({STILL_THERE}, {when})", asked, f"{UNKNOWN}: {sentence}")


def weights_up() -> tuple[Result, ...]:
    """The weight needed before each stage, from the wanted yarn back to what is bought."""
    return (
        _before(SPINNING, "yarn", "prepared", "Prepared fiber", fiber.before_spinning, note="To have before spinning."),
        Result("scoured", "Washed fiber", f"IF({WILL_BE_DONE}, prepared, prepared / ({BOTH_KEPT}))", fiber.before_preparation, MASS, uses=OF_BOTH,
               only_if=f"OR({WILL_BE_DONE}, {FIRST_KNOWN})", note="To have before carding or combing."),
        _before(SCOURING, "scoured", "skirted", "Skirted fleece", fiber.before_scouring, note="To have before scouring."),
        _before(SKIRTING, "skirted", "to_buy", "To buy", fiber.before_skirting, note="Weight in the state in which you buy it."),
    )


def _before(stage: Stage, after: str, key: str, label: str, reference: Callable, note: str) -> Result:
    return Result(key, label, f"IF(stage > {stage.number}, {after}, {after} / {stage.kept})", reference, MASS, uses=stage.uses,
                  only_if=f"OR(stage > {stage.number}, {stage.is_known})", note=note)
