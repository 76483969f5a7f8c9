// One line for each picture of the plan. The only way in is plan_csv; tested in
// tests/reports/record/plan_csv.test.cpp.
#include "reports/record/plan_csv.h"

#include "reports/record/csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace stoneproof::record {

namespace {

/// The frame that the line tells of: the one that decides, else the first that something is told of, else the
/// first.
const FrameNeed *frame_of(const PlannedPicture &planned) {
  if (planned.frames.empty()) return nullptr;
  if (planned.hardest) return &planned.frames[*planned.hardest];
  const auto told = std::find_if(planned.frames.begin(), planned.frames.end(),
                                 [](const FrameNeed &need) { return need.largest.has_value(); });
  return told == planned.frames.end() ? &planned.frames.front() : &*told;
}

void add_original(CsvRow &line, const Book &book, const Picture &picture) {
  const auto *person = picture.contributor ? &book.contributors[*picture.contributor] : nullptr;
  const auto size = picture.original ? picture.original->size : std::nullopt;
  line.add("picture", picture.id);
  line.add("file", picture.file);
  line.add("contributor", person ? person->id : "");
  line.add("contributor_name", person ? person->name : "");
  line.add("use", std::string(word_of(use_words, picture.use)));
  line.add("original", picture.original ? std::string(word_of(original_words, picture.original->kind)) : "");
  line.add_size("original", size);
}

/// To a hundredth, rounded up, so that no rounding hides a shortfall.
double up_to_hundredth(double ppi) { return std::ceil(ppi * 100 - 1e-6) / 100; }

void add_scan(CsvRow &line, const PlannedPicture &planned) {
  const FrameNeed *frame = frame_of(planned);
  const std::optional<Scan> &scan = planned.scan;
  line.add("state", std::string(word_of(scan_state_words, planned.state)));
  line.add("way", std::string(word_of(scan_way_words, planned.way)));
  line.add_number("wanted_ppi", std::optional(planned.wanted.ppi()));
  line.add("needed_ppi",
           frame && frame->needed_ppi ? fmt::format("{}", up_to_hundredth(*frame->needed_ppi)) : "");
  line.add_number("setting_ppi", scan ? scan->setting : std::nullopt);
  line.add_number("width_px", scan ? std::optional(scan->pixels.width) : std::nullopt);
  line.add_number("height_px", scan ? std::optional(scan->pixels.height) : std::nullopt);
  line.add_number("channels", scan ? std::optional(scan->channels) : std::nullopt);
  line.add_number("bytes", scan ? std::optional(scan->bytes) : std::nullopt);
}

void add_frame(CsvRow &line, const Book &book, const PlannedPicture &planned) {
  const FrameNeed *need = frame_of(planned);
  const Page *page = need ? &book.pages[need->page] : nullptr;
  const auto largest = need ? need->largest : std::nullopt;
  line.add("frames", fmt::format("{}", planned.frames.size()));
  line.add("page", !page ? "" : page->kind == PageKind::cover ? "cover" : fmt::format("{}", page->number));
  line.add("frame", page ? page->frames[need->frame].id : "");
  line.add_size("printed", need ? std::optional(need->printed) : std::nullopt);
  line.add_number("enough_to_ppi",
                  largest && planned.limit_ppi > 0 ? std::optional(planned.limit_ppi) : std::nullopt);
  line.add_size("largest", largest);
}

void add_file(CsvRow &line, const std::optional<FileAtHand> &file) {
  line.add_number("file_width_px", file ? std::optional(file->size.width) : std::nullopt);
  line.add_number("file_height_px", file ? std::optional(file->size.height) : std::nullopt);
}

CsvRow line_of(const Book &book, const PlannedPicture &planned) {
  CsvRow line;
  add_original(line, book, book.pictures[planned.picture]);
  add_scan(line, planned);
  add_frame(line, book, planned);
  add_file(line, planned.at_hand);
  return line;
}

/// The columns by their names, also of a book without pictures.
std::vector<std::string> column_names() {
  Book book;
  book.pictures.emplace_back();
  return line_of(book, PlannedPicture{}).names;
}

} // namespace

std::string plan_csv(const Book &book, const ScanPlan &plan) {
  std::string text = csv_line(column_names());
  for (const PlannedPicture &planned : plan) text += csv_line(line_of(book, planned).values);
  return text;
}

} // namespace stoneproof::record
