// The whole engine: a book and a press sheet in, evidence and findings out.
#pragma once

#include "engine/picture/small_copy.h"
#include "engine/rules/rule.h"
#include "engine/run/patch_order.h"

#include <functional>
#include <optional>
#include <vector>

namespace stoneproof {

struct RunOptions {
  PictureLimits limits;
  int jobs = 0; ///< threads for the picture files; 0: one for each processor
  /// Pixels of the small copies per inch of the printed book page; none: no small copies are made.
  std::optional<Density> copy_density;
  /// Cut a true-size patch out of each picture; none: no patches are made. Only where pixels are measured.
  std::optional<PatchWish> patch;
  /// Decode every pixel of the pictures that frames show, and measure tone and ink; else JPEGs are decoded
  /// only as finely as their small copies need.
  bool measure_pixels = true;
  /// Files on disk among which those are looked for that the book's pictures were made from. Only where
  /// pixels are measured; what is no picture is passed over.
  std::vector<std::filesystem::path> masters;
  /// Called after each picture, and each step of a search for masters, with how many are done of how many;
  /// from any thread, one call at a time.
  std::function<void(std::size_t, std::size_t)> progress;
};

struct Checked {
  Evidence evidence;
  std::vector<Finding> findings; ///< gravest first
  std::vector<std::optional<SmallCopy>>
      copies; ///< one for each of Book::pictures; none: not shown, or unreadable
  std::vector<std::optional<Patch>> patches; ///< likewise
};

/// Never fails: what is wrong with a picture file is a finding.
Checked check_book(Book book, PressSheet press, const RunOptions &options = {});

} // namespace stoneproof
