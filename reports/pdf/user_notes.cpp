// Notes as annotations (ISO 32000-1, 12.5). Tested in tests/reports/pdf/user_pdf.test.cpp.
#include "reports/pdf/user_page.h"

#include <fmt/format.h>
#include <qpdf/QPDFPageDocumentHelper.hh>

#include <cmath>

namespace stoneproof::pdf {

namespace {

constexpr double note_side = 20; ///< of the sign of a text note, in points
constexpr double least_side = 6; ///< of a box: a smaller one is hard to hit

finished::Box area_in_user_space(const UserNote &note, const finished::Matrix &to_user) {
  const Rect &area = note.area;
  finished::Box box{area.left().pt(), area.top().pt(), area.right().pt(), area.bottom().pt()};
  if (note.kind == NoteKind::text) box = {box.left, box.bottom, box.left + note_side, box.bottom + note_side};
  const double wider = std::max(0.0, least_side - box.width()) / 2,
               higher = std::max(0.0, least_side - box.height()) / 2;
  box = {box.left - wider, box.bottom - higher, box.right + wider, box.top + higher};
  return finished::box_round(finished::outline_of(box, to_user)).value_or(finished::Box{});
}

std::string dash_of(NoteKind kind) {
  return kind == NoteKind::dashed_box   ? "/S/D/D[6 3]"
         : kind == NoteKind::dotted_box ? "/S/D/D[1.5 2.5]"
                                        : "/S/S";
}

/// How the box is drawn where a viewer draws nothing itself.
QPDFObjectHandle appearance_of(QPDF &pdf, const UserNote &note, const finished::Box &box) {
  const std::string dash = note.kind == NoteKind::dashed_box   ? "[6 3] 0 d "
                           : note.kind == NoteKind::dotted_box ? "[1.5 2.5] 0 d "
                                                               : "";
  QPDFObjectHandle form = QPDFObjectHandle::newStream(
      &pdf,
      fmt::format("{:.3f} {:.3f} {:.3f} RG 2 w {}{:.3f} {:.3f} {:.3f} {:.3f} re S\n", note.red, note.green,
                  note.blue, dash, box.left + 1, box.bottom + 1, box.width() - 2, box.height() - 2));
  form.getDict().replaceKey("/Type", QPDFObjectHandle::newName("/XObject"));
  form.getDict().replaceKey("/Subtype", QPDFObjectHandle::newName("/Form"));
  form.getDict().replaceKey("/BBox",
                            QPDFObjectHandle::parse(fmt::format("[{:.3f} {:.3f} {:.3f} {:.3f}]", box.left,
                                                                box.bottom, box.right, box.top)));
  return form;
}

QPDFObjectHandle annotation_of(QPDF &pdf, const UserNote &note, const finished::Box &box,
                               QPDFObjectHandle page) {
  const bool text = note.kind == NoteKind::text;
  // Not for print; a text note stands upright and keeps its size however the page is shown.
  QPDFObjectHandle made = QPDFObjectHandle::parse(fmt::format(
      "<</Type/Annot/Subtype/{}/Rect[{:.3f} {:.3f} {:.3f} {:.3f}]/C[{:.3f} {:.3f} {:.3f}]/F {}{}>>",
      text ? "Text/Name/Note" : "Square", box.left, box.bottom, box.right, box.top, note.red, note.green,
      note.blue, text ? 24 : 0, text ? "" : fmt::format("/BS<</W 2{}>>", dash_of(note.kind))));
  made.replaceKey("/T", QPDFObjectHandle::newUnicodeString("stoneproof"));
  made.replaceKey("/Subj", QPDFObjectHandle::newUnicodeString(note.title));
  made.replaceKey("/Contents", QPDFObjectHandle::newUnicodeString(note.words));
  made.replaceKey("/NM", QPDFObjectHandle::newUnicodeString(note.name));
  if (!note.date.empty()) {
    made.replaceKey("/M", QPDFObjectHandle::newString(note.date));
    made.replaceKey("/CreationDate", QPDFObjectHandle::newString(note.date));
  }
  made.replaceKey("/P", page);
  if (!text) {
    QPDFObjectHandle looks = QPDFObjectHandle::newDictionary();
    looks.replaceKey("/N", pdf.makeIndirectObject(appearance_of(pdf, note, box)));
    made.replaceKey("/AP", looks);
  }
  return pdf.makeIndirectObject(made);
}

} // namespace

void add_notes(QPDF &user, const std::vector<UserNote> &notes) {
  std::vector<QPDFPageObjectHelper> pages = QPDFPageDocumentHelper(user).getAllPages();
  for (const UserNote &note : notes) {
    if (note.page >= pages.size()) continue;
    QPDFPageObjectHelper &page = pages[note.page];
    const finished::Box box = area_in_user_space(note, finished::inverse(finished::to_trim(boxes_of(page))));
    QPDFObjectHandle object = page.getObjectHandle();
    QPDFObjectHandle list = object.getKey("/Annots");
    if (!list.isArray()) list = QPDFObjectHandle::newArray();
    if (list.isIndirect()) list = list.shallowCopy(); // another page may share it
    list.appendItem(annotation_of(user, note, box, object));
    object.replaceKey("/Annots", list);
  }
}

} // namespace stoneproof::pdf
