// Opens a PDF through PoDoFo's parser, without its page tree, which believes the file's own counts. The only
// ways in are Object and PdfFile; tested in tests/engine/import/pdf_file.test.cpp.
#include "engine/import/pdf_file.h"

#include <openssl/provider.h>
#include <podofo/podofo.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>

namespace stoneproof::finished {

namespace {

/// The step's value, or `otherwise` where PoDoFo gives up.
template <class Step, class T>
T guarded(Step step, T otherwise) {
  try {
    return step();
  } catch (const PoDoFo::PdfError &) {
    return otherwise;
  }
}

/// RC4 and MD5 of old encryption stand apart in OpenSSL 3.
struct Providers {
  OSSL_PROVIDER *legacy = OSSL_PROVIDER_load(nullptr, "legacy");
  OSSL_PROVIDER *standard = OSSL_PROVIDER_load(nullptr, "default");
  Providers() = default;
  Providers(const Providers &) = delete;
  Providers &operator=(const Providers &) = delete;
  ~Providers() {
    for (OSSL_PROVIDER *provider : {legacy, standard})
      if (provider) OSSL_PROVIDER_unload(provider);
  }
};

/// PoDoFo prints its errors by default.
void prepare_libraries() {
  static const bool done = [] {
    PoDoFo::PdfError::EnableLogging(false);
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfParser::SetIgnoreBrokenObjects(true);
    return true;
  }();
  static const Providers providers;
  static_cast<void>(done);
}

Fault fault_of(const PoDoFo::PdfError &error, const std::filesystem::path &path, bool password_given) {
  if (error.GetError() == PoDoFo::ePdfError_InvalidPassword)
    return {password_given ? "the PDF is encrypted, and the password does not open it"
                           : "the PDF is encrypted and asks for a password",
            path.string(), "Name its password with --password, or export the PDF anew without one."};
  const auto code = error.GetError();
  const bool cut_off = code == PoDoFo::ePdfError_NoEOFToken || code == PoDoFo::ePdfError_UnexpectedEOF;
  return {cut_off                            ? "the PDF is damaged: its end is missing"
          : code == PoDoFo::ePdfError_NoXRef ? "the PDF is damaged: its table of objects cannot be read"
                                             : "the PDF is damaged and cannot be read",
          path.string(), "Copy or download it again, or export it anew from the layout program."};
}

/// The objects of a file. PoDoFo 0.9.8 leaves the padding on strings encrypted by AES of 256 bits.
struct FileObjects : PoDoFo::PdfVecObjects {
  bool padded_strings = false;
};

std::string bytes_of(const PoDoFo::PdfString &value) {
  return {value.GetString(), static_cast<std::size_t>(value.GetLength())};
}

/// Without as many last bytes as the last one says (RFC 8018, 6.1.1). Padded bytes fill whole blocks of 16.
std::string unpadded(std::string bytes) {
  const std::size_t count = bytes.empty() ? 0 : static_cast<unsigned char>(bytes.back());
  const bool padded = bytes.size() % 16 == 0 && count >= 1 && count <= 16 && count <= bytes.size() &&
                      std::all_of(bytes.end() - static_cast<std::ptrdiff_t>(count), bytes.end(),
                                  [&](char byte) { return byte == bytes.back(); });
  if (padded) bytes.resize(bytes.size() - count);
  return bytes;
}

} // namespace

bool is_pdf(const std::filesystem::path &file) {
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(file, ignored)) return false; // a pipe would have us wait
  std::ifstream stream(file, std::ios::binary);
  std::string head(1024, '\0'); // ISO 32000-1, annex H, note 13: readers look so far for the header
  stream.read(head.data(), static_cast<std::streamsize>(head.size()));
  return head.find("%PDF-") != std::string::npos;
}

Object::Object(PoDoFo::PdfObject *object, PoDoFo::PdfVecObjects *objects, bool padded)
    : objects_(objects), padded_(padded) {
  guarded(
      [&] {
        for (int hops = 0; object && object->IsReference() && hops < 16; ++hops) {
          object = objects->GetObject(object->GetReference());
          // What lies in an object stream is encrypted with it, not by itself.
          padded_ = static_cast<const FileObjects *>(objects)->padded_strings &&
                    dynamic_cast<PoDoFo::PdfParserObject *>(object);
        }
        if (object && !object->IsNull() && !object->IsReference()) object_ = object;
        return true;
      },
      false);
  if (object_) id_ = object_->Reference().ObjectNumber();
}

bool Object::is_dictionary() const {
  if (operand_) return operand_is(Operand::Kind::dictionary);
  return object_ && guarded([&] { return object_->IsDictionary(); }, false);
}

bool Object::is_stream() const {
  return object_ && is_dictionary() && guarded([&] { return object_->HasStream(); }, false);
}

bool Object::is_array() const {
  if (operand_) return operand_is(Operand::Kind::array);
  return object_ && guarded([&] { return object_->IsArray(); }, false);
}

Object Object::operator[](std::string_view key) const {
  if (!is_dictionary()) return {};
  if (operand_) return Object(operand_->find(key));
  return Object(guarded([&] { return object_->GetDictionary().GetKey(PoDoFo::PdfName(std::string(key))); },
                        static_cast<PoDoFo::PdfObject *>(nullptr)),
                objects_, padded_);
}

Object Object::at(std::size_t index) const {
  if (index >= size()) return {};
  return operand_ ? Object(&operand_->items[index]) : Object(&object_->GetArray()[index], objects_, padded_);
}

std::size_t Object::size() const {
  if (!is_array()) return 0;
  return operand_ ? operand_->items.size() : object_->GetArray().size();
}

std::vector<std::string> Object::keys() const {
  std::vector<std::string> keys;
  if (object_ && is_dictionary())
    for (const auto &entry : object_->GetDictionary().GetKeys()) keys.push_back(entry.first.GetName());
  return keys;
}

std::optional<double> Object::number() const {
  if (operand_is(Operand::Kind::number)) return operand_->number;
  if (!object_) return std::nullopt;
  const auto value = guarded(
      [&]() -> std::optional<double> {
        if (object_->IsNumber()) return static_cast<double>(object_->GetNumber());
        if (object_->IsReal()) return object_->GetReal();
        return std::nullopt;
      },
      std::optional<double>());
  return value && std::isfinite(*value) ? value : std::nullopt;
}

int Object::whole_or(int otherwise, int least, int most) const {
  const auto value = number();
  return value && *value >= least && *value <= most ? static_cast<int>(*value) : otherwise;
}

std::string Object::name() const {
  if (operand_is(Operand::Kind::name)) return operand_->text;
  return object_ && guarded([&] { return object_->IsName(); }, false) ? object_->GetName().GetName()
                                                                      : std::string();
}

std::string Object::bytes() const {
  if (operand_is(Operand::Kind::string)) return operand_->text;
  const bool string =
      object_ && guarded([&] { return object_->IsString() || object_->IsHexString(); }, false);
  if (!string) return {};
  const PoDoFo::PdfString &value = object_->GetString();
  return value.IsValid() ? bytes_of(value) : std::string();
}

std::string Object::text() const {
  const bool string =
      object_ && guarded([&] { return object_->IsString() || object_->IsHexString(); }, false);
  if (!string) return {};
  return guarded(
      [&] {
        const PoDoFo::PdfString &value = object_->GetString();
        if (!padded_) return value.GetStringUtf8();
        const std::string bytes = unpadded((value.IsUnicode() ? "\xFE\xFF" : "") + bytes_of(value));
        return PoDoFo::PdfString(bytes.data(), static_cast<PoDoFo::pdf_long>(bytes.size())).GetStringUtf8();
      },
      std::string());
}

bool Object::flag(bool otherwise) const {
  if (operand_is(Operand::Kind::word)) return operand_->text == "true";
  return object_ && guarded([&] { return object_->IsBool(); }, false) ? object_->GetBool() : otherwise;
}

std::optional<std::vector<double>> Object::numbers(std::size_t count) const {
  if (size() != count) return std::nullopt;
  std::vector<double> numbers;
  for (std::size_t i = 0; i < count; ++i) {
    const auto value = at(i).number();
    if (!value) return std::nullopt;
    numbers.push_back(*value);
  }
  return numbers;
}

Matrix matrix_of(const Object &six) {
  const auto own = six.numbers(6);
  return own ? Matrix{(*own)[0], (*own)[1], (*own)[2], (*own)[3], (*own)[4], (*own)[5]} : Matrix{};
}

std::optional<Box> box_in(const Object &four) {
  const auto own = four.numbers(4);
  return own ? std::optional(box_of({(*own)[0], (*own)[1]}, {(*own)[2], (*own)[3]})) : std::nullopt;
}

struct PdfFile::State {
  explicit State(const std::filesystem::path &path) : file(path, std::ios::binary), parser(&objects) {
    objects.SetAutoDelete(true);
  }
  /// A stream of our own: in a file that it opens itself, PoDoFo goes back by a system call after every byte
  /// that it looks at.
  std::ifstream file;
  FileObjects objects;
  PoDoFo::PdfParser parser;
};

PdfFile::PdfFile(std::unique_ptr<State> state) : state_(std::move(state)) {}
PdfFile::PdfFile(PdfFile &&) noexcept = default;
PdfFile &PdfFile::operator=(PdfFile &&) noexcept = default;
PdfFile::~PdfFile() = default;

Outcome<PdfFile> PdfFile::open(const std::filesystem::path &path, const std::string &password) {
  prepare_libraries();
  if (!is_pdf(path))
    return Fault{"the file is not a PDF", path.string(), "Name the PDF that goes to the printer."};
  auto state = std::make_unique<State>(path);
  try {
    try {
      state->parser.ParseFile(PoDoFo::PdfRefCountedInputDevice(new PoDoFo::PdfInputDevice(&state->file)),
                              true);
    } catch (const PoDoFo::PdfError &error) {
      if (error.GetError() != PoDoFo::ePdfError_InvalidPassword) throw;
      state->parser.SetPassword(password);
    }
  } catch (const PoDoFo::PdfError &error) {
    return fault_of(error, path, !password.empty());
  }
  const PoDoFo::PdfEncrypt *encryption = state->parser.GetEncrypt();
  constexpr int with_256_bits =
      PoDoFo::PdfEncrypt::ePdfEncryptAlgorithm_AESV3 | PoDoFo::PdfEncrypt::ePdfEncryptAlgorithm_AESV3R6;
  state->objects.padded_strings = encryption && (encryption->GetEncryptAlgorithm() & with_256_bits) != 0;
  return PdfFile(std::move(state));
}

Object PdfFile::trailer() const {
  return Object(const_cast<PoDoFo::PdfObject *>(state_->parser.GetTrailer()), &state_->objects);
}

std::string PdfFile::version() const {
  const std::string in_header = guarded(
      [&] { return std::string(PoDoFo::s_szPdfVersionNums[state_->parser.GetPdfVersion()]); }, std::string());
  return std::max(in_header, catalog()["Version"].name());
}

bool PdfFile::encrypted() const { return state_->parser.GetEncrypted(); }

Decoded PdfFile::decoded(const Object &stream, std::size_t limit) const {
  if (!stream.is_stream()) return {{}, {}, {}, false};
  auto bytes = guarded(
      [&] {
        char *buffer = nullptr;
        PoDoFo::pdf_long length = 0;
        stream.object_->GetStream()->GetCopy(&buffer, &length);
        const std::unique_ptr<char, decltype(&PoDoFo::podofo_free)> owner(buffer, PoDoFo::podofo_free);
        return std::optional(
            std::string(buffer, static_cast<std::size_t>(std::max<PoDoFo::pdf_long>(0, length))));
      },
      std::optional<std::string>());
  if (!bytes) return {{}, {}, {}, false};
  return finished::decoded(std::move(*bytes), stream["Filter"], stream["DecodeParms"], limit);
}

void PdfFile::forget(const Object &object) const {
  auto *parsed = dynamic_cast<PoDoFo::PdfParserObject *>(object.object_);
  if (parsed) guarded([&] { return parsed->FreeObjectMemory(), true; }, false);
}

} // namespace stoneproof::finished
