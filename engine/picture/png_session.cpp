// Feeds libpng from a PictureFile and keeps what it says. Only way in: PngSession.
// Tested through facts and previews in tests/engine/picture/.
#include "engine/picture/png_session.h"

#include <cstdio>

namespace stoneproof {

PngSession::PngSession(const PictureFile &file) : file_(file) {
  png_ = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, on_error, on_warning);
  if (png_) info_ = png_create_info_struct(png_);
  run([](png_structp png, png_infop) {
    // Sizes are judged by our own limits; texts are never read, so a text that unpacks to gigabytes does no
    // harm.
    png_set_user_limits(png, PNG_UINT_31_MAX, PNG_UINT_31_MAX);
    static constexpr png_byte texts[] = "tEXt\0zTXt\0iTXt";
    png_set_keep_unknown_chunks(png, PNG_HANDLE_CHUNK_NEVER, texts, 3);
  });
  if (png_) png_set_read_fn(png_, this, on_read);
}

PngSession::~PngSession() { png_destroy_read_struct(&png_, &info_, nullptr); }

void PngSession::on_error(png_structp png, png_const_charp message) {
  auto &session = *static_cast<PngSession *>(png_get_error_ptr(png));
  std::snprintf(session.error_.data(), session.error_.size(), "%s", message);
  std::longjmp(session.jump_, 1);
}

void PngSession::on_read(png_structp png, png_bytep to, std::size_t count) {
  auto &session = *static_cast<PngSession *>(png_get_io_ptr(png));
  const std::size_t got = session.file_.read_at(session.place_, to, count);
  session.place_ += got;
  if (got < count) png_error(png, "the file ends too early");
}

} // namespace stoneproof
