// Follows a page's content and notes what it draws (ISO 32000-1, 8 and 9): for read_pages.
#pragma once

#include "engine/import/content_parser.h"
#include "engine/import/drawing.h"
#include "engine/import/drawn_parts.h"
#include "engine/import/graphics_state.h"
#include "engine/import/layers.h"
#include "engine/import/notes.h"
#include "engine/import/page_tree.h"

#include <string>
#include <vector>

namespace stoneproof::finished {

class PageReader {
public:
  /// `number` counts from 0; `boxes` are those of the page.
  PageReader(const PdfFile &file, DrawnParts &parts, const Layers &layers, std::size_t number,
             const SheetBoxes &boxes);

  /// `notes`: what of them prints is drawn over the page.
  PageDrawing read(const Object &page, const Object &resources, const std::vector<ShownNote> &notes = {});

private:
  /// One content stream that is being followed.
  struct Level {
    Object resources;
    Matrix base; ///< of a pattern that is used here, before its own
    std::vector<GraphicsState> saved;
    std::size_t unsaved = 0;  ///< saves beyond most_saved
    std::vector<bool> layers; ///< of marked content: whether it shows
    std::size_t hidden = 0;   ///< marked content that does not show, the one in the other
  };
  using Handler = void (PageReader::*)(const Operation &);
  static Handler handler_of(const std::string &name);

  void follow(const std::string &content, const Object &resources);
  bool shows() const { return level_->hidden == 0; }
  Object resource(const char *kind, std::string_view name) const;

  // Graphics state
  void save(const Operation &);
  void restore(const Operation &);
  void concatenate(const Operation &);
  void set_line_width(const Operation &);
  void set_state(const Operation &);
  void begin_content(const Operation &);
  void end_content(const Operation &);

  // Colours
  void set_fill_space(const Operation &);
  void set_stroke_space(const Operation &);
  void set_fill_gray(const Operation &);
  void set_stroke_gray(const Operation &);
  void set_fill_rgb(const Operation &);
  void set_stroke_rgb(const Operation &);
  void set_fill_cmyk(const Operation &);
  void set_stroke_cmyk(const Operation &);
  void set_fill(const Operation &);
  void set_stroke(const Operation &);
  Paint in_space(const std::string &space) const;
  void set_components(Paint &paint, const Operation &);
  void use(const Paint &paint);

  // Paths
  void move(const Operation &);
  void line(const Operation &);
  void curve(const Operation &);
  void curve_from_here(const Operation &);
  void curve_to_end(const Operation &);
  void rectangle(const Operation &);
  void clip_next(const Operation &);
  void end_path(const Operation &);
  void fill_path(const Operation &);
  void stroke_path(const Operation &);
  void fill_and_stroke(const Operation &);
  void shade(const Operation &);
  void paint_fill();
  void paint_stroke();
  void note_line(double width, const Box &box);
  void note_paint(const Box &box, const Paint &paint);
  void tile(const Object &pattern, const Outline &area);

  // Pictures
  void draw_object(const Operation &);
  void draw_inline_image(const Operation &);
  void draw_image(std::size_t image);
  void draw_form(const Object &form);
  void draw_note(const ShownNote &note);
  /// Follows another stream within this one: a form, a pattern's cell. Not one that is being followed.
  void follow_within(const Object &stream, const Object &resources, const Matrix &map, const Outline &clip);

  // Text
  void begin_text(const Operation &);
  void set_font(const Operation &);
  void set_text_value(const Operation &);
  void move_text(const Operation &);
  void move_text_and_lead(const Operation &);
  void set_text_matrix(const Operation &);
  void next_line(const Operation &);
  void show(const Operation &);
  void show_on_next_line(const Operation &);
  void show_spaced(const Operation &);
  void show_strings(const std::vector<Operand> &items);
  /// The pictures of a glyph that is shown so far along the line; stencils are shapes of letters, and no
  /// pictures.
  void draw_glyph(const Font &font, unsigned code, double advance);

  const PdfFile &file_;
  DrawnParts &parts_;
  const Layers &layers_;
  std::size_t number_;
  Box trim_;
  PageDrawing drawing_;
  GraphicsState state_;
  Path path_;
  bool in_glyph_ = false; ///< within a glyph of a Type 3 font
  bool tiling_ = false;   ///< within a pattern's cell
  bool clips_ = false;    ///< the path is to clip once it has been painted
  Matrix text_, line_start_;
  Level *level_ = nullptr;
  std::vector<std::uint32_t> within_;                       ///< streams that are being followed
  std::size_t operations_ = 0, streams_ = 0, followed_ = 0; ///< `followed_`: bytes of forms and cells
};

} // namespace stoneproof::finished
