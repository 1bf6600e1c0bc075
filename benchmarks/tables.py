"""Prints the tables of a folder of benchmark results (see benchmarks/run) as Markdown.

Every figure is the least of its repetitions; times are CPU times of all threads, user and system.
"""

import json
import math
import pathlib
import re
import sys

PARTS = ["mesh", "order", "pattern", "symbolic", "assemble", "factorise", "solve", "newton_cracked"]
SIZES = ["10k", "50k", "200k", "1000k"]
ELEMENTS = ["four_node", "eight_node"]
NOT_COUNTERS = {
    "name", "run_name", "run_type", "repetitions", "repetition_index", "threads", "iterations",
    "real_time", "cpu_time", "time_unit", "family_index", "per_family_instance_index",
}  # fmt: skip


class Results:
    """The runs of every JSON file, by file and name."""

    def __init__(self, folder: pathlib.Path):
        self.runs = {}
        self.context = {}
        for path in sorted(folder.glob("*.json")):
            if not path.stat().st_size:
                continue
            data = json.loads(path.read_text())
            self.context[path.stem] = data["context"]
            for run in data["benchmarks"]:
                if run["run_type"] != "iteration" or run.get("error_occurred"):
                    continue
                name = re.sub(r"/(iterations|repeats|process_time)(:\d+)?", "", run["name"])
                self.runs.setdefault((path.stem, name), []).append(run)

    def seconds(self, file: str, name: str) -> float:
        """Least CPU time of an iteration; NaN where it was not run."""
        runs = self.runs.get((file, name), [])
        return min((run["cpu_time"] * 1e-3 for run in runs), default=math.nan)

    def least(self, file: str, name: str, counter: str) -> float:
        runs = self.runs.get((file, name), [])
        return min((run[counter] for run in runs if counter in run), default=math.nan)

    def most(self, file: str, name: str, counter: str) -> float:
        runs = self.runs.get((file, name), [])
        return max((run[counter] for run in runs if counter in run), default=math.nan)


def figure(value: float, digits: int = 3) -> str:
    if math.isnan(value):
        return "-"
    return f"{value:,.0f}" if value >= 10 ** (digits - 1) else f"{value:.{digits}g}"


def table(heads: list, rows: list) -> None:
    print("| " + " | ".join(heads) + " |")
    print("|" + "---|" * len(heads))
    for row in rows:
        print("| " + " | ".join(str(cell) for cell in row) + " |")
    print()


def slope(points: list) -> float:
    """Least-squares slope of log y against log x."""
    logs = [(math.log(x), math.log(y)) for x, y in points if not math.isnan(y) and y > 0]
    if len(logs) < 2:
        return math.nan
    mean_x = sum(x for x, _ in logs) / len(logs)
    mean_y = sum(y for _, y in logs) / len(logs)
    rise = sum((x - mean_x) * (y - mean_y) for x, y in logs)
    return rise / sum((x - mean_x) ** 2 for x, _ in logs)


def parts_tables(results: Results) -> None:
    for element in ELEMENTS:
        file = {size: f"parts_{element}_{size}" for size in SIZES}
        name = {size: f"{{}}/{element}/{size}" for size in SIZES}
        unknowns = {
            size: results.least(file[size], name[size].format("order"), "unknowns")
            for size in SIZES
        }

        def row(label: str, values: dict, scale: float = 1.0):
            growth = slope([(unknowns[size], values[size]) for size in SIZES])
            cells = [figure(scale * values[size]) for size in SIZES]
            return [label, *cells, "-" if math.isnan(growth) else f"{growth:.2f}"]

        def counter(part: str, key: str) -> dict:
            return {s: results.least(file[s], name[s].format(part), key) for s in SIZES}

        print(f"## Parts, {element.replace('_', '-')} elements, CPU ms\n")
        rows = [
            row(part, {s: results.seconds(file[s], name[s].format(part)) for s in SIZES}, 1e3)
            for part in [*PARTS, "factorise_with_eigen"]
        ]
        rows.append(row("Newton iterations, cracked", counter("newton_cracked", "steps")))
        rows.append(row("factor, GFlop", counter("factorise", "factor_flops"), 1e-9))
        rows.append(row("factor, MB", counter("factorise", "factor_bytes"), 1e-6))
        rows.append(row("matrix, MB", counter("assemble", "matrix_bytes"), 1e-6))
        rows.append(row("peak of the process, MB", counter("peak_memory", "peak_bytes"), 1e-6))
        table(["", *(figure(unknowns[s]) for s in SIZES), "slope"], rows)


def limits_table(results: Results) -> None:
    limits = [key for key in results.context if key.startswith("limits_")]
    dgemm = max(results.most(key, "dgemm", "flops") for key in limits)
    triad = max(results.most(key, "triad", "bytes") for key in limits)
    print(f"## Against the machine: dgemm {dgemm * 1e-9:.1f} GFlop/s, triad {triad * 1e-9:.1f} GB/s\n")
    rows = []
    for element in ELEMENTS:
        for size in SIZES:
            file, name = f"parts_{element}_{size}", f"{{}}/{element}/{size}"
            factorise = results.seconds(file, name.format("factorise"))
            if math.isnan(factorise):
                continue
            rate = results.least(file, name.format("factorise"), "factor_flops") / factorise
            assemble = results.seconds(file, name.format("assemble"))
            writing = results.least(file, name.format("assemble"), "matrix_bytes") / triad
            streaming = results.least(file, name.format("assemble"), "least_traffic") / triad
            solve = results.seconds(file, name.format("solve"))
            reading = 2 * results.least(file, name.format("factorise"), "factor_bytes") / triad
            rows.append([
                element.replace("_", "-"), size, f"{rate * 1e-9:.1f}", f"{rate / dgemm:.0%}",
                f"{assemble / writing:.0f}", f"{assemble / streaming:.1f}", f"{solve / reading:.1f}",
            ])  # fmt: skip
    table(
        ["element", "unknowns", "factorise GFlop/s", "of dgemm", "assemble : write matrix",
         "assemble : stream its data", "solve : read factor twice"], rows,
    )  # fmt: skip


def peer_table(results: Results) -> None:
    if "peer" not in results.context:
        return
    print("## The same problem in deal.II with UMFPACK, 4-node elements, CPU ms\n")
    parts = ["set_up", "assembly", "factorisation", "solution"]
    rows = []
    for size in SIZES:
        times = {
            side: [results.least("peer", f"{side}/four_node/{size}", part) for part in parts]
            for side in ["here", "dealii"]
        }
        if math.isnan(times["here"][0]):
            continue
        for side, label in [("here", "Deadshore"), ("dealii", "deal.II")]:
            t = times[side]
            rows.append([size, label, *(figure(1e3 * x) for x in t), figure(1e3 * sum(t[1:])), figure(1e3 * sum(t))])
        ratio = [b / a for a, b in zip(times["here"], times["dealii"])]
        after = sum(times["dealii"][1:]) / sum(times["here"][1:])
        whole = sum(times["dealii"]) / sum(times["here"])
        apart = results.least("peer", f"here/four_node/{size}", "reaction_difference")
        rows.append([size, f"ratio (reactions differ by {apart:.0e})", *(f"{x:.1f}" for x in ratio), f"**{after:.1f}**", f"**{whole:.1f}**"])
    table(["unknowns", "", *(part.replace("_", " ") for part in parts), "assembly to solution", "all"], rows)


def blas_table(results: Results) -> None:
    print("## BLAS, same binary, 4-node elements\n")
    rows = []
    for file in ["blas_in_use", "blas_reference"]:
        if file not in results.context:
            continue
        cells = [results.context[file].get("blas", "?"),
                 f"{results.most(file, 'dgemm', 'flops') * 1e-9:.1f}"]  # fmt: skip
        for size in ["50k", "200k"]:
            for part in ["factorise", "solve"]:
                cells.append(figure(1e3 * results.seconds(file, f"{part}/four_node/{size}")))
        rows.append(cells)
    table(["BLAS", "dgemm GFlop/s", "factorise 50k, ms", "solve 50k", "factorise 200k", "solve 200k"], rows)


def command_tables(results: Results) -> None:
    print("## Whole command, CPU s of all threads\n")
    rows = []
    for job in ["garden_wall", "kitchen_wall"]:
        name = f"whole_command/{job}"
        reading, analysis, writing = (
            results.least("command", name, key) for key in ["reading", "analysis", "writing"]
        )
        outside = (reading + writing) / (reading + analysis + writing)
        rows.append([job, figure(reading), figure(analysis), figure(writing), f"{outside:.0%}"])
    table(["job", "reading", "analysis", "figures, note, VTK", "outside the analysis"], rows)

    print("## Stages of kitchen_wall, CPU s (iterations)\n")
    name = "stages/kitchen_wall"
    runs = results.runs.get(("command", name), [])
    labels = sorted({key.split(" | ")[0] for run in runs for key in run if " | " in key})
    rows = []
    for label in labels:
        cells = [label]
        for model in ["uncracked", "cracked"]:
            seconds = results.least("command", name, f"{label} | {model} s")
            steps = results.least("command", name, f"{label} | {model} iterations")
            cells.append(f"{figure(seconds)} ({steps:.0f})")
        rows.append(cells)
    table(["stage", "uncracked", "cracked"], rows)


def main() -> None:
    results = Results(pathlib.Path(sys.argv[1]))
    loads = [load for context in results.context.values() for load in context["load_avg"][:1]]
    dates = sorted(context["date"] for context in results.context.values())
    blas = {context.get("blas", "?") for context in results.context.values()}
    print(f"{dates[0]} to {dates[-1]}; load average {min(loads):.1f} to {max(loads):.1f}; BLAS: {'; '.join(sorted(blas))}\n")
    parts_tables(results)
    limits_table(results)
    peer_table(results)
    blas_table(results)
    command_tables(results)


if __name__ == "__main__":
    main()
