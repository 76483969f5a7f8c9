// Opens a TIFF with handlers of its own, so that sessions in several threads do not meet.
// Only ways in: TiffSession and tiff_icc. Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/tiff_session.h"

#include "engine/picture/faults.h"

#include <cstdarg>
#include <cstdio>
#include <cstring>

namespace stoneproof {

namespace {

// What libtiff is told is the file's name. It puts it before some of its messages, whose path is told
// elsewhere.
constexpr char own_name[] = "picture";
constexpr std::string_view own_name_prefix = "picture: ";

// Directories that are looked at for a picture of full size; writers of reduced copies put ten at most.
constexpr int most_looked_at = 100;

// Profiles of presses come to a few megabytes.
constexpr std::uint32_t most_icc_bytes = 16'000'000;

} // namespace

Outcome<std::unique_ptr<TiffSession>> TiffSession::open(const PictureFile &file, const PictureLimits &limits,
                                                        std::uint64_t directory) {
  std::unique_ptr<TiffSession> session(new TiffSession(file));
  const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(TIFFOpenOptionsAlloc(),
                                                                                 TIFFOpenOptionsFree);
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), on_error, session.get());
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), on_warning, session.get());
  TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(), static_cast<tmsize_t>(limits.most_memory));
  // m: no memory map, in which a file cut short while it is read would kill the program.
  // O: strip offsets are read when they are needed.
  session->tiff_ = TIFFClientOpenExt(
      own_name, "rmO", session.get(), on_read, [](thandle_t, void *, tmsize_t) -> tmsize_t { return 0; },
      on_seek, [](thandle_t) { return 0; },
      [](thandle_t handle) -> toff_t { return static_cast<TiffSession *>(handle)->file_.size(); },
      [](thandle_t, void **, toff_t *) { return 0; }, [](thandle_t, void *, toff_t) {}, options.get());
  if (!session->tiff_) return faults::broken_header(file.path(), "TIFF", session->error());
  if (directory == 0)
    session->choose_picture();
  else if (TIFFSetSubDirectory(session->tiff_, directory) != 1)
    return faults::broken_header(file.path(), "TIFF", session->error());
  session->header_ = read_tiff_header(session->tiff_);
  const PixelSize size{session->header_.width, session->header_.height};
  if (size.width == 0 || size.height == 0)
    return faults::broken_header(file.path(), "TIFF", "it names no width or no height");
  if (!faults::within(size, limits)) return faults::too_many_pixels(file.path(), size, limits);
  session->error_[0] = '\0'; // errors in tags that nobody needs
  return session;
}

TiffSession::~TiffSession() {
  if (tiff_) TIFFClose(tiff_);
}

void TiffSession::choose_picture() {
  const auto is_lesser = [this] {
    return (tag<std::uint32_t>(TIFFTAG_SUBFILETYPE, 0) & (FILETYPE_REDUCEDIMAGE | FILETYPE_MASK)) != 0;
  };
  if (!is_lesser()) return;
  const auto width = tag<std::uint32_t>(TIFFTAG_IMAGEWIDTH, 0);
  const auto height = tag<std::uint32_t>(TIFFTAG_IMAGELENGTH, 0);
  for (int looked_at = 1; looked_at < most_looked_at && TIFFReadDirectory(tiff_) == 1; ++looked_at)
    if (!is_lesser() && tag<std::uint32_t>(TIFFTAG_IMAGEWIDTH, 0) >= width &&
        tag<std::uint32_t>(TIFFTAG_IMAGELENGTH, 0) >= height)
      return;
  TIFFSetDirectory(tiff_, 0);
}

int TiffSession::on_error(TIFF *, void *user, const char *, const char *format, va_list arguments) {
  auto &error = static_cast<TiffSession *>(user)->error_;
  if (error[0] != '\0') return 1;
  std::vsnprintf(error.data(), error.size(), format, arguments);
  const std::string_view text = error.data();
  if (text.starts_with(own_name_prefix))
    std::memmove(error.data(), error.data() + own_name_prefix.size(),
                 text.size() - own_name_prefix.size() + 1);
  return 1; // handled: libtiff's own handlers, which print, are left out
}

int TiffSession::on_warning(TIFF *, void *user, const char *module, const char *format, va_list arguments) {
  if (module && std::strcmp(module, "JPEGLib") == 0)
    return on_error(nullptr, user, module, format, arguments);
  return 1;
}

tmsize_t TiffSession::on_read(thandle_t handle, void *to, tmsize_t count) {
  auto &session = *static_cast<TiffSession *>(handle);
  const std::size_t got = session.file_.read_at(session.place_, to, static_cast<std::size_t>(count));
  session.place_ += got;
  return static_cast<tmsize_t>(got);
}

toff_t TiffSession::on_seek(thandle_t handle, toff_t offset, int from) {
  auto &session = *static_cast<TiffSession *>(handle);
  if (from == SEEK_CUR) offset += session.place_;
  if (from == SEEK_END) offset += session.file_.size();
  return session.place_ = offset;
}

std::vector<std::uint8_t> tiff_icc(const TiffSession &session) {
  std::uint32_t bytes = 0;
  const std::uint8_t *profile = nullptr;
  if (TIFFGetField(session.tiff(), TIFFTAG_ICCPROFILE, &bytes, &profile) != 1 || !profile) return {};
  if (bytes > most_icc_bytes) return {};
  return {profile, profile + bytes};
}

} // namespace stoneproof
