#include "io/commands/commands.h"
#include "io/job/job_reader.h"
#include "solver/job/usual_stages.h"

#include <fmt/format.h>

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

namespace deadshore::io {

namespace {

std::string counted(std::size_t count, std::string_view name) {
  return fmt::format("{} {}{}", count, name, count == 1 ? "" : "s");
}

/// How the work is followed: "at once", "9 usual stages", "5 stages".
std::string in_words(const solver::Job& job) {
  if (job.analysis.sequence == solver::Sequence::at_once) return "at once";
  return counted(solver::stages_of(job).size(), job.stages.empty() ? "usual stage" : "stage");
}

ExitCode check(const std::string& job_file) {
  const solver::Job job = read_job(job_file);
  fmt::print("{}: sound ({}, {}, {}, {}, {})\n", job_file, counted(job.needles.size(), "needle"),
             counted(job.wall.openings.size(), "opening"), counted(job.lintels.size(), "lintel"),
             counted(job.line_loads.size() + job.point_loads.size(), "load"), in_words(job));
  return ExitCode::done;
}

}  // namespace

void add_check_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("check", "Read a job and say whether it makes sense");
  const auto job_file = std::make_shared<std::string>();
  command->add_option("JOB", *job_file, "The job file, TOML")->required();
  command->callback([job_file, &code] { code = check(*job_file); });
}

}  // namespace deadshore::io
