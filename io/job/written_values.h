#pragma once

#include "io/job/job_table.h"

namespace deadshore::io {

/// Reads every key that a table and the tables in it have, also those that the rest of the job
/// makes needless (the stiffness of packing 0 mm thick): what is written is due to make sense.
/// \throws InputError for the first that is not what the schema asks for
void check_written_values(const JobTable& table, const SchemaTable& schema);

}  // namespace deadshore::io
