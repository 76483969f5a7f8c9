// The writers behind make_newer.h. A library that fails here aborts the test program: it is the test's own
// fault.
#include "tests/engine/picture/make_newer.h"

#include <cstdlib>
#include <memory>
#include <string_view>

#include <gif_lib.h>
#include <libheif/heif.h>
#include <webp/encode.h>

namespace made {

namespace {

void must(bool done) {
  if (!done) std::abort();
}

void put(Bytes &out, std::uint32_t value, int count) {
  for (int i = 0; i < count; ++i) out.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
}

void put_chunk(Bytes &out, std::string_view name, const Bytes &content) {
  out.insert(out.end(), name.begin(), name.end());
  put(out, static_cast<std::uint32_t>(content.size()), 4);
  out.insert(out.end(), content.begin(), content.end());
  if (content.size() % 2) out.push_back(0);
}

using Map = std::unique_ptr<ColorMapObject, decltype(&GifFreeMapObject)>;

Map map_of(const std::vector<std::array<std::uint8_t, 3>> &palette) {
  if (palette.empty()) return {nullptr, GifFreeMapObject};
  std::vector<GifColorType> colours;
  for (const auto &colour : palette) colours.push_back({colour[0], colour[1], colour[2]});
  return {GifMakeMapObject(static_cast<int>(colours.size()), colours.data()), GifFreeMapObject};
}

void put_icc(GifFileType *gif, const Bytes &icc) {
  if (icc.empty()) return;
  must(EGifPutExtensionLeader(gif, APPLICATION_EXT_FUNC_CODE) == GIF_OK);
  must(EGifPutExtensionBlock(gif, 11, "ICCRGBG1012") == GIF_OK);
  for (std::size_t at = 0; at < icc.size(); at += 255) {
    const auto count = static_cast<int>(std::min<std::size_t>(255, icc.size() - at));
    must(EGifPutExtensionBlock(gif, count, icc.data() + at) == GIF_OK);
  }
  must(EGifPutExtensionTrailer(gif) == GIF_OK);
}

void put_picture(GifFileType *gif, const Raster &picture, const GifKind &kind, const ColorMapObject *map) {
  if (kind.see_through >= 0) {
    const GraphicsControlBlock control{0, false, 10, kind.see_through};
    GifByteType bytes[4];
    must(EGifGCBToExtension(&control, bytes) == 4);
    must(EGifPutExtension(gif, GRAPHICS_EXT_FUNC_CODE, 4, bytes) == GIF_OK);
  }
  must(EGifPutImageDesc(gif, kind.left, kind.top, picture.width, picture.height, kind.interlaced, map) ==
       GIF_OK);
  std::vector<int> rows;
  if (kind.interlaced) {
    for (const auto &[first, step] : {std::pair{0, 8}, {4, 8}, {2, 4}, {1, 2}})
      for (int y = first; y < picture.height; y += step) rows.push_back(y);
  } else {
    for (int y = 0; y < picture.height; ++y) rows.push_back(y);
  }
  Bytes line(static_cast<std::size_t>(picture.width));
  for (const int y : rows) {
    for (int x = 0; x < picture.width; ++x)
      line[static_cast<std::size_t>(x)] = static_cast<std::uint8_t>(picture.at(x, y, 0));
    must(EGifPutLine(gif, line.data(), picture.width) == GIF_OK);
  }
}

int write_to(GifFileType *gif, const GifByteType *bytes, int count) {
  auto &out = *static_cast<Bytes *>(gif->UserData);
  out.insert(out.end(), bytes, bytes + count);
  return count;
}

Bytes webp_of(const Raster &picture, bool lossless) {
  Bytes samples;
  for (const std::uint16_t sample : picture.samples) samples.push_back(static_cast<std::uint8_t>(sample));
  const int w = picture.width, h = picture.height, stride = w * picture.channels;
  std::uint8_t *out = nullptr;
  std::size_t size = 0;
  if (picture.channels == 4)
    size = lossless ? WebPEncodeLosslessRGBA(samples.data(), w, h, stride, &out)
                    : WebPEncodeRGBA(samples.data(), w, h, stride, 90, &out);
  else
    size = lossless ? WebPEncodeLosslessRGB(samples.data(), w, h, stride, &out)
                    : WebPEncodeRGB(samples.data(), w, h, stride, 90, &out);
  must(size > 0);
  Bytes bytes(out, out + size);
  WebPFree(out);
  return bytes;
}

/// The chunks ALPH, VP8 and VP8L of a whole file.
Bytes picture_chunks(const Bytes &webp) {
  Bytes chunks;
  for (std::size_t at = 12; at + 8 <= webp.size();) {
    const std::string_view name(reinterpret_cast<const char *>(webp.data()) + at, 4);
    const std::size_t size = webp[at + 4] | static_cast<std::size_t>(webp[at + 5]) << 8 |
                             static_cast<std::size_t>(webp[at + 6]) << 16;
    const std::size_t next = at + 8 + size + size % 2;
    if (name == "ALPH" || name == "VP8 " || name == "VP8L")
      chunks.insert(chunks.end(), webp.begin() + static_cast<std::ptrdiff_t>(at),
                    webp.begin() + static_cast<std::ptrdiff_t>(next));
    at = next;
  }
  return chunks;
}

} // namespace

void write_gif(const std::filesystem::path &file, const Raster &picture, const GifKind &kind) {
  Bytes out;
  GifFileType *gif = EGifOpen(&out, write_to, nullptr);
  must(gif);
  EGifSetGifVersion(gif, true);
  const Map map = map_of(kind.palette);
  const Map other = map_of({{9, 9, 9}, {8, 8, 8}});
  const int width = kind.screen_width ? kind.screen_width : picture.width;
  const int height = kind.screen_height ? kind.screen_height : picture.height;
  must(EGifPutScreenDesc(gif, width, height, 8, 0, kind.local ? other.get() : map.get()) == GIF_OK);
  put_icc(gif, kind.icc);
  for (int i = 0; i < kind.pages; ++i) put_picture(gif, picture, kind, kind.local ? map.get() : nullptr);
  must(EGifCloseFile(gif, nullptr) == GIF_OK);
  write_bytes(file, out);
}

void write_webp(const std::filesystem::path &file, const Raster &picture, const WebpKind &kind) {
  const Bytes plain = webp_of(picture, kind.lossless);
  if (kind.icc.empty() && kind.exif.empty() && kind.canvas_width == 0) return write_bytes(file, plain);
  const bool animated = kind.canvas_width > 0, alpha = picture.channels == 4;
  Bytes chunks = {'W', 'E', 'B', 'P'}, extended;
  put(extended,
      (kind.icc.empty() ? 0u : 0x20u) | (alpha ? 0x10u : 0) | (kind.exif.empty() ? 0u : 0x08u) |
          (animated ? 0x02u : 0),
      4);
  put(extended, static_cast<std::uint32_t>((animated ? kind.canvas_width : picture.width) - 1), 3);
  put(extended, static_cast<std::uint32_t>((animated ? kind.canvas_height : picture.height) - 1), 3);
  put_chunk(chunks, "VP8X", extended);
  if (!kind.icc.empty()) put_chunk(chunks, "ICCP", kind.icc);
  const Bytes coded = picture_chunks(plain);
  if (animated) put_chunk(chunks, "ANIM", Bytes(6, 0));
  for (int i = 0; animated && i < kind.pages; ++i) {
    Bytes frame;
    for (const int value : {kind.left / 2, kind.top / 2, picture.width - 1, picture.height - 1, 100})
      put(frame, static_cast<std::uint32_t>(value), 3);
    frame.push_back(0);
    frame.insert(frame.end(), coded.begin(), coded.end());
    put_chunk(chunks, "ANMF", frame);
  }
  if (!animated) chunks.insert(chunks.end(), coded.begin(), coded.end());
  if (!kind.exif.empty()) put_chunk(chunks, "EXIF", kind.exif);
  Bytes whole;
  put_chunk(whole, "RIFF", chunks);
  write_bytes(file, whole);
}

namespace {

template <class T>
using Held = std::unique_ptr<T, void (*)(T *)>;

void must_heif(const heif_error &error) { must(error.code == heif_error_Ok); }

heif_image *image_of(const Raster &picture, const HeifKind &kind) {
  const bool wide = picture.bits > 8, alpha = picture.channels == 4;
  const heif_chroma chroma =
      wide ? (alpha ? heif_chroma_interleaved_RRGGBBAA_BE : heif_chroma_interleaved_RRGGBB_BE)
           : (alpha ? heif_chroma_interleaved_RGBA : heif_chroma_interleaved_RGB);
  heif_image *image = nullptr;
  must_heif(heif_image_create(picture.width, picture.height, heif_colorspace_RGB, chroma, &image));
  must_heif(
      heif_image_add_plane(image, heif_channel_interleaved, picture.width, picture.height, picture.bits));
  int stride = 0;
  std::uint8_t *plane = heif_image_get_plane(image, heif_channel_interleaved, &stride);
  for (int y = 0; y < picture.height; ++y) {
    std::uint8_t *to = plane + y * stride;
    for (int x = 0; x < picture.width; ++x)
      for (int c = 0; c < picture.channels; ++c) {
        const int value = picture.at(x, y, c);
        if (wide) *to++ = static_cast<std::uint8_t>(value >> 8);
        *to++ = static_cast<std::uint8_t>(value);
      }
  }
  if (!kind.icc.empty())
    must_heif(heif_image_set_raw_color_profile(image, "prof", kind.icc.data(), kind.icc.size()));
  return image;
}

} // namespace

void write_heif(const std::filesystem::path &file, const Raster &picture, const HeifKind &kind) {
  const Held<heif_context> context(heif_context_alloc(), heif_context_free);
  heif_encoder *encoder = nullptr;
  must_heif(heif_context_get_encoder_for_format(
      context.get(), kind.avif ? heif_compression_AV1 : heif_compression_HEVC, &encoder));
  const Held<heif_encoder> held_encoder(encoder, heif_encoder_release);
  // libheif 1.15 gives AV1 of 10 bits a kind that goes with one colour for two pixels only.
  const bool deep_av1 = kind.avif && picture.bits > 8;
  must_heif(heif_encoder_set_lossy_quality(encoder, 90));
  if (kind.lossless && !deep_av1) must_heif(heif_encoder_set_lossless(encoder, 1));
  if (kind.lossless || deep_av1)
    must_heif(heif_encoder_set_parameter_string(encoder, "chroma", deep_av1 ? "422" : "444"));
  if (kind.avif) must_heif(heif_encoder_set_parameter_integer(encoder, "speed", 8));
  const Held<heif_color_profile_nclx> nclx(heif_nclx_color_profile_alloc(), heif_nclx_color_profile_free);
  must_heif(heif_nclx_color_profile_set_color_primaries(
      nclx.get(), static_cast<std::uint16_t>(kind.primaries ? kind.primaries : 1)));
  must_heif(heif_nclx_color_profile_set_transfer_characteristics(nclx.get(), 13));
  // 0: the colours themselves in place of brightness and differences; 6: as JPEG has it (ITU-T H.273, table
  // 4).
  must_heif(heif_nclx_color_profile_set_matrix_coefficients(nclx.get(), kind.lossless && !deep_av1 ? 0 : 6));
  nclx->full_range_flag = 1;
  const Held<heif_encoding_options> options(heif_encoding_options_alloc(), heif_encoding_options_free);
  options->output_nclx_profile = nclx.get();
  options->macOS_compatibility_workaround_no_nclx_profile = 0;
  options->image_orientation = static_cast<heif_orientation>(kind.orientation);
  const std::unique_ptr<heif_image, void (*)(const heif_image *)> image(image_of(picture, kind),
                                                                        heif_image_release);
  must_heif(heif_image_set_nclx_color_profile(image.get(), nclx.get()));
  for (int i = 0; i < kind.pages; ++i) {
    heif_image_handle *handle = nullptr;
    must_heif(heif_context_encode_image(context.get(), image.get(), encoder, options.get(), &handle));
    if (!kind.exif.empty())
      must_heif(heif_context_add_exif_metadata(context.get(), handle, kind.exif.data(),
                                               static_cast<int>(kind.exif.size())));
    heif_image_handle_release(handle);
  }
  must_heif(heif_context_write_to_file(context.get(), file.c_str()));
}

} // namespace made
