// The importer on one screen: objects, pages, pictures, layout, text. The only ways in are those of draft.h;
// tested in tests/engine/import/draft.test.cpp.
#include "engine/import/draft.h"

#include "engine/book/write.h"
#include "engine/import/layout_of.h"
#include "engine/import/mend.h"
#include "engine/import/picture_export.h"
#include "engine/import/read_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace stoneproof::finished {

namespace {

/// The fonts that texts are shown in, by name, with the first page that shows each.
std::vector<PrintFont> fonts_of(const Drawn &drawn) {
  std::vector<PrintFont> fonts;
  std::map<std::pair<std::string, bool>, bool> known;
  for (std::size_t page = 0; page < drawn.sheets.size(); ++page)
    for (const ShownText &text : drawn.sheets[page].drawing.texts) {
      const Font &font = drawn.parts.fonts()[text.font];
      if (!text.seen || !known.emplace(std::pair(font.name, font.embedded), true).second) continue;
      fonts.push_back({font.name.empty() ? "unnamed" : font.name, font.embedded, static_cast<int>(page) + 1});
    }
  return fonts;
}

/// "page-012-2": by the first page that shows the picture.
std::string stem_of(const ImageSource &source, std::map<std::size_t, int> &counts) {
  return fmt::format("page-{:03}-{}", source.page + 1, ++counts[source.page]);
}

bool has_pages(const Outcome<PdfFile> &file) { return file && !read_page_tree(file.value()).pages.empty(); }

/// The file as it is, or where it cannot be opened or has no page the one that it is mended to.
Outcome<PdfFile> open_or_mend(const DraftOrder &order, bool &mended) {
  auto file = PdfFile::open(order.pdf, order.password);
  if (has_pages(file) || !is_pdf(order.pdf)) return file;
  const std::filesystem::path copy = order.pictures / ".mended.pdf";
  if (!mend_pdf(order.pdf, order.password, copy)) return file;
  auto again = PdfFile::open(copy);
  std::error_code ignored;
  std::filesystem::remove(copy, ignored); // the open file stays
  mended = has_pages(again);
  return mended ? std::move(again) : std::move(file);
}

Outcome<std::string> draft_here(const DraftOrder &order) {
  bool mended = false;
  const auto file = open_or_mend(order, mended);
  if (!file) return file.fault();
  const Drawn drawn = read_pages(file.value());
  if (drawn.sheets.empty())
    return Fault{"the PDF has no page", order.pdf.string(), "Export it anew from the layout program."};
  std::vector<WrittenPicture> pictures;
  std::map<std::size_t, int> counts;
  for (const ImageSource &source : drawn.parts.images()) {
    auto written = write_picture(file.value(), source, order.pictures, stem_of(source, counts));
    if (!written) return written.fault();
    pictures.push_back(std::move(written).value());
  }
  const PrintFile print_file{order.pdf.filename().string(),
                             file.value().version(),
                             file.value().encrypted(),
                             drawn.output_intent,
                             fonts_of(drawn),
                             mended,
                             drawn.cut_short};
  Book book = layout_of(drawn, pictures, order.pdf.string(), print_file);
  book.binding.kind = order.binding;
  return book_text(book);
}

} // namespace

Outcome<std::string> draft_book(const DraftOrder &order, const Bounds &bounds) {
  return run_apart([&] { return draft_here(order); }, bounds, order.pdf.string());
}

Bounds bounds_for(const std::filesystem::path &pdf) {
  std::error_code error;
  const auto bytes = std::filesystem::file_size(pdf, error);
  const std::uint64_t size = error ? 0 : bytes;
  Bounds bounds;
  bounds.time += std::chrono::milliseconds(size / 500);
  bounds.memory += 3 * size;
  return bounds;
}

} // namespace stoneproof::finished
