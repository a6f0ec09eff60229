"""The planner itself: all its sheets, and what a word in a formula stands for."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from workbookgen.errors import DescriptionError
from workbookgen.language import planner_faults
from workbookgen.language.automatic import Automatic
from workbookgen.language.fields import Input, Result
from workbookgen.language.parts import Block, Card, Column, Holder, Log, Sheet, Table
from workbookgen.language.proofs import Proof, ProofTable


@dataclass(frozen=True)
class Meaning:
    """What a word in a formula stands for: one value, or a whole column."""

    key: str
    holder: Holder
    field: Input | Result | Automatic | Column
    is_column: bool

    @property
    def rows(self) -> int:
        """How many cells it has."""
        return 1 if getattr(self.field, "is_one", False) else self.holder.rows


@dataclass(frozen=True)
class Planner:
    """The description of the whole workbook."""

    system: str
    paper: str
    title: str
    sheets: tuple[Sheet, ...]
    absent: Mapping[str, tuple[Block, Input | Result]] = field(default_factory=dict)  # full key -> a field left out
    colors: Mapping[str, str] = field(default_factory=dict)  # role -> a color other than the default

    @cached_property
    def holders(self) -> tuple[Holder, ...]:
        return tuple(holder for sheet in self.sheets for holder in sheet.holders)

    @cached_property
    def blocks(self) -> dict[str, Block]:
        return {holder.key: holder for holder in self.holders if isinstance(holder, Block)}

    @cached_property
    def tables(self) -> dict[str, Table]:
        return {holder.key: holder for holder in self.holders if isinstance(holder, Table)}

    @cached_property
    def proofs(self) -> tuple[Proof, ...]:
        return tuple(proof for table in self.proof_tables.values() for proof in table.proofs)

    @cached_property
    def proof_tables(self) -> dict[str, ProofTable]:
        return {holder.key: holder for holder in self.holders if isinstance(holder, ProofTable)}

    @cached_property
    def by_key(self) -> dict[str, tuple[Holder, Input | Result | Column]]:
        """Full key -> the holder of the field, and the field."""
        return {
            holder.full_key(key): (holder, each)
            for holder in (self.blocks | self.tables | self.proof_tables).values()
            for key, each in holder.by_key.items()
        }

    @cached_property
    def folded(self) -> dict[str, tuple[str, ...]]:
        """Key of a log -> the keys of its inputs that its view folds away."""
        return {
            log.key: tuple(each.key for each in log.inputs if each.key not in view.typed.split())
            for sheet in self.sheets
            if (view := sheet.log_view)
            for log in sheet.logs
        }

    @cached_property
    def automatic(self) -> dict[str, tuple[Block, Automatic]]:
        """Full key of an automatic field -> its block, and the field."""
        return {block.full_key(each.key): (block, each) for block in self.blocks.values() for each in block.automatic}

    def meaning(self, block: Block | None, word: str) -> Meaning:
        """What a word stands for in a formula of `block`: a field of the same record, or one by its full key."""
        if found := self.found(block, word):
            return found
        raise DescriptionError.at(f"block {block.key}" if block else "planner", f"{word} is no field.")

    def found(self, block: Block | None, word: str) -> Meaning | None:
        """The same, or None if there is no such field."""
        asked = block and block.key, word
        if asked not in self._found:
            self._found[asked] = self._looked_up(block, word)
        return self._found[asked]

    @cached_property
    def _found(self) -> dict[tuple[str | None, str], Meaning | None]:
        """What was found for the key of a block and a word, since the same few are asked for again and again."""
        return {}

    def _looked_up(self, block: Block | None, word: str) -> Meaning | None:
        if block and (own := block.by_key.get(word) or block.automatic_by_key.get(word)):
            return Meaning(block.full_key(word), block, own, is_column=False)
        if word in self.by_key:
            holder, each = self.by_key[word]
            return Meaning(word, holder, each, is_column=not isinstance(holder, Card))
        if word in self.automatic:
            holder, each = self.automatic[word]
            return Meaning(word, holder, each, is_column=isinstance(holder, Log) and not each.is_one)
        own = block.full_key(word) if block else ""
        if own in self.absent:
            return Meaning(own, *self.absent[own], is_column=False)
        if word in self.absent:
            holder, each = self.absent[word]
            return Meaning(word, holder, each, is_column=not isinstance(holder, Card))
        return None

    def sheet_of(self, key: str) -> str | None:
        """The name of the sheet that has a field; None if there is none."""
        holder, _ = self.by_key.get(key) or self.automatic.get(key) or (None, None)
        return next((sheet.name for sheet in self.sheets if holder in sheet.holders), None)

    def __post_init__(self):
        if faults := planner_faults.faults(self):
            raise DescriptionError(*faults)

    def full_keys(self) -> list[str]:
        """The full key of every field, automatic ones included; each becomes a defined name."""
        blocks = [holder for holder in self.holders if isinstance(holder, Block)]
        described = [holder.full_key(name) for holder in self.holders for name in holder.by_key]
        return described + [block.full_key(each.key) for block in blocks for each in block.automatic]
