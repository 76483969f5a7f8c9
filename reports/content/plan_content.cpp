// The scanning plan in words: piles, people, totals. The only way in is plan_content; tested in
// tests/reports/content/plan_content.test.cpp.
#include "reports/content/plan_content.h"

#include "reports/content/figures.h"
#include "reports/content/plan_words.h"
#include "reports/content/proof_content.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace stoneproof::content {

namespace {

using Pictures = std::vector<const PlannedPicture *>;

/// Originals by what is done with them.
struct Totals {
  std::size_t flatbed = 0, film = 0, camera = 0, ready = 0, lost = 0, unreckoned = 0;
  std::uint64_t bytes = 0;

  std::size_t scans() const { return flatbed + film + camera; }
};

Totals totals_of(const Pictures &pictures) {
  Totals totals;
  for (const PlannedPicture *planned : pictures) {
    if (planned->scan) {
      totals.flatbed += planned->way == ScanWay::flatbed;
      totals.film += planned->way == ScanWay::film;
      totals.camera += planned->way == ScanWay::camera;
      totals.bytes += planned->scan->bytes;
    }
    totals.ready += planned->state == ScanState::at_hand;
    totals.lost += planned->state == ScanState::lost;
    totals.unreckoned += planned->state == ScanState::no_size || planned->state == ScanState::no_crop;
  }
  return totals;
}

/// "38 on a flatbed scanner, 6 of film, 3 with a camera"; empty where nothing is scanned.
std::string ways_phrase(const Totals &totals) {
  std::string words;
  const auto add = [&](std::size_t n, std::string_view way) {
    if (n > 0) words += fmt::format("{}{} {}", words.empty() ? "" : ", ", n, way);
  };
  add(totals.flatbed, "on a flatbed scanner");
  add(totals.film, "of film");
  add(totals.camera, "with a camera");
  return words;
}

std::string counts_words(const Totals &totals) {
  std::string words = ways_phrase(totals);
  if (!words.empty()) words += ".";
  const auto add = [&](std::size_t n, std::string_view one, std::string_view many) {
    if (n > 0) words += fmt::format("{}{} {}.", words.empty() ? "" : " ", n, n == 1 ? one : many);
  };
  add(totals.ready, "has a file with pixels enough", "have files with pixels enough");
  add(totals.unreckoned, "cannot be reckoned yet", "cannot be reckoned yet");
  add(totals.lost, "is lost and lacks a file that is good enough",
      "are lost and lack files that are good enough");
  return words;
}

std::string verdict_words(const Totals &totals) {
  if (totals.scans() > 0)
    return fmt::format("{} to scan or photograph: about {} of files.",
                       count(totals.scans(), "original", "originals"), file_size(totals.bytes));
  return totals.unreckoned + totals.lost > 0 ? "No scan can be planned yet." : "Nothing is left to scan.";
}

std::string_view device_name(const PlannedPicture &planned) {
  if (!planned.scan) return "To be measured first";
  switch (planned.way) {
  case ScanWay::flatbed: return "Flatbed scanner";
  case ScanWay::film: return "Film scanner";
  case ScanWay::camera: return "Camera";
  }
  return {};
}

/// What cannot be planned comes last.
auto pile_key(const PlannedPicture &planned) {
  const bool camera = planned.way == ScanWay::camera;
  const int setting = planned.scan && !camera ? *planned.scan->setting : 0;
  return std::tuple(!planned.scan, planned.scan ? planned.way : ScanWay::flatbed, setting);
}

PlanPile pile_of(const Book &book, const PressSheet &press, const Pictures &pictures) {
  const PlannedPicture &first = *pictures.front();
  const Totals totals = totals_of(pictures);
  PlanPile pile;
  pile.device = device_name(first);
  if (first.scan && first.way != ScanWay::camera) pile.setting = fmt::format("{} ppi", *first.scan->setting);
  pile.amount = count(pictures.size(), "original", "originals");
  if (totals.bytes > 0) pile.amount += ", " + file_size(totals.bytes);
  pile.how = pile_words(book, press, pictures);
  for (const PlannedPicture *planned : pictures) pile.rows.push_back(plan_row(book, *planned));
  return pile;
}

/// The pictures of one person that need something done, by setting; in each pile as the book lists them.
std::vector<PlanPile> piles_of(const Book &book, const PressSheet &press, Pictures pictures) {
  std::erase_if(pictures, [](const PlannedPicture *planned) { return !is_in_pile(*planned); });
  std::stable_sort(pictures.begin(), pictures.end(), [](const PlannedPicture *a, const PlannedPicture *b) {
    return pile_key(*a) < pile_key(*b);
  });
  std::vector<PlanPile> piles;
  for (auto first = pictures.begin(); first != pictures.end();) {
    const auto last = std::find_if(first, pictures.end(), [&](const PlannedPicture *planned) {
      return pile_key(*planned) != pile_key(**first);
    });
    piles.push_back(pile_of(book, press, {first, last}));
    first = last;
  }
  return piles;
}

/// "a.jpg, b.tif and 12 more"
std::string file_list(const Book &book, const Pictures &pictures) {
  constexpr std::size_t most = 40; // named; more would fill the page
  std::string list;
  for (std::size_t i = 0; i < pictures.size() && i < most; ++i)
    list += fmt::format("{}{}", i == 0 ? "" : ", ", book.pictures[pictures[i]->picture].file);
  if (pictures.size() > most) list += fmt::format(" and {} more", pictures.size() - most);
  return list;
}

Pictures in_state(const Pictures &pictures, ScanState state) {
  Pictures found;
  std::copy_if(pictures.begin(), pictures.end(), std::back_inserter(found),
               [&](const PlannedPicture *planned) { return planned->state == state; });
  return found;
}

PersonPlan person_plan(const Book &book, const PressSheet &press, std::string name, std::string contact,
                       const Pictures &pictures) {
  const Totals totals = totals_of(pictures);
  PersonPlan person{std::move(name), std::move(contact), {}, {}, piles_of(book, press, pictures), {}};
  if (totals.scans() > 0)
    person.summary = fmt::format("{}: {}; about {} of files.", count(totals.scans(), "original", "originals"),
                                 ways_phrase(totals), file_size(totals.bytes));
  if (const Pictures ready = in_state(pictures, ScanState::at_hand); !ready.empty())
    person.nothing_to_do = fmt::format(
        "Nothing to do for {}, {} there with pixels enough: {}.", count(ready.size(), "picture", "pictures"),
        ready.size() == 1 ? "whose file is" : "whose files are", file_list(book, ready));
  return person;
}

PersonLine person_line(std::string name, const Pictures &pictures) {
  const Totals totals = totals_of(pictures);
  const auto number = [](std::size_t n) { return n > 0 ? fmt::format("{}", n) : std::string("–"); };
  return {std::move(name),
          number(totals.flatbed),
          number(totals.film),
          number(totals.camera),
          number(totals.unreckoned + totals.lost),
          number(totals.ready),
          totals.bytes > 0 ? file_size(totals.bytes) : "–"};
}

/// What a film scanner must do for all the film of the book.
std::string film_words(const Book &book, const Pictures &pictures) {
  std::size_t images = 0, small = 0;
  int highest = 0;
  Size largest;
  for (const PlannedPicture *planned : pictures) {
    if (!planned->scan || planned->way != ScanWay::film) continue;
    const Size image = *book.pictures[planned->picture].original->size;
    ++images;
    small += film_size(image) == FilmSize::small;
    highest = std::max(highest, *planned->scan->setting);
    if (largest.width.in() * largest.height.in() < image.width.in() * image.height.in()) largest = image;
  }
  if (images == 0) return {};
  const std::string to_scan =
      images == 1
          ? fmt::format("One image of film is to be scanned{}.", small == 1 ? "; it is 35 mm or smaller" : "")
          : fmt::format("{} images of film are to be scanned, {} of them 35 mm or smaller.", images,
                        small == 0 ? "none" : fmt::format("{}", small));
  return fmt::format("{} The scanner must truly resolve up to {} ppi and take images up to {}. Sizes are "
                     "those of the image, without its mount.",
                     to_scan, highest, size(largest));
}

/// Adds a person to the table, and to the piles where there is something to read.
void add_person(PlanContent &content, const Book &book, const PressSheet &press, const std::string &name,
                const std::string &contact, const Pictures &pictures) {
  if (pictures.empty()) return;
  content.table.push_back(person_line(name, pictures));
  PersonPlan person = person_plan(book, press, name, contact, pictures);
  person.line = content.table.size() - 1;
  if (!person.piles.empty()) content.people.push_back(std::move(person));
}

} // namespace

PlanContent plan_content(const Book &book, const PressSheet &press, const ScanPlan &plan) {
  Pictures all, unnamed;
  std::vector<Pictures> of_person(book.contributors.size());
  PlanContent content;
  for (const PlannedPicture &planned : plan) {
    all.push_back(&planned);
    const auto &contributor = book.pictures[planned.picture].contributor;
    if (planned.state != ScanState::not_shown)
      (contributor ? of_person[*contributor] : unnamed).push_back(&planned);
    for (PlanTrouble &trouble : plan_troubles(book, planned)) content.troubles.push_back(std::move(trouble));
  }
  const Totals totals = totals_of(all);
  content.title = book.title;
  content.job = "What to scan, at which setting, for the sizes at which the book prints it. Reckoned from "
                "the originals and the frames of the description.";
  content.verdict = verdict_words(totals);
  content.counts = counts_words(totals);
  if (totals.scans() > 0)
    content.sizes = "Sizes are those of TIFF files without compression, 8 bits a channel; 1 MB is a million "
                    "bytes. Saved as a JPEG of high quality a photograph usually takes a twentieth to a "
                    "fifth of that, with grain and dust more (practice, no promise).";
  content.film = film_words(book, all);
  content.press = press_line(press, "Reckoned by");
  if (const Pictures unused = in_state(all, ScanState::not_shown); !unused.empty())
    content.unused = fmt::format("Shown in no frame, so not planned: {}.", file_list(book, unused));
  for (std::size_t i = 0; i < of_person.size(); ++i)
    add_person(content, book, press, book.contributors[i].name, book.contributors[i].contact, of_person[i]);
  add_person(content, book, press, "No owner named", "", unnamed);
  content.advice = scanning_advice();
  return content;
}

} // namespace stoneproof::content
