"""How a run of the command ends: with a sentence and an exit code, whatever happens, and never with a traceback."""

import os
import signal
import sys
import threading
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from workbookgen.errors import DescriptionError, PlannerError

OUR_FAULT = "workbookgen itself failed, which is our fault and not yours; nothing was changed. It says: {} ({})"


class ReaderLeft(Exception):
    """Nobody reads the output any more, as in `workbookgen check FILE | head -1`."""


class Commands(click.Group):
    """The commands. Click would end with 1 if nobody reads the output any more, which here means findings."""

    def invoke(self, context: click.Context) -> object:
        try:
            return super().invoke(context)
        except BrokenPipeError:
            raise ReaderLeft from None


def guarded(run: Callable[[], None]) -> None:
    """Run a command, and end the process with the sentence and the exit code that its outcome calls for."""
    _reopen_closed_streams()
    with _stopped_by_signals() as asked:
        try:
            _run(run, asked)
        except DescriptionError as problem:
            _end(f"{problem}{_declared_at(problem)}", problem.exit_code)
        except PlannerError as problem:
            _end(str(problem), problem.exit_code)
        except click.ClickException as problem:
            problem.show()
            sys.exit(2)
        except (click.Abort, KeyboardInterrupt):
            _end("Stopped.")
        except ReaderLeft:
            _drop_unprinted()
            sys.exit(2)
        except MemoryError:
            _end("There is not enough memory for this; nothing was changed.")
        except OSError as problem:  # such as a full disk behind a redirection, or under the temporary folder
            _end(f"{problem.filename or 'This computer refuses it'}: {problem.strerror or problem}.")
        except Exception as problem:
            if os.environ.get("WORKBOOKGEN_TRACEBACK"):
                raise
            what = problem.msg if isinstance(problem, SyntaxError) else problem  # which would tell the line twice
            _end(OUR_FAULT.format(f"{type(problem).__name__}: {what}", _place_of(problem)))


def _place_of(problem: Exception) -> str:
    """The file and line of ours where it was raised; if that is below a sheet's description, the line of that."""
    if isinstance(problem, SyntaxError) and problem.filename:  # in a file that could not even be run
        return _place(problem.filename, problem.lineno)
    lines = _lines_of(problem)
    described = _described(lines) or lines
    return _place(described[-1].filename, described[-1].lineno)


def _declared_at(problem: DescriptionError) -> str:
    """The file and line of a refused declaration that is told by its own key alone, which other sheets have, too."""
    described = _described(_lines_of(problem))
    if not described or not problem.faults[0].place.startswith(("field ", "group ", "the rule ")):
        return ""
    return f" ({_place(described[-1].filename, described[-1].lineno)})"


def _lines_of(problem: Exception) -> list[traceback.FrameSummary]:
    """The lines of ours that it came through."""
    ours = Path(__file__).parent
    return [each for each in traceback.extract_tb(problem.__traceback__) if ours in Path(each.filename).parents]


def _described(lines: list[traceback.FrameSummary]) -> list[traceback.FrameSummary]:
    """Those of them in the module of the chapter that was being described, if any was."""
    of_sheets = [each for each in lines if Path(each.filename).parent.name == "sheets"]
    describing = [each.filename for each in of_sheets if each.name in ("<module>", "chapter", "sheet")]
    return [each for each in of_sheets if each.filename == describing[-1]] if describing else []


def _place(file: str, line: int | None) -> str:
    ours = Path(__file__).parent.parent
    return f"{Path(file).relative_to(ours).as_posix() if ours in Path(file).parents else file}, line {line}"


def _reopen_closed_streams() -> None:
    """Connect a standard stream that was closed, as by `2>&-`, to nothing.

    Otherwise the next file that is opened would get its number.
    """
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:
            os.set_inheritable(os.open(os.devnull, os.O_RDWR), True)  # it gets the lowest free number
    sys.stdout = sys.stdout or open(1, "w", closefd=False)
    sys.stderr = sys.stderr or open(2, "w", closefd=False)


def _run(run: Callable[[], None], asked: threading.Event) -> None:
    """Run a command; if a stop was `asked` for, any exception counts as that stop."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="backslashreplace")  # for file names and labels that this terminal cannot show
    try:
        run()
    except Exception:
        if asked.is_set():  # libraries may turn it into errors of their own, as NumPy does within a comparison
            raise KeyboardInterrupt from None
        raise


def _end(sentence: str, code: int = 2) -> None:
    click.echo(sentence, err=True)
    _drop_unprinted()
    sys.exit(code)


def _drop_unprinted() -> None:
    """Drop what could not be printed. Python would try again as it ends, and exit with 120 and a message of its own."""
    try:
        sys.stdout.flush()
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


@contextmanager
def _stopped_by_signals() -> Iterator[threading.Event]:
    """Turn Ctrl-C, a request to end and a closed terminal into KeyboardInterrupt. Yields an event that is set then."""
    asked = threading.Event()

    def stop(*_):
        asked.set()
        raise KeyboardInterrupt

    wanted = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():
        wanted = []
    before = {each: signal.getsignal(each) for each in wanted}
    for each in wanted:
        if before[each] in (signal.SIG_DFL, signal.default_int_handler):  # otherwise, as under nohup, it is ignored
            signal.signal(each, stop)
    try:
        yield asked
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)
