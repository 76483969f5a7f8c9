// A small book with an original of each kind, planned without any file: what tests of the scanning plan's
// documents start from.
#pragma once

#include "engine/plan/scan_plan.h"
#include "engine/press/read.h"
#include "tests/support/small_book.h"

#include <map>

namespace stoneproof::test {

/// Files that are there, by the place of their picture in the book.
using Files = std::map<std::size_t, FileAtHand>;

inline ScanPlan plan_of(const Book &book, const Files &files = {}) {
  std::vector<std::optional<FileAtHand>> at_hand(book.pictures.size());
  for (const auto &[picture, file] : files) at_hand[picture] = file;
  return plan_scans(book, built_in_press_sheet(), at_hand);
}

/// Width and height in millimetres; the file is named after the picture.
inline Picture original(const std::string &id, OriginalKind kind, double width, double height) {
  Picture picture = photo(id, id + ".tif");
  picture.original = Original{kind, Size{Length::of_mm(width), Length::of_mm(height)}, false};
  return picture;
}

/// Prints, film and objects of two people and of nobody; what cannot be planned; one that no frame shows.
inline Book plan_book_of_all() {
  Book book = small_book();
  book.contributors = {{"eleni", "Ελένη Καλφάτη", "eleni@example.org", {}},
                       {"zaneta", "Żaneta Wróblak-Śliwińska", "", {}}};
  const auto add = [&](Picture picture, std::optional<std::size_t> owner, std::size_t page, double width,
                       double height) {
    picture.contributor = owner;
    book.pages[page].frames.push_back(frame(picture.id, book.pictures.size(), 0, 0, width, height));
    book.pictures.push_back(std::move(picture));
  };
  add(original("mill", OriginalKind::print, 152.4, 101.6), 0, 0, 152.4, 101.6);    // as large as it is
  add(original("wedding", OriginalKind::print, 152.4, 101.6), 0, 1, 304.8, 203.2); // twice
  add(original("locket", OriginalKind::print, 25.4, 25.4), 0, 0, 254, 254);        // ten times
  add(original("slide", OriginalKind::slide, 36, 24), 0, 0, 152.4, 101.6);
  add(original("watch", OriginalKind::object, 52, 52), 0, 0, 34, 34);
  add(original("letter", OriginalKind::document, 127, 76.2), 0, 0, 127, 76.2);
  add(original("negative", OriginalKind::negative, 36, 24), 1, 1, 914.4, 609.6); // 25.4 times
  add(original("lost", OriginalKind::print, 90, 60), 1, 0, 90, 60);
  book.pictures.back().original->lost = true;
  add(original("unknown", OriginalKind::print, 90, 60), {}, 0, 101.6, 67.7333);
  book.pictures.back().original.reset();
  add(original("cropped", OriginalKind::print, 90, 60), {}, 0, 60, 40);
  book.pages[0].frames.back().fit = CropPixels{{0, 0, 300, 200}};
  book.pictures.push_back(original("spare", OriginalKind::print, 90, 60));
  return book;
}

} // namespace stoneproof::test
