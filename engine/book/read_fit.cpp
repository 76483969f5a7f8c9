// Reads how a picture sits in its frame. Only way in: read_fit. Tested in
// tests/engine/book/read_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

namespace stoneproof {
namespace {

Fit read_fill(ElementReader &reader) {
  Fill fill;
  fill.focus_x = reader.optional("focus-x", parse_share).value_or(fill.focus_x);
  fill.focus_y = reader.optional("focus-y", parse_share).value_or(fill.focus_y);
  fill.focus_said = reader.has("focus-x") || reader.has("focus-y");
  return fill;
}

Fit read_crop(ElementReader &reader, const FaultList &faults) {
  const std::size_t before = faults.count();
  const PictureExtent x = reader.required("x", parse_picture_extent);
  const PictureExtent y = reader.required("y", parse_picture_extent);
  const PictureExtent width = reader.required("width", parse_positive_picture_extent);
  const PictureExtent height = reader.required("height", parse_positive_picture_extent);
  if (faults.count() > before)
    return Fill{}; // what a faulty value stands for is no ground for further faults
  const auto mixed = [&](const PictureExtent &other) { return other.pixels != width.pixels; };
  if (mixed(x) || mixed(y) || mixed(height)) {
    reader.fault(reader.element().place, "the crop mixes per cent and pixels",
                 "Write all four in the same unit.");
    return Fill{};
  }
  if (width.pixels) return CropPixels{{x.value, y.value, width.value, height.value}};
  constexpr double whole = 1 + 1e-9; // 33.3% + 66.7% may come out a hair above 1 in binary fractions
  if (x.value + width.value > whole || y.value + height.value > whole)
    reader.fault(reader.element().place, "the crop reaches beyond 100% of the picture",
                 "Make x + width and y + height at most 100%.");
  return CropShare{x.value, y.value, width.value, height.value};
}

Fit read_one(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  if (element.name == "fill") return read_fill(reader);
  if (element.name == "crop") return read_crop(reader, faults);
  if (element.name == "picture-at") return PictureAt{read_rect(reader)};
  return Inside{};
}

} // namespace

Fit read_fit(ElementReader &frame, FaultList &faults) {
  const auto fits = frame.all({"fill", "inside", "crop", "picture-at"});
  if (fits.empty()) return Fill{};
  for (std::size_t i = 1; i < fits.size(); ++i)
    frame.fault(fits[i]->place, "a picture sits in its frame in one way only",
                "Keep one of <fill>, <inside>, <crop> and <picture-at>.");
  return read_one(*fits.front(), faults);
}

} // namespace stoneproof
