// Findings in words. One table row a rule; a row that needs more than figures calls a function. The only ways
// in are the functions of sentences.h; tested in tests/reports/content, which also proves that every rule has
// its row.
#include "reports/content/sentences.h"

#include "engine/measure/jpeg_quality.h"
#include "reports/content/binding_words.h"
#include "reports/content/book_words.h"
#include "reports/content/detail_words.h"
#include "reports/content/figures.h"
#include "reports/content/glass_words.h"
#include "reports/content/layout_words.h"
#include "reports/content/origin_words.h"
#include "reports/content/pixel_words.h"
#include "reports/content/placed_of.h"
#include "reports/content/print_words.h"
#include "reports/content/rescue_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace stoneproof::content {

namespace {

using Words = std::string (*)(const Evidence &, const Finding &);

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
  const Use use = evidence.use_of(*finding.picture);
  const DensityBar &bar = evidence.press.bar(use);
  const std::string bars = finding.grade == Grade::hold
                               ? fmt::format("needs at least {}, better {}", ppi(bar.least), ppi(bar.wanted))
                               : fmt::format("wants {}", ppi(bar.wanted));
  const Density asked = finding.grade == Grade::hold ? bar.least : bar.wanted;
  const std::string reach = figure_beside(finding.measured, asked);
  return fmt::format("{}; {} {}.", reach_words(evidence, finding, reach), use_phrase(use), bars) +
         master_words(evidence, finding);
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

/// What is wanted is rounded up: who keeps to the figure that is shown is not held for its rounding.
std::string wanted_figure(const Finding &finding) {
  const auto *length = std::get_if<Length>(&finding.wanted);
  return length ? millimetres_up(*length) : figure(finding.wanted);
}

/// The figure is that of the worst side.
std::string_view as_little(const Finding &finding) { return finding.sides.size() > 1 ? "as little as " : ""; }

std::string bleed_words(const Evidence &evidence, const Finding &finding) {
  const Length reach = std::get<Length>(finding.measured);
  const bool several = finding.sides.size() > 1;
  const std::string sides = sides_phrase(evidence, finding), wanted = wanted_figure(finding);
  if (reach > layout_rounding)
    return fmt::format("Passes the trim by {}{} {}; the bleed is {}.", several ? "as little as " : "only ",
                       millimetres(reach), sides, wanted);
  if (reach >= -layout_rounding)
    return fmt::format("{} the trim {}; the bleed is {}.", several ? "Comes no further than" : "Stops at",
                       sides, wanted);
  return fmt::format("The picture ends {}{} inside the trim {}, though its frame goes on; the bleed is {}.",
                     several ? "as much as " : "", millimetres(-reach), sides, wanted);
}

std::string near_trim_words(const Evidence &evidence, const Finding &finding) {
  return fmt::format("Ends {}{} from the trim {}; the cut may wander by {}.", as_little(finding),
                     figure(finding.measured), sides_phrase(evidence, finding), wanted_figure(finding));
}

/// At the fold of a spread, or at the bound side of a page: nothing is cut there.
bool at_binding(const Evidence &evidence, const Finding &finding) {
  const PageSpace &space = evidence.spaces[*finding.page];
  return std::any_of(finding.sides.begin(), finding.sides.end(),
                     [&](PageSide side) { return side == PageSide::fold || side == space.bound; });
}

std::string margin_words(const Evidence &evidence, const Finding &finding) {
  const std::string measured = std::string(as_little(finding)) + figure(finding.measured),
                    wanted = wanted_figure(finding);
  const bool swallowed = std::get<Length>(finding.wanted) == evidence.book.binding.gutter_loss;
  const std::string why = at_binding(evidence, finding) && swallowed ? "the binding swallows " + wanted
                                                                     : "the safe margin is " + wanted;
  if (finding.sides == std::vector{PageSide::fold})
    return fmt::format("Stands {} from the fold; {}.", measured, why);
  return fmt::format("Stands {} from the edge {}; {}.", measured, sides_phrase(evidence, finding), why);
}

std::string margin_remedy(const Evidence &evidence, const Finding &finding) {
  const Length by = std::get<Length>(finding.wanted) - std::get<Length>(finding.measured);
  const std::string move =
      fmt::format("Move it in by {}{}", finding.sides.size() > 1 ? "up to " : "", millimetres_up(by));
  if (finding.text || at_binding(evidence, finding)) return move + ".";
  return move + ", or, if it may be cut, pull it out to the bleed edge.";
}

std::string gutter_words(const Evidence &evidence, const Finding &finding) {
  const bool spread = evidence.spaces[*finding.page].fold.has_value();
  return spread ? fmt::format("Runs {} across the gutter.", figure(finding.measured))
                : fmt::format("Runs {} past the inner edge of the page.", figure(finding.measured));
}

std::string gutter_remedy(const Evidence &evidence, const Finding &finding) {
  if (finding.text || !evidence.spaces[*finding.page].fold) return "Move it in until it stands on one page.";
  return {}; // the rule's own
}

std::string off_page_words(const Evidence &, const Finding &finding) {
  return finding.text
             ? fmt::format("The text block passes the trim by {}.", figure(finding.measured))
             : std::string("The frame lies wholly off the page; nothing of it is left after the cut.");
}

std::string twice_words(const Evidence &evidence, const Finding &finding) {
  constexpr std::size_t most = 6; // named; more would fill the page
  std::vector<std::string> frames;
  for (const FrameAt &at : finding.same_picture) {
    if (frames.size() == most) {
      frames.push_back(fmt::format("{} more", finding.same_picture.size() - most));
      break;
    }
    const Page &page = evidence.book.pages[at.page];
    std::string name = page_name(page);
    name[0] = 'p'; // inside a sentence
    frames.push_back(fmt::format("{} ({})", page.frames[at.frame].id, name));
  }
  return fmt::format("The same picture stands in {} frames: {}.", figure(finding.measured), listed(frames));
}

std::string accepted_words(const Evidence &evidence, const Finding &finding) {
  const Facts &facts = *evidence.pictures[*finding.picture].facts;
  const std::string_view format = word_of(format_words, facts.format),
                         colour = word_of(colour_words, facts.colour);
  const bool format_fine = evidence.press.accepts(facts.format);
  if (format_fine) return fmt::format("The press sheet does not accept {} colour.", colour);
  if (evidence.press.accepts(facts.colour))
    return fmt::format("The press sheet does not accept {} files.", format);
  return fmt::format("The press sheet accepts neither {} files nor {} colour.", format, colour);
}

/// The beginning of a text on one line, as much as tells which text it is.
std::string first_words(const TextBlock &text) {
  constexpr std::size_t most = 60; // bytes
  std::string words = text.text.substr(0, most);
  while (words.size() < text.text.size() && !words.empty() && words.back() != ' ') words.pop_back();
  if (words.empty())
    words = text.text.substr(0, most); // one long word; half a character at its end shows as a box
  std::replace(words.begin(), words.end(), '\n', ' ');
  const bool cut = words.size() < text.text.size();
  return fmt::format("{}: “{}{}”", text.kind == TextKind::page_number ? "Page number" : "Text", words,
                     cut ? "…" : "");
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
  std::string_view message; ///< may use {measured} and {wanted}; empty: `message_words` says it
  Words message_words = nullptr, remedy_words = nullptr; ///< no `remedy_words`: the rule's own remedy
};

constexpr Row rows[] = {
    {"page-count-off", "", page_count_words, page_count_remedy},
    {"pages-missing", "", pages_missing_words},
    {"first-page-left",
     "Page 1 stands as a left page; in a bound book it is the front of the first leaf, on the right."},
    {"mixed-trim", "", mixed_trim_words, mixed_trim_remedy},
    {"other-paper", "", other_paper_words},
    {"trim-box-missing", "", trim_box_words},
    {"boxes-amiss", "", boxes_amiss_words},
    {"locked-file", "The PDF is encrypted."},
    {"font-not-embedded", "", font_not_embedded_words},
    {"broken-content", "", broken_content_words},
    {"no-output-intent", "The PDF names no printing condition."},
    {"no-room-for-bleed", "", no_room_for_bleed_words},
    {"reduced-in-export", "", reduced_in_export_words},
    {"doubtful-master", "", doubtful_master_words},
    {"no-master", "No file in the folder shows the same."},
    {"hidden-picture", "A picture lies here and nothing of it shows."},
    {"hairline", "", hairline_words},
    {"paint-not-accepted", "", paint_not_accepted_words},
    {"transparent-page",
     "Something on it is see-through or blended; the press sheet accepts no transparency."},
    {"note-on-page", "", note_on_page_words},
    {"empty-page", "", empty_page_words, empty_page_remedy},
    {"signature-left-over", "", left_over_words, left_over_remedy},
    {"contradicting-stock", "", contradicting_stock_words},
    {"spine-off", "", spine_off_words},
    {"cover-size-off", "", cover_size_words},
    {"narrow-spine-text", "", spine_text_words, spine_text_remedy},
    {"over-cover-fold", "", cover_fold_words},
    {"lost-in-gutter", "", lost_in_gutter_words, lost_in_gutter_remedy},
    {"halves-apart", "", halves_apart_words},
    {"creep-at-trim", "", creep_at_trim_words},
    {"missing-picture", "", fault_words, fault_remedy},
    {"unreadable-picture", "", fault_words, fault_remedy},
    {"empty-frame", "No picture is linked to this frame."},
    {"too-few-pixels", "", too_few_words, too_few_remedy},
    {"lost-original-too-small", "", lost_words, too_few_remedy},
    {"enlarged-in-software", "", enlarged_words, enlarged_remedy},
    {"soft-detail", "", soft_words, soft_remedy},
    {"printed-screen", "", printed_screen_words, printed_screen_remedy},
    {"screenshot",
     "Looks like a copy of what a screen showed, or a drawing in flat colours, and is taken for a photo."},
    {"uneven-stretch", "", stretch_words},
    {"uncovered-frame", "{measured} of the frame shows no picture."},
    {"short-bleed", "", bleed_words},
    {"near-trim", "", near_trim_words},
    {"inside-safe-margin", "", margin_words, margin_remedy},
    {"off-page", "", off_page_words},
    {"across-gutter", "", gutter_words, gutter_remedy},
    {"nearly-aligned", "", nearly_aligned_words},
    {"sliver-overlap", "", sliver_overlap_words},
    {"stray-margin", "", stray_margin_words},
    {"stray-caption", "", stray_caption_words, stray_caption_remedy},
    {"hidden-text", "", hidden_text_words},
    {"type-on-picture", "", type_on_picture_words},
    {"overfull-text", "", overfull_text_words},
    {"small-type", "", small_type_words},
    {"picture-twice", "", twice_words},
    {"near-copy", "", near_copy_words},
    {"bed-showing", "", bed_words, bed_remedy},
    {"tilted-original", "", tilted_words},
    {"dirty-glass", "", dirty_glass_words},
    {"coarse-jpeg", "", coarse_words, coarse_remedy},
    {"saved-before", "", saved_before_words},
    {"nearly-blank", "Hardly anything is on it: its tones span {measured} of the range."},
    {"clipped-highlights", "{measured} of what is shown is burnt out to bare paper."},
    {"clipped-shadows", "{measured} of what is shown is one black without detail."},
    {"low-contrast", "Its tones span only {measured} of the range; the press sheet wants {wanted}."},
    {"combed-tones", "{measured} of its tones are missing between others, as after a strong correction."},
    {"too-much-ink", "", too_much_ink_words},
    {"out-of-gamut", "{measured} of what is shown has colours that this press cannot print."},
    {"gray-as-colour", "A gray picture, but stored in red, green and blue."},
    {"broken-profile", "The colour profile in the file cannot be read."},
    {"mismatched-profile", "", mismatched_profile_words},
    {"wide-gamut", "", wide_gamut_words},
    {"no-profile", "", no_profile_words},
    {"several-pictures", "The file holds {measured} pictures; only the first is used."},
    {"see-through-picture", "Parts of the picture may be see-through."},
    {"unaccepted-file", "", accepted_words},
    {"unused-picture", "The picture is listed, but no frame shows it."},
};

const Row *row_of(std::string_view rule) {
  const auto found =
      std::find_if(std::begin(rows), std::end(rows), [&](const Row &row) { return row.rule == rule; });
  return found == std::end(rows) ? nullptr : found;
}

std::string filled(std::string_view words, const Finding &finding) {
  return fmt::format(fmt::runtime(words),
                     fmt::arg("measured", figure_beside(finding.measured, finding.wanted)),
                     fmt::arg("wanted", figure(finding.wanted)));
}

} // namespace

std::string sides_phrase(const Evidence &evidence, const Finding &finding) {
  std::vector<std::string> names;
  for (const PageSide side : finding.sides)
    names.emplace_back(side_name(evidence.spaces[*finding.page], side));
  return "at the " + listed(names);
}

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
  if (page.kind == PageKind::cover) return "Cover";
  return page.kind == PageKind::spread ? fmt::format("Pages {}–{}", page.number, page.number + 1)
                                       : fmt::format("Page {}", page.number);
}

std::string page_name(const Evidence &evidence, const Finding &finding) {
  return finding.page ? page_name(evidence.book.pages[*finding.page]) : std::string("The book");
}

std::string subject(const Evidence &evidence, const Finding &finding) {
  if (finding.picture) return evidence.book.pictures[*finding.picture].file;
  if (!finding.page) return {}; // the book as a whole
  const Page &page = evidence.book.pages[*finding.page];
  if (finding.frame) return fmt::format("Frame {}", page.frames[*finding.frame].id);
  if (!finding.text) return {}; // the page as a whole
  return first_words(page.texts[*finding.text]);
}

std::string_view side_name(const PageSpace &space, PageSide side) {
  if (side == PageSide::fold) return "fold";
  if (space.fold && side == PageSide::left) return "left";
  if (space.fold && side == PageSide::right) return "right";
  return space.name_of(side);
}

std::string_view grade_name(Grade grade) {
  switch (grade) {
  case Grade::hold: return "Hold";
  case Grade::query: return "Query";
  case Grade::note: return "Note";
  }
  return {};
}

std::string grade_count(Grade grade, std::size_t n) {
  switch (grade) {
  case Grade::hold: return count(n, "hold", "holds");
  case Grade::query: return count(n, "query", "queries");
  case Grade::note: return count(n, "note", "notes");
  }
  return {};
}

} // namespace stoneproof::content
