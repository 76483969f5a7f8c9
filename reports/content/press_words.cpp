// What the printer asks, in words. The only way in is press_words; tested in
// tests/reports/content/press_words.test.cpp.
#include "reports/content/press_words.h"

#include "reports/content/figures.h"
#include "reports/content/picture_facts.h"
#include "reports/content/pixel_words.h"

#include <fmt/format.h>

#include <filesystem>

namespace stoneproof::content {

namespace {

std::string_view use_name(Use use) {
  switch (use) {
  case Use::photo: return "Photos";
  case Use::line_art: return "Line art";
  case Use::document: return "Documents";
  case Use::clipping: return "Clippings";
  }
  return {};
}

std::string_view text_name(TextKind kind) {
  switch (kind) {
  case TextKind::caption: return "captions";
  case TextKind::body: return "body text";
  case TextKind::heading: return "headings";
  case TextKind::page_number: return "page numbers";
  case TextKind::spine: return "spine";
  }
  return {};
}

std::string points_up(Length length) { return fmt::format("{:g} pt", length.pt()); }

RequirementGroup picture_rows(const PressSheet &press) {
  RequirementGroup group{"Pictures", {}};
  for (const auto &[use, word] : use_words)
    group.rows.push_back(
        {std::string(use_name(use)),
         fmt::format("{} wanted, {} at the least", ppi(press.bar(use).wanted), ppi(press.bar(use).least))});
  group.rows.push_back(
      {"Tolerance", fmt::format("a density may fall short by {}; the two axes may differ by {}",
                                per_cent(press.density_tolerance), per_cent(press.stretch_tolerance))});
  group.rows.push_back({"JPEG quality", fmt::format("{} wanted, {} at the least", press.jpeg_quality.wanted,
                                                    press.jpeg_quality.least)});
  group.rows.push_back(
      {"Scanner", fmt::format("a flatbed gains no detail beyond {}", ppi(press.flatbed_limit))});
  std::vector<std::string> formats, colours;
  for (const Format format : press.formats) formats.emplace_back(format_name(format));
  for (const ColourModel colour : press.colours) colours.emplace_back(colour_name(colour));
  group.rows.push_back({"Files", listed(formats)});
  group.rows.push_back({"Colours", listed(colours)});
  return group;
}

RequirementGroup tone_rows(const PressSheet &press) {
  RequirementGroup group{"Tones and inks", {}};
  group.rows.push_back({"Bare paper or one black",
                        fmt::format("at most {} of what a frame shows, each", per_cent(press.tone.clipped))});
  group.rows.push_back(
      {"Range of a photo", fmt::format("at least {} of all tones", per_cent(press.tone.range))});
  group.rows.push_back({"Ink", fmt::format("at most {} in all, on a square of {}", per_cent(press.ink.most),
                                           millimetres(press.ink.square))});
  if (!press.profile) {
    group.rows.push_back({"Profile", "none named: colours were not converted for the press"});
    return group;
  }
  group.rows.push_back(
      {"Profile", fmt::format("{} ({})", profile_name(press.profile->facts),
                              std::filesystem::path(press.profile->file).filename().string())});
  group.rows.push_back(
      {"Colours beyond the press",
       fmt::format("at most {} of what a frame shows, counted from a difference of {:g} (CIEDE2000)",
                   per_cent(press.profile->share), press.profile->difference)});
  return group;
}

std::string edge_words(const Edges &edges) {
  if (edges.top == edges.bottom && edges.top == edges.outside) return millimetres_up(edges.top);
  return fmt::format("{} at the top, {} at the bottom, {} outside", millimetres_up(edges.top),
                     millimetres_up(edges.bottom), millimetres_up(edges.outside));
}

RequirementGroup page_rows(const PressSheet &press, const Book &book) {
  RequirementGroup group{"Pages and binding", {}};
  group.rows.push_back({"Bleed", "at least " + edge_words(press.bleed)});
  group.rows.push_back({"Safe margin", "at least " + edge_words(press.safe_margin)});
  if (const Length inside = press.inside_margin(book.page_count()); inside > Length{})
    group.rows.push_back(
        {"Margin at the binding", fmt::format("at least {} in a book of {}", millimetres_up(inside),
                                              count(book.page_count(), "page", "pages"))});
  group.rows.push_back({"Cut and fold", fmt::format("the cut may wander by {}, a fold by {}",
                                                    millimetres_up(press.cut_tolerance),
                                                    millimetres_up(press.fold_tolerance))});
  const PageCountBar &pages = press.page_count(book.binding.kind);
  group.rows.push_back(
      {"Pages", fmt::format("a multiple of {}, from {} to {}", pages.multiple, pages.least, pages.most)});
  group.rows.push_back(
      {"Spine", fmt::format("carries text from {} on, {} clear of either fold",
                            millimetres_up(press.spine.text_from), millimetres_up(press.spine.text_clear))});
  std::vector<std::string> sizes;
  for (const auto &[kind, word] : text_words)
    sizes.push_back(fmt::format("{} {}", text_name(kind), points_up(press.least_type_of(kind))));
  group.rows.push_back({"Smallest type", listed(sizes)});
  return group;
}

RequirementGroup finished_pdf_rows(const PressSheet &press) {
  const FinishedPdfBar &bar = press.finished_pdf;
  return {"The finished PDF",
          {{"Lines", fmt::format("at least {}", points_up(bar.thinnest_line))},
           {"Transparency", bar.transparency ? "accepted" : "not accepted"}}};
}

} // namespace

std::vector<RequirementGroup> press_words(const PressSheet &press, const Book &book) {
  std::vector<RequirementGroup> groups{picture_rows(press), tone_rows(press), page_rows(press, book)};
  if (book.print_file) groups.push_back(finished_pdf_rows(press));
  return groups;
}

} // namespace stoneproof::content
