// JBIG2 through jbig2dec. The only way in is decode_jbig2; tested in
// tests/engine/import/picture_export.test.cpp.
#include "engine/import/picture_codecs.h"

#include <cstddef>
#include <cstdint>

extern "C" {
#include <jbig2.h>
}

namespace stoneproof::finished {

namespace {

const unsigned char *bytes_of(std::string_view data) {
  return reinterpret_cast<const unsigned char *>(data.data());
}

/// Messages end here.
void quiet(void *, const char *, Jbig2Severity, std::uint32_t) {}

/// A context and all that it holds.
class Context {
public:
  explicit Context(Jbig2GlobalCtx *globals)
      : context_(jbig2_ctx_new(nullptr, JBIG2_OPTIONS_EMBEDDED, globals, quiet, nullptr)) {}
  ~Context() {
    if (context_) jbig2_ctx_free(context_);
  }
  Context(const Context &) = delete;
  Context &operator=(const Context &) = delete;
  Jbig2Ctx *get() const { return context_; }
  Jbig2Ctx *release() {
    Jbig2Ctx *context = context_;
    context_ = nullptr;
    return context;
  }

private:
  Jbig2Ctx *context_;
};

} // namespace

std::optional<DecodedPicture> decode_jbig2(std::string_view data, std::string_view globals) {
  Jbig2GlobalCtx *shared = nullptr;
  if (!globals.empty()) {
    Context context(nullptr);
    if (!context.get() || jbig2_data_in(context.get(), bytes_of(globals), globals.size()) < 0)
      return std::nullopt;
    shared = jbig2_make_global_ctx(context.release());
  }
  std::optional<DecodedPicture> picture;
  {
    Context context(shared);
    const bool read = context.get() && jbig2_data_in(context.get(), bytes_of(data), data.size()) >= 0 &&
                      jbig2_complete_page(context.get()) >= 0;
    Jbig2Image *page = read ? jbig2_page_out(context.get()) : nullptr;
    if (page) {
      picture.emplace();
      picture->size = {page->width, page->height};
      picture->bits = 1;
      for (std::uint32_t y = 0; y < page->height; ++y)
        picture->rows.append(reinterpret_cast<const char *>(page->data) + std::size_t{y} * page->stride,
                             (page->width + 7) / 8);
      jbig2_release_page(context.get(), page);
    }
  }
  if (shared) jbig2_global_ctx_free(shared);
  return picture;
}

} // namespace stoneproof::finished
