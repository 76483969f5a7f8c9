// A PDF file as numbered objects, written as they come. The one place that knows PoDoFo.
#pragma once

#include "reports/pdf/syntax.h"

#include <memory>
#include <ostream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stoneproof::pdf {

/// Keys without their slash, and values in PDF syntax.
using Entry = std::pair<std::string, std::string>;
using Entries = std::vector<Entry>;

enum class Compress { no, yes };

/// Streams go to the file at once, other objects when it is finished, so that memory does not grow with the
/// pictures. Anything PoDoFo cannot do is thrown as std::runtime_error.
class ObjectFile {
public:
  /// Begins a PDF 1.7 file with this information dictionary, from which its /ID is made. `stream` must
  /// outlive this object and be able to seek.
  ObjectFile(std::ostream &stream, const Entries &info);
  ObjectFile(const ObjectFile &) = delete;
  ObjectFile &operator=(const ObjectFile &) = delete;
  ~ObjectFile();

  /// An object to be set later, so that others can refer to it.
  ObjectNumber reserve();
  /// Makes an object a dictionary. It is kept as text until the file is finished: PoDoFo's own dictionaries
  /// take several times as much memory.
  void set(ObjectNumber object, const Entries &entries);
  /// Makes an object a stream and writes it. To be called once an object, after which it must not be touched.
  void write_stream(ObjectNumber object, const Entries &entries, std::string_view data, Compress compress);

  ObjectNumber page_tree() const;
  void set_catalog(const Entries &entries);
  /// Writes all that is left. Nothing else may be called afterwards.
  void finish();

private:
  struct State;
  std::unique_ptr<State> state_;
};

} // namespace stoneproof::pdf
