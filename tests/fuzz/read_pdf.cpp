// Reads bytes as a PDF, or as a part of one, under small limits. Only way in: the functions of harnesses.h.
// Replayed by tests/fuzz/replay.test.cpp.
#include "engine/book/write.h"
#include "engine/import/layout_of.h"
#include "engine/import/sample_layout.h"
#include "tests/fuzz/memory_file.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::fuzz {

namespace {

using namespace finished;

constexpr std::size_t most_bytes = 1'000'000;

bool finite(const Outline &outline) {
  return std::all_of(outline.begin(), outline.end(),
                     [](Spot at) { return std::isfinite(at.x) && std::isfinite(at.y); });
}

void check(const Drawn &drawn) {
  must(drawn.sheets.size() <= most_pages);
  for (const Sheet &sheet : drawn.sheets) {
    const SheetBoxes &boxes = sheet.boxes;
    must(boxes.media.width() > 0 && boxes.media.height() > 0 && boxes.unit > 0 && boxes.rotate % 90 == 0);
    const PageDrawing &drawing = sheet.drawing;
    must(drawing.order.size() == drawing.images.size() + drawing.texts.size());
    for (const ShownImage &shown : drawing.images)
      must(shown.image < drawn.parts.images().size() && shown.place.finite() && finite(shown.visible));
    for (const ShownText &shown : drawing.texts)
      must(shown.font < drawn.parts.fonts().size() && shown.size > 0 && shown.outline.size() == 4 &&
           finite(shown.outline));
    for (const ShownLine &line : drawing.lines) must(line.width >= 0);
  }
}

/// As a TIFF would be written.
void read_samples(const PdfFile &file, const ImageSource &source) {
  const auto samples = samples_of(file, source.dictionary, source.colours);
  if (!samples || samples->size.width * samples->size.height > 100'000) return;
  const Decoded data = source.stands_in ? decoded(source.bytes, source.dictionary["Filter"],
                                                  source.dictionary["DecodeParms"], most_bytes)
                                        : file.decoded(source.dictionary, most_bytes);
  must(data.bytes.size() <= most_bytes);
  if (data.codec.empty()) tiff_rows(*samples, data.bytes);
}

} // namespace

void pdf(Bytes bytes) {
  if (!starts(bytes, "%PDF-")) return;
  const MemoryFile bytes_as_file(bytes);
  const auto opened = PdfFile::open(bytes_as_file.path());
  if (!opened) return fuzz::check(opened.fault());
  const PdfFile &file = opened.value();
  const Drawn drawn = read_pages(file);
  check(drawn);
  for (const ImageSource &source : drawn.parts.images()) read_samples(file, source);
  const std::vector<WrittenPicture> written(drawn.parts.images().size(), {"picture.tif", {}, 6, false});
  const Book book =
      layout_of(drawn, written, "made.pdf", {"made.pdf", file.version(), file.encrypted(), {}, {}});
  must(book.pages.size() == drawn.sheets.size());
  must(!book_text(book).empty());
}

void content(Bytes bytes) {
  const std::string_view text(reinterpret_cast<const char *>(bytes.data()), bytes.size());
  ContentParser parser(text);
  std::size_t operations = 0;
  for (Operation operation; parser.next(operation); ++operations) {
    must(operation.operands.size() <= ContentParser::most_operands);
    must(operation.data.empty() ||
         (operation.data.data() >= text.data() &&
          operation.data.data() + operation.data.size() <= text.data() + text.size()));
  }
  must(operations <= bytes.size());
  must(read_to_unicode(text).size() <= 65'536);
}

void filter(Bytes bytes) {
  if (bytes.size() < 4) return;
  const std::string_view data(reinterpret_cast<const char *>(bytes.data()) + 4, bytes.size() - 4);
  const Filtered step = bytes[0] % 5 == 0   ? inflated(data, most_bytes)
                        : bytes[0] % 5 == 1 ? unpacked_lzw(data, bytes[0] > 127, most_bytes)
                        : bytes[0] % 5 == 2 ? unpacked_runs(data, most_bytes)
                        : bytes[0] % 5 == 3 ? from_hex(data, most_bytes)
                                            : from_ascii85(data, most_bytes);
  must(step.bytes.size() <= most_bytes && !(step.whole && step.beyond_limit));
  const Filtered plain =
      unpredicted(step.bytes, {bytes[1] % 16, bytes[2] % 70, 1 << bytes[2] / 70, bytes[3]});
  must(plain.bytes.size() <= step.bytes.size());
}

} // namespace stoneproof::fuzz
