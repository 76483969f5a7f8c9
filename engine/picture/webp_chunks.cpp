// Walks the chunks of a WebP file, each step inside the bounds of what holds it. Only way in:
// read_webp_chunks. Tested in tests/engine/picture/webp.test.cpp.
#include "engine/picture/webp_chunks.h"

#include <algorithm>
#include <array>
#include <string_view>

#include <webp/decode.h>

namespace stoneproof {

namespace {

/// Of any kind; a film of an hour has fewer. Beyond it the rest of the file is not looked at.
constexpr int most_chunks = 100'000;
constexpr std::uint64_t header_bytes = 8;

std::uint32_t little(const std::uint8_t *bytes, int count) {
  std::uint32_t value = 0;
  for (int i = count - 1; i >= 0; --i) value = value << 8 | bytes[i];
  return value;
}

struct Chunk {
  std::string name;
  std::uint64_t begin = 0, end = 0; ///< of the content; the end is cut to what holds the chunk
  bool whole = false;               ///< it ends where it says
  std::uint64_t after = 0;          ///< where the next one begins: content is padded to even
};

std::optional<Chunk> chunk_at(const PictureFile &file, std::uint64_t place, std::uint64_t end) {
  std::array<std::uint8_t, header_bytes> head{};
  if (place + header_bytes > end || file.read_at(place, head.data(), head.size()) < head.size())
    return std::nullopt;
  const std::uint64_t bytes = little(head.data() + 4, 4), begin = place + header_bytes;
  Chunk chunk{std::string(head.begin(), head.begin() + 4), begin, std::min(begin + bytes, end)};
  chunk.whole = chunk.end == begin + bytes;
  chunk.after = begin + bytes + (bytes & 1);
  return chunk;
}

/// The size of a coded picture by its own header, which is all that libwebp is shown.
bool measure(const PictureFile &file, const Chunk &chunk, WebpChunks &found) {
  std::array<std::uint8_t, 48> head{};
  const std::size_t got = file.read_at(chunk.begin - header_bytes, head.data(), head.size());
  WebPBitstreamFeatures features{};
  if (WebPGetFeatures(head.data(), got, &features) != VP8_STATUS_OK) return false;
  found.width = features.width, found.height = features.height;
  found.lossless = chunk.name == "VP8L";
  found.alpha = found.alpha || features.has_alpha;
  return true;
}

/// Looks for one coded picture from `place` on; false where there is none.
bool find_picture(const PictureFile &file, std::uint64_t place, std::uint64_t end, WebpChunks &found) {
  found.data = {};
  for (int i = 0; i < most_chunks; ++i) {
    const auto chunk = chunk_at(file, place, end);
    if (!chunk) return false;
    const bool picture = chunk->name == "VP8 " || chunk->name == "VP8L";
    if (chunk->name == "ALPH") found.alpha = true;
    if ((chunk->name == "ALPH" || picture) && found.data.bytes == 0) found.data.offset = place;
    if (picture) {
      found.data.bytes = chunk->end - found.data.offset;
      return measure(file, *chunk, found);
    }
    if (found.data.offset) found.data.bytes = chunk->end - found.data.offset;
    place = chunk->after;
  }
  return false;
}

/// A frame of an animation: 16 bytes of its own, then the picture (RFC 9649, section 2.7.1.1).
bool read_frame(const PictureFile &file, const Chunk &chunk, WebpChunks &found) {
  std::array<std::uint8_t, 16> head{};
  if (chunk.begin + head.size() > chunk.end || file.read_at(chunk.begin, head.data(), 16) < 16) return false;
  if (!find_picture(file, chunk.begin + 16, chunk.end, found)) return false;
  found.x = 2 * little(head.data(), 3), found.y = 2 * little(head.data() + 3, 3);
  const PixelSize claimed{little(head.data() + 6, 3) + 1, little(head.data() + 9, 3) + 1};
  return claimed == PixelSize{found.width, found.height} && found.x + found.width <= found.canvas.width &&
         found.y + found.height <= found.canvas.height;
}

/// The extended form: VP8X, then chunks in any number.
std::string_view read_extended(const PictureFile &file, const Chunk &first, std::uint64_t end,
                               WebpChunks &found) {
  std::array<std::uint8_t, 10> head{};
  if (!first.whole || first.end - first.begin < 10 || file.read_at(first.begin, head.data(), 10) < 10)
    return "its first chunk is cut off";
  found.animated = head[0] & 0x02;
  found.canvas = {little(head.data() + 4, 3) + 1, little(head.data() + 7, 3) + 1};
  bool has_picture = false;
  found.pages = 0;
  std::uint64_t place = first.after;
  for (int i = 0; i < most_chunks; ++i) {
    const auto chunk = chunk_at(file, place, end);
    if (!chunk) break;
    const WebpSpan content{chunk->begin, chunk->whole ? chunk->end - chunk->begin : 0};
    if (chunk->name == "ICCP" && !found.icc.bytes) found.icc = content;
    if (chunk->name == "EXIF" && !found.exif.bytes) found.exif = content;
    const bool picture =
        !found.animated && (chunk->name == "ALPH" || chunk->name == "VP8 " || chunk->name == "VP8L");
    if (picture && !has_picture) {
      if (!find_picture(file, place, end, found)) return "its picture is broken";
      has_picture = true, found.pages = 1;
    }
    if (found.animated && chunk->name == "ANMF") {
      if (!has_picture && !read_frame(file, *chunk, found)) return "its first picture is broken";
      has_picture = true, ++found.pages;
    }
    place = chunk->after;
  }
  if (!has_picture) return "it holds no picture";
  if (!found.animated && !found.covers_canvas()) return "its sizes contradict each other";
  return {};
}

} // namespace

WebpWalk read_webp_chunks(const PictureFile &file) {
  // What lies past the length that the RIFF header gives is no part of the picture.
  std::array<std::uint8_t, 12> head{};
  if (file.read_at(0, head.data(), head.size()) < head.size()) return {{}, "the file ends too early"};
  const std::uint64_t end = std::min<std::uint64_t>(file.size(), header_bytes + little(head.data() + 4, 4));
  const auto first = chunk_at(file, head.size(), end);
  if (!first) return {{}, "the file ends too early"};
  WebpChunks found;
  if (first->name == "VP8X") {
    const std::string_view error = read_extended(file, *first, end, found);
    if (!error.empty()) return {{}, std::string(error)};
    return {found, {}};
  }
  if (!find_picture(file, head.size(), end, found)) return {{}, "its picture is broken"};
  found.canvas = {found.width, found.height};
  return {found, {}};
}

std::vector<std::uint8_t> webp_bytes(const PictureFile &file, WebpSpan span, std::uint64_t most) {
  if (span.bytes > most) return {};
  std::vector<std::uint8_t> bytes(static_cast<std::size_t>(std::min(span.bytes, file.size())));
  bytes.resize(file.read_at(span.offset, bytes.data(), bytes.size()));
  return bytes;
}

} // namespace stoneproof
