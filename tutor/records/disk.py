"""How do bytes reach the disk and stay there, and how is it said when they cannot?

Every call here raises OSError when the system refuses; nothing is tried a second time.
"""

from __future__ import annotations

import contextlib
import errno
import os
import re
import stat
import sys
import time
from itertools import count
from pathlib import Path

from tutor.text import marked

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

MAX_BYTES = 16 * 1024 * 1024
LEFT_OVER = 24 * 3600.0
FRESH = re.compile(r"\.[0-9a-f]{16}\.fresh")
FILE_MODE = 0o600
FOLDER_MODE = 0o700
PLAIN = getattr(os, "O_BINARY", 0) | getattr(os, "O_NOCTTY", 0) | getattr(os, "O_NONBLOCK", 0)
READ = os.O_RDONLY | PLAIN
APPEND = os.O_RDWR | os.O_APPEND | PLAIN
CREATE = APPEND | os.O_CREAT | os.O_EXCL

REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EFBIG: "the file is too large",
    errno.EIO: "the disk reported an error",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: "this program has no permission there",
    errno.EPERM: "this program has no permission there",
    errno.ENOTDIR: "a file stands where the folder should be",
    errno.EISDIR: "a folder stands where the file should be",
    errno.ENOENT: "there is no such file or folder",
    errno.ENAMETOOLONG: "the name is too long",
}


def why_not(error: OSError) -> str:
    """Why the system refused, in words without a path."""
    known = REASONS.get(error.errno or 0)
    return known or error.strerror or type(error).__name__


def path_shown(text: str | Path) -> str:
    """A path or name as one harmless piece of text: what cannot be printed becomes `?`."""
    return marked(str(text))


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, for this user alone; one that is there stays as it is."""
    if folder.is_dir():
        return
    if folder.exists():
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR), str(folder))
    if folder.parent == folder:
        raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(folder))
    make_folder(folder.parent)
    with contextlib.suppress(FileExistsError):
        os.mkdir(folder, FOLDER_MODE)
    sync_folder(folder.parent)


def create(path: Path) -> int:
    """A descriptor of a new file for this user alone; raises FileExistsError if there is one."""
    descriptor = os.open(path, CREATE, FILE_MODE)
    make_private(descriptor)
    return descriptor


def make_private(descriptor: int) -> None:
    """Close the file to other users where this user may do so."""
    if sys.platform != "win32":
        with contextlib.suppress(OSError):
            os.fchmod(descriptor, FILE_MODE)


def read_whole(descriptor: int, limit: int = MAX_BYTES) -> bytes:
    """All bytes of an ordinary file; raises OSError for a pipe, a device or one over the limit."""
    state = os.fstat(descriptor)
    if not stat.S_ISREG(state.st_mode):
        raise OSError(errno.EINVAL, "it is not an ordinary file")
    os.lseek(descriptor, 0, os.SEEK_SET)
    parts: list[bytes] = []
    size = 0
    while part := os.read(descriptor, 1 << 20):
        parts.append(part)
        size += len(part)
        if size > limit:
            raise OSError(errno.EFBIG, os.strerror(errno.EFBIG))
    return b"".join(parts)


def read_file(path: Path, limit: int = MAX_BYTES) -> bytes:
    """All bytes of an ordinary file, within the limit."""
    descriptor = os.open(path, READ)
    try:
        return read_whole(descriptor, limit)
    finally:
        os.close(descriptor)


def write_whole(descriptor: int, data: bytes) -> None:
    """Write every byte, going on where the system took only some of them."""
    rest = memoryview(data)
    while rest:
        written = os.write(descriptor, rest)
        if written <= 0:
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        rest = rest[written:]


def sync_folder(folder: Path) -> None:
    """Bring the names in a folder to the disk, where the system can do that for folders."""
    if sys.platform == "win32":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        if error.errno != errno.EINVAL:
            raise
    finally:
        os.close(descriptor)


def create_whole(path: Path, data: bytes) -> int:
    """The locked descriptor of a new file with these bytes on the disk, or OSError and no file.

    Raises FileExistsError if there is such a file already: nothing is overwritten.
    """
    descriptor = create(path)
    try:
        lock(descriptor)
        write_whole(descriptor, data)
        os.fsync(descriptor)
        sync_folder(path.parent)
    except BaseException:
        os.close(descriptor)
        with contextlib.suppress(OSError):
            os.unlink(path)
        raise
    return descriptor


def write_new(path: Path, data: bytes) -> None:
    """Write a new file and bring it to the disk, as `create_whole` does."""
    os.close(create_whole(path, data))


def keep_aside(path: Path, data: bytes) -> Path:
    """Write bytes of a damaged file beside it, under a name that is free, and return that name."""
    for number in count(1):
        side = path.with_name(f"{path.name}.kept-aside" + (f"-{number}" if number > 1 else ""))
        with contextlib.suppress(FileExistsError):
            write_new(side, data)
            return side
    raise AssertionError("there is always a free number")


def replace(path: Path, data: bytes) -> None:
    """Put a new file with these bytes in the place of `path`: wholly, or not at all."""
    fresh = fresh_name(path)
    clear_left_over(path.parent)
    write_new(fresh, data)
    try:
        os.replace(fresh, path)
    except BaseException:
        with contextlib.suppress(OSError):
            os.unlink(fresh)
        raise
    sync_folder(path.parent)


def clear_left_over(folder: Path) -> None:
    """Take away files that were to take another's place a day ago, when the program was killed."""
    with contextlib.suppress(OSError):
        for left in folder.glob(".*.fresh"):
            if FRESH.fullmatch(left.name) and time.time() - left.stat().st_mtime > LEFT_OVER:
                left.unlink()


def fresh_name(path: Path) -> Path:
    """A hidden name beside `path` for a file that is to take its place."""
    return path.with_name(f".{os.urandom(8).hex()}.fresh")


def lock(descriptor: int) -> bool:
    """Take the file for this program alone: False if another one has it.

    The lock is advisory and ends with the descriptor. Where the system has no locks for the file
    (some network disks), the answer is True: the journal then relies on noticing foreign writes.
    """
    try:
        if sys.platform == "win32":
            os.lseek(descriptor, MAX_BYTES * 4, os.SEEK_SET)
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        return error.errno not in (errno.EAGAIN, errno.EACCES, errno.EDEADLK)
    return True


def is_at(descriptor: int, path: Path) -> bool:
    """Whether the open file is still the one that bears this name."""
    try:
        return os.path.samestat(os.fstat(descriptor), os.stat(path))
    except FileNotFoundError:
        return False
