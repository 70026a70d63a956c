"""The ground: what the locks pin, what the setup says when it cannot work, and the house rules every file keeps."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tomllib
from functools import cache
from pathlib import Path

import pytest
from packaging.requirements import Requirement

ROOT = Path(__file__).parent.parent
LOCKS = ("requirements-build.lock", "requirements.lock", "requirements-dev.lock")
PINNED = re.compile(
    r"(?P<name>[a-z0-9-]+)==(?P<version>\S+)(?P<marker> ; [^#]+?)?(?P<hashes>( --hash=sha256:[0-9a-f]{64})+)"
)

# Pieces are joined here, so that this file keeps the rules it checks.
MACHINE_PATH = re.compile(r"(?<![\w.])/(work|root|home|Users|opt)/\w")
REGISTRIES = ("py" + "pi.org", "python" + "hosted", "registry." + "npmjs", "deb." + "debian")
BINDER_OF_PLAYS = re.compile("play" + r"[\s-]?books?\b", re.IGNORECASE)
EMPTY_NAMES = re.compile(r"^\s*class \w*(Manager|Helper|Utils?|Service)\b", re.MULTILINE)
LONGEST_FILE_LINES = 400  # house rule, docs/decisions/0001


@cache
def project_files() -> tuple[Path, ...]:
    """Every file of the project: what git tracks or would track; in a copy without git, what the setup did not make."""
    git = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    if (ROOT / ".git").exists() and shutil.which("git"):
        listed = subprocess.run(git, cwd=ROOT, capture_output=True, text=True, check=True).stdout
        found = [ROOT / name for name in listed.split("\0") if name]
    else:
        made = re.compile(r"^(\.venv|\.git|out|dist|build|\.\w+_cache|\.hypothesis)/|__pycache__/")
        found = [path for path in ROOT.rglob("*") if not made.search(path.relative_to(ROOT).as_posix())]
    return tuple(sorted(path for path in found if path.is_file()))


@cache
def project_texts() -> dict[str, str]:
    """The text of every project file that is text, by its name from the root."""
    texts = {}
    for path in project_files():
        try:
            texts[path.relative_to(ROOT).as_posix()] = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue
    return texts


def requirements(lock: str) -> list[str]:
    """The requirements of a lock, one line each, comments left out."""
    lines = [line for line in (ROOT / lock).read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    joined = "\n".join(lines).replace("\\\n", " ")
    return [re.sub(r" +", " ", line).strip() for line in joined.splitlines() if line.strip()]


def pins(lock: str) -> dict[tuple[str, str], str]:
    """The version of each (name, marker) in a lock."""
    found = (PINNED.fullmatch(line) for line in requirements(lock))
    return {(pin["name"], (pin["marker"] or "").strip()): pin["version"] for pin in found if pin}


@pytest.mark.parametrize("lock", LOCKS)
def test_every_package_in_a_lock_is_pinned_and_hashed(lock: str) -> None:
    assert requirements(lock)
    assert [line.split()[0] for line in requirements(lock) if not PINNED.fullmatch(line)] == []


@pytest.mark.parametrize("lock", LOCKS)
def test_no_lock_names_an_address(lock: str) -> None:
    text = (ROOT / lock).read_text(encoding="utf-8")
    assert [word for word in ("://", "index-url", "find-links", " @ ", *REGISTRIES) if word in text] == []


def test_a_package_in_two_locks_has_one_version() -> None:
    versions: dict[tuple[str, str], set[str]] = {}
    for lock in LOCKS:
        for package, version in pins(lock).items():
            versions.setdefault(package, set()).add(version)
    assert {package: found for package, found in versions.items() if len(found) > 1} == {}


def test_the_locks_hold_what_pyproject_asks_for() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    asked = dict(
        zip(
            LOCKS,
            (
                project["dependency-groups"]["build"],
                project["project"]["dependencies"],
                project["dependency-groups"]["dev"],
            ),
            strict=True,
        )
    )
    for lock, wanted in asked.items():
        for requirement in map(Requirement, wanted):
            held = [version for (name, _), version in pins(lock).items() if name == requirement.name]
            assert held, f"{requirement} is not in {lock}; run `make lock`"
            assert all(requirement.specifier.contains(version) for version in held), (
                f"{lock} holds {requirement.name} {held}"
            )


@pytest.mark.skipif(not shutil.which("make"), reason="make is missing, so the setup cannot be tried")
def test_an_old_python_is_told_what_would_be_right(tmp_path: Path) -> None:
    old = tmp_path / "bin"
    old.mkdir()
    for name in ("python3.11", "python3"):
        (old / name).write_text("#!/bin/sh\n[ \"$1\" = --version ] && echo 'Python 3.9.2' && exit\nexit 1\n")
        (old / name).chmod(0o755)
    for name in ("Makefile", "pyproject.toml", *LOCKS):
        shutil.copy(ROOT / name, tmp_path)
    environment = {key: value for key, value in os.environ.items() if not key.startswith("MAKE")}
    environment["PATH"] = f"{old}{os.pathsep}{environment['PATH']}"
    tried = subprocess.run(
        ["make", "setup"], cwd=tmp_path, env=environment, capture_output=True, text=True, check=False
    )
    assert tried.returncode != 0
    assert "needs Python 3.11 or newer; python3 here is: Python 3.9.2" in tried.stdout
    assert not (tmp_path / ".venv").exists()


def test_no_file_names_a_place_on_one_machine() -> None:
    found = {name: match[0] for name, text in project_texts().items() if (match := MACHINE_PATH.search(text))}
    assert found == {}


def test_no_file_names_a_package_registry() -> None:
    assert [(name, host) for name, text in project_texts().items() for host in REGISTRIES if host in text] == []


def test_only_the_check_script_knows_the_folder_of_shared_data() -> None:
    assert [name for name, text in project_texts().items() if "../" + "shared" in text] in ([], [".ci/run"])


def test_an_offence_is_written_in_an_offence_book() -> None:
    assert [name for name, text in project_texts().items() if BINDER_OF_PLAYS.search(text)] == []


def test_no_file_outgrows_a_reader() -> None:
    code = {name: text.count("\n") for name, text in project_texts().items() if name.endswith((".py", ".js", ".css"))}
    assert {name: lines for name, lines in code.items() if lines > LONGEST_FILE_LINES} == {}


def test_no_type_has_a_name_that_says_nothing() -> None:
    code = {name: text for name, text in project_texts().items() if name.endswith((".py", ".js"))}
    assert [(name, match[0].strip()) for name, text in code.items() if (match := EMPTY_NAMES.search(text))] == []


def test_every_decision_names_its_price() -> None:
    records = {name: text for name, text in project_texts().items() if re.match(r"docs/decisions/\d{4}-", name)}
    headings = ("## Context", "## Choice", "## Price", "## What would reopen it")
    assert records
    assert {name: heading for name, text in records.items() for heading in headings if heading not in text} == {}


def test_every_page_that_a_document_points_to_is_there() -> None:
    documents = {name: re.sub(r"<!--.*?-->", "", text, flags=re.DOTALL) for name, text in project_texts().items()}
    broken = [
        (name, link)
        for name, text in documents.items()
        if name.endswith(".md")
        for link in re.findall(r"\]\(([^)\s#]+)", text)
        if "://" not in link and not (ROOT / name).parent.joinpath(link).exists()
    ]
    assert broken == []
