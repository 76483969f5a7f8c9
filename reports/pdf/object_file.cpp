// Hands objects to PoDoFo, which numbers them and writes the cross-reference table. The only way in is
// ObjectFile; tested in tests/reports/pdf/write_pdf.test.cpp.
#include "reports/pdf/object_file.h"

#include <podofo/podofo.h>
#include <stdexcept>

namespace stoneproof::pdf {
namespace {

/// PdfError is no std::exception; nothing of it leaves this file.
template <class Step>
auto guarded(Step step) {
  try {
    return step();
  } catch (const PoDoFo::PdfError &error) {
    const char *name = PoDoFo::PdfError::ErrorName(error.GetError());
    throw std::runtime_error(name ? name : "unknown PoDoFo error");
  }
}

/// By default PoDoFo prints its errors to the terminal.
void silence() {
  static const bool done = [] {
    PoDoFo::PdfError::EnableLogging(false);
    PoDoFo::PdfError::EnableDebug(false);
    return true;
  }();
  static_cast<void>(done);
}

void add(PoDoFo::PdfDictionary &dictionary, const Entries &entries) {
  // The space keeps a number from running into its key; PoDoFo writes PdfData as it is.
  for (const auto &[key, value] : entries)
    dictionary.AddKey(PoDoFo::PdfName(key), PoDoFo::PdfVariant(PoDoFo::PdfData((" " + value).c_str())));
}

void set_value(PoDoFo::PdfObject &object, const PoDoFo::PdfVariant &value) {
  static_cast<PoDoFo::PdfVariant &>(object) = value;
}

} // namespace

/// PdfStreamedDocument would make the /ID from the clock, before its information dictionary can be filled.
/// Here the dictionary comes first and the writer is put to the document afterwards.
struct ObjectFile::State {
  State(std::ostream &stream, const Entries &information) : device(&stream) {
    PoDoFo::PdfDictionary &info = document.GetInfo()->GetObject()->GetDictionary();
    info.Clear(); // of the clock's time
    add(info, information);
    writer = std::make_unique<PoDoFo::PdfImmediateWriter>(&device, &document.GetObjects(),
                                                          document.GetTrailer(), PoDoFo::ePdfVersion_1_7,
                                                          nullptr, PoDoFo::ePdfWriteMode_Clean);
  }
  PoDoFo::PdfObject *object(ObjectNumber number) {
    return document.GetObjects().MustGetObject(PoDoFo::PdfReference(number, 0));
  }
  PoDoFo::PdfDictionary &catalog() { return document.GetCatalog()->GetDictionary(); }

  PoDoFo::PdfOutputDevice device;
  PoDoFo::PdfMemDocument document;
  std::unique_ptr<PoDoFo::PdfImmediateWriter> writer; // writes when the document's objects tell it to
};

ObjectFile::ObjectFile(std::ostream &stream, const Entries &info) {
  silence();
  state_ = guarded([&] { return std::make_unique<State>(stream, info); });
}

ObjectFile::~ObjectFile() = default;

ObjectNumber ObjectFile::reserve() {
  return guarded([&] {
    return state_->document.GetObjects().CreateObject(PoDoFo::PdfVariant())->Reference().ObjectNumber();
  });
}

void ObjectFile::set(ObjectNumber object, const Entries &entries) {
  std::string text = "<<";
  for (const auto &[key, value] : entries) text += "/" + key + " " + value;
  text += ">>";
  guarded([&] { set_value(*state_->object(object), PoDoFo::PdfData(text.data(), text.size())); });
}

void ObjectFile::write_stream(ObjectNumber object, const Entries &entries, std::string_view data,
                              Compress compress) {
  guarded([&] {
    PoDoFo::PdfObject *target = state_->object(object);
    set_value(*target, PoDoFo::PdfDictionary());
    add(target->GetDictionary(), entries); // before the data: the dictionary is written first
    PoDoFo::TVecFilters filters;
    if (compress == Compress::yes) filters.push_back(PoDoFo::ePdfFilter_FlateDecode);
    PoDoFo::PdfStream *out = target->GetStream();
    out->BeginAppend(filters, true, compress == Compress::yes); // the caller's own /Filter would be deleted
    out->Append(data.data(), data.size());
    out->EndAppend();
  });
}

ObjectNumber ObjectFile::page_tree() const {
  return guarded([&] { return state_->catalog().GetKey("Pages")->GetReference().ObjectNumber(); });
}

void ObjectFile::set_catalog(const Entries &entries) {
  guarded([&] { add(state_->catalog(), entries); });
}

void ObjectFile::finish() {
  guarded([&] { state_->document.GetObjects().Finish(); });
}

} // namespace stoneproof::pdf
