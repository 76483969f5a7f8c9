// Pages of a PDF -> pages of a Book. The only ways in are layout_of, to_trim and micrometres_of; tested in
// tests/engine/import/layout_of.test.cpp.
#include "engine/import/layout_of.h"
#include "engine/xml/characters.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace stoneproof::finished {

namespace {

constexpr double smallest_page = 3; // points, about 1 mm

/// Bleed of a page that names none, in points: 3 mm, common practice.
constexpr double usual_bleed = 3 / 25.4 * 72;

Length points(double value) { return micrometres_of(std::clamp(value, -largest_page, largest_page)); }

Rect rect_of(const Box &box, const Matrix &map) {
  const auto around = box_round(outline_of(box, map)).value_or(Box{});
  const Length least = Length::of_ticks(1);
  return {points(around.left), points(around.bottom), std::max(least, points(around.width())),
          std::max(least, points(around.height()))};
}

Size size_of(const SheetBoxes &boxes) {
  const Rect trim = rect_of(trim_of(boxes), to_trim(boxes));
  return {std::max(trim.width, Length::of_pt(smallest_page)),
          std::max(trim.height, Length::of_pt(smallest_page))};
}

/// Within what programs round a size by.
bool alike(const Size &one, const Size &other) {
  const Length rounding = Length::of_mm(0.05);
  const auto near = [&](Length a, Length b) { return std::max(a, b) - std::min(a, b) <= rounding; };
  return near(one.width, other.width) && near(one.height, other.height);
}

/// The size that most pages have; of several the first.
Size usual_size(const std::vector<Sheet> &sheets) {
  std::vector<std::pair<Size, std::size_t>> sizes;
  for (const Sheet &sheet : sheets) {
    const Size size = size_of(sheet.boxes);
    const auto found =
        std::find_if(sizes.begin(), sizes.end(), [&](const auto &known) { return alike(known.first, size); });
    found == sizes.end() ? sizes.push_back({size, 1}) : void(++found->second);
  }
  const auto most = std::max_element(sizes.begin(), sizes.end(),
                                     [](const auto &a, const auto &b) { return a.second < b.second; });
  return most == sizes.end() ? Size{} : most->first;
}

PageBoxes boxes_of(const SheetBoxes &boxes, const Matrix &map) {
  const auto mapped = [&](const std::optional<Box> &box) {
    return box ? std::optional(rect_of(*box, map)) : std::nullopt;
  };
  return {rect_of(boxes.media, map), mapped(boxes.crop), mapped(boxes.bleed), mapped(boxes.trim),
          mapped(boxes.art)};
}

/// What of a page is meant to be printed: its trim, and the BleedBox or where it names none the usual bleed
/// round that, mapped.
Box printed_part(const SheetBoxes &boxes, const Matrix &map) {
  const Box trim = trim_of(boxes);
  const double by = usual_bleed / boxes.unit;
  const Box grown{trim.left - by, trim.bottom - by, trim.right + by, trim.top + by};
  const Box bleed = boxes.bleed.value_or(grown);
  const Box both{std::min(trim.left, bleed.left), std::min(trim.bottom, bleed.bottom),
                 std::max(trim.right, bleed.right), std::max(trim.top, bleed.top)};
  return box_round(outline_of(both, map)).value_or(Box{});
}

PrintPage print_page_of(const Sheet &sheet, const Matrix &map) {
  const PageDrawing &drawing = sheet.drawing;
  PrintPage page;
  page.label = sheet.label;
  page.boxes = boxes_of(sheet.boxes, map);
  if (drawing.paints.any) page.painted = rect_of(drawing.paints.box, map);
  const ColourUse &colours = drawing.colours;
  page.painted_in = {colours.rgb, colours.cmyk, colours.gray, colours.spot};
  page.transparent = drawing.transparent;
  page.broken = drawing.broken;
  page.cut_short = drawing.cut_short;
  for (const ShownLine &line : drawing.lines)
    page.lines.push_back({Length::of_pt(line.width * map.scale()), rect_of(line.box, map)});
  for (const ShownNote &note : sheet.notes)
    page.notes.push_back({note.kind, rect_of(note.box, map), note.prints});
  return page;
}

/// Lays pictures and texts of one page after the other, naming frames by page and number.
class Layout {
public:
  Layout(const Drawn &drawn, const std::vector<WrittenPicture> &written) : drawn_(drawn), written_(written) {}

  Page page_of(std::size_t index, const Size &usual) {
    const Sheet &sheet = drawn_.sheets[index];
    const Matrix map = to_trim(sheet.boxes);
    Page page;
    page.number = static_cast<int>(index) + 1;
    page.place = {};
    if (const Size size = size_of(sheet.boxes); !alike(size, usual)) page.trim = size;
    page.print = print_page_of(sheet, map);
    add_frames(sheet.drawing, map, page);
    page.texts = text_blocks(sheet.drawing, map, printed_part(sheet.boxes, map), sheet.label);
    return page;
  }
  std::vector<Picture> pictures; ///< those that are shown, in the order in which they first are

private:
  void add_frames(const PageDrawing &drawing, const Matrix &map, Page &page) {
    auto image = drawing.images.begin();
    for (std::size_t order = 0; order < drawing.order.size(); ++order) {
      if (!drawing.order[order]) continue;
      const ShownImage &shown = *image++;
      const WrittenPicture &written = written_[shown.image];
      Outline visible;
      for (const Spot &spot : shown.visible) visible.push_back(map.apply(spot));
      const auto laying = laying_of(shown.place * map, visible, written.orientation);
      if (!laying) {
        const auto around = box_round(outline_of({0, 0, 1, 1}, shown.place));
        if (shown.place.finite() && around && around->width() > 0 && around->height() > 0)
          page.print->hidden_pictures.push_back(rect_of(*around, map));
        continue;
      }
      Frame frame;
      frame.id = fmt::format("p{}-{}", page.number, page.frames.size() + 1);
      frame.rect = laying->rect;
      frame.turn = laying->turn;
      frame.mirror = laying->mirror;
      frame.fit = laying->crop;
      frame.picture = picture_of(shown.image);
      frame.order = order;
      page.frames.push_back(std::move(frame));
    }
  }

  std::size_t picture_of(std::size_t image) {
    const auto [found, added] = picture_of_image_.emplace(image, pictures.size());
    if (added) {
      const WrittenPicture &written = written_[image];
      Picture picture;
      picture.id = fmt::format("picture-{}", pictures.size() + 1);
      picture.file = written.file;
      picture.profile = written.profile;
      picture.use = written.line_art ? Use::line_art : Use::photo;
      pictures.push_back(std::move(picture));
    }
    return found->second;
  }

  const Drawn &drawn_;
  const std::vector<WrittenPicture> &written_;
  std::map<std::size_t, std::size_t> picture_of_image_;
};

/// What the BleedBoxes leave round the trim: the least of any page that names one.
Edges bleed_of(const std::vector<Sheet> &sheets) {
  std::optional<Length> least;
  for (const Sheet &sheet : sheets) {
    const auto &[bleed, trim] = std::pair(sheet.boxes.bleed, sheet.boxes.trim);
    if (!bleed || !trim) continue;
    const Length here =
        points(sheet.boxes.unit * std::min({trim->left - bleed->left, bleed->top - trim->top,
                                            bleed->right - trim->right, trim->bottom - bleed->bottom}));
    if (here > Length() && (!least || here < *least)) least = here;
  }
  const Length bleed = least.value_or(Length());
  return {bleed, bleed, bleed, bleed};
}

/// Some programs put this word where nobody gave a title.
bool names_nothing(const std::string &title) {
  const std::string words = collapsed(title);
  return words.empty() || words == "untitled" || words == "Untitled";
}

} // namespace

Length micrometres_of(double points) {
  constexpr double ticks_per_micrometre = Length::ticks_per_mm / 1000;
  return Length::nearest(std::round(points * Length::ticks_per_pt / ticks_per_micrometre) *
                         ticks_per_micrometre);
}

Matrix to_trim(const SheetBoxes &boxes) {
  const Box trim = trim_of(boxes);
  const double unit = boxes.unit;
  switch (boxes.rotate) {
  case 90: return {0, unit, unit, 0, -trim.bottom * unit, -trim.left * unit};
  case 180: return {-unit, 0, 0, unit, trim.right * unit, -trim.bottom * unit};
  case 270: return {0, -unit, -unit, 0, trim.top * unit, trim.right * unit};
  default: return {unit, 0, 0, -unit, -trim.left * unit, trim.top * unit};
  }
}

Book layout_of(const Drawn &drawn, const std::vector<WrittenPicture> &pictures, const std::string &file,
               const PrintFile &print_file) {
  Book book;
  book.source = file;
  book.title = names_nothing(drawn.title) ? std::filesystem::path(file).stem().string() : drawn.title;
  book.language = parse_language(drawn.language) ? drawn.language : "en";
  book.trim = usual_size(drawn.sheets);
  Layout layout(drawn, pictures);
  for (std::size_t i = 0; i < drawn.sheets.size(); ++i) book.pages.push_back(layout.page_of(i, book.trim));
  book.pictures = std::move(layout.pictures);
  book.bleed = bleed_of(drawn.sheets);
  book.print_file = print_file;
  return book;
}

} // namespace stoneproof::finished
