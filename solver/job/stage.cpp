#include "solver/job/stage.h"

namespace deadshore::solver {

const char* to_string(Act act) {
  switch (act) {
    case Act::fit:
      return "fit";
    case Act::preload:
      return "preload";
    case Act::release:
      return "release";
    case Act::remove:
      return "remove";
    case Act::place:
      return "place";
    case Act::pack:
      return "pack";
    case Act::tighten:
      return "tighten";
    case Act::slacken:
      return "slacken";
    case Act::load_on:
      return "load on";
    case Act::load_off:
      return "load off";
  }
  return "";
}

std::string in_words(const Operation& operation) {
  return std::string(to_string(operation.act)) + " " + operation.what;
}

}  // namespace deadshore::solver
