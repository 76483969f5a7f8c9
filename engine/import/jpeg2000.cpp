// JPEG 2000 through OpenJPEG. The only way in is decode_jpeg2000; tested in
// tests/engine/import/picture_export.test.cpp.
#include "engine/import/picture_codecs.h"

#include <openjpeg.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <memory>

namespace stoneproof::finished {

namespace {

// Codec and stream are both void to OpenJPEG.
struct DestroyCodec {
  void operator()(opj_codec_t *codec) const { opj_destroy_codec(codec); }
};
struct DestroyStream {
  void operator()(opj_stream_t *stream) const { opj_stream_destroy(stream); }
};
struct DestroyImage {
  void operator()(opj_image_t *image) const { opj_image_destroy(image); }
};
using Codec = std::unique_ptr<opj_codec_t, DestroyCodec>;
using Stream = std::unique_ptr<opj_stream_t, DestroyStream>;
using Image = std::unique_ptr<opj_image_t, DestroyImage>;

struct Reading {
  std::string_view data;
  std::size_t at = 0;
};

OPJ_SIZE_T read(void *buffer, OPJ_SIZE_T size, void *user) {
  auto &reading = *static_cast<Reading *>(user);
  const std::string_view part = reading.data.substr(std::min(reading.at, reading.data.size()), size);
  if (part.empty()) return static_cast<OPJ_SIZE_T>(-1);
  std::memcpy(buffer, part.data(), part.size());
  reading.at += part.size();
  return part.size();
}

OPJ_BOOL seek(OPJ_OFF_T to, void *user) {
  auto &reading = *static_cast<Reading *>(user);
  if (to < 0 || static_cast<std::size_t>(to) > reading.data.size()) return OPJ_FALSE;
  reading.at = static_cast<std::size_t>(to);
  return OPJ_TRUE;
}

OPJ_OFF_T skip(OPJ_OFF_T by, void *user) {
  auto &reading = *static_cast<Reading *>(user);
  return seek(static_cast<OPJ_OFF_T>(reading.at) + by, user) ? by : -1;
}

Stream stream_of(Reading &reading) {
  Stream stream(opj_stream_default_create(OPJ_TRUE));
  opj_stream_set_user_data(stream.get(), &reading, nullptr);
  opj_stream_set_user_data_length(stream.get(), reading.data.size());
  opj_stream_set_read_function(stream.get(), read);
  opj_stream_set_seek_function(stream.get(), seek);
  opj_stream_set_skip_function(stream.get(), skip);
  return stream;
}

/// The box "jP" begins a file; a bare code stream begins with its own mark.
OPJ_CODEC_FORMAT format_of(std::string_view data) {
  return data.substr(4, 4) == "jP  " || data.substr(4, 2) == "jP" ? OPJ_CODEC_JP2 : OPJ_CODEC_J2K;
}

/// A sample as eight bits.
char eight_bits(const opj_image_comp_t &channel, std::size_t at) {
  std::int64_t value = channel.data[at];
  if (channel.sgnd) value += std::int64_t{1} << (channel.prec - 1);
  const std::int64_t most = (std::int64_t{1} << channel.prec) - 1;
  return static_cast<char>(std::clamp<std::int64_t>((value * 255 + most / 2) / most, 0, 255));
}

/// Brightness and two differences to RGB (ITU-R BT.601, the full range, as JFIF has it).
void to_rgb(std::string &rows) {
  const auto byte = [](double value) {
    return static_cast<char>(std::lround(std::clamp(value, 0.0, 255.0)));
  };
  for (std::size_t i = 0; i + 2 < rows.size(); i += 3) {
    const double y = static_cast<unsigned char>(rows[i]);
    const double blue = static_cast<unsigned char>(rows[i + 1]) - 128.0;
    const double red = static_cast<unsigned char>(rows[i + 2]) - 128.0;
    rows[i] = byte(y + 1.402 * red);
    rows[i + 1] = byte(y - 0.344136 * blue - 0.714136 * red);
    rows[i + 2] = byte(y + 1.772 * blue);
  }
}

DecodedPicture picture_of(const opj_image_t &image) {
  DecodedPicture picture;
  const opj_image_comp_t &first = image.comps[0];
  picture.size = {first.w, first.h};
  picture.channels = 0;
  for (OPJ_UINT32 c = 0; c < image.numcomps && c < 4; ++c)
    if (image.comps[c].alpha == 0 && image.comps[c].data) ++picture.channels;
  if (picture.channels == 2) picture.channels = 1;
  for (OPJ_UINT32 y = 0; y < first.h; ++y)
    for (OPJ_UINT32 x = 0; x < first.w; ++x)
      for (int c = 0; c < picture.channels; ++c) {
        const opj_image_comp_t &channel = image.comps[c];
        // A channel with fewer samples covers the same area.
        const std::size_t column = static_cast<std::size_t>(x) * channel.w / first.w;
        const std::size_t row = static_cast<std::size_t>(y) * channel.h / first.h;
        picture.rows += eight_bits(channel, row * channel.w + column);
      }
  if (image.color_space == OPJ_CLRSPC_SYCC && picture.channels == 3) to_rgb(picture.rows);
  return picture;
}

} // namespace

std::optional<DecodedPicture> decode_jpeg2000(std::string_view data, std::int64_t most_pixels) {
  if (data.size() < 12) return std::nullopt;
  Reading reading{data};
  const Stream stream = stream_of(reading);
  const Codec codec(opj_create_decompress(format_of(data)));
  opj_dparameters_t parameters;
  opj_set_default_decoder_parameters(&parameters);
  opj_image_t *read_image = nullptr;
  const bool begun =
      opj_setup_decoder(codec.get(), &parameters) && opj_read_header(stream.get(), codec.get(), &read_image);
  const Image image(read_image);
  if (!begun || !image || image->numcomps == 0) return std::nullopt;
  const std::int64_t width = image->x1 - image->x0, height = image->y1 - image->y0;
  if (width <= 0 || height <= 0 || width * height > most_pixels) return std::nullopt;
  if (!opj_decode(codec.get(), stream.get(), image.get())) return std::nullopt;
  for (OPJ_UINT32 c = 0; c < image->numcomps; ++c)
    if (!image->comps[c].data || image->comps[c].prec == 0 || image->comps[c].prec > 31 ||
        image->comps[c].w == 0 || image->comps[c].h == 0)
      return std::nullopt;
  DecodedPicture picture = picture_of(*image);
  return picture.channels > 0 ? std::optional(std::move(picture)) : std::nullopt;
}

} // namespace stoneproof::finished
