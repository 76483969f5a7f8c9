// Pages as form XObjects. Tested in tests/reports/pdf/user_pdf.test.cpp.
#include "reports/pdf/user_page.h"

#include <fmt/format.h>
#include <qpdf/Pl_Discard.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>

#include <map>
#include <optional>

namespace stoneproof::pdf {

namespace {

const std::string key = std::string("/") + own_page_key;

std::optional<finished::Box> box_of(QPDFObjectHandle array) {
  if (!array.isArray() || array.getArrayNItems() != 4) return std::nullopt;
  double corner[4];
  for (int i = 0; i < 4; ++i) {
    QPDFObjectHandle item = array.getArrayItem(i);
    if (!item.isNumber()) return std::nullopt;
    corner[i] = item.getNumericValue();
  }
  const finished::Box box = finished::box_of({corner[0], corner[1]}, {corner[2], corner[3]});
  return box.width() > 0 && box.height() > 0 ? std::optional(box) : std::nullopt;
}

std::string box_text(const finished::Box &box) {
  return fmt::format("[{:.4f} {:.4f} {:.4f} {:.4f}]", box.left, box.bottom, box.right, box.top);
}

/// Makes the empty form the page on white paper, in the space that own_page_key tells of.
void fill(QPDFObjectHandle &empty, QPDF &proof, QPDFPageObjectHelper &page) {
  const finished::SheetBoxes boxes = boxes_of(page);
  QPDFObjectHandle form = page.getFormXObjectForPage(false);
  form.getDict().removeKey("/Matrix");
  form.getDict().replaceKey("/BBox", QPDFObjectHandle::parse(box_text(boxes.media)));
  const finished::Matrix seen = finished::to_trim(boxes) * finished::Matrix{1, 0, 0, -1, 0, 0};
  const finished::Box around =
      finished::box_round(finished::outline_of(boxes.media, seen)).value_or(finished::Box{});
  QPDFObjectHandle dictionary = empty.getDict();
  dictionary.removeKey(key);
  dictionary.replaceKey("/BBox", QPDFObjectHandle::parse(box_text(around)));
  QPDFObjectHandle resources = QPDFObjectHandle::parse("<</XObject <<>>>>");
  resources.getKey("/XObject").replaceKey("/P", proof.copyForeignObject(form));
  dictionary.replaceKey("/Resources", resources);
  // A page counts on a fresh graphics state.
  const std::string content = fmt::format("q 1 g {:.4f} {:.4f} {:.4f} {:.4f} re f Q q 0 g 0 G 1 w [] 0 d "
                                          "{:.6f} {:.6f} {:.6f} {:.6f} {:.4f} {:.4f} cm /P Do Q\n",
                                          around.left, around.bottom, around.width(), around.height(), seen.a,
                                          seen.b, seen.c, seen.d, seen.e, seen.f);
  empty.replaceStreamData(content, QPDFObjectHandle::newNull(), QPDFObjectHandle::newNull());
}

/// What the user's viewer shows and hides of the layers that the pages name (ISO 32000-1, 8.11.4).
void copy_layers(QPDF &proof, QPDF &user) {
  QPDFObjectHandle layers = user.getRoot().getKey("/OCProperties");
  if (!layers.isDictionary()) return;
  proof.getRoot().replaceKey("/OCProperties", proof.copyForeignObject(user.makeIndirectObject(layers)));
}

/// Whether its content can be decoded to its end.
bool is_whole(QPDFPageObjectHelper &page) {
  try {
    Pl_Discard nowhere;
    page.pipeContents(&nowhere);
    return true;
  } catch (const std::exception &) {
    return false;
  }
}

} // namespace

finished::SheetBoxes boxes_of(QPDFPageObjectHelper &page) {
  finished::SheetBoxes boxes;
  if (const auto media = box_of(page.getAttribute("/MediaBox", false))) boxes.media = *media;
  boxes.crop = box_of(page.getAttribute("/CropBox", false));
  boxes.trim = box_of(page.getObjectHandle().getKey("/TrimBox"));
  QPDFObjectHandle turn = page.getAttribute("/Rotate", false),
                   unit = page.getObjectHandle().getKey("/UserUnit");
  if (turn.isNumber()) boxes.rotate = ((static_cast<int>(turn.getNumericValue()) / 90 % 4) + 4) % 4 * 90;
  if (unit.isNumber() && unit.getNumericValue() > 0.001 && unit.getNumericValue() < 100'000)
    boxes.unit = unit.getNumericValue();
  return boxes;
}

void fill_own_pages(QPDF &proof, QPDF &user) {
  std::vector<QPDFPageObjectHelper> pages = QPDFPageDocumentHelper(user).getAllPages();
  bool filled = false;
  for (QPDFObjectHandle &object : proof.getAllObjects()) {
    if (!object.isStream() || !object.getDict().hasKey(key)) continue;
    const auto page = static_cast<std::size_t>(object.getDict().getKey(key).getIntValueAsInt());
    if (page >= pages.size() || !is_whole(pages[page])) continue;
    fill(object, proof, pages[page]);
    filled = true;
  }
  if (filled) copy_layers(proof, user);
}

} // namespace stoneproof::pdf
