"""`sitegen proof`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.exits import Exit, stop
from sitegen.cli.folder import root_option, school_folder

if TYPE_CHECKING:
    from sitegen.release.proof import Proof


@click.command()
@click.option(
    "--report",
    type=click.Choice(["text", "sarif", "json"]),
    default="text",
    show_default=True,
    help="For a person, for CI (SARIF 2.1.0), or for other programs.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Write the report to FILE, and show the faults as text all the same.",
)
@click.option("--explain", metavar="CODE", help="Say what a code means and how to mend it, and read nothing.")
@root_option
@click.pass_context
def proof(
    context: click.Context, report: str, target: Path | None, explain: str | None, root: Path | None
) -> None:
    """Read every file and list every fault, each with its place and a way out.

    \b
    Examples:
      sitegen proof
      sitegen proof --explain unknown-ingredient
      sitegen proof --report sarif --to proof.sarif

    Exit codes: 0 no errors (advice may be given), 1 errors, 2 wrong use.
    """
    if explain is not None:
        click.echo(_explained(explain))
        return
    if target is not None and report == "text":
        raise stop("--to needs --report sarif or --report json", Exit.WRONG_USE)
    from sitegen.release.proof import proof as proof_folder

    proofed = proof_folder(school_folder(root))
    if report == "text" or target is not None:
        _show(proofed)
    if report != "text":
        written = _for_programs(proofed, report)
        if target is not None:
            target.write_text(written, encoding="utf-8")
        else:
            click.echo(written, nl=False)
    context.exit(Exit.FAULTS if proofed.errors else Exit.CLEAN)


def _for_programs(proofed: "Proof", report: str) -> str:
    from sitegen.cli.fault_json import faults_json
    from sitegen.cli.fault_sarif import faults_sarif
    from sitegen.release.proof import catalogue

    return faults_sarif(proofed.faults, catalogue()) if report == "sarif" else faults_json(proofed.faults)


def _show(proofed: "Proof") -> None:
    from sitegen.cli.faulty import show_faults
    from sitegen.release.tally import counted, tally

    content = proofed.content
    show_faults(proofed.faults, content.texts, on_error=False)
    pages = counted(len(content.tutorials), "technique page")
    click.echo(f"{counted(len(content.recipes), 'recipe')}, {pages}: {tally(proofed.faults)}")


def _explained(code: str) -> str:
    """What the catalogue says; stops with near codes where there is no such code."""
    from difflib import get_close_matches

    from sitegen.release.proof import catalogue

    rows = catalogue()
    row = rows.get(code)
    if row is None:
        near = get_close_matches(code, rows, n=3, cutoff=0.5)
        hint = f"; did you mean {' or '.join(near)}?" if near else ""
        raise stop(f"there is no fault code '{code}'{hint}", Exit.WRONG_USE)
    parts = [f"{row.code} ({row.severity})", "", row.meaning, f"What to do: {row.cure}"]
    if row.bad:
        where = f" in {row.file}" if row.file else ""
        parts += ["", f"Wrong{where}:", _indented(row.bad), "Right:", _indented(row.good)]
    return "\n".join(parts)


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.rstrip("\n").split("\n"))
