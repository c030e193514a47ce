"""The commands.

Nothing heavy is imported here before a command runs, so that `--help` answers at once.
"""

from __future__ import annotations

import io
import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from anchorwatt.cli.console import note, reported, working
from anchorwatt.cli.options import (
    Csv,
    Estimates,
    File,
    Json,
    PeopleAction,
    Plot,
    SheetFormat,
    SheetPaper,
    Units,
    UnitsOption,
    Why,
    checked_plot,
    checked_xlsx,
)

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

app = typer.Typer(
    name="anchorwatt",
    help="Design of generator-free air conditioning in yachts: from a boat and its day, described in one "
    "file, to the night that its bank must carry and the engine hours that put it back. It advises; local "
    "codes and licensed or certified people decide.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)


def main() -> None:
    """Entry point of the program `anchorwatt`."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal without a sign for a dash shows a question mark
    app()


def _version(asked: bool) -> None:
    if asked:
        from anchorwatt import __version__

        typer.echo(f"anchorwatt {__version__}")
        raise typer.Exit


@app.callback()
def anchorwatt(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version and stop.")
    ] = False,
) -> None:
    """What holds for all commands."""


@app.command(short_help="Begin a design file from a starter boat.")
def new(
    starter: Annotated[str, typer.Argument(help="Starter boat: trawler-14m, catamaran-13m or cutter-12m.")],
    path: Annotated[Path, typer.Argument(help="Design file to make.")],
    replace: Annotated[bool, typer.Option("--replace", help="Overwrite a file that is there.")] = False,
    as_json: Json = False,
) -> None:
    """Begin a design file from a starter boat, with a schema beside it for your editor."""
    with reported():
        from anchorwatt.design import new as begin

        begin(starter, path, replace)
        if as_json:
            from anchorwatt.papers.as_json import printed

            typer.echo(printed({"starter": starter, "design": str(path)}))
        else:
            typer.echo(f"{path} begun from {starter}. Next: anchorwatt assess {path}")


@app.command(short_help="Answer what decides the job.")
def assess(
    file: File,
    why: Why = None,
    estimates: Estimates = False,
    as_json: Json = False,
    csv: Csv = None,
    plot: Plot = None,
    units: UnitsOption = Units.si,
) -> None:
    """Answer what decides the job: does the bank hold the night, and what puts it back."""
    with reported():
        from anchorwatt.papers import as_json as plain
        from anchorwatt.papers import screens

        checked_plot(plot)
        assessment = _assessed(file)
        with working("checking"):
            _ = assessment.checks
        if why is not None:
            answer = screens.answer_named(assessment.headline, why)
            _show(plain.why(answer), as_json, lambda: screens.why(answer, units.value))
            return
        if estimates and not as_json:
            _show(None, as_json, lambda: screens.estimates(assessment))
            return
        _write(assessment, csv, plot, units, ("assess", "cabins", "night", "day", "recharge"))
        _show(plain.assessment(assessment, file), as_json, lambda: screens.assessment(assessment, units.value))


@app.command(short_help="Show where each cabin's heat comes from.")
def loads(file: File, as_json: Json = False, csv: Csv = None, plot: Plot = None, units: UnitsOption = Units.si) -> None:
    """Show each cabin's cooling load by cause and hour, what would carry it, and what rules of thumb say."""
    with reported():
        from anchorwatt.papers import loads as pages

        checked_plot(plot)
        assessment = _assessed(file)
        _write(assessment, csv, plot, units, ("cabins", "gains"), "gains_picture")
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show what the cooling plant gives and draws.")
def plant(file: File, as_json: Json = False, csv: Csv = None, plot: Plot = None, units: UnitsOption = Units.si) -> None:
    """Show what the plant gives and draws over seawater and load, its ducts, charge and pipes, and other plants."""
    with reported():
        from anchorwatt.papers import plant as pages

        checked_plot(plot)
        assessment = _assessed(file)
        _write(assessment, csv, plot, units, ("plant", "comparison", "ducts"), "plant_picture")
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show inverter, transformer, shore power and the small converters.")
def power(file: File, why: Why = None, as_json: Json = False, units: UnitsOption = Units.si) -> None:
    """Show inverter, transformer, shore service, charger, sun and engine battery, held against the night and a day."""
    with reported():
        from anchorwatt.papers import as_json as plain
        from anchorwatt.papers import power as pages
        from anchorwatt.papers import power_json, screens

        assessment = _assessed(file)
        with working("running a day ashore"):
            story = assessment.ac_side
        if why is not None:
            answer = screens.answer_named(story.answers, why)
            _show(plain.why(answer), as_json, lambda: screens.why(answer, units.value))
            return
        _show(power_json.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show the night hour by hour.")
def night(
    file: File,
    as_json: Json = False,
    csv: Csv = None,
    plot: Plot = None,
    units: UnitsOption = Units.si,
) -> None:
    """Show the night hour by hour: bank, plant and cabins."""
    with reported():
        from anchorwatt.papers import as_json as plain
        from anchorwatt.papers import screens

        checked_plot(plot)
        assessment = _assessed(file)
        _write(assessment, csv, plot, units, ("night", "day"))
        _show(plain.night(assessment), as_json, lambda: screens.night(assessment, units.value))


@app.command(short_help="Show how the engines put the night back.")
def recharge(
    file: File, why: Why = None, as_json: Json = False, csv: Csv = None, units: UnitsOption = Units.si
) -> None:
    """Show how the engines put the night back: by the plan, at each engine speed, and with an alternator lost."""
    with reported():
        from anchorwatt.papers import as_json as plain
        from anchorwatt.papers import recharge as pages
        from anchorwatt.papers import screens

        assessment = _assessed(file)
        with working("running the recharge at each engine speed"):
            _ = assessment.recharging
        if why is not None:
            answer = screens.answer_named(pages.answers(assessment), why)
            _show(plain.why(answer), as_json, lambda: screens.why(answer, units.value))
            return
        _write(assessment, csv, None, units, ("recharge", "recharge_speeds"))
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show the bank: its limits, its years, its night when aged.")
def bank(file: File, as_json: Json = False, units: UnitsOption = Units.si) -> None:
    """Show the bank's build and limits, its night when new and aged, its years, and the lead-acid bank it replaces."""
    with reported():
        from anchorwatt.papers import bank as pages

        assessment = _assessed(file)
        with working("running the night with an aged bank"):
            _ = assessment.bank
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show the same boat at 12, 24 and 48 V.")
def voltage(file: File, as_json: Json = False, units: UnitsOption = Units.si) -> None:
    """Show the same boat at 12, 24 and 48 V side by side: cables, losses, charging power, recharge, price."""
    with reported():
        from anchorwatt.papers import voltage as pages

        assessment = _assessed(file)
        with working("running the night and the recharge at each voltage"):
            _ = assessment.voltages
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Hold the design against a generating set.")
def generator(file: File, as_json: Json = False, units: UnitsOption = Units.si) -> None:
    """Hold the design against a generating set that would do the same job: fuel, hours, noise, services, price."""
    with reported():
        from anchorwatt.papers import generator as pages

        assessment = _assessed(file)
        with working("running the night on a generating set"):
            _ = assessment.generator
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Tell what to set in the alternators' regulators.")
def regulator(file: File, as_json: Json = False, csv: Csv = None, units: UnitsOption = Units.si) -> None:
    """Tell what to set in the alternators' regulators, by engine speed, and how each figure was found."""
    with reported():
        from anchorwatt.papers import regulator as pages

        assessment = _assessed(file)
        with working("running an hour of charging"):
            _ = assessment.regulator
        _write(assessment, csv, None, units, ("regulator",))
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show the wire schedule.")
def wiring(
    file: File,
    why: Annotated[
        str | None,
        typer.Option("--why", metavar="TAG", help="One circuit's whole calculation instead.", show_default=False),
    ] = None,
    as_json: Json = False,
    csv: Csv = None,
    xlsx: Annotated[
        Path | None,
        typer.Option("--xlsx", metavar="FILE.xlsx", help="Also write the schedule as a workbook.", show_default=False),
    ] = None,
    units: UnitsOption = Units.si,
) -> None:
    """Show every circuit: its ends, colour, current, length, size, drop, what governs it, and its fuse."""
    with reported():
        from anchorwatt.papers import wiring as pages

        checked_xlsx(xlsx)
        assessment = _assessed(file)
        with working("sizing the circuits"):
            story = assessment.wiring
        if why is not None:
            found = pages.why(assessment, why)
            _show(
                pages.why_plain(found, story.currency),
                as_json,
                lambda: pages.why_screen(found, story.currency, units.value),
            )
            return
        _write(assessment, csv, None, units, ("wiring",))
        if xlsx is not None:
            from anchorwatt.cli.files import write_all
            from anchorwatt.papers.as_xlsx import workbook

            write_all({xlsx: workbook(assessment.specification.name, pages.sheets(assessment))})
            note(f"wrote {xlsx}")
        _show(pages.rows(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Draw the sheets that a yard builds from.")
def draw(
    file: File,
    out: Annotated[Path, typer.Option("--out", metavar="DIR", help="Folder that the drawings go to.")],
    sheet: Annotated[
        list[str] | None,
        typer.Option("--sheet", metavar="NAME", help="Only this subject; may be given again.", show_default=False),
    ] = None,
    formats: Annotated[
        list[SheetFormat] | None,
        typer.Option("--format", help="Only this format; may be given again.", show_default="all three"),
    ] = None,
    paper: Annotated[SheetPaper, typer.Option("--paper", help="Paper that they are made for.")] = SheetPaper.a3,
    since: Annotated[
        Path | None,
        typer.Option(
            "--since", metavar="FILE", help="Earlier design file; clouds mark what changed.", show_default=False
        ),
    ] = None,
    as_json: Json = False,
    csv: Csv = None,
    units: UnitsOption = Units.si,
) -> None:
    """Draw the one-line diagrams, wiring, schematics, arrangement, panels and labels from the design."""
    with reported():
        from anchorwatt.cli.files import write_all
        from anchorwatt.papers import drawn
        from anchorwatt.papers.as_csv import csv_files

        subjects = drawn.subjects(sheet or ())
        assessment = _assessed(file)
        earlier = None if since is None else _assessed(since)
        with working("drawing the sheets"):
            made = drawn.sheets(assessment, paper.value, units.value, subjects, earlier)
            files = drawn.files(made, [one.value for one in formats or SheetFormat])
        tables = {} if csv is None else csv_files(assessment, csv, ("labels", "wiring"))
        write_all({**{out / name: content for name, content in files.items()}, **tables})
        for path in tables:
            note(f"wrote {path}")
        _show(drawn.plain(made, files), as_json, lambda: drawn.screen(assessment, made, files, out))


@app.command(short_help="Write the papers of the job as PDF.")
def papers(
    file: File,
    out: Annotated[Path, typer.Option("--out", metavar="DIR", help="Folder that the papers go to.")],
    sets: Annotated[
        list[str] | None,
        typer.Option("--set", metavar="NAME", help="Only these papers; may be given again.", show_default=False),
    ] = None,
    house: Annotated[
        Path | None,
        typer.Option("--house", metavar="FILE", help="The yard's name, logo, colour, terms.", show_default=False),
    ] = None,
    sea: Annotated[
        str | None,
        typer.Option("--sea", metavar="TEMPERATURE", help="Of the sea on the test day.", show_default=False),
    ] = None,
    air: Annotated[
        str | None,
        typer.Option("--air", metavar="TEMPERATURE", help="Outdoors on the test day.", show_default=False),
    ] = None,
    manuals: Annotated[
        list[Path] | None,
        typer.Option(
            "--manual",
            metavar="FILE",
            help="A maker's PDF behind the hand-over file; may be given again.",
            show_default=False,
        ),
    ] = None,
    results: Annotated[
        Path | None,
        typer.Option(
            "--results",
            metavar="FILE.csv",
            help="The commissioning file's table, filled in, for the hand-over file.",
            show_default=False,
        ),
    ] = None,
    cost: Annotated[bool, typer.Option("--cost", help="Show the yard's cost and margins in the build file.")] = False,
    language: Annotated[str, typer.Option("--language", metavar="en|fr", help="Of the papers.")] = "en",
    as_json: Json = False,
    units: UnitsOption = Units.si,
) -> None:
    """Write the papers of the job as PDF/A, from the offer to the hand-over file."""
    with reported():
        from anchorwatt.cli.files import write_all
        from anchorwatt.papers import printed

        wanted = printed.asked(sets or ())
        said = printed.wishes(house, sea, air, manuals or (), cost, results, language)
        assessment = _assessed(file)
        with working("working out and setting the papers"):
            files = printed.files(assessment, wanted, units.value, said)
        write_all({out / name: content for name, content in files.items()})
        _show(printed.plain(files), as_json, lambda: printed.screen(assessment, wanted, out))


@app.command(short_help="Show every check with its figures.")
def check(file: File, as_json: Json = False, csv: Csv = None, units: UnitsOption = Units.si) -> None:
    """Show every check with its figures, source and remedy, worst first; end with status 1 when one fails."""
    with reported():
        from anchorwatt.checks import Verdict
        from anchorwatt.papers import check as pages

        assessment = _assessed(file)
        with working("checking"):
            found = assessment.checks
        _write(assessment, csv, None, units, ("check",))
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))
    if any(one.verdict is Verdict.FAILS for one in found):
        raise typer.Exit(1)


@app.command(short_help="Show a week day by day, and the shortest engine time.")
def week(file: File, as_json: Json = False, csv: Csv = None, units: UnitsOption = Units.si) -> None:
    """Show a week day by day: bank, engines, fuel and weather; when it first fails, and how little engine keeps it."""
    with reported():
        from anchorwatt.papers import week as pages

        assessment = _assessed(file)
        with working("running weeks"):
            _ = assessment.week
        _write(assessment, csv, None, units, ("week",))
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show weight, heel and trim, and what to move.")
def weight(
    file: File,
    why: Why = None,
    as_json: Json = False,
    csv: Csv = None,
    plot: Plot = None,
    units: UnitsOption = Units.si,
) -> None:
    """Show what the installation weighs, part by part, how the boat heels and trims with it, and what to move."""
    with reported():
        from anchorwatt.papers import as_json as plain
        from anchorwatt.papers import screens
        from anchorwatt.papers import weight as pages

        checked_plot(plot)
        assessment = _assessed(file)
        if why is not None:
            answer = screens.answer_named(assessment.weight.answers, why)
            _show(plain.why(answer), as_json, lambda: screens.why(answer, units.value))
            return
        _write(assessment, csv, plot, units, ("weight",), "heel_trim_picture")
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show which parts fit where they are put.")
def fit(file: File, as_json: Json = False, csv: Csv = None, units: UnitsOption = Units.si) -> None:
    """Show whether each part goes into its space, can be worked on and stays cool there, and where else it would."""
    with reported():
        from anchorwatt.papers import fit as pages

        assessment = _assessed(file)
        with working("trying parts in spaces"):
            _ = assessment.fit
        _write(assessment, csv, None, units, ("fit",))
        _show(pages.plain(assessment), as_json, lambda: pages.screen(assessment, units.value))


@app.command(short_help="Show what happens when something fails.")
def faults(
    file: File,
    fault: Annotated[
        str | None,
        typer.Option("--show", metavar="KEY", help="One fault, minute by minute.", show_default=False),
    ] = None,
    as_json: Json = False,
    csv: Csv = None,
    units: UnitsOption = Units.si,
) -> None:
    """Show what happens when something fails: what is lost, what protects, what the crew sees and does."""
    with reported():
        from anchorwatt.papers import faults as pages

        assessment = _assessed(file)
        with working("running the faults"):
            _ = assessment.faults
        content = pages.plain(assessment, fault)
        _write(assessment, csv, None, units, ("faults",))
        page = pages.screen if fault is None else partial(pages.one, key=fault)
        _show(content, as_json, lambda: page(assessment, system=units.value))


@app.command(short_help="Show what the job costs, and when to order.")
def price(
    file: File,
    cost: Annotated[
        bool, typer.Option("--cost", help="The yard's own view instead: cost, margins, commission, order dates.")
    ] = False,
    today: Annotated[
        str | None,
        typer.Option("--today", metavar="DATE", help="Day on which parts are ordered; today.", show_default=False),
    ] = None,
    as_json: Json = False,
    csv: Csv = None,
    units: UnitsOption = Units.si,
) -> None:
    """Show what the customer pays and which packages there are; with --cost what the job costs and when to order."""
    with reported():
        from anchorwatt.papers import price as pages

        seen = pages.day(today)
        assessment = _assessed(file)
        with working("working out the packages"):
            _ = assessment.offer
        _write(assessment, csv, None, units, ("price", "price_cost") if cost else ("price",))
        _show(
            pages.plain(assessment, seen, cost),
            as_json,
            lambda: pages.screen(assessment, seen, cost, units.value),
        )


@app.command("import-prices", short_help="Take a price list into a catalogue file of your own.")
def import_prices(
    file: Annotated[
        Path,
        typer.Argument(
            metavar="FILE.csv",
            help="Price list: kind, name, price, currency; and, where wanted, unit, lead_time_days, supplier.",
            show_default=False,
        ),
    ],
    out: Annotated[Path, typer.Option("--out", metavar="YARD.yaml", help="Catalogue file to make.")],
    replace: Annotated[bool, typer.Option("--replace", help="Overwrite a file that is there.")] = False,
    as_json: Json = False,
) -> None:
    """Take a price list in CSV into a catalogue file that designs can lay over the generic one: all of it, or none."""
    with reported():
        from anchorwatt.cli import price_list as pages

        taken = pages.take(file, out, replace)
        _show(pages.plain(taken, out), as_json, lambda: pages.screen(taken, out))


@app.command(short_help="Show parts and constructions to choose from.")
def catalogue(
    kind: Annotated[str | None, typer.Argument(help="Kind of part or construction, e.g. inverter.")] = None,
    name: Annotated[str | None, typer.Argument(help="Name of one of that kind.")] = None,
    over: Annotated[
        list[Path] | None,
        typer.Option("--with", metavar="FILE", help="Your own catalogue file, laid over it.", show_default=False),
    ] = None,
    as_json: Json = False,
    units: UnitsOption = Units.si,
) -> None:
    """Show the kinds of parts and constructions, those of one kind, or one of them."""
    with reported():
        from anchorwatt.papers import catalogue as pages

        with pages.laid_over(over or []):
            content = pages.content(kind, name)
            _show(pages.plain(content), as_json, lambda: pages.screen(content, units.value))


@app.command(short_help="Open the workbench in the browser.")
def serve(
    folder: Annotated[Path, typer.Argument(help="Folder of the designs; made where there is none.")] = Path(),
    port: Annotated[int, typer.Option("--port", metavar="N", help="Port to listen at.", min=1, max=65535)] = 8412,
    host: Annotated[
        str, typer.Option("--host", help="Address to listen at; other than this machine's own it demands accounts.")
    ] = "127.0.0.1",
    origin: Annotated[
        str | None,
        typer.Option(
            "--origin",
            metavar="URL",
            help="What browsers have in their address line, where a proxy stands before it; demands accounts.",
            show_default=False,
        ),
    ] = None,
) -> None:
    """Open the workbench: the designs of a folder as pages in the browser, until it is stopped with Ctrl-C."""
    with reported():
        import gc

        gc.disable()  # while modules are loaded there is nothing to collect; the workbench begins it again
        from anchorwatt.web.serve import serve as run

        run(folder, host, port, origin)


@app.command(short_help="Say who may use a workbench that others can reach.")
def people(
    action: Annotated[PeopleAction, typer.Argument(help="What to do.", show_default=False)],
    folder: Annotated[Path, typer.Argument(help="Folder of the designs.", show_default=False)],
    name: Annotated[str | None, typer.Argument(help="Whom it concerns; not for list.", show_default=False)] = None,
    role: Annotated[
        str | None,
        typer.Option("--role", help="For add and role: owner, designer, technician or viewer.", show_default=False),
    ] = None,
    as_json: Json = False,
) -> None:
    """Add, change, remove or list the people who may sign in to the workbench of a folder of designs.

    A password is asked twice and not shown; where no terminal is, it is the first line of the input. Whoever is added
    without a role is a viewer; the first must be an owner.
    """
    with reported():
        from anchorwatt.cli import people as pages

        if action is not PeopleAction.list and not (name or "").strip():
            raise typer.BadParameter(f"{action} needs a name", param_hint="NAME")
        if action is PeopleAction.role and role is None:
            raise typer.BadParameter("role needs the new role", param_hint="--role")
        if role is not None and action not in (PeopleAction.add, PeopleAction.role):
            raise typer.BadParameter(f"{action} takes no role", param_hint="--role")
        accounts = pages.people_of(folder)
        if action is PeopleAction.list:
            everybody = accounts.all()
            _show(pages.plain(everybody), as_json, lambda: pages.screen(everybody))
            return
        person = pages.change(accounts, action, name or "", role)
        _show({"done": str(action)} | pages.plain([person]), as_json, lambda: pages.said(action, person))


def _assessed(file: Path) -> Assessment:
    """Read a design and have everything computed that the screens read."""
    import anchorwatt
    from anchorwatt.simulation.compiled import needs_compiling

    design = anchorwatt.read(file)
    assessment = anchorwatt.assess(design)
    with working("reading the weather"):
        _ = assessment.weather_source
    if needs_compiling():
        note("compiling the time kernel: once for this version, some seconds; later runs start at once")
    with working("running the days and the night"):
        _ = assessment.answers, assessment.cabins, assessment.recharge, assessment.comparisons
    return assessment


def _write(
    assessment: Assessment,
    csv: Path | None,
    plot: Path | None,
    units: Units,
    tables: tuple[str, ...],
    picture: str = "night_picture",
) -> None:
    """Write what was asked for as files, all or none; `picture` names a drawing of the drawings room."""
    from anchorwatt.cli.files import write_all
    from anchorwatt.papers.as_csv import csv_files

    contents = {} if csv is None else csv_files(assessment, csv, tables)
    if plot is not None:
        from anchorwatt import drawings

        contents[plot] = getattr(drawings, picture)(assessment, units.value)
    write_all(contents)
    for path in contents:
        note(f"wrote {path}")


def _show(plain: Any, as_json: bool, screen: Any) -> None:
    if as_json:
        from anchorwatt.papers.as_json import printed

        typer.echo(printed(plain))
    else:
        from anchorwatt.cli.terminal import show

        show(screen())
