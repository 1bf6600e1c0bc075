#include "solver/job/job.h"

namespace deadshore::solver {

const char* to_string(MasonryModel model) {
  switch (model) {
    case MasonryModel::uncracked:
      return "uncracked";
    case MasonryModel::cracked:
      return "cracked";
  }
  return "unknown";
}

}  // namespace deadshore::solver
