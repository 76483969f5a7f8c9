// Looks for files that are there already, then plans. The only way in is plan_book; tested in
// tests/engine/run/plan_book.test.cpp.
#include "engine/run/plan_book.h"

namespace stoneproof {

ScanPlan plan_book(const Book &book, const PressSheet &press, const PictureLimits &limits) {
  std::vector<std::optional<FileAtHand>> at_hand;
  at_hand.reserve(book.pictures.size());
  for (const Picture &picture : book.pictures) {
    const Outcome<Facts> facts = read_facts(book.path_of(picture), limits);
    at_hand.push_back(
        facts ? std::optional(FileAtHand{facts.value().size, facts.value().colour == ColourModel::bilevel})
              : std::nullopt);
  }
  return plan_scans(book, press, at_hand);
}

} // namespace stoneproof
