// One thing found, by one rule, at one place, with what was measured and what was wanted. No sentences: the
// reports word it.
#pragma once

#include "engine/binding/leaf_thickness.h"
#include "engine/outcome.h"
#include "engine/placement/page_space.h"
#include "engine/placement/rescue.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stoneproof {

/// How grave: must be mended before printing; somebody must decide; good to know. In that order.
enum class Grade { hold, query, note };
inline constexpr Word<Grade> grade_words[] = {
    {Grade::hold, "hold"}, {Grade::query, "query"}, {Grade::note, "note"}};

/// A part of a whole, 0 to 1.
struct Share {
  double value = 0;
  friend constexpr bool operator==(Share, Share) = default;
};
struct Count {
  std::size_t value = 0;
  friend constexpr bool operator==(Count, Count) = default;
};
/// The quality setting of a JPEG, 1 to 100.
struct Quality {
  int value = 0;
  friend constexpr bool operator==(Quality, Quality) = default;
};
/// Rows of dots of a printed screen, in lines an inch of the page.
struct Ruling {
  double lines = 0;
  friend bool operator==(Ruling, Ruling) = default;
};
/// Clockwise, in degrees.
struct Angle {
  double degrees = 0;
  friend bool operator==(Angle, Angle) = default;
};
using Measure = std::variant<std::monostate, Density, Length, Share, Count, Quality, Ruling, Angle>;

/// What can be done for the picture, as far as it could be computed.
struct Rescue {
  std::optional<Rescan> rescan;
  std::optional<Size> print_no_larger;
  std::optional<LooserCrop> looser_crop;
};

/// A frame by its place in the book.
struct FrameAt {
  std::size_t page = 0, frame = 0; ///< index into Book::pages, and into that page's frames
};

struct Finding {
  std::string_view rule; ///< Rule::id
  Grade grade = Grade::note;

  std::optional<std::size_t> page;         ///< index into Book::pages; none: the book or a picture as a whole
  std::optional<std::size_t> frame;        ///< index into the page's frames
  std::optional<std::size_t> text;         ///< index into the page's text blocks
  std::optional<std::size_t> with_frame;   ///< likewise: the other one, where it is about two things
  std::optional<std::size_t> with_text;    ///< likewise
  std::optional<std::size_t> picture;      ///< index into Book::pictures
  std::optional<std::size_t> with_picture; ///< likewise: the other one, where it is about two
  std::optional<std::size_t> contributor;  ///< index into Book::contributors: who can help
  std::optional<Rect> area;                ///< the place on the page that a mark points at
  std::vector<PageSide> sides;             ///< the sides of the page that it is about

  Measure measured, wanted;
  Rescue rescue;
  std::optional<Fault> fault;        ///< of a file that could not be read
  std::vector<FrameAt> same_picture; ///< all frames that show the same picture, or the same fault
  std::optional<StockPart> stock;    ///< the paper that it is about
  std::optional<std::size_t> font;   ///< index into PrintFile::fonts
  std::optional<std::size_t> glass;  ///< the scanner that it is about: index into Evidence::glasses
};

} // namespace stoneproof
