// Originals, settings and troubles in words. The only ways in are the functions of plan_words.h; tested in
// tests/reports/content/plan_content.test.cpp.
#include "reports/content/plan_words.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace stoneproof::content {

namespace {

std::string_view kind_name(OriginalKind kind) {
  switch (kind) {
  case OriginalKind::print: return "Print";
  case OriginalKind::slide: return "Slide";
  case OriginalKind::negative: return "Negative";
  case OriginalKind::document: return "Document";
  case OriginalKind::clipping: return "Clipping";
  case OriginalKind::object: return "Object";
  }
  return {};
}

std::string original_words_of(const Picture &picture) {
  if (!picture.original) return "Original not told";
  const auto &original = *picture.original;
  const std::string kind(kind_name(original.kind));
  return original.size ? fmt::format("{}, {}", kind, size(*original.size)) : kind + ", size not told";
}

std::string pixel_words(PixelSize pixels) { return fmt::format("{} × {} px", pixels.width, pixels.height); }

std::string frame_place(const Book &book, const FrameNeed &need) {
  const Page &page = book.pages[need.page];
  return fmt::format("{}, frame {}", page_name(page), page.frames[need.frame].id);
}

/// The frame that decides first, then the others in book order; some of many.
std::vector<std::string> use_words_of(const Book &book, const PlannedPicture &planned) {
  constexpr std::size_t most = 4;
  std::vector<const FrameNeed *> needs;
  if (planned.hardest) needs.push_back(&planned.frames[*planned.hardest]);
  for (const FrameNeed &need : planned.frames)
    if (needs.empty() || &need != needs.front()) needs.push_back(&need);
  std::vector<std::string> words;
  for (const FrameNeed *need : needs) {
    if (words.size() == most) {
      words.push_back(fmt::format("and {} more", needs.size() - most));
      break;
    }
    words.push_back(fmt::format("{}: {}", page_name(book.pages[need->page]), size(need->printed)));
  }
  return words;
}

double needed_ppi(const PlannedPicture &planned) { return *planned.frames[*planned.hardest].needed_ppi; }

/// The pixels that the part shown must come out with, where the original's size is not known: the most of all
/// frames.
PixelSize least_pixels(const PlannedPicture &planned) {
  const auto up = [](Pixels pixels) { return static_cast<std::int64_t>(std::ceil(pixels.count - 1e-9)); };
  PixelSize least;
  for (const FrameNeed &need : planned.frames) {
    const PixelSize here{up(planned.wanted * need.printed.width), up(planned.wanted * need.printed.height)};
    if (here.width * here.height > least.width * least.height) least = here;
  }
  return least;
}

std::string larger_print(const FrameNeed &need) {
  return fmt::format("no larger than {} (now {})", size_down(*need.largest), size(need.printed));
}

std::string film_remark(FilmSize film) {
  switch (film) {
  case FilmSize::small: return {};
  case FilmSize::roll: return "Wider than 35 mm film: the scanner must take roll film.";
  case FilmSize::sheet:
    return "Sheet film or a plate: a flatbed with a light in its lid as large as this, or a scanning "
           "service.";
  }
  return {};
}

std::string reach_remark(const PlannedPicture &planned) {
  if (planned.state == ScanState::beyond)
    return fmt::format("Needs {:.0f} ppi, more than any usual scanner gives: the book must print it smaller.",
                       std::ceil(needed_ppi(planned) - 1e-6));
  if (planned.beyond_flatbed && planned.way == ScanWay::flatbed)
    return "More than a usual flatbed resolves: a scanning service.";
  return {};
}

std::string shape_remark(const Picture &picture, const PlannedPicture &planned) {
  const Size original = *picture.original->size;
  if (planned.way == ScanWay::film) return film_remark(film_size(original));
  if (planned.way == ScanWay::flatbed && !fits_glass(original))
    return "Larger than the glass of a usual flatbed: a larger scanner, or a scanning service.";
  if (planned.way == ScanWay::camera && planned.scan->setting)
    return fmt::format("If it lies flat, the scanner does it at {} ppi.", *planned.scan->setting);
  return {};
}

std::string uncounted_remark(const Book &book, const PlannedPicture &planned) {
  for (const FrameNeed &need : planned.frames)
    if (!need.needed_ppi)
      return fmt::format("Not counted: {}, whose crop is told in pixels of a file that is not there.",
                         frame_place(book, need));
  return {};
}

std::string remark_words(const Book &book, const PlannedPicture &planned) {
  const Picture &picture = book.pictures[planned.picture];
  std::vector<std::string> remarks;
  if (planned.scan) {
    remarks = {reach_remark(planned), shape_remark(picture, planned),
               planned.scan->channels == 1 ? "Drawn in black and white: gray is enough." : "",
               uncounted_remark(book, planned)};
  } else if (planned.state == ScanState::no_size) {
    remarks = {"The part shown must come out with at least so many pixels."};
  }
  if (planned.at_hand)
    remarks.push_back(
        fmt::format("A file is there, but its {} are too few.", pixel_words(planned.at_hand->size)));
  std::string words;
  for (const std::string &remark : remarks)
    if (!remark.empty()) words += (words.empty() ? "" : " ") + remark;
  return words;
}

/// What is said of each frame for which the best setting, or the file of a lost original, is not enough.
PlanTrouble trouble_at(const Book &book, const PlannedPicture &planned, const FrameNeed *need) {
  const Picture &picture = book.pictures[planned.picture];
  return {picture.id, owner_name(book, picture), need ? frame_place(book, *need) : std::string(), {}, {}};
}

PlanTrouble reach_trouble(const Book &book, const PlannedPicture &planned, const FrameNeed &need) {
  PlanTrouble trouble = trouble_at(book, planned, &need);
  const Original &original = *book.pictures[planned.picture].original;
  const std::string needs =
      fmt::format("A {} of {} would need {:.0f} ppi", word_of(original_words, original.kind),
                  size(*original.size), std::ceil(*need.needed_ppi - 1e-6));
  if (planned.state == ScanState::beyond) {
    trouble.what = fmt::format("{}; usual scanners end at {} ppi.", needs, planned.limit_ppi);
    trouble.remedy = fmt::format("Print it {}, or choose another picture.", larger_print(need));
  } else {
    trouble.what = fmt::format("{}; a usual flatbed scanner is good for {} ppi.", needs, planned.limit_ppi);
    trouble.remedy = fmt::format("Have it done by a scanning service, or print it {}.", larger_print(need));
  }
  return trouble;
}

PlanTrouble lost_trouble(const Book &book, const PlannedPicture &planned, const FrameNeed &need) {
  PlanTrouble trouble = trouble_at(book, planned, &need);
  if (need.largest) {
    trouble.what = fmt::format("The original is lost, and the {} of the file are too few.",
                               pixel_words(planned.at_hand->size));
    trouble.remedy = fmt::format("Print it {}, or find a larger file or another print.", larger_print(need));
  } else {
    trouble.what = "The original is lost, and there is no file.";
    trouble.remedy = "Ask whether anybody has a file or another print; else choose another picture.";
  }
  return trouble;
}

PlanTrouble unreckoned_trouble(const Book &book, const PlannedPicture &planned) {
  PlanTrouble trouble = trouble_at(book, planned, planned.frames.empty() ? nullptr : &planned.frames.front());
  if (planned.state == ScanState::no_crop) {
    trouble.what = "The crop is told in pixels of a file that is not there.";
    trouble.remedy = "Tell the crop in per cent, or put the file in its place.";
  } else {
    trouble.what = "The book does not tell how large the original is.";
    trouble.remedy = fmt::format(
        "Measure it and put its size into the description. The part shown must come out with at least {}.",
        pixel_words(least_pixels(planned)));
  }
  return trouble;
}

} // namespace

std::string owner_name(const Book &book, const Picture &picture) {
  return picture.contributor ? book.contributors[*picture.contributor].name : std::string();
}

bool is_in_pile(const PlannedPicture &planned) { return planned.scan || planned.state == ScanState::no_size; }

PlanRow plan_row(const Book &book, const PlannedPicture &planned) {
  const Picture &picture = book.pictures[planned.picture];
  PlanRow row{picture.id, picture.file, original_words_of(picture), use_words_of(book, planned), {}, {}, {}};
  const std::string_view least = planned.scan && planned.way != ScanWay::camera ? "" : "at least ";
  if (planned.scan) {
    row.pixels = fmt::format("{}{}", least, pixel_words(planned.scan->pixels));
    row.bytes = file_size(planned.scan->bytes);
  } else if (planned.state == ScanState::no_size) {
    row.pixels = fmt::format("{}{}", least, pixel_words(least_pixels(planned)));
  }
  row.remark = remark_words(book, planned);
  return row;
}

std::vector<PlanTrouble> plan_troubles(const Book &book, const PlannedPicture &planned) {
  std::vector<PlanTrouble> troubles;
  if (planned.state == ScanState::no_size || planned.state == ScanState::no_crop)
    return {unreckoned_trouble(book, planned)};
  for (const FrameNeed &need : planned.frames) {
    if (planned.scan && need.largest) troubles.push_back(reach_trouble(book, planned, need));
    const bool without = !planned.at_hand || need.largest;
    if (planned.state == ScanState::lost && without) troubles.push_back(lost_trouble(book, planned, need));
  }
  return troubles;
}

std::string pile_words(const Book &book, const PressSheet &press,
                       const std::vector<const PlannedPicture *> &pile) {
  // FADGI, Technical Guidelines for Digitizing Cultural Heritage Materials, 2016: the highest grades.
  constexpr int most_of_print = 600, most_of_film = 4000;
  const ScanWay way = pile.front()->way;
  if (!pile.front()->scan) return "The book does not tell their sizes, so no setting can be given yet.";
  if (way == ScanWay::camera)
    return "Straight from the front, in even light. The object itself must cover so many pixels. Send the "
           "camera’s own file, not one from a message.";
  const int setting = *pile.front()->scan->setting;
  const bool paper_photo = std::any_of(pile.begin(), pile.end(), [&](const PlannedPicture *planned) {
    const Picture &picture = book.pictures[planned->picture];
    return picture.original->kind == OriginalKind::print && picture.use == Use::photo;
  });
  if (way == ScanWay::film && setting > most_of_film)
    return "Only a scanner that truly resolves so much, or a service. Above 4000 ppi, the highest grade of "
           "FADGI (2016) for film up to 4 × 5 in, expect more grain than detail.";
  if (way == ScanWay::film && setting > press.flatbed_limit.ppi())
    return fmt::format(
        "A film scanner that truly resolves {} ppi, or a scanning service; a flatbed does not.", setting);
  if (way == ScanWay::film) return "A film scanner, or a flatbed with a light in its lid and a film holder.";
  if (setting > most_of_print && paper_photo)
    return "Photographic prints seldom hold more detail than 600 ppi shows, the highest grade of FADGI "
           "(2016) for them: if there still is a negative, scan that.";
  return {};
}

} // namespace stoneproof::content
