"""How the benchmarks take time: whole processes, ours and the baseline in turn, medians, ratios pair by pair."""
import os
import resource
import statistics
import subprocess
import sys
import time


def run(words, **more):
    """Wall and processor seconds of one process, and what it printed."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.monotonic()
    done = subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, **more)
    wall = time.monotonic() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode != 0:
        sys.exit(f"{' '.join(words)}: {done.stderr[-300:]}")
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, done.stdout


def in_turn(times, *programs):
    """For each program its processor seconds, one a run; a program is words or a function that answers seconds."""
    taken = [[] for _ in programs]
    for _ in range(times):
        for seconds, program in zip(taken, programs):
            seconds.append(program() if callable(program) else run(program)[1])
    return taken


def median_ratio(ours, theirs):
    return statistics.median(a / b for a, b in zip(ours, theirs) if b > 0)


def shown(seconds):
    middle = statistics.median(seconds)
    return f"{middle:.3g} s" if middle >= 1 else f"{1000 * middle:.3g} ms"


def machine():
    with open("/proc/cpuinfo", encoding="utf-8") as f:
        processor = f.read().split("model name\t: ")[1].split("\n")[0]
    return f"{processor}, {os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}"
