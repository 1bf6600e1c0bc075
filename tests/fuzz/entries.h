#pragma once

#include <string_view>

/// What is fuzzed: bytes in, and either an answer or one of the program's own errors out. Anything
/// else that is thrown, and any answer that contradicts itself (std::logic_error), is a find.
namespace deadshore::fuzz {

/// Reads a job. True where it is sound.
bool read_job(std::string_view bytes);

/// Reads a job and, where it is sound and small, cuts its wall into elements, before the work and
/// after. True where it came to that.
bool mesh_job(std::string_view bytes);

/// Reads a job and, where it is sound and very small, does the whole of it and writes what a run
/// writes in words and numbers. True where it came to that, and the answer could be trusted.
bool analyse_job(std::string_view bytes);

/// Reads tables of members and weights. True where they are sound.
bool read_tables(std::string_view bytes);

}  // namespace deadshore::fuzz
