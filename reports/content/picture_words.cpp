// The book's pictures in words. The only ways in are the functions of picture_words.h; tested in
// tests/reports/content/picture_words.test.cpp.
#include "reports/content/picture_words.h"

#include "engine/placement/usual_prints.h"
#include "engine/rules/detail.h"
#include "reports/content/figures.h"
#include "reports/content/print_words.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <cctype>
#include <iterator>

namespace stoneproof::content {

namespace {

std::string about_words(const Book &book, const Picture &picture) {
  std::string words;
  if (picture.original) {
    words = word_of(original_words, picture.original->kind);
    if (picture.original->size) words += ", " + size(*picture.original->size);
    if (picture.original->lost) words += ", lost";
  }
  if (!picture.contributor) return words;
  return words + (words.empty() ? "" : " · ") + book.contributors[*picture.contributor].name;
}

std::string use_figures(const Evidence &evidence, std::size_t index) {
  const PlacedFrame &placed = evidence.frames[index];
  if (!placed.laid) return "its size is not known";
  if (!placed.laid->visible) return "the frame shows nothing of it";
  std::string words =
      fmt::format("{}, {}", size(placed.laid->visible->size()), ppi(placed.laid->effective()));
  const Shown *shown = evidence.shown_at(index);
  if (!shown || !shown->detail.upsampling.detail.known) return words;
  const Density detail = true_density(placed, *shown);
  // Less is missing than the estimate is worth, as where the facts say that every pixel counts.
  constexpr double every_pixel = 0.9;
  if (detail >= placed.laid->effective() * every_pixel) return words;
  return words + fmt::format(", detail for about {}", ppi(detail));
}

PictureUse use_of_frame(const Evidence &evidence, std::size_t index) {
  const PlacedFrame &placed = evidence.frames[index];
  std::string place = page_name(evidence.page_of(placed));
  if (const std::string &id = evidence.frame_of(placed).id; !id.empty()) place += ", " + id;
  return {std::move(place), use_figures(evidence, index), placed.page, index};
}

/// With the file on disk that it was made from, where one was found.
std::vector<FactRow> facts_of(const Evidence &evidence, std::size_t picture) {
  std::vector<FactRow> rows = file_rows(evidence.pictures[picture], evidence.press);
  if (const Master *master = evidence.master_of(picture))
    rows.insert(rows.begin(), {"Made from", master_fact(*master)});
  return rows;
}

/// Of the whole picture, uncropped. What software has added gives no larger print.
std::string largest_words(const Evidence &evidence, std::size_t picture, const Shown *shown) {
  const auto &facts = evidence.pictures[picture].facts;
  if (!facts) return {};
  PixelSize pixels = facts->size;
  std::string but;
  if (shown && shown->detail.upsampling.certainty == Certainty::firm) {
    const double factor = shown->detail.upsampling.factor.value_or(1);
    pixels = {static_cast<std::int64_t>(static_cast<double>(pixels.width) / factor),
              static_cast<std::int64_t>(static_cast<double>(pixels.height) / factor)};
    but = ", counting its pixels before it was enlarged";
  }
  const DensityBar &bar = evidence.press.bar(evidence.use_of(picture));
  return fmt::format("Uncropped up to {} at {}, at the most {} at {}{}.",
                     size_down(printed_at(bar.wanted, pixels)), ppi(bar.wanted),
                     size_down(printed_at(bar.least, pixels)), ppi(bar.least), but);
}

} // namespace

std::vector<PictureWords> picture_words(const Evidence &evidence) {
  std::vector<PictureWords> all;
  const auto &pictures = evidence.book.pictures;
  for (std::size_t i = 0; i < pictures.size(); ++i)
    all.push_back(
        {i, pictures[i].file, about_words(evidence.book, pictures[i]), facts_of(evidence, i), {}, {}});
  for (std::size_t i = 0; i < evidence.frames.size(); ++i)
    if (const auto &picture = evidence.frames[i].picture)
      all[*picture].uses.push_back(use_of_frame(evidence, i));
  const auto coarsest = coarsest_frames(evidence);
  for (PictureWords &words : all) {
    // What the patch shows.
    const auto &frame = coarsest[words.picture];
    const Shown *shown = frame ? evidence.shown_at(*frame) : nullptr;
    words.largest = largest_words(evidence, words.picture, shown);
    if (!shown) continue;
    const Use use = evidence.use_of(words.picture);
    auto origin = origin_rows(evidence.pictures[words.picture], use, *shown);
    std::move(origin.begin(), origin.end(), std::back_inserter(words.facts));
    words.facts.push_back(tone_row(use, shown->tone, evidence.press));
  }
  return all;
}

std::string patch_words(const Evidence &evidence, const Patch &patch) {
  const PlacedFrame &placed = evidence.frames[patch.frame];
  const Page &page = evidence.page_of(placed);
  std::string where = page.kind == PageKind::cover ? "the cover" : page_name(page);
  where.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(where.front())));
  return fmt::format("{} of {}, {}", size(printed_size(patch, evidence)), where,
                     ppi(placed.laid->effective()));
}

} // namespace stoneproof::content
