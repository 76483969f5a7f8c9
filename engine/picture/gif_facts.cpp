// Facts of a GIF: the screen, the first picture's own header, and how many pictures follow. Only way in:
// gif_facts. Tested in tests/engine/picture/gif.test.cpp.
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/gif_session.h"

#include <array>
#include <optional>

namespace stoneproof {

namespace {

/// Beyond this many, pictures are no longer counted; an hour of film has fewer.
constexpr int most_pages = 100'000;

/// Goes over the blocks of a GIF without unpacking any (GIF89a specification, section 13 on).
class Blocks {
public:
  Blocks(const PictureFile &file, std::uint64_t place) : file_(file), place_(place) {}

  /// The byte at the place, which moves on; none at the end of the file.
  std::optional<std::uint8_t> byte() {
    if (place_ < first_ || place_ >= first_ + held_) {
      first_ = place_;
      held_ = file_.read_at(place_, piece_.data(), piece_.size());
      if (held_ == 0) return std::nullopt;
    }
    return piece_[static_cast<std::size_t>(place_++ - first_)];
  }
  void skip(std::uint64_t count) { place_ += count; }

  /// To the end of a chain of blocks: each begins with its length, one of no length ends it.
  void skip_chain() {
    while (const auto length = byte()) {
      if (*length == 0) return;
      skip(*length);
    }
  }

private:
  const PictureFile &file_;
  std::uint64_t place_, first_ = 0;
  std::size_t held_ = 0;
  std::array<std::uint8_t, 16384> piece_{};
};

/// The pictures of the file; `place` is the first one's data, behind the code size.
int count_pages(const PictureFile &file, std::uint64_t place) {
  Blocks blocks(file, place);
  blocks.skip_chain();
  int pages = 1;
  while (pages < most_pages) {
    const auto kind = blocks.byte();
    if (kind == ',') {
      blocks.skip(8);
      const auto packed = blocks.byte();
      if (!packed) return pages;
      if (*packed & 0x80) blocks.skip(3u << ((*packed & 7) + 1));
      if (!blocks.byte()) return pages;
      ++pages;
    } else if (kind == '!') {
      blocks.byte();
    } else {
      return pages;
    }
    blocks.skip_chain();
  }
  return pages;
}

} // namespace

Outcome<Facts> gif_facts(const PictureFile &file, const PictureLimits &limits) {
  GifSession session(file);
  if (!session.open()) return faults::broken_header(file.path(), "GIF", session.error());
  const GifFrame &frame = session.frame();
  if (!faults::within(frame.screen, limits))
    return faults::too_many_pixels(file.path(), frame.screen, limits);
  Facts facts;
  facts.format = Format::gif;
  facts.bytes = file.size();
  set_seen(facts, frame.screen, 1);
  facts.bits = frame.bits;
  facts.channels = 1;
  facts.colour = ColourModel::indexed;
  facts.alpha = frame.alpha();
  facts.compression = "LZW";
  facts.interlaced = frame.interlaced;
  if (!frame.icc.empty()) {
    facts.tag = ColourTag::profile;
    facts.profile = read_profile(frame.icc);
  }
  facts.pages = count_pages(file, session.place());
  return facts;
}

} // namespace stoneproof
