#pragma once

#include <stdexcept>

namespace deadshore::mesh {

/// The wall cannot be cut into sound elements; the message says where and what to change.
class GeometryError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace deadshore::mesh
