#pragma once

#include <random>
#include <span>
#include <string>
#include <string_view>

namespace deadshore::fuzz {

/// `text` with a few things changed, as a hand that slips or means harm would: lines dropped,
/// doubled and swapped, numbers, units and names put in the place of others, pieces of `others`,
/// plain noise. The same for the same state of `random`.
[[nodiscard]] std::string mutated(std::string text, std::span<const std::string> others,
                                  std::mt19937& random);

/// The words that mutations put in, and a fuzzer's dictionary.
[[nodiscard]] std::span<const std::string_view> hostile_words();

}  // namespace deadshore::fuzz
