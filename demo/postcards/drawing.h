// What a page of the postcards shows: PDF operators (ISO 32000-1, Annex A), from lengths in millimetres that
// run from the top left corner of the trim, y downwards.
#pragma once

#include "demo/postcards/true_type.h"

#include <initializer_list>
#include <string>

namespace stoneproof::demo {

inline constexpr double points_a_mm = 72 / 25.4;

struct Area {
  double x = 0, y = 0, width = 0, height = 0; ///< mm
};

/// A font and its name among the resources of a page.
struct Face {
  std::string name;
  const TrueType *font; ///< what it measures by
};

enum class Align { left, centre, right };

class Drawing {
public:
  /// `height` of the trim; `beside`: how far the sheet goes on beyond it, both in mm. `times` enlarges all.
  Drawing(double height, double beside, double times = 1);

  /// Operators as they are, for colours and states: "0 0 0 1 k".
  Drawing &set(const std::string &operators);
  Drawing &fill(const Area &area);
  Drawing &frame(const Area &area, double width_pt);
  Drawing &line(double x, double y, double to_x, double to_y, double width_pt);
  /// The named picture, `aspect` times as wide as high, so that it fills the area, its middle in the middle.
  Drawing &picture(const std::string &name, double aspect, const Area &area);
  /// One line of UTF-8 on the baseline y; `spread` is what each letter stands further apart, in pt.
  Drawing &text(const Face &face, double size_pt, double x, double y, const std::string &words,
                Align align = Align::left, double spread = 0);
  /// Lines of a paragraph, that many mm apart.
  Drawing &lines(const Face &face, double size_pt, double leading, double x, double y,
                 std::initializer_list<const char *> words);

  const std::string &operators() const { return out_; }

private:
  std::string place(double x, double y) const;
  std::string rectangle(const Area &area) const;

  double height_, beside_, scale_;
  std::string out_;
};

} // namespace stoneproof::demo
