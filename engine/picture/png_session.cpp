// Feeds libpng from a PictureFile and keeps what it says. Only way in: PngSession.
// Tested through facts and previews in tests/engine/picture/.
#include "engine/picture/png_session.h"

#include "engine/picture/coded_colours.h"

#include <cstdio>
#include <cstring>

namespace stoneproof {

PngSession::PngSession(const PictureFile &file) : file_(file) {
  png_ = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, on_error, on_warning);
  if (png_) info_ = png_create_info_struct(png_);
  run([](png_structp png, png_infop) {
    // Sizes are judged by our own limits. What is never read is skipped: a text may unpack to gigabytes, and
    // for some chunks libpng asks for as much memory as they claim to need.
    png_set_user_limits(png, PNG_UINT_31_MAX, PNG_UINT_31_MAX);
    static constexpr png_byte unread[] = "tEXt\0zTXt\0iTXt\0sPLT\0pCAL\0sCAL\0hIST\0eXIf";
    png_set_keep_unknown_chunks(png, PNG_HANDLE_CHUNK_NEVER, unread, 8);
    // libpng knows this chunk from 1.6.45 on; it is read here for all alike.
    static constexpr png_byte codes[] = "cICP";
    png_set_keep_unknown_chunks(png, PNG_HANDLE_CHUNK_ALWAYS, codes, 1);
  });
  if (png_) png_set_read_fn(png_, this, on_read);
}

PngColour PngSession::colour() const {
  png_unknown_chunkp chunks = nullptr;
  const int count = png_get_unknown_chunks(png_, info_, &chunks);
  for (int i = 0; i < count; ++i)
    if (std::memcmp(chunks[i].name, "cICP", 4) == 0 && chunks[i].size == 4)
      if (const auto tag = tag_of_code(chunks[i].data[0], chunks[i].data[1])) return {*tag, {}};
  png_charp name = nullptr;
  png_bytep profile = nullptr;
  png_uint_32 bytes = 0;
  int packing = 0;
  if (png_get_iCCP(png_, info_, &name, &packing, &profile, &bytes) == PNG_INFO_iCCP && profile)
    return {ColourTag::profile, {profile, profile + bytes}};
  if (png_get_valid(png_, info_, PNG_INFO_sRGB) != 0) return {ColourTag::srgb, {}};
  const bool measured = png_get_valid(png_, info_, PNG_INFO_gAMA | PNG_INFO_cHRM) != 0;
  return {measured ? ColourTag::gamma : ColourTag::none, {}};
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
