"""How a card is usually shown: its inputs on the left, with what it is about below them, its results on the right."""

from workbookgen.errors import DescriptionError
from workbookgen.language.automatic import MESSAGE
from workbookgen.language.parts import Card
from workbookgen.language.views import LEFT, Answers, Band, Entries, Headline, Picture, Prose
from workbookgen.settings import Settings
from workbookgen.unit_systems import UNIT_SYSTEMS

WORKED_OUT = "Worked out"


def in_the_planners_unit(settings: Settings, customary: str, metric: str) -> str:
    """The key of an answer that is shown in both units, in that of the planner's lengths: it is the large one."""
    return metric if UNIT_SYSTEMS[settings.units].is_metric("length") else customary


def asked_and_answered(
    card: Card, *big: str, hidden: str = "", captions: tuple[str, ...] = (), drawn: Picture | None = None, is_printed: bool = True,
) -> Band:
    """The band of a card. `big` are the keys of its large answers, `hidden` the results that it does not show.

    `drawn` is a picture below the inputs. A card that nobody fills in on paper is not printed and comes last.
    """
    if strangers := [key for key in (*big, *hidden.split()) if key not in card.by_key]:
        raise DescriptionError.at(f"the view of {card.key}", f"{strangers[0]} is no field of it.")
    large = [Headline(card.full_key(key), caption=caption) for key, caption in zip(big, captions or [card.by_key[key].label for key in big], strict=True)]
    lines = tuple(card.full_key(each.key) for each in card.results if each.key not in {*big, *hidden.split()})
    return Band((
        Entries(title=card.title, fields=tuple(card.full_key(each.key) for each in card.inputs), is_printed=is_printed),
        *((Prose(sentences=(card.about,), is_small=True, across=LEFT, is_below=True, is_printed=is_printed),) if card.about else ()),
        *((drawn,) if drawn else ()),
        Answers(title=WORKED_OUT, large=tuple(large), lines=lines, message=card.full_key(MESSAGE.key), is_printed=is_printed),
    ))
