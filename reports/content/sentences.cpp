// Findings in words. One table row a rule; a row that needs more than figures calls a function. The only ways
// in are the functions of sentences.h; tested in tests/reports/content, which also proves that every rule has
// its row.
#include "reports/content/sentences.h"

#include "engine/measure/jpeg_quality.h"
#include "reports/content/figures.h"
#include "reports/content/rescue_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof::content {

namespace {

using Words = std::string (*)(const Evidence &, const Finding &);

const PlacedFrame *placed_of(const Evidence &evidence, const Finding &finding) {
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.page == finding.page && placed.frame == finding.frame) return &placed;
  return nullptr;
}

std::string use_phrase(Use use) {
  switch (use) {
  case Use::photo: return "a photo";
  case Use::line_art: return "line art";
  case Use::document: return "a document";
  case Use::clipping: return "a clipping";
  }
  return {};
}

std::string fault_words(const Evidence &, const Finding &finding) {
  return finding.fault ? fmt::format("The file cannot be used: {}.", finding.fault->what) : std::string();
}

std::string fault_remedy(const Evidence &, const Finding &finding) {
  return finding.fault ? finding.fault->remedy : std::string();
}

std::string too_few_words(const Evidence &evidence, const Finding &finding) {
  const Use use = evidence.book.pictures[*finding.picture].use;
  const DensityBar &bar = evidence.press.bar(use);
  const std::string bars = finding.grade == Grade::hold
                               ? fmt::format("needs at least {}, better {}", ppi(bar.least), ppi(bar.wanted))
                               : fmt::format("wants {}", ppi(bar.wanted));
  return fmt::format("Prints at {}; {} {}.", figure(finding.measured), use_phrase(use), bars);
}

std::string too_few_remedy(const Evidence &evidence, const Finding &finding) {
  return rescue_words(finding.rescue, placed_of(evidence, finding));
}

std::string lost_words(const Evidence &evidence, const Finding &finding) {
  return too_few_words(evidence, finding) + " The original is lost, so it cannot be scanned again.";
}

std::string stretch_words(const Evidence &evidence, const Finding &finding) {
  const PlacedFrame *placed = placed_of(evidence, finding);
  const bool wider = placed && placed->laid && placed->laid->density_x < placed->laid->density_y;
  return fmt::format("Stretched by {} in {}.", figure(finding.measured), wider ? "width" : "height");
}

/// As the reader names a side: those of a spread by left, right and fold, those of a page from its binding.
std::string_view side_name(const PageSpace &space, PageSide side) {
  if (side == PageSide::fold) return "fold";
  if (space.fold && side == PageSide::left) return "left";
  if (space.fold && side == PageSide::right) return "right";
  return space.name_of(side);
}

/// "top, outside and bottom"
std::string listed(const std::vector<std::string> &names) {
  std::string list;
  for (std::size_t i = 0; i < names.size(); ++i)
    list += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return list;
}

std::string sides_phrase(const Evidence &evidence, const Finding &finding) {
  std::vector<std::string> names;
  for (const PageSide side : finding.sides)
    names.emplace_back(side_name(evidence.spaces[*finding.page], side));
  return "at the " + listed(names);
}

std::string bleed_words(const Evidence &evidence, const Finding &finding) {
  const Length reach = std::get<Length>(finding.measured);
  const std::string sides = sides_phrase(evidence, finding), wanted = figure(finding.wanted);
  if (reach > Length{})
    return fmt::format("Passes the trim by only {} {}; the bleed is {}.", millimetres(reach), sides, wanted);
  if (reach == Length{}) return fmt::format("Stops at the trim {}; the bleed is {}.", sides, wanted);
  return fmt::format("The picture ends {} inside the trim {}, though its frame goes on; the bleed is {}.",
                     millimetres(-reach), sides, wanted);
}

std::string near_trim_words(const Evidence &evidence, const Finding &finding) {
  return fmt::format("Ends {} from the trim {}; the cut may wander by {}.", figure(finding.measured),
                     sides_phrase(evidence, finding), figure(finding.wanted));
}

std::string margin_words(const Evidence &evidence, const Finding &finding) {
  const bool fold =
      std::find(finding.sides.begin(), finding.sides.end(), PageSide::fold) != finding.sides.end();
  return fmt::format("Stands {} from the {} {}; the safe margin is {}.", figure(finding.measured),
                     fold ? "edge" : "trim", sides_phrase(evidence, finding), figure(finding.wanted));
}

std::string margin_remedy(const Evidence &, const Finding &finding) {
  const Length by = std::get<Length>(finding.wanted) - std::get<Length>(finding.measured);
  const std::string move = fmt::format("Move it in by {}", millimetres(by));
  return finding.text ? move + "." : move + ", or, if it may be cut, pull it out to the bleed edge.";
}

std::string gutter_words(const Evidence &evidence, const Finding &finding) {
  const bool spread = evidence.spaces[*finding.page].fold.has_value();
  return spread ? fmt::format("Runs {} across the gutter.", figure(finding.measured))
                : fmt::format("Runs {} past the inner edge of the page.", figure(finding.measured));
}

std::string off_page_words(const Evidence &, const Finding &finding) {
  return finding.text
             ? fmt::format("The text block passes the trim by {}.", figure(finding.measured))
             : std::string("The frame lies wholly off the page; nothing of it is left after the cut.");
}

std::string twice_words(const Evidence &evidence, const Finding &finding) {
  std::vector<std::string> names;
  for (const std::size_t page : finding.also_on) {
    std::string name = page_name(evidence.book.pages[page]);
    name[0] = 'p'; // inside a sentence
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return fmt::format("The same picture stands in {} frames: {}.", figure(finding.measured), listed(names));
}

std::string accepted_words(const Evidence &evidence, const Finding &finding) {
  const Facts &facts = *evidence.pictures[*finding.picture].facts;
  return fmt::format("The file is {} with {} colour; the press sheet does not list both.",
                     word_of(format_words, facts.format), word_of(colour_words, facts.colour));
}

std::string coarse_words(const Evidence &evidence, const Finding &finding) {
  const auto saved = jpeg_quality(*evidence.pictures[*finding.picture].facts->jpeg);
  const QualityBar &bar = evidence.press.jpeg_quality;
  const std::string bars = finding.grade == Grade::hold
                               ? fmt::format("needs at least {}, better {}", bar.least, bar.wanted)
                               : fmt::format("wants {}", bar.wanted);
  return fmt::format("Saved as a JPEG of {}quality {}; the press sheet {}. Fine detail is lost, and smooth "
                     "skies and faces may show blocks.",
                     saved && saved->exact ? "" : "about ", figure(finding.measured), bars);
}

std::string coarse_remedy(const Evidence &evidence, const Finding &finding) {
  const auto &original = evidence.book.pictures[*finding.picture].original;
  if (!original || !original->lost) return {};
  return "Ask for the file as it was before it was saved so small. The original is lost, so without that "
         "file "
         "print the picture small. Saving this file again at a higher quality brings nothing back.";
}

struct Row {
  std::string_view rule;
  std::string_view message; ///< may use {measured} and {wanted}
  std::string_view remedy;  ///< likewise; empty: the rule's own
  Words message_words = nullptr, remedy_words = nullptr;
};

constexpr Row rows[] = {
    {"missing-picture", "", "", fault_words, fault_remedy},
    {"unreadable-picture", "", "", fault_words, fault_remedy},
    {"empty-frame", "No picture is linked to this frame.", ""},
    {"too-few-pixels", "", "", too_few_words, too_few_remedy},
    {"lost-original-too-small", "", "", lost_words, too_few_remedy},
    {"uneven-stretch", "", "", stretch_words},
    {"uncovered-frame", "{measured} of the frame shows no picture.", ""},
    {"short-bleed", "", "", bleed_words},
    {"near-trim", "", "", near_trim_words},
    {"inside-safe-margin", "", "", margin_words, margin_remedy},
    {"off-page", "", "", off_page_words},
    {"across-gutter", "", "", gutter_words},
    {"picture-twice", "", "", twice_words},
    {"coarse-jpeg", "", "", coarse_words, coarse_remedy},
    {"unaccepted-file", "", "", accepted_words},
    {"unused-picture", "The picture is listed, but no frame shows it.", ""},
};

const Row *row_of(std::string_view rule) {
  const auto found =
      std::find_if(std::begin(rows), std::end(rows), [&](const Row &row) { return row.rule == rule; });
  return found == std::end(rows) ? nullptr : found;
}

std::string filled(std::string_view words, const Finding &finding) {
  return fmt::format(fmt::runtime(words), fmt::arg("measured", figure(finding.measured)),
                     fmt::arg("wanted", figure(finding.wanted)));
}

} // namespace

std::string message(const Evidence &evidence, const Finding &finding) {
  const Row *row = row_of(finding.rule);
  if (!row) return std::string(finding.rule);
  return row->message_words ? row->message_words(evidence, finding) : filled(row->message, finding);
}

std::string remedy(const Evidence &evidence, const Finding &finding) {
  const Row *row = row_of(finding.rule);
  if (row && row->remedy_words)
    if (std::string words = row->remedy_words(evidence, finding); !words.empty()) return words;
  const Rule *rule = find_rule(finding.rule);
  return rule ? std::string(rule->remedy) : std::string();
}

std::string page_name(const Page &page) {
  return page.spread ? fmt::format("Pages {}–{}", page.number, page.number + 1)
                     : fmt::format("Page {}", page.number);
}

std::string page_name(const Evidence &evidence, const Finding &finding) {
  return finding.page ? page_name(evidence.book.pages[*finding.page]) : std::string("The book");
}

std::string subject(const Evidence &evidence, const Finding &finding) {
  if (finding.picture) return evidence.book.pictures[*finding.picture].file;
  const Page &page = evidence.book.pages[*finding.page];
  if (finding.frame) return fmt::format("Frame {}", page.frames[*finding.frame].id);
  const TextBlock &text = page.texts[*finding.text];
  return fmt::format("{}: “{}”", text.kind == TextKind::page_number ? "Page number" : "Text", text.text);
}

std::string_view grade_name(Grade grade) {
  switch (grade) {
  case Grade::hold: return "Hold";
  case Grade::query: return "Query";
  case Grade::note: return "Note";
  }
  return {};
}

} // namespace stoneproof::content
