// Leads giflib up to the first picture of a file. Only way in: GifSession.
// Tested in tests/engine/picture/gif.test.cpp.
#include "engine/picture/gif_session.h"

#include <algorithm>
#include <string_view>

namespace stoneproof {

namespace {

/// More than any profile in use takes; a longer one is left out.
constexpr std::size_t most_icc = 16'000'000;

/// Names the block that carries a profile (ICC.1:2001-04, annex B.4: embedding in GIF).
constexpr std::string_view icc_name = "ICCRGBG1012";

} // namespace

GifSession::~GifSession() {
  if (gif_) DGifCloseFile(gif_, nullptr);
}

int GifSession::on_read(GifFileType *gif, GifByteType *to, int count) {
  auto &session = *static_cast<GifSession *>(gif->UserData);
  const std::size_t got = session.file_.read_at(session.place_, to, static_cast<std::size_t>(count));
  session.place_ += got;
  return static_cast<int>(got);
}

bool GifSession::open() {
  gif_ = DGifOpen(this, on_read, &error_);
  if (!gif_) return false;
  for (;;) {
    GifRecordType type = UNDEFINED_RECORD_TYPE;
    if (DGifGetRecordType(gif_, &type) != GIF_OK) return false;
    if (type == TERMINATE_RECORD_TYPE) return false;
    if (type == EXTENSION_RECORD_TYPE && !read_extension()) return false;
    if (type != IMAGE_DESC_RECORD_TYPE) continue;
    if (DGifGetImageDesc(gif_) != GIF_OK) return false;
    describe();
    return frame_.width > 0 && frame_.height > 0;
  }
}

// An extension is a chain of blocks; the first byte of each is its length.
bool GifSession::read_extension() {
  int code = 0;
  GifByteType *block = nullptr;
  if (DGifGetExtension(gif_, &code, &block) != GIF_OK) return false;
  GraphicsControlBlock control{};
  if (code == GRAPHICS_EXT_FUNC_CODE && block && DGifExtensionToGCB(block[0], block + 1, &control) == GIF_OK)
    frame_.see_through = control.TransparentColor;
  const bool icc = code == APPLICATION_EXT_FUNC_CODE && block && block[0] == icc_name.size() &&
                   std::equal(icc_name.begin(), icc_name.end(), block + 1);
  if (icc) frame_.icc.clear();
  while (block) {
    if (DGifGetExtensionNext(gif_, &block) != GIF_OK) return false;
    if (icc && block && frame_.icc.size() + block[0] <= most_icc)
      frame_.icc.insert(frame_.icc.end(), block + 1, block + 1 + block[0]);
  }
  return true;
}

void GifSession::describe() {
  const GifImageDesc &image = gif_->Image;
  frame_.x = image.Left, frame_.y = image.Top;
  frame_.width = image.Width, frame_.height = image.Height;
  frame_.screen = {std::max<std::int64_t>(gif_->SWidth, frame_.x + frame_.width),
                   std::max<std::int64_t>(gif_->SHeight, frame_.y + frame_.height)};
  frame_.interlaced = image.Interlace;
  const ColorMapObject *colours = image.ColorMap ? image.ColorMap : gif_->SColorMap;
  if (colours) frame_.bits = colours->BitsPerPixel;
  // The specification leaves the colours open where the file holds none; readers commonly show grays.
  for (std::size_t i = 0; i < frame_.palette.size(); ++i) {
    const auto gray = static_cast<std::uint8_t>(i);
    if (!colours)
      frame_.palette[i] = {gray, gray, gray};
    else if (i < static_cast<std::size_t>(colours->ColorCount))
      frame_.palette[i] = {colours->Colors[i].Red, colours->Colors[i].Green, colours->Colors[i].Blue};
  }
}

bool GifSession::read_line(std::uint8_t *to) {
  return DGifGetLine(gif_, to, static_cast<int>(frame_.width)) == GIF_OK;
}

std::string GifSession::error() const {
  const int code = gif_ ? gif_->Error : error_;
  const char *words = code ? GifErrorString(code) : nullptr;
  return words ? words : "it holds no pixels";
}

} // namespace stoneproof
