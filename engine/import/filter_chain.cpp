// The filters of a stream, one after the other, up to that of a picture. The only way in is decoded; tested
// in tests/engine/import/pdf_file.test.cpp.
#include "engine/import/filters.h"
#include "engine/import/pdf_file.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

/// More filters than any program chains; each may multiply the work.
constexpr std::size_t most_filters = 8;

Prediction prediction_of(const Object &parameters) {
  Prediction prediction;
  prediction.predictor = parameters["Predictor"].whole_or(1, 0, 15);
  prediction.colours = parameters["Colors"].whole_or(1, -1, 1000);
  prediction.bits = parameters["BitsPerComponent"].whole_or(8, -1, 1000);
  prediction.columns = parameters["Columns"].whole_or(1, -1, 1'000'000'000);
  return prediction;
}

/// None: it is no lossless filter.
std::optional<Filtered> filtered(const std::string &filter, const std::string &bytes,
                                 const Object &parameters, std::size_t limit) {
  const auto with_prediction = [&](Filtered step) {
    Filtered plain = unpredicted(std::move(step.bytes), prediction_of(parameters));
    return Filtered{std::move(plain.bytes), step.whole && plain.whole, step.beyond_limit};
  };
  if (filter == "FlateDecode" || filter == "Fl") return with_prediction(inflated(bytes, limit));
  if (filter == "LZWDecode" || filter == "LZW")
    return with_prediction(unpacked_lzw(bytes, parameters["EarlyChange"].number_or(1) != 0, limit));
  if (filter == "RunLengthDecode" || filter == "RL") return unpacked_runs(bytes, limit);
  if (filter == "ASCIIHexDecode" || filter == "AHx") return from_hex(bytes, limit);
  if (filter == "ASCII85Decode" || filter == "A85") return from_ascii85(bytes, limit);
  if (filter == "Crypt") return Filtered{bytes, true, false};
  return std::nullopt;
}

std::string full_name(const std::string &filter) {
  return filter == "DCT" ? "DCTDecode" : filter == "CCF" ? "CCITTFaxDecode" : filter;
}

} // namespace

Decoded decoded(std::string bytes, const Object &filters, const Object &parameters, std::size_t limit) {
  Decoded decoded{std::move(bytes), {}, {}, true};
  const std::size_t count = filters.is_array() ? filters.size() : filters ? 1 : 0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string filter = (filters.is_array() ? filters.at(i) : filters).name();
    const Object own = parameters.is_array() ? parameters.at(i) : i == 0 ? parameters : Object();
    if (i >= most_filters) return decoded.whole = false, decoded;
    auto step = filtered(filter, decoded.bytes, own, limit);
    if (!step) {
      decoded.codec = full_name(filter);
      decoded.parameters = own;
      decoded.whole = decoded.whole && i + 1 == count;
      return decoded;
    }
    decoded.bytes = std::move(step->bytes);
    decoded.whole = decoded.whole && step->whole;
    decoded.beyond_limit = decoded.beyond_limit || step->beyond_limit;
  }
  return decoded;
}

} // namespace stoneproof::finished
