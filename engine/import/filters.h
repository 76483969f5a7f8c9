// The lossless filters of PDF streams (ISO 32000-1, 7.4), each bounded by how much it may give.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace stoneproof::finished {

/// What a filter gave.
struct Filtered {
  std::string bytes;
  bool whole = true; ///< false: the data was broken or gave more than the limit; `bytes` is what came before
  bool beyond_limit = false;
};

Filtered inflated(std::string_view data, std::size_t limit);
/// `early`: codes grow one code early (EarlyChange 1, the default of PDF).
Filtered unpacked_lzw(std::string_view data, bool early, std::size_t limit);
Filtered unpacked_runs(std::string_view data, std::size_t limit);
Filtered from_hex(std::string_view data, std::size_t limit);
Filtered from_ascii85(std::string_view data, std::size_t limit);

/// DecodeParms of Flate and LZW (ISO 32000-1, table 8).
struct Prediction {
  int predictor = 1; ///< 1: none, 2: TIFF's, 10 and up: PNG's
  int colours = 1, bits = 8, columns = 1;
};

/// Undoes the prediction. A last row that is not whole is kept as far as it goes; a prediction that makes no
/// sense leaves the bytes as they are and says not whole.
Filtered unpredicted(std::string bytes, const Prediction &prediction);

} // namespace stoneproof::finished
