#include "io/commands/commands.h"
#include "io/commands/stop_signals.h"
#include "io/commands/summary.h"
#include "io/commands/terminal.h"
#include "io/files/memory_limit.h"
#include "io/files/output_folder.h"
#include "io/job/job_reader.h"
#include "io/results/results_writer.h"
#include "solver/study/analyse.h"
#include "solver/study/verdict.h"

#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <sys/resource.h>
#include <unistd.h>
#include <utility>

namespace deadshore::io {

namespace {

/// Part of a run's time that goes into the analysis, for the progress line.
constexpr double analysis_share = 0.9;

struct RunOptions {
  std::string job_file;
  std::string out;
  bool timings = false;
  bool strict = false;
};

/// One line on stderr that is written over as the work goes on; silent where nobody watches.
class ProgressLine {
 public:
  ProgressLine() : watched_(isatty(STDERR_FILENO) != 0) {}
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  ~ProgressLine() { clear(); }

  void show(std::string_view phase, double fraction) {
    if (!watched_) return;
    std::string line = fmt::format("\r\033[K{:3.0f} %  {}", 100.0 * fraction, fitted(phase, 70));
    if (line == shown_) return;
    std::fputs(line.c_str(), stderr);
    shown_ = std::move(line);
  }
  void clear() const {
    if (watched_) std::fputs("\r\033[K", stderr);
  }

 private:
  bool watched_;
  std::string shown_;
};

class Stopwatch {
 public:
  [[nodiscard]] double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }

 private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

double peak_memory_in_mib() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

std::filesystem::path output_folder(const RunOptions& options) {
  if (!options.out.empty()) return options.out;
  return std::filesystem::path(options.job_file).stem().string() + "-out";
}

ExitCode run(const RunOptions& options) {
  const Stopwatch reading;
  const JobFile file = read_job_file(options.job_file);
  const solver::Job job = parse_job(file.text, options.job_file);
  refuse_what_does_not_fit(job, options.job_file, available_memory());
  const double reading_time = reading.seconds();
  const std::filesystem::path out = output_folder(options);
  FolderReplacement folder(out);
  const StopSignals stops([&folder] { folder.abandon(); });

  ProgressLine progress;
  solver::JobResult result = solver::analyse(job, [&progress](std::string_view phase, double done) {
    progress.show(phase, analysis_share * done);
  });
  result.times.insert(result.times.begin(), {"reading the job", reading_time});

  progress.show("figures and results", analysis_share);
  const Stopwatch writing;
  write_results(result, viz::draw_figures(result), file, folder);
  result.times.push_back({"figures and results", writing.seconds()});
  progress.clear();

  const std::string summary = summary_of(result);
  fmt::print("{}\nresults in {}\n", wants_colour(STDOUT_FILENO) ? coloured(summary) : summary,
             out.string());
  if (options.timings) fmt::print("\n{}", timings_of(result.times, peak_memory_in_mib()));
  return options.strict && !verdict_of(result).holds() ? ExitCode::check_failed : ExitCode::done;
}

}  // namespace

void add_run_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("run", "Analyse a job and write its results");
  const auto options = std::make_shared<RunOptions>();
  command->add_option("JOB", options->job_file, "The job file, TOML")->required();
  command->add_option("-o,--out", options->out, "Folder of the results (default: JOB-out here)");
  command->add_flag("--timings", options->timings, "Print the time of each phase");
  command->add_flag("--strict", options->strict, "Exit 3 where anything fails (see below)");
  command->footer(
      "--strict: where a check fails or is not verified, masonry is loose, load reaches\n"
      "nothing, or the wall does not stand in every stage, without tension too.");
  command->callback([options, &code] { code = run(*options); });
}

}  // namespace deadshore::io
