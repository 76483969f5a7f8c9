// Draws the items of a page. The only way in is content_of(); tested in
// tests/reports/pdf/page_content.test.cpp.
#include "reports/pdf/page_content.h"

#include "reports/pdf/item_bounds.h"
#include "reports/pdf/syntax.h"
#include "reports/pdf/text_operators.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stoneproof::pdf {
namespace {

using layout::Ink;
using layout::Stroke;

std::string components(Ink ink) {
  return number(ink.red / 255.0) + " " + number(ink.green / 255.0) + " " + number(ink.blue / 255.0);
}

/// What a piece of marked content belongs to: a node of the page's structure, or nothing that is read.
using Owner = std::optional<std::size_t>;

/// Writes operators and remembers the graphics state, so that each colour and width is set once.
class PagePainter {
public:
  PagePainter(const layout::DocumentPage &page, const Typesetter &typesetter, SharedResources &shared)
      : page_(page), typesetter_(typesetter), shared_(shared), structure_(page) {}

  PageContent paint() {
    for (std::size_t i = 0; i < page_.items.size(); ++i) {
      const std::size_t before = content_.operators.size();
      const Owner owner = structure_.node_of(i);
      // Lines of one part are read one after the other: a space before the next keeps their words apart.
      const bool text = std::holds_alternative<layout::TextItem>(page_.items[i]);
      reads_on_ = text && owner && last_text_ == owner;
      if (text) last_text_ = owner;
      std::visit([this](const auto &one) { draw(one); }, page_.items[i]);
      if (content_.operators.size() > before) put_under(owner, before, page_.items[i]);
    }
    if (owner_) put("EMC");
    content_.structure = structure_.finish();
    return std::move(content_);
  }

private:
  /// Marks what was written since `before`; items of one owner that follow each other are one piece.
  void put_under(Owner owner, std::size_t before, const layout::Item &item) {
    const bool figure = owner && structure_[*owner].type == "Figure";
    if (figure) structure_.cover(*owner, bounds_of(item, typesetter_));
    if (owner_ && *owner_ == owner) return;
    std::string mark = owner_ ? "EMC\n" : "";
    if (owner)
      mark += "/" + std::string(structure_[*owner].type) + "<</MCID " +
              std::to_string(structure_.mark(*owner)) + ">>BDC\n";
    else
      mark += "/Artifact BMC\n";
    content_.operators.insert(before, mark);
    owner_ = owner;
  }

  void draw(const layout::TextItem &item) {
    Length x = item.at.x;
    ShapedLine line = typesetter_.shape(item.face, item.text);
    if (line.runs.empty()) return;
    if (reads_on_ && !item.down)
      if (ShapedLine spaced = typesetter_.shape(item.face, " " + item.text); begins_at_left(spaced)) {
        line = std::move(spaced);
        x -= typesetter_.width(item.face, item.size, " ");
      }
    use_fill(item.ink);
    append_text(content_.operators, line,
                {x.pt(), (page_.size.height - item.at.y).pt(), item.size.pt(), item.down}, typesetter_,
                shared_.fonts);
  }

  static bool begins_at_left(const ShapedLine &line) { return line.runs.front().glyphs.front().first == 0; }

  void draw(const layout::LineItem &item) {
    use_stroke(item.stroke);
    put(position(item.from) + " m " + position(item.to) + " l S");
  }

  void draw(const layout::ShapeItem &item) {
    if (item.corners.empty()) return;
    if (item.fill) fill(path(item.corners), *item.fill, item.opacity);
    if (item.stroke) {
      use_stroke(*item.stroke);
      put(path(item.corners) + " s");
    }
  }

  void fill(const std::string &path, Ink ink, double opacity) {
    use_fill(ink);
    const int thousandths = static_cast<int>(std::lround(std::clamp(opacity, 0.0, 1.0) * 1000));
    if (thousandths == 1000) {
      put(path + " f");
      return;
    }
    shared_.opacities.insert(thousandths);
    content_.veiled = true;
    put("q /" + opacity_name(thousandths) + " gs " + path + " f Q");
  }

  void draw(const layout::PictureItem &item) {
    if (item.clip.size() < 3) return; // nothing shows
    content_.images.insert(item.image);
    put("q");
    // A clip along the picture's own edges would only roughen them.
    if (!std::equal(item.clip.begin(), item.clip.end(), item.corners.begin(), item.corners.end()))
      put(path(item.clip) + " h W n");
    put(matrix(item.corners) + " cm /" + image_name(item.image) + " Do");
    put("Q");
  }

  void draw(const layout::OwnPageItem &item) {
    content_.own_pages.insert(item.page);
    const Rect &clip = item.clip;
    const std::string factor = number(item.factor);
    put("q " + points(clip.x) + " " + points(page_.size.height - clip.bottom()) + " " + points(clip.width) +
        " " + points(clip.height) + " re W n " + factor + " 0 0 " + factor + " " + position(item.origin) +
        " cm /" + own_page_name(item.page) + " Do Q");
  }

  /// Takes the unit square that every image fills to the picture's corners.
  std::string matrix(const Corners &corners) const {
    const Point origin = corners[3], right = corners[2], up = corners[0];
    return points(right.x - origin.x) + " " + points(origin.y - right.y) + " " + points(up.x - origin.x) +
           " " + points(origin.y - up.y) + " " + position(origin);
  }

  std::string position(Point point) const {
    return points(point.x) + " " + points(page_.size.height - point.y);
  }

  std::string path(const std::vector<Point> &corners) const {
    std::string out = position(corners[0]) + " m";
    for (std::size_t i = 1; i < corners.size(); ++i) out += " " + position(corners[i]) + " l";
    return out;
  }

  void use_fill(Ink ink) {
    if (fill_ == ink) return;
    put(components(ink) + " rg");
    fill_ = ink;
  }

  void use_stroke(const Stroke &stroke) {
    if (stroke_ink_ != stroke.ink) put(components(stroke.ink) + " RG");
    if (stroke_width_ != stroke.width) put(points(stroke.width) + " w");
    if (dash_ != stroke.dash) put(dash_array(stroke.dash) + " 0 d");
    stroke_ink_ = stroke.ink, stroke_width_ = stroke.width, dash_ = stroke.dash;
  }

  static std::string dash_array(const std::vector<Length> &dash) {
    // Lengths that are all zero, or negative, are an error in PDF: such a line is drawn whole.
    const bool any = std::any_of(dash.begin(), dash.end(), [](Length l) { return l > Length{}; });
    const bool valid = std::none_of(dash.begin(), dash.end(), [](Length l) { return l < Length{}; });
    if (!any || !valid) return "[]";
    std::string out = "[";
    for (const Length length : dash) out += (out.size() > 1 ? " " : "") + points(length);
    return out + "]";
  }

  void put(const std::string &operators) { content_.operators += operators + "\n"; }

  const layout::DocumentPage &page_;
  const Typesetter &typesetter_;
  SharedResources &shared_;
  PageContent content_;
  StructureBuilder structure_;
  std::optional<Owner> owner_; ///< of the piece that is open
  Owner last_text_;            ///< of the text before
  bool reads_on_ = false;      ///< the text that is drawn goes on from the one before
  std::optional<Ink> fill_, stroke_ink_;
  std::optional<Length> stroke_width_;
  std::vector<Length> dash_;
};

} // namespace

PageContent content_of(const layout::DocumentPage &page, const Typesetter &typesetter,
                       SharedResources &shared) {
  return PagePainter(page, typesetter, shared).paint();
}

std::string image_name(std::size_t image) { return "I" + std::to_string(image + 1); }
std::string own_page_name(std::size_t page) { return "O" + std::to_string(page + 1); }
std::string opacity_name(int thousandths) { return "A" + std::to_string(thousandths); }

} // namespace stoneproof::pdf
