// A libFuzzer program for one of the entries: DEADSHORE_FUZZ_ENTRY names it. Half the changes are
// libFuzzer's own, half those of tests/fuzz/mutate.h.
#include "tests/fuzz/entries.h"
#include "tests/fuzz/mutate.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  deadshore::fuzz::DEADSHORE_FUZZ_ENTRY({reinterpret_cast<const char*>(data), size});
  return 0;
}

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t most, unsigned seed) {
  if (seed % 2 == 0 || size == 0) return LLVMFuzzerMutate(data, size, most);
  std::mt19937 random(seed);
  const std::string text(reinterpret_cast<const char*>(data), size);
  const std::string changed = deadshore::fuzz::mutated(text, {&text, 1}, random);
  const std::size_t count = std::min(changed.size(), most);
  std::copy_n(changed.begin(), count, reinterpret_cast<char*>(data));
  return count;
}
