"""The command in a process of its own, many times: what every command imports from elsewhere is imported once.

Each runs in a child forked from a process that has loaded these libraries, but nothing of the package. Where
processes cannot fork, each is started anew.
"""

import json
import os
import subprocess
import sys
from contextlib import contextmanager

LIBRARIES = "numpy", "pydantic", "ruamel.yaml", "scipy.optimize", "scipy.spatial", "shapely"
FORKING = """\
import importlib, json, os, sys
for name in json.loads(sys.argv.pop()):
    importlib.import_module(name)
for line in sys.stdin:
    asked = json.loads(line)
    child = os.fork()
    if not child:
        for stream, path in ((1, asked["out"]), (2, asked["err"])):
            os.dup2(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC), stream)
        sys.argv[1:] = asked["arguments"]
        from sequencer.__main__ import main
        main()
        sys.exit(0)
    print(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), flush=True)
"""
OPTIONS = (sys.executable, "-W", "error")


@contextmanager
def fresh_processes(folder, *, cwd, env):
    """Gives a function that runs the command with arguments and returns what subprocess.run would.

    Parameters
    ----------
    folder : Path
        For what is printed.
    cwd, env
        Of the processes.
    """
    if not hasattr(os, "fork"):
        yield lambda *words: subprocess.run(
            [*OPTIONS, "-m", "sequencer", *words],
            cwd=cwd, env=env, capture_output=True, text=True, encoding="utf-8", check=False,
        )  # fmt: skip
        return
    out, err = folder / "out", folder / "err"

    def run(*words):
        print(json.dumps({"arguments": words, "out": str(out), "err": str(err)}),
              file=server.stdin, flush=True)  # fmt: skip
        status = int(server.stdout.readline())
        said = (path.read_text(encoding="utf-8") for path in (out, err))
        return subprocess.CompletedProcess(words, status, *said)

    with subprocess.Popen(
        [*OPTIONS, "-c", FORKING, json.dumps(LIBRARIES)],
        cwd=cwd, env=env, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
    ) as server:  # fmt: skip
        yield run
