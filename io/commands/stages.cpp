#include "io/commands/commands.h"
#include "io/job/job_reader.h"
#include "io/job/schema_pages.h"
#include "solver/job/usual_stages.h"

#include <fmt/format.h>

#include <memory>
#include <string>

namespace deadshore::io {

namespace {

constexpr const char* own_stages = "# The order of work that the job file gives.\n";
constexpr const char* usual_ones =
    "# The usual order of work, made from the job: what a careful builder would do (common "
    "practice, "
    "no source).\n"
    "# Paste it into the job file and change it to what will be done. Whoever answers for the "
    "works "
    "decides that.\n";
constexpr const char* at_once =
    "# Not followed as it is: [analysis] has sequence = \"at once\"; leave that out.\n";

ExitCode print_stages(const std::string& job_file) {
  const solver::Job job = read_job(job_file);
  fmt::print("{}{}\n{}", job.stages.empty() ? usual_ones : own_stages,
             job.analysis.sequence == solver::Sequence::at_once ? at_once : "",
             stage_text(job, solver::stages_of(job)));
  return ExitCode::done;
}

}  // namespace

void add_stages_command(CLI::App& app, ExitCode& code) {
  CLI::App* command = app.add_subcommand("stages", "Print the order of work, to paste and edit");
  const auto job_file = std::make_shared<std::string>();
  command->add_option("JOB", *job_file, "The job file, TOML")->required();
  command->footer(
      "A stage does, in order: fit, preload or release NEEDLE; remove cut, remove\n"
      "LINTEL, remove pockets; place padstones, place beam, pack beam; tighten or\n"
      "slacken SHORE; load on or load off LOAD. \"fit all\" and the like stand for every\n"
      "one that this was not done to before.");
  command->callback([job_file, &code] { code = print_stages(*job_file); });
}

}  // namespace deadshore::io
