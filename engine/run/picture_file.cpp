// Opens one picture file and reads it to its end. The only ways in are inspect and read_whole; tested in
// tests/engine/run.
#include "engine/run/picture_file.h"

#include <fstream>
#include <iterator>

namespace stoneproof {

namespace {

/// When a file was last written; nothing where that cannot be told.
std::optional<std::filesystem::file_time_type> written(const std::filesystem::path &file) {
  std::error_code error;
  const auto time = std::filesystem::last_write_time(file, error);
  return error ? std::nullopt : std::optional(time);
}

/// Decodes a picture as far as is wanted: to its last row where something is to be measured, else only as
/// finely as the small copy needs.
Outcome<PassResult> decode(const std::filesystem::path &file, const Facts &facts, const Wanted &wanted,
                           const PictureLimits &limits, PressTables &tables) {
  if (!wanted.looks.empty()) {
    PassOrder order;
    order.copy = wanted.copy;
    order.patch = wanted.patch;
    order.looks = wanted.looks;
    order.glass = wanted.glass;

    order.press_table = [&](const auto &icc, ProfileSpace space) {
      return tables.table(icc.empty() ? wanted.profile : icc, space);
    };
    return measure_pixels(file, facts, order, limits);
  }
  PassResult result;
  if (!wanted.copy) return result;
  Outcome<SmallCopy> made = read_small_copy(file, facts, *wanted.copy, limits);
  if (!made) return made.fault();
  result.copy = std::move(made).value();
  return result;
}

} // namespace

PictureState inspect(const std::filesystem::path &file, const PictureLimits &limits) {
  PictureState state;
  std::error_code error;
  state.missing = std::filesystem::status(file, error).type() == std::filesystem::file_type::not_found;
  Outcome<Facts> facts = read_facts(file, limits);
  if (facts)
    state.facts = std::move(facts).value();
  else
    state.fault = facts.fault();
  return state;
}

std::vector<std::uint8_t> lend_profile(const std::filesystem::path &icc, PictureState &state) {
  if (!state.facts || state.facts->profile) return {};
  std::ifstream file(icc, std::ios::binary);
  std::vector<std::uint8_t> bytes(std::istreambuf_iterator<char>(file), {});
  state.facts->profile = read_profile(bytes);
  state.facts->tag = ColourTag::profile;
  return state.facts->profile->broken ? std::vector<std::uint8_t>{} : bytes;
}

// The bytes are read twice in a row, the second time from memory.
PassResult read_whole(const std::filesystem::path &file, const Wanted &wanted, const PictureLimits &limits,
                      PictureState &state, PressTables &tables) {
  if (!state.facts) return {};
  const auto before = written(file);
  Outcome<std::string> hash = sha256_of(file);
  if (hash)
    state.sha256 = std::move(hash).value();
  else
    state.fault = hash.fault();
  Outcome<PassResult> decoded = decode(file, *state.facts, wanted, limits, tables);
  if (!decoded) state.fault = decoded.fault();
  if (written(file) != before)
    state.fault =
        Fault{"the file was changed while it was read", file.string(), "Run again when nobody writes to it."};
  return decoded ? std::move(decoded).value() : PassResult{};
}

} // namespace stoneproof
