// Findings of one picture -> the one thing to do. The only way in is letter_asks; tested in
// tests/reports/content/letter_asks.test.cpp.
#include "reports/content/letter_asks.h"

#include "engine/plan/scan_plan.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace stoneproof::content {

namespace {

/// What mends a fault.
enum class Cure { file, file_again, better_picture, first_file, own_file, other_format };

struct RuleCure {
  std::string_view rule;
  Cure cure;
};

/// The faults that a contributor can mend, in the order in which one of equal grade tells why. Left to the
/// book maker: layout, profiles and inks; a picture that is flat, since the original may have faded; and a
/// strip of the scanner's bed, which a crop hides.
constexpr std::array cures = {
    RuleCure{"missing-picture", Cure::file},
    RuleCure{"unreadable-picture", Cure::file_again},
    RuleCure{"nearly-blank", Cure::file_again},
    RuleCure{"too-few-pixels", Cure::better_picture},
    RuleCure{"lost-original-too-small", Cure::better_picture},
    RuleCure{"enlarged-in-software", Cure::better_picture},
    RuleCure{"saved-before", Cure::better_picture},
    RuleCure{"coarse-jpeg", Cure::better_picture},
    RuleCure{"printed-screen", Cure::better_picture},
    RuleCure{"clipped-highlights", Cure::better_picture},
    RuleCure{"clipped-shadows", Cure::better_picture},
    RuleCure{"combed-tones", Cure::better_picture},
    RuleCure{"soft-detail", Cure::better_picture},
    RuleCure{"tilted-original", Cure::better_picture},
    RuleCure{"dirty-glass", Cure::better_picture},
    RuleCure{"screenshot", Cure::first_file},
    RuleCure{"several-pictures", Cure::own_file},
    RuleCure{"unaccepted-file", Cure::other_format},
};

struct Need {
  Grade grade = Grade::note;
  std::size_t place = 0; ///< in `cures`
  const Finding *finding = nullptr;

  Cure cure() const { return cures[place].cure; }
  auto order() const { return std::tuple(grade, place); }
};
using Needs = std::vector<Need>;

std::optional<Need> need_of(const Finding &finding) {
  if (finding.grade == Grade::note) return std::nullopt;
  const auto found = std::find_if(cures.begin(), cures.end(),
                                  [&](const RuleCure &each) { return each.rule == finding.rule; });
  if (found == cures.end()) return std::nullopt;
  return Need{finding.grade, static_cast<std::size_t>(found - cures.begin()), &finding};
}

/// Printed dots go only where the scan is fine enough to see them (engine/rules/printed_screen.cpp).
constexpr int least_for_dots = 600;

bool is_lost(const Picture &picture) { return picture.original && picture.original->lost; }

/// How a better picture file comes about.
Ask better_picture(const Picture &picture, const PressSheet &press, const std::optional<int> &setting) {
  if (!picture.original) return Ask::first_file;
  if (picture.original->lost) return Ask::find_better;
  const OriginalKind kind = picture.original->kind;
  if (kind == OriginalKind::object) return Ask::photograph;
  if (!setting) return Ask::measure;
  if (kind == OriginalKind::slide || kind == OriginalKind::negative) return Ask::scan_film;
  return *setting > press.flatbed_limit.ppi() ? Ask::scan_by_service : Ask::scan;
}

std::optional<int> setting_of(const PlannedPicture &planned, const PressSheet &press, const Needs &needs) {
  if (!planned.hardest) return std::nullopt;
  const double needed = *planned.frames[*planned.hardest].needed_ppi * (1 - press.density_tolerance);
  const int highest = scanner_steps[std::size(scanner_steps) - 1];
  const int setting = scanner_step(needed).value_or(highest);
  const bool dots = std::any_of(needs.begin(), needs.end(),
                                [](const Need &need) { return need.finding->rule == "printed-screen"; });
  return dots ? std::max(setting, least_for_dots) : setting;
}

Ask ask_of(Cure cure, Ask better) {
  switch (cure) {
  case Cure::file: return Ask::send_file;
  case Cure::file_again: return Ask::send_again;
  case Cure::better_picture: return better;
  case Cure::first_file: return Ask::first_file;
  case Cure::own_file: return Ask::own_file;
  case Cure::other_format: return Ask::save_as_tiff;
  }
  return better;
}

/// The need that decides what is asked: a file that cannot be used at all comes first, then what a new
/// picture mends, then the gravest. `needs` is sorted and not empty.
const Need &decisive(const Needs &needs) {
  for (const auto cure : {Cure::file, Cure::file_again, Cure::better_picture})
    for (const Need &need : needs)
      if (need.cure() == cure) return need;
  return needs.front();
}

std::optional<Size> smallest_print(const Needs &needs) {
  std::optional<Size> smallest;
  for (const Need &need : needs)
    if (const auto &size = need.finding->rescue.print_no_larger)
      if (!smallest || size->width.in() * size->height.in() < smallest->width.in() * smallest->height.in())
        smallest = size;
  return smallest;
}

PictureAsk ask_for(const Evidence &evidence, const PlannedPicture &planned, Needs needs) {
  std::stable_sort(needs.begin(), needs.end(),
                   [](const Need &a, const Need &b) { return a.order() < b.order(); });
  const Picture &picture = evidence.book.pictures[planned.picture];
  const Need &decides = decisive(needs);
  PictureAsk ask;
  ask.picture = planned.picture;
  ask.grade = needs.front().grade;
  ask.rule = decides.finding->rule;
  ask.rules = {ask.rule};
  for (const Need &need : needs)
    if (need.finding->rule != ask.rule) ask.rules.push_back(need.finding->rule);
  if (!is_lost(picture)) ask.setting = setting_of(planned, evidence.press, needs);
  if (ask.setting) ask.pixels = scanned_pixels(*picture.original->size, planned.at_hand, *ask.setting);
  ask.ask = ask_of(decides.cure(), better_picture(picture, evidence.press, ask.setting));
  if (ask.ask == Ask::photograph) {
    ask.setting.reset();
    ask.pixels = planned.scan ? std::optional(planned.scan->pixels) : std::nullopt;
  }
  ask.no_larger = smallest_print(needs);
  for (const FrameNeed &frame : planned.frames) {
    ask.frames.push_back({frame.page, frame.frame});
    if (ask.printed.width.in() * ask.printed.height.in() <
        frame.printed.width.in() * frame.printed.height.in())
      ask.printed = frame.printed;
  }
  return ask;
}

/// As far as the files at hand tell how large they are.
ScanPlan settings(const Evidence &evidence) {
  std::vector<std::optional<FileAtHand>> at_hand(evidence.pictures.size());
  for (std::size_t i = 0; i < at_hand.size(); ++i)
    if (const auto &facts = evidence.pictures[i].facts)
      at_hand[i] = FileAtHand{facts->size, facts->colour == ColourModel::bilevel};
  return plan_scans(evidence.book, evidence.press, at_hand);
}

/// The pictures of a finding about a glass that can be scanned again and that sure dirt shows in, each once.
/// What can only be retouched is the book maker's business.
std::vector<std::size_t> to_scan_clean(const Evidence &evidence, const Finding &finding, const Glass &glass) {
  std::vector<std::size_t> pictures;
  for (const FrameAt &at : finding.same_picture) {
    const auto &shown = evidence.book.pages[at.page].frames[at.frame].picture;
    if (!shown || std::count(pictures.begin(), pictures.end(), *shown) > 0) continue;
    const auto &original = evidence.book.pictures[*shown].original;
    if (!original || original->lost || original->kind == OriginalKind::object) continue;
    if (std::any_of(glass.spots.begin(), glass.spots.end(), [&](const GlassSpot &spot) {
          return spot.certainty == Certainty::firm &&
                 std::count(spot.carriers.begin(), spot.carriers.end(), *shown) > 0;
        }))
      pictures.push_back(*shown);
  }
  return pictures;
}

/// Tells everybody whose pictures show it of a glass: people share scanners.
void add_glass(const Book &book, const Glass &glass, const std::vector<std::size_t> &pictures,
               std::vector<ContributorAsks> &people) {
  DirtyGlass dirty;
  for (const GlassSpot &spot : glass.spots)
    if (const auto place = glass.place_of(spot); place && spot.certainty == Certainty::firm)
      dirty.spots.push_back({place->x.mm(), place->y.mm(), place->width.mm(), place->height.mm()});
  for (ContributorAsks &person : people) {
    dirty.pictures.clear();
    for (const std::size_t picture : pictures)
      if (book.pictures[picture].contributor == person.contributor) dirty.pictures.push_back(picture);
    if (!dirty.pictures.empty()) person.glasses.push_back(dirty);
  }
}

double area(const PictureAsk &ask) { return ask.printed.width.in() * ask.printed.height.in(); }

void sort_by_print(std::vector<PictureAsk> &pictures) {
  std::stable_sort(pictures.begin(), pictures.end(),
                   [](const PictureAsk &a, const PictureAsk &b) { return area(a) > area(b); });
}

} // namespace

Asks letter_asks(const Evidence &evidence, const std::vector<Finding> &findings) {
  Asks asks;
  for (std::size_t i = 0; i < evidence.book.contributors.size(); ++i) asks.people.push_back({i, {}, {}});
  std::vector<Needs> needs(evidence.book.pictures.size());
  for (const Finding &finding : findings) {
    const auto need = finding.picture ? need_of(finding) : std::nullopt;
    if (!need) continue;
    if (!finding.glass) {
      needs[*finding.picture].push_back(*need);
      continue;
    }
    const Glass &glass = evidence.glasses[*finding.glass];
    const std::vector<std::size_t> scans = to_scan_clean(evidence, finding, glass);
    for (const std::size_t picture : scans) needs[picture].push_back(*need);
    add_glass(evidence.book, glass, scans, asks.people);
  }
  for (const PlannedPicture &planned : settings(evidence)) {
    if (needs[planned.picture].empty() || planned.frames.empty()) continue;
    const auto &owner = evidence.book.pictures[planned.picture].contributor;
    ContributorAsks &person = owner ? asks.people[*owner] : asks.nobody;
    person.pictures.push_back(ask_for(evidence, planned, std::move(needs[planned.picture])));
  }
  for (ContributorAsks &person : asks.people) sort_by_print(person.pictures);
  sort_by_print(asks.nobody.pictures);
  return asks;
}

} // namespace stoneproof::content
