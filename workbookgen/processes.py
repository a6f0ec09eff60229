"""Work in further processes, so that every core has some: how many cores there are, and a helper that does a share.

A helper is a fresh Python (`spawn`), the same on every system, and safe beside libraries that have started threads.
It tells its steps, and in the end its outcome or what went wrong, through a pipe. It takes no notice of Ctrl-C, which
a terminal sends to all: whoever started it stops it, and it clears away what it had begun.
"""

import os
import pickle
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from multiprocessing import get_context
from multiprocessing.connection import Connection

from workbookgen.errors import PlannerError

PATIENCE = 10  # seconds in which a helper that is asked to stop clears away what it has begun

Step = Callable[[], None]
Work = Callable[[Step], object]

_FRESH = get_context("spawn")


def cores() -> int:
    """The cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


class Helper:
    """A process that does one piece of work. Both the work and its outcome must be something that can be pickled."""

    def __init__(self, work: Work, step: Step):
        self._step, self._outcome, self._has_ended = step, None, False
        self._heard, said = _FRESH.Pipe(duplex=False)
        self._process = _FRESH.Process(target=_do, args=(work, said), daemon=True)
        self._process.start()
        said.close()  # only the helper has it now, so that its end is noticed

    def listen(self) -> None:
        """Pass on the steps that the helper has told, without waiting."""
        while not self._has_ended and self._heard.poll():
            self._hear()

    def outcome(self) -> object:
        """What the work came to, waited for. Raises what the work raised."""
        while not self._has_ended:
            self._hear()
        return self._outcome

    def stop(self) -> None:
        """Wait for a helper that has told its outcome, and stop one that has not."""
        if not self._has_ended:
            self._process.terminate()
        self._process.join(PATIENCE)
        self._process.kill()
        self._process.join()
        self._heard.close()

    def _hear(self) -> None:
        try:
            kind, what = self._heard.recv()
        except EOFError:
            raise PlannerError.at(
                "",
                "A process that did a part of the work was stopped from outside, perhaps for want of memory; "
                "nothing was changed. Close other programs, and try again.",
            ) from None
        if kind == "step":
            self._step()
            return
        self._has_ended = True
        if kind == "failed":
            raise what
        self._outcome = what


@contextmanager
def helpers(works: Sequence[Work], step: Step) -> Iterator[list[Helper]]:
    """A helper for each piece of work; whatever happens, none is left behind."""
    started: list[Helper] = []
    try:
        with _undisturbed():
            for work in works:
                started.append(Helper(work, step))
        yield started
    finally:
        for each in started:
            each.stop()


@contextmanager
def _undisturbed() -> Iterator[None]:
    """A request to stop that comes meanwhile is heard afterwards.

    A helper that is started by half would fail with a traceback.

    What is started never gets a Ctrl-C (Windows has no such thing): it inherits that its starter lets none through.
    That holds for one thread, and the system hands the request to any other that there is; so what Python does upon
    it is put off as well.
    """
    came: list[int] = []
    wanted = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():
        wanted = []  # Python's own handlers run in the main thread, which this does not hold up
    before = {each: handler for each in wanted if callable(handler := signal.getsignal(each))}
    try:
        for each in before:
            signal.signal(each, lambda number, _: came.append(number))
        with _keyboard_kept_off():
            yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)
        for number in came[:1]:
            signal.raise_signal(number)


@contextmanager
def _keyboard_kept_off() -> Iterator[None]:
    """This thread gets no Ctrl-C, nor does what it starts."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    from multiprocessing import resource_tracker  # not on Windows

    resource_tracker.ensure_running()  # Python starts it beside the first process, and lets Ctrl-C through while it does
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGHUP})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _do(work: Work, said: Connection) -> None:
    """What a helper does."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _stop)
    try:
        said.send(("done", work(lambda: said.send(("step", None)))))
    except (KeyboardInterrupt, BrokenPipeError):
        pass  # it was asked to stop, or nobody listens any more
    except BaseException as problem:
        said.send(("failed", _sendable(problem)))


def _stop(*_) -> None:
    signal.signal(signal.SIGTERM, signal.SIG_IGN)  # once is enough
    raise KeyboardInterrupt


def _sendable(problem: BaseException) -> BaseException:
    """What was raised, or its words where it cannot be sent."""
    try:
        pickle.loads(pickle.dumps(problem))
    except Exception:
        return RuntimeError(f"{type(problem).__name__}: {problem}")
    return problem
