"""What is wrong with the views of a sheet: fields that are missing or shown twice, links that lead nowhere."""

from collections.abc import Collection


def objections(sheet, own: Collection[str], everywhere: Collection[str], names: Collection[str]) -> list[str]:
    """What is wrong with the views of a sheet that has fields of these full keys, in a planner of such fields and sheets."""
    shown = sheet.shown
    ways = [way for section in sheet.sections for way in section.ways]
    drawn = [key for section in sheet.sections for key in getattr(section, "drawn", ())]
    faults = [f"its view shows {key}, which is no field of this sheet" for key in shown if key not in own]
    faults += [f"its view shows {key} twice" for key in sorted({key for key in shown if shown.count(key) > 1})]
    faults += [f"its chart draws {key}, which is no field" for key in drawn if key not in everywhere]
    faults += [f"its link to {name} leads nowhere" for name in (*sheet.near, *(way.sheet for way in ways)) if name not in names]
    return faults + [f"its link to {way.field} leads nowhere" for way in ways if way.field and way.field not in everywhere]
