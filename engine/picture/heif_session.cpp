// Feeds libheif from a PictureFile and keeps what it says. Only way in: HeifSession.
// Tested in tests/engine/picture/heif.test.cpp.
#include "engine/picture/heif_session.h"

#include <algorithm>
#include <bit>
#include <cstdlib>
#include <exception>
#include <string_view>

namespace stoneproof {

namespace {

/// More than any profile or Exif block in use takes.
constexpr std::size_t most_extra = 16'000'000;

/// A variable of the environment may name a folder of decoders that libheif would load and run. A proof of
/// other people's pictures uses those that the system installed. Done before main, while there is one thread.
[[maybe_unused]] const int no_foreign_plugins = ::unsetenv("LIBHEIF_PLUGIN_PATH");

std::uint64_t big(const std::uint8_t *bytes, int count) {
  std::uint64_t value = 0;
  for (int i = 0; i < count; ++i) value = value << 8 | bytes[i];
  return value;
}

} // namespace

const heif_reader HeifSession::reader = {1, on_position, on_read, on_seek, on_wait};

bool HeifSession::check(const heif_error &error) {
  if (error.code == heif_error_Ok) return true;
  error_ = error.message ? error.message : "no reason given";
  return false;
}

std::int64_t HeifSession::on_position(void *session) {
  return static_cast<std::int64_t>(static_cast<HeifSession *>(session)->place_);
}

int HeifSession::on_read(void *to, std::size_t count, void *session) {
  auto &self = *static_cast<HeifSession *>(session);
  const std::size_t got = self.file_.read_at(self.place_, to, count);
  self.place_ += got;
  return got == count ? 0 : 1;
}

int HeifSession::on_seek(std::int64_t place, void *session) {
  auto &self = *static_cast<HeifSession *>(session);
  if (place < 0 || static_cast<std::uint64_t>(place) > self.file_.size()) return 1;
  self.place_ = static_cast<std::uint64_t>(place);
  return 0;
}

heif_reader_grow_status HeifSession::on_wait(std::int64_t size, void *session) {
  const auto &self = *static_cast<HeifSession *>(session);
  const bool there = size >= 0 && static_cast<std::uint64_t>(size) <= self.file_.size();
  return there ? heif_reader_grow_status_size_reached : heif_reader_grow_status_size_beyond_eof;
}

bool HeifSession::open() {
  try {
    context_.reset(heif_context_alloc());
    if (!context_) return error_ = "there is not enough memory", false;
    // Several pictures are decoded at the same time already.
    heif_context_set_max_decoding_threads(context_.get(), 0);
    if (!check(heif_context_read_from_reader(context_.get(), &reader, this, nullptr))) return false;
    heif_image_handle *handle = nullptr;
    if (!check(heif_context_get_primary_image_handle(context_.get(), &handle))) return false;
    handle_.reset(handle);
    return true;
  } catch (const std::exception &) {
    error_ = "its boxes ask for too much";
    return false;
  }
}

int HeifSession::pages() const {
  return std::max(1, heif_context_get_number_of_top_level_images(context_.get()));
}

PixelSize HeifSession::size() const {
  return {heif_image_handle_get_width(handle_.get()), heif_image_handle_get_height(handle_.get())};
}

int HeifSession::bits() const { return heif_image_handle_get_luma_bits_per_pixel(handle_.get()); }

bool HeifSession::alpha() const { return heif_image_handle_has_alpha_channel(handle_.get()) != 0; }

std::vector<std::uint8_t> HeifSession::icc() const {
  const std::size_t size = heif_image_handle_get_raw_color_profile_size(handle_.get());
  std::vector<std::uint8_t> profile(size <= most_extra ? size : 0);
  if (profile.empty()) return {};
  const heif_error error = heif_image_handle_get_raw_color_profile(handle_.get(), profile.data());
  return error.code == heif_error_Ok ? profile : std::vector<std::uint8_t>{};
}

HeifNclx HeifSession::nclx() const {
  heif_color_profile_nclx *found = nullptr;
  const heif_error error = heif_image_handle_get_nclx_color_profile(handle_.get(), &found);
  HeifNclx held(found);
  return error.code == heif_error_Ok ? std::move(held) : nullptr;
}

// A block opens with the distance from there to the data proper (ISO/IEC 23008-12, annex A.2.1).
std::vector<std::uint8_t> HeifSession::exif() const {
  heif_item_id id = 0;
  if (heif_image_handle_get_list_of_metadata_block_IDs(handle_.get(), "Exif", &id, 1) < 1) return {};
  const std::size_t size = heif_image_handle_get_metadata_size(handle_.get(), id);
  if (size <= 4 || size > most_extra) return {};
  std::vector<std::uint8_t> block(size);
  if (heif_image_handle_get_metadata(handle_.get(), id, block.data()).code != heif_error_Ok) return {};
  const std::uint64_t data = 4 + big(block.data(), 4);
  if (data >= size) return {};
  constexpr std::string_view name("Exif\0\0", 6);
  std::vector<std::uint8_t> segment(name.begin(), name.end());
  segment.insert(segment.end(), block.begin() + static_cast<std::ptrdiff_t>(data), block.end());
  return segment;
}

HeifImage HeifSession::decode() {
  constexpr bool little = std::endian::native == std::endian::little;
  heif_chroma chroma = alpha() ? heif_chroma_interleaved_RGBA : heif_chroma_interleaved_RGB;
  if (bits() > 8 && alpha())
    chroma = little ? heif_chroma_interleaved_RRGGBBAA_LE : heif_chroma_interleaved_RRGGBBAA_BE;
  else if (bits() > 8)
    chroma = little ? heif_chroma_interleaved_RRGGBB_LE : heif_chroma_interleaved_RRGGBB_BE;
  try {
    const HeifOptions options(heif_decoding_options_alloc());
    // Damage must be an error: nobody should print a picture that was mended by guessing.
    if (options) options->strict_decoding = 1;
    heif_image *image = nullptr;
    const heif_error error =
        heif_decode_image(handle_.get(), &image, heif_colorspace_RGB, chroma, options.get());
    HeifImage held(image);
    return check(error) ? std::move(held) : nullptr;
  } catch (const std::exception &) {
    error_ = "its data asks for too much";
    return nullptr;
  }
}

} // namespace stoneproof
