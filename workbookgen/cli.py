"""The command: build a planner, check one, list its fields, carry one over, gather many.

A command returns when all is done and agreed. Everything else is raised, and ends as a sentence on standard error and
an exit code: 1 for findings, 2 for unusable input, 3 for a missing engine. Heavy modules are imported inside the
commands that need them.
"""

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import click

from workbookgen import __version__
from workbookgen.ending import Commands, guarded
from workbookgen.errors import FileError, PlannerError, counted
from workbookgen.unit_systems import UNIT_SYSTEMS

MOST_TOLD = 20  # findings or faults that are printed, each on its own line
IN_NOT_READ = "; the sheet Not read lists them"


@click.group(cls=Commands)
@click.version_option(__version__, prog_name="workbookgen")
def cli() -> None:
    """Build a handspinner's planner, and prove that every formula in it is right."""


@cli.command(short_help="Build a blank planner.")
@click.option("--settings", type=click.Path(path_type=Path), help="A TOML file with the planner's settings.")
@click.option(
    "--units",
    type=click.Choice(tuple(UNIT_SYSTEMS)),
    help=f"{'; '.join(each.in_words for each in UNIT_SYSTEMS.values())}.".capitalize(),
)
@click.option(
    "--size",
    type=click.Choice(("small", "whole")),
    help="Eight sheets to begin with, or all; what is typed into a small one can be carried to a whole one.",
)
@click.option(
    "--reel",
    "reels",
    multiple=True,
    metavar="NAME=LOOP",
    help='A reel of yours: "Porch reel=2 yd", or "Niddy=15 in x 14 in x 14 in".',
)
@click.option("-o", "--output", type=click.Path(path_type=Path), default=Path("planner.xlsx"), show_default=True)
def build(settings: Path | None, units: str | None, size: str | None, reels: tuple[str, ...], output: Path) -> None:
    """Build a blank planner. It is proven before it is put in its place.

    Without --settings it has the paper and the reels that are usual with its units.
    """
    from workbookgen.build import MOST_LINES, STEPS, has_longer_logs
    from workbookgen.build import build as build_planner
    from workbookgen.settings import changed, load, templates
    from workbookgen.settings.waiting import long_wait

    usual = templates() / f"{units or 'us'}.toml"
    chosen = changed(load(settings or usual), units=units, size=size, reels=reels)
    if output.is_file():
        # Reading a file takes libraries that building one does not.
        from workbookgen.filled.replacing import require_no_entries

        require_no_entries(output, chosen, is_named=_is_typed("output"))
    with _progress(STEPS, "Building") as step:
        layout = build_planner(chosen, output, step=step)
    proven = f"{layout.formula_cells:,} formula cells, each agreeing with the reference library"
    click.echo(f"{click.format_filename(output)} is ready: {proven}.")
    if has_longer_logs(layout):
        click.echo(
            f"Of longer logs only the first {MOST_LINES:,} lines were tried, since the others repeat their formulas; "
            "workbookgen check tries every line."
        )
    if warning := long_wait(chosen):
        click.echo(warning, err=True)


@cli.command(short_help="Check every formula of a planner against the library.")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--engine",
    "engines",
    multiple=True,
    metavar="NAME",
    help="formualizer (default), ironcalc, libreoffice, gnumeric; may be given several times.",
)
@click.option(
    "--scenarios",
    type=click.IntRange(0, 100_000),
    default=20,
    show_default=True,
    help="How many sets of random inputs to try, besides what is in the planner.",
)
@click.option("--seed", type=int, default=1, show_default=True, help="The same seed gives the same inputs.")
@click.option("--json", "as_json", is_flag=True, help="The whole report, for programs.")
def check(file: Path, engines: tuple[str, ...], scenarios: int, seed: int, as_json: bool) -> None:
    """Check every formula cell of a planner against the reference library, in real engines."""
    from functools import partial

    from workbookgen.checking.check import FileToCheck
    from workbookgen.checking.check import check as check_planner
    from workbookgen.engines import EMBEDDED
    from workbookgen.filled.as_made import laid_out
    from workbookgen.planner_file import read_planner

    chosen = engines or (EMBEDDED,)
    with _progress(1 + len(set(chosen)) * (1 + scenarios), "Checking", quiet=as_json) as step:
        planner = read_planner(file)
        planner.require_its_sheets()
        step()
        anew = partial(laid_out, planner.settings)
        checked = FileToCheck(file, planner.layout, planner.formulas, planner.whole, lay_out=anew)
        report = check_planner(checked, chosen, scenarios, seed, step)
    if as_json:
        _tell_programs(report.as_json())
    else:
        _tell(file, report)
    if report.findings:
        raise SystemExit(1)


@cli.command(short_help="List every field of a planner.")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="A list of objects, for programs.")
def fields(file: Path, as_json: bool) -> None:
    """List every field of a planner: its key, where it is, its unit, and what checks it."""
    from workbookgen.fields import described
    from workbookgen.planner_file import read_planner

    listed = described(read_planner(file))
    if as_json:
        _tell_programs(listed)
    else:
        for each in listed:
            place = f"{each['key']:<32} {each['range']:<28}"
            click.echo(f"{place} {each['kind']:<7} {each['unit'] or '':<16} {each['label']}")


@cli.command(short_help="Build a new planner with all entries of an old one.")
@click.argument("old", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    required=True,
    help="The new planner. The old one is never touched.",
)
@click.option(
    "--settings",
    type=click.Path(path_type=Path),
    help="A TOML file with the new planner's settings; without it, the old one's apply.",
)
def carry(old: Path, output: Path, settings: Path | None) -> None:
    """Build a new planner with the entries of a filled one, .xlsx or .ods, of this or an older version."""
    from workbookgen.carry.carry import STEPS
    from workbookgen.carry.carry import carry as carry_planner
    from workbookgen.carry.report import sentences
    from workbookgen.settings import load

    chosen = load(settings) if settings else None
    with _progress(STEPS, "Carrying") as step:
        carried = carry_planner(old, output, chosen, step)
    for line in sentences(carried, old, output):
        click.echo(line)


@cli.command(short_help="Read many filled planners into tables.")
@click.argument("files", type=click.Path(path_type=Path), nargs=-1, required=True, metavar="FILE...")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    required=True,
    metavar="TABLE",
    help="NAME.xlsx, NAME.csv or NAME.parquet.",
)
@click.option(
    "--settings", type=click.Path(path_type=Path), help="Settings whose fiber table is shown beside what was observed."
)
@click.option(
    "--cluster", metavar="ADDRESS", help="Read on the workers of a Dask cluster, such as tcp://10.0.0.5:8786."
)
def gather(files: tuple[Path, ...], output: Path, settings: Path | None, cluster: str | None) -> None:
    """Read many filled planners, or folders of them, into tables and a summary.

    A file that cannot be read is reported, and the others are read; the exit code is then 1.
    """
    from workbookgen.gather import files as written
    from workbookgen.gather import workers
    from workbookgen.gather.fiber_table import was_gathered
    from workbookgen.gather.gathered import gather as gather_planners
    from workbookgen.gather.gathered import planners_in
    from workbookgen.settings import Settings, load
    from workbookgen.settings.fiber_table import load_fibers

    chosen = load(settings) if settings else Settings()
    fibers = load_fibers(chosen)
    paths = planners_in(files, leave_out=tuple(written.targets(output).values()))
    read_too = [settings, Path(chosen.fibers)] if settings and chosen.fibers else []
    written.require_apart(output, [*paths, *read_too], fibers)
    engine = workers.cluster(cluster) if cluster else workers.this_machine(len(paths))
    with _progress(len(paths), "Reading") as step:
        gathered = gather_planners(paths, engine, step)
    _tell_first(gathered.unread, "" if gathered.planners.empty else IN_NOT_READ, err=True)
    if gathered.planners.empty:
        raise FileError.at(str(output), "no planner could be read, so nothing was written.")
    places, changed = written.save(gathered, output, fibers)
    _tell_gathered(gathered, places, changed)
    if was_gathered(fibers):
        click.echo(
            "The fiber table of these settings was gathered itself: a lot that is counted in it must not be read again."
        )
    if gathered.unread:
        raise SystemExit(1)


@cli.command(short_help="Make a blank planner out of a filled one.")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    help="The new planner. [default: FILE's name with -blank, beside it]",
)
@click.option("--guide", is_flag=True, help="Bring along the lines of the guide as they stand, sources and all.")
def blank(file: Path, output: Path | None, guide: bool) -> None:
    """Make a blank planner out of a filled one, to pass on.

    It has the same settings, and the names and measures of the reels. Nothing else that was entered comes along, nor
    the name of who wrote the file; the guide is as in a new planner.
    """
    from workbookgen.blank import blank as make_blank

    if output is None and (output := file.with_name(f"{file.stem}-blank.xlsx")).exists():
        taken = "there is such a file already. Choose another name after -o, or this one to replace it."
        raise PlannerError.at(str(output), taken)
    had = make_blank(file, output, guide=guide)
    brought = f"the settings and {counted(had['reels'], 'reel')}"
    if "guide" in had:
        lines = counted(had["guide"], "line")
        brought = f"the settings, {counted(had['reels'], 'reel')} and {lines} of the guide"
    click.echo(f"{click.format_filename(output)} is ready: {brought}, no other entries.")
    if "guide" not in had and guide:
        click.echo("It has no guide, since this planner was built without one.")
    if had.get("guide") == 0:
        click.echo(
            "Its guide is empty, since this planner was built with a fiber table of its own; "
            "--guide brings its lines along."
        )


def _is_typed(option: str) -> bool:
    """Whether an option of this command was given, and is not as it is without."""
    return click.get_current_context().get_parameter_source(option) is not click.core.ParameterSource.DEFAULT


@contextmanager
def _progress(steps: int, label: str, *, quiet: bool = False) -> Iterator[Callable[..., None]]:
    """A progress bar on standard error, if that is a terminal."""
    if quiet or not sys.stderr.isatty():
        yield lambda count=1: None
    else:
        with click.progressbar(length=steps, label=label, file=sys.stderr) as bar:
            yield lambda count=1: bar.update(count)


def _tell_first(told: Sequence, where: str, *, indent: str = "", err: bool = False) -> None:
    """Print the first of many, and `where` the others are."""
    for each in told[:MOST_TOLD]:
        click.echo(f"{indent}{each}", err=err)
    if (more := len(told) - MOST_TOLD) > 0:
        click.echo(f"{indent}... and {more:,} more{where}.", err=err)


def _tell_programs(answer: object) -> None:
    import json

    click.echo(json.dumps(answer, indent=1, ensure_ascii=False))


def _tell(file: Path, report) -> None:
    """Print the report."""
    tried = f"{report.formula_cells:,} formula cells, {counted(report.scenarios, 'set')} of inputs"
    click.echo(f"{file}: {tried}, {report.seconds:.1f} s.")
    for each in report.engines:
        click.echo(
            f"  {each.name} {each.version}: {each.agreed:,} of {each.declared:,} formula cells agree "
            f"with the reference library in {each.comparisons:,} comparisons "
            f"(largest relative difference {each.worst_relative_difference:.1e})."
        )
        if each.note:
            click.echo(f"    {each.note}.")
    _tell_first(report.findings, "; --json lists them", indent="  ")
    if report.findings:
        click.echo(f"{counted(len(report.findings), 'finding')}.")
    else:
        click.echo("Every formula cell was checked, and all agree.")


def _tell_gathered(gathered, places: dict[str, Path], changed: int) -> None:
    """Print what was gathered, and where it is."""
    click.echo(f"{places['summary']} is ready: {gathered.counts}.")
    tables = [str(place) for part, place in places.items() if part not in ("summary", "fibers")]
    if tables:
        click.echo(f"The tables are in {', '.join(tables)}.")
    fibers = places["fibers"]
    click.echo(
        f"What was observed is in {fibers} as a fiber table; "
        f'a line fibers = "{fibers.name}" in settings builds planners with it. '
        "It is written anew each time: to change it, change a copy."
    )
    _tell_first(gathered.repeated, IN_NOT_READ)
    if gathered.notes:
        notes = counted(len(gathered.notes), "note")
        click.echo(f"{notes} on cells that were not read as they stand: see the sheet Not read.")
    if changed:
        click.echo(f"Texts that begin like a formula got an apostrophe in front in the .csv files: {changed:,}.")


def main(arguments: list[str] | None = None) -> None:
    """Run the command; no traceback reaches the person who typed it."""
    guarded(lambda: cli.main(arguments, prog_name="workbookgen", standalone_mode=False))
