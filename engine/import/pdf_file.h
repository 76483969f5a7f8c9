// The objects of a PDF file (ISO 32000-1, 7.3) as values that cannot be missing: what is not there, or is of
// another kind, reads as nothing. Reads through PoDoFo, whose types and errors end here.
#pragma once

#include "engine/import/content_parser.h"
#include "engine/import/filters.h"
#include "engine/import/plane.h"
#include "engine/outcome.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace PoDoFo {
class PdfObject;
class PdfVecObjects;
} // namespace PoDoFo

namespace stoneproof::finished {

/// Whether a file begins as a PDF does.
bool is_pdf(const std::filesystem::path &file);

/// An object of an open PdfFile, references followed; or a value that stands in a content stream; or nothing.
/// Must not outlive what it is of.
class Object {
public:
  Object() = default;
  explicit Object(const Operand *operand) : operand_(operand) {}
  /// For PdfFile. `object` may be null or a reference.
  Object(PoDoFo::PdfObject *object, PoDoFo::PdfVecObjects *objects, bool padded = false);

  explicit operator bool() const { return object_ != nullptr || operand_ != nullptr; }
  bool is_dictionary() const; ///< a stream is one too
  bool is_stream() const;
  bool is_array() const;

  Object operator[](std::string_view key) const; ///< of a dictionary or stream
  Object at(std::size_t index) const;            ///< of an array
  std::size_t size() const;                      ///< of an array; else 0
  std::vector<std::string> keys() const;         ///< of the file's dictionaries and streams, by the alphabet

  std::optional<double> number() const;
  double number_or(double otherwise) const { return number().value_or(otherwise); }
  /// Whole and within the bounds; else `otherwise`.
  int whole_or(int otherwise, int least, int most) const;
  std::string name() const;  ///< without its slash; empty where it is no name
  std::string bytes() const; ///< of a string
  std::string text() const;  ///< of a text string (ISO 32000-1, 7.9.2.2), as UTF-8
  bool flag(bool otherwise) const;
  /// The numbers of an array of so many numbers, all finite.
  std::optional<std::vector<double>> numbers(std::size_t count) const;
  /// The number of an indirect object; 0 of one that stands in another. Tells objects apart.
  std::uint32_t id() const { return id_; }

private:
  friend class PdfFile;
  bool operand_is(Operand::Kind kind) const { return operand_ && operand_->is(kind); }

  const Operand *operand_ = nullptr;
  PoDoFo::PdfObject *object_ = nullptr;
  PoDoFo::PdfVecObjects *objects_ = nullptr;
  std::uint32_t id_ = 0;
  bool padded_ = false; ///< its strings end in the padding of their encryption
};

/// The map that six numbers make; the identity where they are none.
Matrix matrix_of(const Object &six);
/// The box between the two corners of an array of four numbers.
std::optional<Box> box_in(const Object &four);

/// A stream's bytes after its lossless filters.
struct Decoded {
  std::string bytes;
  std::string
      codec; ///< the filter of a picture that is left: DCTDecode, JPXDecode, CCITTFaxDecode, JBIG2Decode
  Object parameters; ///< of that filter
  bool whole = true; ///< false: broken or beyond the limit; `bytes` is what came before
  bool beyond_limit = false;
};

class PdfFile {
public:
  /// Faults: not a PDF, damaged, or encrypted with another password than this one; `where` is the path.
  static Outcome<PdfFile> open(const std::filesystem::path &path, const std::string &password = {});
  PdfFile(PdfFile &&) noexcept;
  PdfFile &operator=(PdfFile &&) noexcept;
  ~PdfFile();

  Object trailer() const;
  Object catalog() const { return trailer()["Root"]; }
  std::string version() const; ///< of its header, or the catalog's where that is later, e.g. "1.7"
  bool encrypted() const;

  Decoded decoded(const Object &stream, std::size_t limit) const;
  /// Lets go of what was read of an indirect object; it is read again when it is asked for.
  void forget(const Object &object) const;

private:
  struct State;
  explicit PdfFile(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

/// Undoes the lossless filters of bytes: of a stream, or of an inline image.
Decoded decoded(std::string bytes, const Object &filters, const Object &parameters, std::size_t limit);

} // namespace stoneproof::finished
