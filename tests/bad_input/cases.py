"""What people type by mistake, where, what the line must then say, and which other lines may feel it.

The sentences are written out by hand, in the units of a planner in yards and ounces. A
line that chooses another by its name loses what it took from there: those lines are listed
in `feels`, and every line that is not listed must stay as it was. A listed line may change
only in what it tells of others (`TELLS_OF_OTHERS`): what is its own stays.
"""

from dataclasses import dataclass

VICTIM = ("skeins", 1)
USES_VICTIM = frozenset({("fiber", 1), ("projects", 1)})  # the lot Moss, and the hat spun from it
# The lots that each project takes from: Clover and the gray top for the cardigan, Moss for the hat.
TAKEN_BY = {("projects", 0): frozenset({("fiber", 0), ("fiber", 2)}), ("projects", 1): frozenset({("fiber", 1)})}

# What a line tells of the lines that it shares a lot, a project or a breed with; all else is its own.
TELLS_OF_OTHERS = {
    "skeins": frozenset(
        "mark message fault line_of_lot line_of_listed line_of_from_lot line_of_free_lot line_of_made_first from_lot free_lot made_first lot_left lot_mean lot_variation "
        "lot_grubbs deviation limit_low limit_high stands_out again_deviation again_stands_out alike alike_sum alike_count alike_squares off_others beyond_others lot_stage "
        "as_bought lot_spun".split()
    ),
    "fiber": frozenset(
        "mark message fault line_of_listed promised needs_square needs_hand to_come to_come_length to_spin_length again_promised again_to_come again_to_come_length "
        "spun spun_of_it spun_length unweighed to_come_square free_length skeins mean_grist grist_sum grist_squares variation grubbs limit_low limit_high".split()
    ),
    "reels": frozenset({"mark", "message", "fault", "line_of_listed"}),
    "guide": frozenset({"mark", "message", "fault", "line_of_listed"}),
}
# What the lines of a log are worked out with: a mistake there is in each of them that uses it.
WORKED_OUT_WITH = {"skeins": {"reels", "thickness"}, "fiber": {"guide"}}


@dataclass(frozen=True)
class Case:
    """One mistake: the cells typed into, the line that must speak, and its sentence."""

    name: str
    typed: dict[tuple[str, int], float | str | None]
    speaks: tuple[str, int]
    sentence: str
    feels: frozenset[tuple[str, int]] = frozenset()
    blank: str = ""  # full key of a result of that line that must be blank now

    @property
    def may_change(self) -> frozenset[tuple[str, int]]:
        """The lines that may change: also the lots of each project that does, since they tell what projects take."""
        felt = {self.speaks} | self.feels
        return felt.union(*(TAKEN_BY.get(line, frozenset()) for line in felt))

    def is_own(self, block: str, row: int, key: str) -> bool:
        """Whether that cell must stay: the mistake stands in another line, and the cell tells of its own alone."""
        elsewhere = (block, row) != self.speaks and self.speaks[0] not in WORKED_OUT_WITH.get(block, ())
        return elsewhere and block in TELLS_OF_OTHERS and key not in TELLS_OF_OTHERS[block]


def skein(name: str, key: str, value, sentence: str, blank: str = "skeins_grist_yd_lb") -> Case:
    """A mistake in the skein Victim."""
    return Case(name, {(f"skeins_{key}", 1): value}, VICTIM, sentence, USES_VICTIM, blank)


WRAPS = "Wraps: type a number from 0 up to 100,000, in digits."
WEIGHT = "Weight: type a number above 0 up to 1,000,000 oz, in digits, or empty it."
TARE = "Bag or tag: it must weigh less than the whole. Check both."
REEL = "Reel: choose one of the names on the sheet Reels."
SKIRTING = "Own skirting loss: type a percentage from 0% below 100%, or empty it."
SAME_LOT = "Lots: choose each lot only once."
# The skeins of Clover; the cardigan; and its other lot, of which it takes the more, the less Clover gives.
CLOVER_USERS = frozenset({("skeins", 0), ("skeins", 2), ("skeins", 3), ("projects", 0), ("fiber", 2)})
LOTS_OF_CARDIGAN, LOT_OF_HAT = frozenset({("fiber", 0), ("fiber", 2)}), frozenset({("fiber", 1)})  # each says what projects take of it

CASES = (
    skein("text where a number belongs", "wraps", "about a hundred", WRAPS, "skeins_length_yd"),
    skein("a decimal comma", "gross", "12,5", WEIGHT),
    skein("a number that is a text", "gross", "3.74", WEIGHT),
    skein("a number with its unit", "gross", "3.74 oz", WEIGHT),
    skein("a dash", "tare", "-", "Bag or tag: type a number from 0 up to 1,000,000 oz, in digits, or empty it."),
    skein("a formula as a text", "wraps", "=142", WRAPS, "skeins_length_yd"),
    skein("a negative number", "wraps", -3.0, WRAPS, "skeins_length_yd"),
    skein("more than anyone winds", "wraps", 1e6, WRAPS, "skeins_length_yd"),
    skein("zero weight", "gross", 0.0, WEIGHT),
    skein("negative weight", "gross", -3.74, WEIGHT),
    skein("tare over gross", "tare", 5.0, TARE),
    skein("tare equal to gross", "tare", 3.74, TARE),
    skein("a whole turn too many", "part_wrap", 1.5, "Part wrap: type a number from 0 up to 1, in digits, or empty it.", "skeins_length_yd"),
    skein("a loop of nothing", "washed_loop", 0.0, "Loop washed: type a number above 0 up to 1,000 in, in digits, or empty it.", "skeins_finished_yd"),
    skein("negative wraps per inch", "counted_wpi", -12.0, "Wraps counted: type a number above 0 up to 500 per in, in digits, or empty it.", "skeins_wpi"),
    skein("an unlisted reel", "reel", "Attic reel", REEL, "skeins_length_yd"),
    skein("a reel nearly named", "reel", "Cross ", REEL, "skeins_length_yd"),
    skein("a star for a reel", "reel", "*", REEL, "skeins_length_yd"),
    skein("a pattern for a reel", "reel", "Cros?", REEL, "skeins_length_yd"),
    skein("a number where a reel belongs", "reel", 2.0, REEL, "skeins_length_yd"),
    skein("an unlisted lot", "lot", "Heather", "Fiber lot: choose one of the names on the sheet Fiber, or empty it.", "skeins_lot_left"),
    skein("a number where a name belongs", "name", 7.0, "Skein: type a name of up to 40 letters.", ""),
    skein("a very long name", "name", "x" * 41, "Skein: type a name of up to 40 letters.", ""),
    Case("text in a skein of a lot of three", {("skeins_wraps", 0): "many"}, ("skeins", 0), WRAPS,
         CLOVER_USERS | {("fiber", 0)}, "skeins_length_yd"),
    Case("no weight in a skein of a lot of three", {("skeins_gross", 3): "3,9"}, ("skeins", 3), WEIGHT,
         CLOVER_USERS | {("fiber", 0)}, "skeins_grist_yd_lb"),
    Case("a loss over 100 %", {("fiber_own_skirting", 0): 1.2}, ("fiber", 0), SKIRTING, CLOVER_USERS, "fiber_yarn"),
    Case("a loss of all", {("fiber_own_skirting", 0): 1.0}, ("fiber", 0), SKIRTING, CLOVER_USERS, "fiber_yarn"),
    Case("a percentage as a text", {("fiber_own_skirting", 0): "15%"}, ("fiber", 0), SKIRTING, CLOVER_USERS, "fiber_yarn"),
    Case("a second loss as a text", {("fiber_own_second", 0): "15%"}, ("fiber", 0),
         "Own second loss: type a percentage from 0% below 100%, or empty it.", CLOVER_USERS, "fiber_prepared"),
    Case("a yield of nothing", {("fiber_own_yield", 0): 0.0}, ("fiber", 0),
         "Own scoured yield: type a percentage above 0% up to 100%, or empty it.", CLOVER_USERS, "fiber_yarn"),
    Case("a lot of no kind known", {("fiber_kind", 0): "Unicorn"}, ("fiber", 0),
         "Breed or fiber: choose one of the names on the sheet Fleece, or empty it.", CLOVER_USERS, "fiber_yarn"),
    Case("a state of no kind known", {("fiber_state", 0): "fluffy"}, ("fiber", 0),
         "Bought as: choose one of raw fleece, skirted fleece, washed fiber, prepared fiber, yarn or thread.", CLOVER_USERS, "fiber_yarn"),
    Case("fiber that grows", {("fiber_skirted_weighed", 0): 110.0}, ("fiber", 0),
         "Skirted: more than before. Dry it, or correct the earlier weight.", CLOVER_USERS, "fiber_yarn"),
    Case("a lot's name used twice", {("fiber_name", 1): "CLOVER"}, ("fiber", 1),
         "Lot: another line has this name; give each its own.", CLOVER_USERS | {("fiber", 0), VICTIM, ("projects", 1)}),
    Case("a reel's name used twice", {("reels_name", 2): "Cross"}, ("reels", 2),
         "Reel: another line has this name; give each its own.",
         frozenset({("reels", 1), VICTIM, ("skeins", 3), ("fiber", 0), ("fiber", 1), ("fiber", 2)}) | CLOVER_USERS
         | {("projects", 1)}),
    Case("a reel with a number for a name", {("reels_name", 1): 15.0}, ("reels", 1),
         "Reel: type a name of up to 40 letters.", USES_VICTIM | {VICTIM}, "reels_listed"),
    Case("a loop in words", {("reels_rated", 0): "two yards"}, ("reels", 0),
         "Rated loop: type a number above 0 up to 1,000 in, in digits, or empty it.", CLOVER_USERS | {("fiber", 0)}, "reels_loop"),
    Case("a cord that makes no turn", {("reels_turns", 2): 0.0}, ("reels", 2),
         "Cord turns: type a number above 0 up to 10,000, in digits, or empty it.",
         CLOVER_USERS | {("fiber", 0), ("fiber", 2)}, "reels_measured"),
    Case("two lots the same", {("projects_lot_2", 0): "clover"}, ("projects", 0), SAME_LOT, LOTS_OF_CARDIGAN),
    Case("an unlisted lot of a project", {("projects_lot_1", 1): "Heather"}, ("projects", 1),
         "First lot: choose one of the names on the sheet Fiber, or empty it.", LOT_OF_HAT, "projects_bought"),
    Case("a negative reserve", {("projects_margin", 0): -0.1}, ("projects", 0),
         "Reserve: type a percentage from 0% up to 200%, or empty it.", LOTS_OF_CARDIGAN, "projects_length"),
    Case("a finished piece of less than nothing", {("projects_used", 1): -2.0}, ("projects", 1),
         "Yarn used: type a number from 0 up to 1,000,000 oz, in digits, or empty it.", LOT_OF_HAT, "projects_verdict"),
    Case("a wish of nothing", {("projects_wanted", 0): 0.0}, ("projects", 0),
         "Yarn wanted: type a number above 0 up to 10,000,000 yd, in digits, or empty it.", LOTS_OF_CARDIGAN, "projects_length"),
    Case("yields upside down", {("guide_yield_low", 0): 0.8}, ("guide", 0),
         "Yield: the first figure must not be above the second.",
         CLOVER_USERS | {("fiber", 0), ("buying", 0)}, "guide_scoured_yield"),
    Case("fleeces upside down", {("guide_fleece_low", 0): 70.0}, ("guide", 0),
         "Fleece: the first figure must not be above the second.", frozenset({("buying", 0)}), "guide_clean_fleece"),
    Case("fibers upside down", {("guide_diameter_low", 0): 70.0}, ("guide", 0),
         "Fiber: the first figure must not be above the second.", blank="guide_diameter"),
    Case("a fiber's name used twice", {("guide_name", 1): "Fog"}, ("guide", 1),
         "Breed or fiber: another line has this name; give each its own.",
         CLOVER_USERS | {("guide", 0), ("fiber", 0), ("fiber", 1), VICTIM, ("projects", 1), ("buying", 0)}),
    Case("text in a card", {("counts_number", 0): "twenty"}, ("counts", 0),
         "Yarn number: type a number above 0 up to 10,000,000, in digits.", blank="counts_tex"),
    Case("an unlisted system", {("counts_system", 0): "bushels"}, ("counts", 0),
         "In this system: choose one of the names on the sheet Reference.", blank="counts_tex"),
    Case("a moisture over 100 %", {("moisture_content", 0): 1.2}, ("moisture", 0),
         "Moisture content: type a percentage from 0% below 100%, or empty it.", blank="moisture_dry"),
    Case("a length of nothing", {("weighed_length", 0): 0.0}, ("weighed", 0),
         "Length: type a number above 0 up to 10,000,000 yd, in digits.", blank="weighed_grist"),
    Case("text for K, which every skein uses", {("thickness_k_wrapped", 0): "a third"}, ("thickness", 0),
         "K, wraps as laid by hand: type a number above 0 up to 2, in digits.",
         frozenset(("skeins", row) for row in range(4)), "thickness_wrapped"),
    Case("a negative yardage to buy for", {("buying_length", 0): -5.0}, ("buying", 0),
         "Length of yarn wanted: type a number above 0 up to 10,000,000 yd, in digits.", blank="buying_to_buy"),
    # Several mistakes at once: the first field that is wrong is told first.
    Case("two things wrong", {("skeins_wraps", 1): "many", ("skeins_gross", 1): "12,5"}, VICTIM, WRAPS, USES_VICTIM,
         "skeins_grist_yd_lb"),
    # Half-filled lines say what is still to fill in.
    skein("no wraps", "wraps", None, "Still to fill in: Wraps.", "skeins_length_yd"),
    skein("no reel", "reel", None, "Still to fill in: Reel.", "skeins_length_yd"),
    skein("no name", "name", None, "Still to fill in: Skein.", ""),
    Case("no weight of a lot", {("fiber_weight", 1): None}, ("fiber", 1), "Still to fill in: Weight.",
         frozenset({VICTIM, ("projects", 1)}), "fiber_yarn"),
    Case("a line just begun", {("skeins_name", 5): "Sixth"}, ("skeins", 5), "Still to fill in: Reel.", blank="skeins_length_yd"),
    Case("a project without a name", {("projects_margin", 2): 0.2}, ("projects", 2), "Still to fill in: Project.",
         blank="projects_length"),
    Case("no number in a card", {("counts_number", 0): None}, ("counts", 0), "Still to fill in: Yarn number.", blank="counts_tex"),
)
