"""What is installed answers on its own: the facts and the grammar go along."""

from __future__ import annotations

import json
import subprocess
import sys
import zipfile
from pathlib import Path

from tests.outside.running import ROOT, environment


def test_an_installed_wheel_answers_from_another_folder(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path / "dist"), str(ROOT)],
        check=True, capture_output=True,
    )  # fmt: skip
    (wheel,) = (tmp_path / "dist").glob("*.whl")
    installed = tmp_path / "site"
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(installed)
        names = set(archive.namelist())
    shipped = {path.relative_to(ROOT).as_posix() for path in (ROOT / "kb").rglob("*.yaml")}
    shipped |= {path.relative_to(ROOT).as_posix() for path in (ROOT / "grammar").glob("*.lark")}
    assert shipped <= names
    assert not any(name.startswith(("tests/", "scenarios/")) for name in names)
    code = "import sys; from engine.doors.cli import main; raise SystemExit(main(sys.argv[1:]))"
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    done = subprocess.run(
        [sys.executable, "-P", "-c", code, "ask", "--json", "M42 on E-mount"], capture_output=True, text=True,
        env=environment(tmp_path) | {"PYTHONPATH": str(installed)}, cwd=elsewhere, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["chains"][0]["pieces"][0]["id"] == "m42-e"
