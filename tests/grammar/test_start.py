"""What reading a question loads: nothing that takes longer to load than the question to be read."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
PROGRAM = """
import json, sys
from grammar.words.lexicon import Lexicon
from grammar.reader import read
names = [("C-mount", "mount", "c"), ("E-mount", "mount", "e")]
lexicon = Lexicon.build(names, [("ask get", ["get"]), ("lens", ["lens"])])
read("get a 25mm f/1.4 C-mount lens on E", lexicon)
print(json.dumps(sorted(sys.modules)))
"""


def test_reading_a_question_loads_no_lark_and_nothing_of_its_like() -> None:
    done = subprocess.run([sys.executable, "-c", PROGRAM], cwd=ROOT, capture_output=True, text=True, check=True)
    loaded = set(json.loads(done.stdout))
    assert "grammar.parsing" in loaded
    heavy = {"lark", "dataclasses", "inspect", "logging", "difflib", "pickle", "shutil", "pathlib", "tempfile", "yaml"}
    assert not heavy & loaded
