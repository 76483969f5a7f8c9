// Objects of the postcards (ISO 32000-1). Only way in: card_file.h.
#include "demo/postcards/card_file.h"

#include "demo/files/files.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

#include <qpdf/QPDFWriter.hh>

namespace stoneproof::demo {

namespace {

/// A box that goes on so far beyond the trim, on a sheet that does by page.beside.
std::string box(const CardPage &page, double beyond) {
  const double start = page.beside - beyond;
  std::array<char, 96> text{};
  std::snprintf(text.data(), text.size(), "[%.4f %.4f %.4f %.4f]", start * points_a_mm, start * points_a_mm,
                (page.beside + page.width + beyond) * points_a_mm,
                (page.beside + page.height + beyond) * points_a_mm);
  return text.data();
}

std::string note_box(const CardPage &page, const Area &area) {
  std::array<char, 96> text{};
  const double x = page.beside + area.x, y = page.beside + page.height - area.y - area.height;
  std::snprintf(text.data(), text.size(), "[%.4f %.4f %.4f %.4f]", x * points_a_mm, y * points_a_mm,
                (x + area.width) * points_a_mm, (y + area.height) * points_a_mm);
  return text.data();
}

std::string widths_of(const TrueType &font) {
  std::string widths;
  for (std::size_t code = 32; code < font.advances.size(); ++code)
    widths += std::to_string(font.advances[code]) + " ";
  return "[" + widths + "]";
}

} // namespace

CardFile::CardFile()
    : serif_(read_true_type("/usr/share/fonts/truetype/gentiumplus/GentiumPlus-Regular.ttf")),
      italic_(read_true_type("/usr/share/fonts/truetype/gentiumplus/GentiumPlus-Italic.ttf")),
      sans_(read_true_type("/usr/share/fonts/truetype/lato/Lato-Regular.ttf")) {
  pdf_.emptyPDF();
  const auto bytes = profile_bytes(Profile::srgb);
  profile_ = stream(std::string(bytes.begin(), bytes.end()));
  profile_.getDict().replaceKey("/N", QPDFObjectHandle::newInteger(3));
  resources_ =
      shared("<< /Font << >> /XObject << >> /ExtGState << /Veil << /ca 0.5 >> /Solid << /ca 1 >> >>"
             " /ColorSpace << /FerryRed [/Separation /Ferry#20Red /DeviceCMYK"
             " << /FunctionType 2 /Domain [0 1] /C0 [0 0 0 0] /C1 [0.1 0.85 0.75 0.1] /N 1 >>] >> >>");
  add_font("Serif", "GentiumPlus", serif_);
  add_font("Italic", "GentiumPlus-Italic", italic_);
  add_font("Sans", "Lato-Regular", sans_);
  resources_.getKey("/Font").replaceKey(
      "/Missing",
      shared("<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>"));
  pdf_.getTrailer().replaceKey("/Info", shared("<< /Title (Wish You Were Dry) >>"));
  pdf_.getRoot().replaceKey("/Lang", QPDFObjectHandle::newString("en"));
}

QPDFObjectHandle CardFile::shared(const std::string &dictionary) {
  return pdf_.makeIndirectObject(QPDFObjectHandle::parse(&pdf_, dictionary));
}

QPDFObjectHandle CardFile::stream(const std::string &data, const std::string &filter) {
  QPDFObjectHandle made = QPDFObjectHandle::newStream(&pdf_);
  made.replaceStreamData(data,
                         filter.empty() ? QPDFObjectHandle::newNull() : QPDFObjectHandle::newName(filter),
                         QPDFObjectHandle::newNull());
  return made;
}

void CardFile::add_font(const std::string &name, const std::string &full_name, const TrueType &font) {
  const auto number = [](int value) { return std::to_string(value) + " "; };
  QPDFObjectHandle file = stream(font.bytes);
  file.getDict().replaceKey("/Length1",
                            QPDFObjectHandle::newInteger(static_cast<long long>(font.bytes.size())));
  // 32: its characters are Latin ones; 64: it leans. No table tells how thick its stems are: 80 is usual.
  QPDFObjectHandle descriptor =
      shared("<< /Type /FontDescriptor /FontName /" + full_name + " /Flags " +
             (font.slant < 0 ? "96" : "32") + " /FontBBox [" + number(font.box[0]) + number(font.box[1]) +
             number(font.box[2]) + number(font.box[3]) + "] /ItalicAngle " +
             number(static_cast<int>(std::lround(font.slant))) + "/Ascent " + number(font.ascent) +
             "/Descent " + number(font.descent) + "/CapHeight " + number(font.ascent) + "/StemV 80 >>");
  descriptor.replaceKey("/FontFile2", file);
  QPDFObjectHandle made =
      shared("<< /Type /Font /Subtype /TrueType /BaseFont /" + full_name +
             " /Encoding /WinAnsiEncoding /FirstChar 32 /LastChar 255 /Widths " + widths_of(font) + " >>");
  made.replaceKey("/FontDescriptor", descriptor);
  resources_.getKey("/Font").replaceKey("/" + name, made);
}

void CardFile::add_picture(const std::string &name, const Canvas &canvas) {
  QPDFObjectHandle made = stream(jpeg_bytes(canvas, {.quality = 92}), "/DCTDecode");
  QPDFObjectHandle dict = made.getDict();
  const std::pair<const char *, QPDFObjectHandle> entries[] = {
      {"/Type", QPDFObjectHandle::newName("/XObject")},
      {"/Subtype", QPDFObjectHandle::newName("/Image")},
      {"/Width", QPDFObjectHandle::newInteger(canvas.width())},
      {"/Height", QPDFObjectHandle::newInteger(canvas.height())},
      {"/BitsPerComponent", QPDFObjectHandle::newInteger(8)},
      {"/ColorSpace", QPDFObjectHandle::newArray({QPDFObjectHandle::newName("/ICCBased"), profile_})}};
  for (const auto &[key, value] : entries) dict.replaceKey(key, value);
  resources_.getKey("/XObject").replaceKey("/" + name, made);
}

void CardFile::add_page(const CardPage &page) {
  QPDFObjectHandle made = shared("<< /Type /Page /MediaBox " + box(page, page.beside) + " >>");
  if (page.bleed) {
    made.replaceKey("/TrimBox", QPDFObjectHandle::parse(box(page, 0)));
    made.replaceKey("/BleedBox", QPDFObjectHandle::parse(box(page, *page.bleed)));
  }
  made.replaceKey("/Resources", resources_);
  QPDFObjectHandle contents = QPDFObjectHandle::newArray();
  contents.appendItem(stream(page.operators));
  if (!page.damaged.empty()) contents.appendItem(stream(page.damaged, "/FlateDecode"));
  made.replaceKey("/Contents", contents);
  if (page.note) {
    QPDFObjectHandle note =
        shared("<< /Type /Annot /Subtype /Text /F 4 /C [1 0.85 0.3] /Name /Comment /Rect " +
               note_box(page, *page.note) + " >>");
    note.replaceKey("/Contents", QPDFObjectHandle::newUnicodeString(page.note_words));
    QPDFObjectHandle notes = QPDFObjectHandle::newArray();
    notes.appendItem(note);
    made.replaceKey("/Annots", notes);
  }
  pdf_.addPage(made, false);
}

void CardFile::write(const std::filesystem::path &file) {
  QPDFWriter writer(pdf_, file.c_str());
  // The id first, since the key is made of it; one made of the contents cannot stand beside encryption. Later
  // kinds of encryption put random numbers into the file.
  writer.setStaticID(true);
  writer.setR3EncryptionParametersInsecure("", "withy ford", true, true, true, true, true, true,
                                           qpdf_r3p_full);
  writer.write();
}

} // namespace stoneproof::demo
