// Sentences about what only a finished PDF shows. The only ways in are the functions of print_words.h; tested
// in tests/reports/content/print_words.test.cpp.
#include "reports/content/print_words.h"

#include "engine/rules/print_page.h"
#include "engine/rules/shortfall.h"
#include "engine/xml/characters.h"
#include "reports/content/figures.h"
#include "reports/content/placed_of.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace stoneproof::content {

namespace {

/// What the PDF tells of the page that a finding is about; nothing where it is about none.
PrintPage print_of(const Evidence &evidence, const Finding &finding) {
  return finding.page ? evidence.book.pages[*finding.page].print.value_or(PrintPage{}) : PrintPage{};
}

/// A figure of the finding, or a plain one where it has another kind.
template <class Figure>
Figure figure_of(const Measure &measure) {
  const auto *figure = std::get_if<Figure>(&measure);
  return figure ? *figure : Figure{};
}

std::string master_name(const Evidence &evidence, const Finding &finding) {
  const Master *master = evidence.master_of(*finding.picture);
  return master ? printable(master->file) : std::string();
}

/// "of which it shows 60 × 80 %": along the file's own sides.
std::string shown_part_words(const Master &master) {
  const double across = master.part.width / static_cast<double>(master.size.width),
               down = master.part.height / static_cast<double>(master.size.height);
  constexpr double nearly_all = 0.99;
  constexpr double more = 1.01;
  if (across >= more || down >= more) return "and something round it";
  if (across >= nearly_all && down >= nearly_all) return "all of it";
  const auto rounded = [](double share) { return std::clamp(std::lround(share * 100), 1L, 100L); };
  return fmt::format("of which it shows {} × {} %", rounded(across), rounded(down));
}

bool master_gives_more(const Evidence &evidence, const Finding &finding) {
  const PlacedFrame *placed = placed_of(evidence, finding);
  return placed && gain_of_master(evidence, *placed) > 1;
}

/// "2, 5 and 9 to 12": numbers of pages; of very many the last ones are counted.
std::string page_numbers(const Book &book, const std::vector<std::size_t> &pages) {
  constexpr std::size_t most = 12; // named; more would fill the page
  std::vector<std::string> names;
  for (std::size_t i = 0; i < pages.size();) {
    std::size_t last = i;
    while (last + 1 < pages.size() && pages[last + 1] == pages[last] + 1) ++last;
    if (names.size() == most) {
      names.push_back(fmt::format("{} more", pages.size() - i));
      break;
    }
    if (last == i + 1) last = i; // two pages are no run
    const int first_number = book.pages[pages[i]].number, last_number = book.pages[pages[last]].number;
    names.push_back(last == i ? fmt::format("{}", first_number)
                              : fmt::format("{} to {}", first_number, last_number));
    i = last + 1;
  }
  return listed(names);
}

std::string points(Length length) { return fmt::format("{:.3g} pt", length.pt()); }

} // namespace

std::string trim_box_words(const Evidence &, const Finding &finding) {
  const std::size_t pages = figure_of<Count>(finding.measured).value;
  return fmt::format("{} no TrimBox; the edge of the sheet was taken for the trim.",
                     pages <= 1 ? std::string("The page names")
                                : fmt::format("This page and {} more name", pages - 1));
}

std::string reduced_in_export_words(const Evidence &evidence, const Finding &finding) {
  return fmt::format("The PDF holds it at {}; the file it was made from, {}, would give {}.",
                     figure(finding.measured), master_name(evidence, finding), figure(finding.wanted));
}

std::string doubtful_master_words(const Evidence &evidence, const Finding &finding) {
  return fmt::format("It may have been made from {}: the two are alike by {}.",
                     master_name(evidence, finding), figure(finding.measured));
}

std::string reach_words(const Evidence &evidence, const Finding &finding, const std::string &density) {
  if (!master_gives_more(evidence, finding)) return fmt::format("Prints at {}", density);
  return fmt::format("Even the file it was made from, {}, gives {} and no more",
                     master_name(evidence, finding), density);
}

std::string master_words(const Evidence &evidence, const Finding &finding) {
  const Master *master = evidence.master_of(*finding.picture);
  if (!master || !master->sure || master_gives_more(evidence, finding)) return {};
  return fmt::format(" The file it was made from, {}, gives no more.", master_name(evidence, finding));
}

std::string empty_page_words(const Evidence &evidence, const Finding &finding) {
  if (!evidence.book.pages[*finding.page].print) return "Nothing is on it, and it is not described as blank.";
  const auto pages = empty_print_pages(evidence.book);
  const std::string numbers = page_numbers(evidence.book, pages);
  return pages.size() == 1 ? fmt::format("Page {} is empty: is it meant to be?", numbers)
                           : fmt::format("Pages {} are empty: are they meant to be?", numbers);
}

std::string empty_page_remedy(const Evidence &evidence, const Finding &finding) {
  if (!evidence.book.pages[*finding.page].print)
    return "Put back what belongs there, or describe the page as blank.";
  return "Put back what belongs there, and export the PDF anew. Pages that are meant to be empty may stay; a "
         "description calls them blank.";
}

std::string master_fact(const Master &master) {
  const std::string file = printable(master.file);
  if (!master.sure)
    return fmt::format("perhaps {}; the two are alike by {}, but may be two shots", file,
                       per_cent(master.likeness));
  return fmt::format("{}, {} × {} pixels, {}", file, master.size.width, master.size.height,
                     shown_part_words(master));
}

std::string masters_line(const Evidence &evidence) {
  const std::string_view what = "Files behind pictures";
  if (!evidence.pixels_measured)
    return fmt::format("{}: not looked for, as --quick leaves the pixels out.", what);
  const std::size_t files = evidence.files_searched, unread = evidence.files_unread;
  if (files == 0) return fmt::format("{}: none found; the folder is empty.", what);
  if (unread == files)
    return fmt::format("{}: none found; the folder holds no picture that can be read ({}).", what,
                       count(files, "other file", "other files"));
  const auto found = std::ranges::count_if(evidence.masters, [](const auto &master) { return !!master; });
  const auto doubtful =
      std::ranges::count_if(evidence.masters, [](const auto &master) { return master && !master->sure; });
  std::string words = fmt::format("{}: {} of {} found", what, found, evidence.pictures.size());
  if (doubtful > 0) words += fmt::format(", {} of them doubtful", doubtful);
  if (unread > 0)
    words += fmt::format("; {} of the folder’s {} could not be read as {}", unread,
                         count(files, "file", "files"), unread == 1 ? "a picture" : "pictures");
  return words + ".";
}

std::string boxes_amiss_words(const Evidence &evidence, const Finding &finding) {
  switch (box_fault(print_of(evidence, finding).boxes).value_or(BoxFault::beyond_media)) {
  case BoxFault::trim_and_art: return "The page names a TrimBox and an ArtBox; only one of them may stand.";
  case BoxFault::trim_beyond_bleed: return "The TrimBox reaches beyond the BleedBox.";
  case BoxFault::cropped: return "The CropBox cuts off some of the page or of its bleed.";
  case BoxFault::beyond_media: break;
  }
  return "A page box reaches beyond the MediaBox, which is the whole sheet.";
}

std::string no_room_for_bleed_words(const Evidence &evidence, const Finding &finding) {
  const Length left = figure_of<Length>(finding.measured);
  const std::string sides = sides_phrase(evidence, finding), wanted = figure(finding.wanted);
  if (!sheet_lacks_bleed(evidence.spaces[*finding.page], print_of(evidence, finding), finding.sides.front()))
    return fmt::format("Something is painted to the edge {}, and ends there; {} of bleed are wanted.", sides,
                       wanted);
  return fmt::format(
      "Something is painted to the edge {}, and the sheet of the PDF {}; {} of bleed are wanted.", sides,
      left > Length{} ? fmt::format("goes on for {} only", figure(finding.measured)) : "ends there", wanted);
}

std::string font_not_embedded_words(const Evidence &evidence, const Finding &finding) {
  if (!finding.font) return "A font is not in the file.";
  const PrintFont &font = evidence.book.print_file->fonts[*finding.font];
  return fmt::format("The font {} is not in the file; page {} is the first that shows it.", font.name,
                     font.first_page);
}

std::string paint_not_accepted_words(const Evidence &evidence, const Finding &finding) {
  const auto colour = unaccepted_paint(evidence.press, print_of(evidence, finding).painted_in);
  const std::string_view name = colour == ColourModel::rgb    ? "RGB"
                                : colour == ColourModel::cmyk ? "CMYK"
                                : colour == ColourModel::gray ? "gray"
                                                              : "spot inks";
  return fmt::format("Text or shapes are painted in {}, which the press sheet does not accept.", name);
}

std::string hairline_words(const Evidence &, const Finding &finding) {
  const Length width = figure_of<Length>(finding.measured), wanted = figure_of<Length>(finding.wanted);
  if (width == Length{})
    return fmt::format("A line has no width of its own; the press sheet wants at least {}.", points(wanted));
  return fmt::format("A line is only {} wide; the press sheet wants at least {}.", points(width),
                     points(wanted));
}

std::string note_on_page_words(const Evidence &, const Finding &finding) {
  const std::size_t notes = figure_of<Count>(finding.measured).value;
  return notes == 1 ? std::string("A comment or a form field lies on the page.")
                    : fmt::format("{} comments or form fields lie on the page.", notes);
}

std::string other_paper_words(const Evidence &evidence, const Finding &finding) {
  const Size book = evidence.book.trim;
  const Size page = finding.page ? evidence.book.pages[*finding.page].trim.value_or(book) : book;
  return fmt::format(
      "The page is {:.0f} × {:.0f} mm, a size of office paper; the book is {:.0f} × {:.0f} mm.",
      page.width.mm(), page.height.mm(), book.width.mm(), book.height.mm());
}

std::string broken_content_words(const Evidence &evidence, const Finding &finding) {
  if (const auto *pages = std::get_if<Count>(&finding.measured))
    return fmt::format("The PDF has more pages than are read; those after page {} were not checked.",
                       pages->value);
  if (!finding.page)
    return "The PDF is damaged: it could be read only after its table of objects had been rebuilt, and what "
           "could not be "
           "found again is missing here.";
  return print_of(evidence, finding).broken
             ? "Some of what the page draws is damaged and could not be read."
             : "The page draws more than is followed here; the rest of it was not checked.";
}

} // namespace stoneproof::content
