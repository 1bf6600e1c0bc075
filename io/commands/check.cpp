#include "io/commands/check.h"

#include "io/job_reader.h"

#include <fmt/format.h>

#include <memory>
#include <string>

namespace deadshore::io {

namespace {

ExitCode check(const std::string& job_file) {
  const solver::Job job = read_job(job_file);
  fmt::print("{}: sound ({} needles, {} openings, {} lintels, {} loads)\n", job_file,
             job.needles.size(), job.wall.openings.size(), job.lintels.size(),
             job.line_loads.size() + job.point_loads.size());
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
