"""What one spec may cost: one that takes longer, or more memory, is stopped, and the others have their turn."""

from __future__ import annotations

import ctypes
import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

from sld.frozen import dataclass

try:
    import resource
except ImportError:  # a system without: memory has no bound there but what the machine has
    resource = None  # type: ignore[assignment]

__all__ = ["Bounds", "TooLong", "within"]

_AGAIN_AFTER_S = 5.0
"""A library that calls back into Python may lose the exception that is raised there; it is then raised again."""

_BYTES_OF_MEGABYTE = 1_000_000


@dataclass(frozen=True, slots=True)
class Bounds:
    """What one spec may take: time by the clock, memory as address space of its process; 0 is no bound."""

    time_s: float = 0
    memory_mb: int = 0


class TooLong(BaseException):
    """A spec has taken longer than it may. No error, so that nothing that handles errors takes it for one."""


@contextmanager
def within(bounds: Bounds) -> Iterator[None]:
    """Hold what is done inside to its bounds. Raises TooLong and, where there is no more memory, MemoryError.

    The bound on memory is one of the process, which does nothing else meanwhile; other threads than the main one, as
    those of a cluster, are held to the time alone.
    """
    if threading.current_thread() is not threading.main_thread():
        with _time_of_thread(bounds.time_s):
            yield
        return
    with _memory(bounds.memory_mb), _time(bounds.time_s):
        yield


@contextmanager
def _memory(megabytes: int) -> Iterator[None]:
    """Let this process take no more memory than that."""
    if not megabytes or resource is None:
        yield
        return
    soft, hard = resource.getrlimit(resource.RLIMIT_AS)
    limits = [each for each in (megabytes * _BYTES_OF_MEGABYTE, soft, hard) if each != resource.RLIM_INFINITY]
    resource.setrlimit(resource.RLIMIT_AS, (min(limits), hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_AS, (soft, hard))


@contextmanager
def _time(seconds: float) -> Iterator[None]:
    """Raise TooLong in the main thread, also out of a call that waits for the system."""
    if not seconds:
        yield
        return
    if not hasattr(signal, "setitimer"):
        with _time_of_thread(seconds):
            yield
        return

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise TooLong

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds, _AGAIN_AFTER_S)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


@contextmanager
def _time_of_thread(seconds: float) -> Iterator[None]:
    """Raise TooLong in a thread to which no signal can be sent, between two steps of its Python code."""
    if not seconds:
        yield
        return
    thread = ctypes.c_ulong(threading.get_ident())
    guard, done = threading.Lock(), False

    def stop() -> None:
        with guard:
            if not done:
                ctypes.pythonapi.PyThreadState_SetAsyncExc(thread, ctypes.py_object(TooLong))

    timer = threading.Timer(seconds, stop)
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        with guard:
            done = True
        timer.cancel()
