// The look of our documents in one table: sheet, columns, type, inks and lines.
#pragma once

#include "engine/rules/finding.h"
#include "reports/layout/document.h"

namespace stoneproof::layout {

struct TypeStyle {
  Face face = Face::text;
  Length size, leading;
  Ink ink;
};

namespace style {

using namespace literals;

// A4, on its side: a spread and the words beside it fit without turning the sheet.
inline constexpr Size sheet{297_mm, 210_mm};
inline constexpr Length margin = 14_mm;
inline constexpr Length head = 25_mm; ///< from the sheet's top to the first thing under the heading
inline constexpr Length foot = 17_mm; ///< from the sheet's bottom to the last thing above the foot line
inline constexpr Length gap = 3_mm;   ///< between neighbouring blocks

// The drawing of a book page and the column of words beside it.
inline constexpr Length slug = 5_mm; ///< room for crop marks round the bleed
inline constexpr Length leader_room =
    13_mm; ///< between the drawing and the column, for numbers and hairlines
inline constexpr Length column_least = 88_mm, column_most = 112_mm;
inline constexpr double largest_scale = 1; ///< small pages are shown at their true size, not enlarged
inline constexpr Density drawing_density = Density::of_ppi(144); ///< of pictures on the proof's own paper

// One dark ink for words, a grey for asides, and violet for every mark: a colour that family pictures seldom
// have and that stays dark when the proof is printed in grey.
inline constexpr Ink dark{38, 35, 42}, aside{112, 107, 118}, faint{188, 184, 192}, mark{88, 36, 136},
    white{255, 255, 255}, gap_fill{236, 233, 228};

inline constexpr TypeStyle title{Face::text, 27_pt, 32_pt, dark};
inline constexpr TypeStyle verdict{Face::text_bold, 15_pt, 19_pt, dark};
inline constexpr TypeStyle heading{Face::text, 15_pt, 18_pt, dark};
inline constexpr TypeStyle body{Face::text, 9.5_pt, 12_pt, dark};
inline constexpr TypeStyle body_aside{Face::text_italic, 9.5_pt, 12_pt, aside};
inline constexpr TypeStyle label{Face::label, 7.5_pt, 10_pt, aside};
inline constexpr TypeStyle label_strong{Face::label_bold, 8_pt, 11_pt, dark};
inline constexpr TypeStyle number{Face::label_bold, 8_pt, 11_pt, mark};

// The scanning plan is read at the scanner, at arm's length and often by older eyes: larger type.
inline constexpr TypeStyle pile_setting{Face::label_bold, 19_pt, 23_pt, dark};
inline constexpr TypeStyle pile_device{Face::text, 15_pt, 23_pt, dark};
inline constexpr TypeStyle plan_body{Face::text, 11_pt, 14_pt, dark};
inline constexpr TypeStyle plan_aside{Face::text_italic, 11_pt, 14_pt, aside};
inline constexpr TypeStyle plan_strong{Face::label_bold, 10.5_pt, 14_pt, dark};
inline constexpr TypeStyle advice{Face::text, 12.5_pt, 16.5_pt, dark};
inline constexpr TypeStyle advice_heading{Face::label_bold, 11.5_pt, 16_pt, dark};
inline constexpr TypeStyle plan_label{Face::label, 9_pt, 12_pt, aside};

// Letters: A4 upright, in the larger type of the plan.
inline constexpr Size letter_sheet{210_mm, 297_mm};
inline constexpr Length letter_margin = 20_mm;
inline constexpr TypeStyle letter_strong{Face::text_bold, 14_pt, 18_pt, dark};
inline constexpr TypeStyle letter_glance{Face::text_bold, 12.5_pt, 16.5_pt, dark};
inline constexpr TypeStyle letter_setting{Face::label_bold, 16_pt, 20_pt, dark};
inline constexpr TypeStyle letter_aside{Face::text_italic, 12.5_pt, 16.5_pt, dark};
inline constexpr TypeStyle letter_caption{Face::label, 10.5_pt, 13.5_pt, dark};
inline constexpr TypeStyle letter_badge{Face::label_bold, 10.5_pt, 14_pt, mark};

inline const Stroke hair{aside, 0.3_pt, {}};
inline const Stroke row_rule{faint, 0.4_pt, {}};
inline const Stroke leader{mark, 0.4_pt, {}};
inline const Stroke casing{white, 1.6_pt, {}};
inline const Stroke trim_line{dark, 0.5_pt, {}};
inline const Stroke bleed_line{aside, 0.4_pt, {4_pt, 2_pt}};
inline const Stroke safe_line{aside, 0.4_pt, {0.8_pt, 1.6_pt}};
inline const Stroke gutter_line{aside, 0.4_pt, {5_pt, 1.5_pt, 0.8_pt, 1.5_pt}};

inline const Stroke creep_line{mark, 0.5_pt, {}}; ///< arrow, and where the knife falls
inline const Stroke hatch_line{aside, 0.25_pt, {}};
inline constexpr Length hatch_gap = 2.2_mm;

inline const Stroke fault_line{mark, 3_pt, {}}; ///< along the side of a place that is at fault

/// A grade is told by the word and by the line: whole and heavy, dashed, dotted.
inline Stroke grade_line(Grade grade) {
  switch (grade) {
  case Grade::hold: return {mark, 1.5_pt, {}};
  case Grade::query: return {mark, 1.0_pt, {4_pt, 2.2_pt}};
  case Grade::note: return {mark, 1.0_pt, {1_pt, 1.8_pt}};
  }
  return {};
}

} // namespace style
} // namespace stoneproof::layout
