// What becomes of a picture's colours on the press: how much ink they take, and whether the press can print
// them.
#pragma once

#include "engine/colour/profile.h"
#include "engine/outcome.h"

#include <cstdint>
#include <span>
#include <vector>

namespace stoneproof {

/// A source colour on the press.
struct Printed {
  std::uint16_t ink_tenths = 0; ///< all inks together in tenths of a percent, 0..4000
  bool out_of_gamut = false;    ///< the press shows a colour that differs by more than the limit
};

/// The colours of one source space on one press, converted beforehand. The conversion is relative
/// colorimetric with black point compensation, the usual one for pictures in the trade (common practice). A
/// colour is out of gamut where what the press shows differs by more than a limit from what it is meant to
/// show: the source's colour relative to its white, with its black brought to that of the press (ISO
/// 18619:2015). Without that, every deep shadow would be out of gamut, because no press prints black as dark
/// as a screen.
///
/// Gray is converted exactly, by its 8 bits; RGB by the 6 leading bits of each channel, at the middle of what
/// those bits stand for. Against exact conversion of 20,000 random sRGB colours
/// (tests/outside/colour.test.cpp) that costs 0.7 in mean and at worst 4 (libgs-common's default_cmyk.icc) or
/// 8 (FOGRA39L_coated.icc) percent of ink; at a limit of 5, 0.8 % of the flags are wrong, all of them within
/// 1 unit of the limit, where a tenth is. Pure white counts as 253.5: it seems to take up to 2 % of ink.
///
/// 512 KiB; made in about 0.2 s. May be read by many threads at once.
class PressTable {
public:
  /// An empty `source_icc` stands for sRGB (IEC 61966-2-1), or for gray with the curve of sRGB.
  /// `source_space` is what the picture's pixels are: rgb or gray. `difference_limit` is in units of
  /// ciede2000, see difference.h. Faults: a press profile that cannot be read, is not one of a CMYK press or
  /// lacks its tables; a source profile that cannot be read or is of another space; CMYK pictures. `where`
  /// names which of the two profiles it is; the caller, who knows its path, may put that there instead.
  static Outcome<PressTable> make(std::span<const std::uint8_t> source_icc, ProfileSpace source_space,
                                  std::span<const std::uint8_t> press_icc, double difference_limit);

  /// The space whose colours may be asked for: rgb or gray.
  ProfileSpace space() const { return space_; }

  /// Only where the space is rgb.
  Printed at(std::uint8_t red, std::uint8_t green, std::uint8_t blue) const {
    return unpacked(cells_[(red >> 2u) << 12u | (green >> 2u) << 6u | (blue >> 2u)]);
  }
  /// Only where the space is gray; 0 is black.
  Printed at(std::uint8_t gray) const { return unpacked(cells_[gray]); }

private:
  static constexpr unsigned ink_bits = 0x0fff, out_bit = 0x8000;

  PressTable(ProfileSpace space, std::vector<std::uint16_t> cells)
      : space_(space), cells_(std::move(cells)) {}
  static Printed unpacked(unsigned cell) {
    return {static_cast<std::uint16_t>(cell & ink_bits), (cell & out_bit) != 0};
  }

  ProfileSpace space_;
  std::vector<std::uint16_t> cells_;
};

} // namespace stoneproof
