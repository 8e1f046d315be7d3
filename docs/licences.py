"""Lists the licence of everything that is installed with sequencer: `python docs/licences.py` (a test holds it to what is allowed)."""

import re
import sys
from collections.abc import Iterator
from importlib.metadata import Distribution, PackageNotFoundError, distribution

from packaging.requirements import Requirement

# Permissive ones, and those that bind only changes to the library itself (MPL, LGPL: none of their files is changed here).
ALLOWED = (
    "0BSD", "Apache", "BSD", "BSL", "CC0", "HPND", "ISC", "LGPL", "Lesser General Public", "MIT", "MPL", "Mozilla", "PSF",
    "Python Software Foundation", "Unlicense", "Zlib", "zlib", "Public Domain",
)  # fmt: skip
# Whose record names none, or a text instead of a name: read by hand in its source.
READ = {
    "pillow": "MIT-CMU (HPND)", "text-unidecode": "Artistic",
}  # fmt: skip


def installed(root: str = "sequencer", extras: tuple[str, ...] = ()) -> Iterator[Distribution]:
    """The distributions that a package needs, and all that these need, as they are installed."""
    seen: set[str] = set()
    waiting = [(root, extras)]
    while waiting:
        name, asked = waiting.pop()
        try:
            found = distribution(name)
        except PackageNotFoundError:
            continue  # of another system or Python
        for line in found.requires or ():
            need = Requirement(line)
            applies = need.marker is None or any(
                need.marker.evaluate({"extra": extra}) for extra in (*asked, "")
            )
            key = _plain(need.name)
            if applies and key not in seen:
                seen.add(key)
                waiting.append((need.name, tuple(need.extras)))
        if name != root:
            yield found


def licence_of(package: Distribution) -> str:
    """Its licence as its record tells it, in as few words as it does."""
    record = package.metadata
    if (name := READ.get(_plain(record["Name"]))) is not None:
        return name
    told = record.get("License-Expression")
    classed = [
        line.rsplit("::", 1)[-1].strip()
        for line in record.get_all("Classifier") or ()
        if line.startswith("License")
    ]
    text = (record.get("License") or "").strip().split("\n")[0]
    return (
        told or ", ".join(each for each in classed if each != "OSI Approved") or text or "none told"
    )


def is_allowed_licence(words: str) -> bool:
    """Whether a licence is among those that may be installed with the program."""
    return any(each in words for each in ALLOWED)


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def main() -> None:
    """Print them, those that are not allowed marked."""
    rows = sorted(
        (package.metadata["Name"], package.version, licence_of(package)) for package in installed()
    )
    for name, version, licence in rows:
        mark = "" if is_allowed_licence(licence) else "   NOT ALLOWED"
        sys.stdout.write(f"{name:24} {version:14} {licence}{mark}\n")


if __name__ == "__main__":
    main()
