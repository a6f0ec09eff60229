"""Helper processes, so that every core has work to do.

A helper is a fresh Python (`spawn`), which works the same on every system and is safe beside libraries that have
started threads. Through a pipe it reports its steps, and finally its outcome or its exception. It ignores Ctrl-C,
which a terminal sends to all processes: the process that started it stops it, and it cleans up.
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

PATIENCE = 10  # seconds that a helper has to clean up when it is asked to stop

Step = Callable[[], None]
Work = Callable[[Step], object]

_FRESH = get_context("spawn")


def cores() -> int:
    """The number of cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


class Helper:
    """A process that does one piece of work. The work and its outcome must be picklable."""

    def __init__(self, work: Work, step: Step):
        self._step, self._outcome, self._has_ended = step, None, False
        self._receiver, sender = _FRESH.Pipe(duplex=False)
        self._process = _FRESH.Process(target=_do, args=(work, sender), daemon=True)
        self._process.start()
        sender.close()  # so that only the helper has this end, and the pipe closes when it ends

    def listen(self) -> None:
        """Pass on the steps reported so far, without waiting."""
        while not self._has_ended and self._receiver.poll():
            self._hear()

    def outcome(self) -> object:
        """Wait for the outcome of the work. Raises what the work raised."""
        while not self._has_ended:
            self._hear()
        return self._outcome

    def stop(self) -> None:
        """Wait for a helper that has reported its outcome, and stop one that has not."""
        if not self._has_ended:
            self._process.terminate()
        self._process.join(PATIENCE)
        self._process.kill()
        self._process.join()
        self._receiver.close()

    def _hear(self) -> None:
        try:
            kind, what = self._receiver.recv()
        except EOFError:
            raise PlannerError.at(
                "",
                "A process that did part of the work was stopped from outside, perhaps because memory ran out; "
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
    """Start a helper for each piece of work. Whatever happens, none is left running."""
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
    """Delay signals to stop until afterwards: a helper that is only half started would end with a traceback.

    The signals are blocked in this thread, which the started process inherits (Windows has no such thing). The system
    then delivers them to any other thread, so Python's handlers are delayed as well.
    """
    came: list[int] = []
    wanted = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():
        wanted = []  # Python's handlers run in the main thread, which is not starting anything
    before = {each: handler for each in wanted if callable(handler := signal.getsignal(each))}
    try:
        for each in before:
            signal.signal(each, lambda number, _: came.append(number))
        with _keyboard_blocked():
            yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)
        for number in came[:1]:
            signal.raise_signal(number)


@contextmanager
def _keyboard_blocked() -> Iterator[None]:
    """Block Ctrl-C in this thread and in the processes that it starts."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    from multiprocessing import resource_tracker  # not on Windows

    resource_tracker.ensure_running()  # otherwise it starts with the first process, and unblocks Ctrl-C meanwhile
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGHUP})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _do(work: Work, sender: Connection) -> None:
    """The main function of a helper."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _stop)
    try:
        sender.send(("done", work(lambda: sender.send(("step", None)))))
    except (KeyboardInterrupt, BrokenPipeError):
        pass  # it was asked to stop, or nobody is listening any more
    except BaseException as problem:
        sender.send(("failed", _sendable(problem)))


def _stop(*_) -> None:
    signal.signal(signal.SIGTERM, signal.SIG_IGN)  # one is enough
    raise KeyboardInterrupt


def _sendable(problem: BaseException) -> BaseException:
    """The exception, or another one with its text if it cannot be pickled."""
    try:
        pickle.loads(pickle.dumps(problem))
    except Exception:
        return RuntimeError(f"{type(problem).__name__}: {problem}")
    return problem
