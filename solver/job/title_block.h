#pragma once

#include <string>

namespace deadshore::solver {

/// What heads the design note and goes with every copy of it; empty where the job does not say.
/// Text only: nothing is worked out from it.
struct TitleBlock {
  std::string project;  ///< the house or the site
  std::string client;
  std::string reference;  ///< the drawing's or calculation's number
  std::string revision;
  std::string prepared_by;
  std::string checked_by;
  std::string date;  ///< as written: a note is dated by those who sign it, not by the clock
};

}  // namespace deadshore::solver
