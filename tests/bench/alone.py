"""Runs Python with the words given, and prints the seconds of processor time and the peak memory in MB that it took.

A small process of its own: a child begins with the memory of the one that started it, and its
peak is then that of a benchmark which has planners in its hands.
"""

import json
import os
import subprocess
import sys

if __name__ == "__main__":
    process = subprocess.Popen([sys.executable, *sys.argv[1:]], stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    print(json.dumps([used.ru_utime + used.ru_stime, used.ru_maxrss / (1024 if sys.platform != "darwin" else 2**20)]))
    sys.exit(process.returncode)
