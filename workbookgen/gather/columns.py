"""The gathered tables: every column, the field that it comes from, and the unit that it is in.

The content of the tables is declared here only. Planners are in yards and ounces, yards and grams, or meters and
grams; here every length is in meters, every mass in grams, and derived units likewise. A column's name ends with its
unit; a name without one is that of a share, a count or a text. "doubt" is one standard uncertainty. Notes that people
write for themselves stay in their planners.
"""

from dataclasses import dataclass

TEXT = None


@dataclass(frozen=True)
class Column:
    """One column: its name in the table, the field it comes from, and its unit as the registry names it."""

    name: str
    field: str
    unit: str | None = ""  # "" for a plain number, TEXT for words

    @property
    def is_text(self) -> bool:
        return self.unit is TEXT


@dataclass(frozen=True)
class Table:
    """One table of records: the block of the planner that holds them, and their columns."""

    name: str
    block: str
    columns: tuple[Column, ...]

    def full_key(self, key: str) -> str:
        """The full key of a field of its block."""
        return f"{self.block}_{key}"


PLANNER, FILE, MESSAGE = "planner", "file", "message"  # additional columns of every table: first, second and last

SKEINS = Table("skeins", "skeins", (
    Column("skein", "name", TEXT),
    Column("reel", "reel", TEXT),
    Column("wraps", "wraps"),
    Column("part_wrap", "part_wrap"),
    Column("rest_m", "rest", "m"),
    Column("gross_g", "gross", "g"),
    Column("tare_g", "tare", "g"),
    Column("washed_loop_m", "washed_loop", "m"),
    Column("counted_wraps_per_cm", "counted_wpi", "1/cm"),
    Column("lot", "lot", TEXT),
    Column("project", "project", TEXT),
    Column("design", "design", TEXT),
    Column("gone", "gone", TEXT),
    Column("loop_m", "loop", "m"),
    Column("reeled_m", "length_m", "m"),
    Column("length_m", "finished_m", "m"),
    Column("length_doubt_m", "doubt", "m"),
    Column("shrinkage", "shrinkage"),
    Column("mass_g", "net", "g"),
    Column("grist_m_per_g", "grist_m_100g", "m/g"),
    Column("tex", "tex", "tex"),
    Column("wraps_per_cm", "wpi", "1/cm"),
    Column("weight_class", "weight_class", TEXT),
    Column("off_lot_mean", "deviation"),
    Column("stands_out", "stands_out", TEXT),
))

LOTS = Table("lots", "fiber", (
    Column("lot", "name", TEXT),
    Column("kind", "kind", TEXT),
    Column("bought_as", "state", TEXT),
    Column("bought_g", "weight", "g"),
    Column("wanted_grist_m_per_g", "grist", "m/g"),
    Column("prepared_by", "way", TEXT),
    Column("own_skirting_loss", "own_skirting"),
    Column("own_scoured_yield", "own_yield"),
    Column("own_preparation_loss", "own_preparation"),
    Column("own_spinning_loss", "own_spinning"),
    Column("prepared_again_by", "second_way", TEXT),
    Column("own_second_preparation_loss", "own_second"),
    Column("skirted_weighed_g", "skirted_weighed", "g"),
    Column("scoured_weighed_g", "scoured_weighed", "g"),
    Column("prepared_weighed_g", "prepared_weighed", "g"),
    Column("yarn_weighed_g", "yarn_weighed", "g"),
    Column("gone", "gone", TEXT),
    Column("stage", "stage"),
    Column("skirted_g", "skirted", "g"),
    Column("scoured_g", "scoured", "g"),
    Column("prepared_g", "prepared", "g"),
    Column("yarn_g", "yarn", "g"),
    Column("yarn_kept", "kept"),
    Column("seen_kind", "seen_kind", TEXT),
    Column("seen_skirting_loss", "seen_skirting"),
    Column("seen_scoured_yield", "seen_yield"),
    Column("seen_preparation_loss", "seen_preparation"),
    Column("seen_combing_loss", "seen_combing"),
    Column("seen_spinning_loss", "seen_spinning"),
    Column("spun_g", "spun", "g"),
    Column("spun_m", "spun_length", "m"),
    Column("to_come_g", "to_come", "g"),
    Column("to_come_doubt_g", "to_come_doubt", "g"),
    Column("skeins", "skeins"),
    Column("mean_grist_m_per_g", "mean_grist", "m/g"),
    Column("grist_cv", "variation"),
))

SAMPLES = Table("samples", "samples", (
    Column("sample", "name", TEXT),
    Column("lot", "lot", TEXT),
    Column("length_m", "length", "m"),
    Column("mass_g", "mass", "g"),
    Column("readings", "count"),
    Column("wraps_per_cm", "wpi", "1/cm"),
    Column("wraps_spread_per_cm", "spread", "1/cm"),
    Column("wraps_doubt95_per_cm", "within", "1/cm"),
    Column("grist_m_per_g", "grist_m_100g", "m/g"),
    Column("tex", "tex", "tex"),
    Column("k", "k"),
    Column("singles_twist_per_m", "singles_twist", "1/m"),
    Column("ply_twist_per_m", "ply_twist", "1/m"),
    Column("ply_factor_tex", "factor_tex"),
    Column("ply_angle_deg", "angle", "degree"),
    Column("off_balance", "balance"),
    Column("spinning_loss", "loss"),
    Column("shrinkage", "shrinkage"),
    Column("take_up", "take_up"),
    Column("spinning_m_per_h", "spin_pace", "m/h"),
    Column("plying_m_per_h", "ply_pace", "m/h"),
))

PROJECTS = Table("projects", "projects", (
    Column("project", "name", TEXT),
    Column("wanted_m", "wanted", "m"),
    Column("wanted_doubt", "need_doubt"),
    Column("margin", "margin"),
    Column("grist_m_per_g", "planned", "m/g"),
    Column("design", "design", TEXT),
    Column("sample", "sample", TEXT),
    Column("lot_1", "lot_1", TEXT),
    Column("lot_2", "lot_2", TEXT),
    Column("lot_3", "lot_3", TEXT),
    Column("need_m", "need", "m"),
    Column("need_doubt_m", "doubt_need", "m"),
    Column("length_m", "length", "m"),
    Column("yarn_g", "yarn", "g"),
    Column("prepared_g", "prepared", "g"),
    Column("as_bought_g", "bought", "g"),
    Column("in_skeins_m", "in_skeins", "m"),
    Column("to_spin_m", "to_spin", "m"),
    Column("scarcest", "scarcest", TEXT),
    Column("have_m", "have", "m"),
    Column("have_doubt_m", "doubt_have", "m"),
    Column("surplus_m", "surplus", "m"),
    Column("chance", "chance"),
    Column("mean_grist_m_per_g", "mean_grist", "m/g"),
    Column("grist_cv", "variation"),
))

TABLES = (SKEINS, LOTS, SAMPLES, PROJECTS)
