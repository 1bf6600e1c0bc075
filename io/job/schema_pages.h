#pragma once

#include "io/job/schema.h"
#include "solver/job/job.h"

#include <string>
#include <string_view>
#include <vector>
/// What is written from the schema, for people and for their editors.
namespace deadshore::io {

/// One table of the job file for a terminal of 80 columns: its header, what it is, and for each key
/// its unit or kind, its default, what it means, its range and an example.
[[nodiscard]] std::string reference_of(const SchemaTable& table);

/// The table with this name and those inside it; all tables where it is empty, the file's top where
/// it is "top".
/// \throws std::invalid_argument, with the nearest known name, where there is none
[[nodiscard]] std::string key_reference(std::string_view name);

/// The job file as a JSON schema, draft 2020-12, for editors that complete and check TOML by one.
/// It knows keys, kinds, choices, ranges and how a quantity is written; `deadshore check` knows
/// dimensions and what makes sense together.
[[nodiscard]] std::string job_json_schema();

/// A small invented job with a comment beside each key, to change into one's own: it is accepted,
/// and it runs. Keys, what they mean and what else there is come from the schema.
[[nodiscard]] std::string starter_job();

/// Stages as [[stage]] tables of a job file, with comments on what is done.
[[nodiscard]] std::string stage_text(const solver::Job& job,
                                     const std::vector<solver::Stage>& stages);

}  // namespace deadshore::io
