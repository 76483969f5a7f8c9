// Puts a PDF together. The only way in is write_pdf(); tested in tests/reports/pdf/write_pdf.test.cpp.
#include "reports/pdf/write_pdf.h"

#include "reports/files/replace_file.h"
#include "reports/pdf/archive_parts.h"
#include "reports/pdf/document_parts.h"
#include "reports/pdf/font_objects.h"
#include "reports/pdf/navigation.h"
#include "reports/pdf/object_file.h"
#include "reports/pdf/page_content.h"
#include "reports/pdf/structure_tree.h"
#include "reports/pdf/user_pdf.h"

#include <exception>
#include <map>

namespace stoneproof {
namespace {

using namespace pdf;

/// Writes the parts of one document in the order in which they are known: pictures and pages, then fonts,
/// then the rest.
class DocumentWriter {
public:
  DocumentWriter(layout::Document &document, const Typesetter &typesetter, std::ostream &stream)
      : document_(document), typesetter_(typesetter), file_(stream, information(document)),
        structure_(file_) {}

  Outcome<Done> write() {
    reserve_objects();
    for (const auto &[index, object] : images_) write_image(document_.images.at(index), object);
    document_.images.clear();
    for (const auto &[page, object] : own_pages_) write_own_page(page, object);
    for (std::size_t i = 0; i < document_.pages.size(); ++i) {
      write_page(i);
      let_go(document_.pages[i]);
    }
    if (const auto written = write_fonts(); !written) return written;
    write_opacities();
    write_page_tree();
    write_catalog();
    file_.finish();
    return Done{};
  }

private:
  /// Streams get numbers in a row and are written in that order: PoDoFo's table of objects takes time in the
  /// square of the gaps between them.
  void reserve_objects() {
    fonts_ = file_.reserve(), opacities_ = file_.reserve();
    for (std::size_t i = 0; i < document_.pages.size(); ++i) pages_.push_back(file_.reserve());
    for (const layout::DocumentPage &page : document_.pages)
      for (const layout::Item &item : page.items)
        if (const auto *picture = std::get_if<layout::PictureItem>(&item)) images_[picture->image] = 0;
    for (const layout::DocumentPage &page : document_.pages)
      for (const layout::Item &item : page.items)
        if (const auto *own = std::get_if<layout::OwnPageItem>(&item)) own_pages_[own->page] = 0;
    for (auto &[index, object] : images_) object = file_.reserve();
    for (auto &[index, object] : own_pages_) object = file_.reserve();
    for (std::size_t i = 0; i < document_.pages.size(); ++i) contents_.push_back(file_.reserve());
  }

  /// Its size and label are still asked for.
  static void let_go(layout::DocumentPage &page) {
    layout::DocumentPage kept;
    kept.size = page.size;
    kept.label = std::move(page.label);
    page = std::move(kept);
  }

  void write_image(layout::Image &image, ObjectNumber object) {
    file_.write_stream(object,
                       {{"Type", "/XObject"},
                        {"Subtype", "/Image"},
                        {"Width", std::to_string(image.width)},
                        {"Height", std::to_string(image.height)},
                        {"ColorSpace", "/DeviceRGB"},
                        {"BitsPerComponent", "8"},
                        {"Filter", "/DCTDecode"}},
                       {reinterpret_cast<const char *>(image.jpeg.data()), image.jpeg.size()}, Compress::no);
    image.jpeg = std::vector<std::uint8_t>(); // {} would keep the room
  }

  /// Empty, until put_own_pages fills it.
  void write_own_page(std::size_t page, ObjectNumber object) {
    file_.write_stream(object,
                       {{"Type", "/XObject"},
                        {"Subtype", "/Form"},
                        {"BBox", "[0 0 1 1]"},
                        {"Resources", "<<>>"},
                        {own_page_key, std::to_string(page)}},
                       "", Compress::no);
  }

  void write_page(std::size_t index) {
    const layout::DocumentPage &page = document_.pages[index];
    PageContent content = content_of(page, typesetter_, shared_);
    file_.write_stream(contents_[index], {}, content.operators, Compress::yes);
    std::string images;
    for (const std::size_t image : content.images)
      images += "/" + image_name(image) + " " + reference(images_.at(image));
    for (const std::size_t own : content.own_pages)
      images += "/" + own_page_name(own) + " " + reference(own_pages_.at(own));

    const Length height = page.size.height;
    Entries entries{{"Type", "/Page"},
                    {"Parent", reference(file_.page_tree())},
                    {"MediaBox", rectangle({{}, {}, page.size.width, height}, height)},
                    {"Contents", reference(contents_[index])},
                    {"Resources", "<</Font " + reference(fonts_) + "/ExtGState " + reference(opacities_) +
                                      "/XObject<<" + images + ">>>>"}};
    if (page.bleed) entries.emplace_back("BleedBox", rectangle(*page.bleed, height));
    if (page.trim) entries.emplace_back("TrimBox", rectangle(*page.trim, height));
    // Veils are blended in the one colour space that all else is in.
    if (content.veiled) entries.emplace_back("Group", "<</S/Transparency/CS/DeviceRGB>>");
    for (Entry &entry : structure_.add_page(std::move(content.structure), pages_[index], height))
      entries.push_back(std::move(entry));
    if (!page.notes.empty() && no_appearance_ == 0) no_appearance_ = write_no_appearance(file_);
    const std::string annotations = write_annotations(file_, document_, page, pages_, no_appearance_);
    if (!annotations.empty()) entries.emplace_back("Annots", annotations);
    file_.set(pages_[index], entries);
  }

  Outcome<Done> write_fonts() {
    Entries entries;
    for (const PdfFont &font : shared_.fonts.fonts()) {
      const auto object = write_font(file_, font, typesetter_);
      if (!object) return object.fault();
      entries.emplace_back(font_name(entries.size()), reference(object.value()));
    }
    file_.set(fonts_, entries);
    return Done{};
  }

  void write_opacities() {
    Entries entries;
    for (const int opacity : shared_.opacities)
      entries.emplace_back(opacity_name(opacity), "<</ca " + number(opacity / 1000.0) + ">>");
    file_.set(opacities_, entries);
  }

  void write_page_tree() {
    std::string kids = "[";
    for (const ObjectNumber page : pages_) kids += (kids.size() > 1 ? " " : "") + reference(page);
    file_.set(file_.page_tree(),
              {{"Type", "/Pages"}, {"Kids", kids + "]"}, {"Count", std::to_string(pages_.size())}});
  }

  void write_catalog() {
    Entries entries{{"Metadata", write_metadata(file_, document_)},
                    {"OutputIntents", write_output_intents(file_)},
                    {"ViewerPreferences", "<</DisplayDocTitle true>>"}};
    for (Entry &entry : write_attachments(file_, document_)) entries.push_back(std::move(entry));
    if (const std::string tree = structure_.finish(); !tree.empty()) {
      entries.emplace_back("StructTreeRoot", tree);
      entries.emplace_back("MarkInfo", "<</Marked true>>");
    }
    if (!document_.language.empty()) entries.emplace_back("Lang", text_string(document_.language));
    if (const std::string labels = page_labels(document_); !labels.empty())
      entries.emplace_back("PageLabels", labels);
    if (const std::string outline = write_bookmarks(file_, document_, pages_); !outline.empty()) {
      entries.emplace_back("Outlines", outline);
      entries.emplace_back("PageMode", "/UseOutlines");
    }
    file_.set_catalog(entries);
  }

  layout::Document &document_;
  const Typesetter &typesetter_;
  ObjectFile file_;
  StructureTree structure_;
  SharedResources shared_;
  PageNumbers pages_;
  std::vector<ObjectNumber> contents_;
  std::map<std::size_t, ObjectNumber> images_, own_pages_;
  ObjectNumber fonts_ = 0, opacities_ = 0, no_appearance_ = 0;
};

} // namespace

Outcome<Done> write_pdf(layout::Document document, const Typesetter &typesetter,
                        const std::filesystem::path &target) {
  try {
    return replace_file(
        target, [&](std::ostream &stream) { return DocumentWriter(document, typesetter, stream).write(); });
  } catch (const std::exception &error) {
    return Fault{std::string("the PDF cannot be made (") + error.what() + ")", target.string(),
                 "Report this with the files that lead to it."};
  }
}

} // namespace stoneproof
