// The list of pictures. The only way in is lay_out_pictures; tested in
// tests/reports/layout/proof_parts.test.cpp.
#include "reports/layout/picture_sheets.h"

#include "reports/content/figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <span>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length bottom = style::sheet.height - style::foot;
constexpr Length right = style::sheet.width - style::margin;
constexpr Length row_gap = 3_mm;

// The columns: what a frame shows, the patch, the facts, the uses.
constexpr Size thumbnail{50_mm, 38_mm};
constexpr Length patch_left = 69_mm, patch_side = true_size_patch.side, patch_width = 31_mm;
constexpr Length facts_left = 104_mm, label_width = 16_mm, facts_width = 92_mm;
constexpr Length uses_left = 201_mm, uses_width = right - uses_left;
constexpr std::size_t most_uses = 6, most_marks = 12;

/// Lines of one style under each other.
struct Block {
  const TypeStyle *style;
  std::vector<std::string> lines;
};
Length height_of_blocks(const std::vector<Block> &blocks) {
  Length height;
  for (const Block &block : blocks) height += height_of(*block.style, block.lines.size());
  return height;
}

struct FactLines {
  std::string label;
  std::vector<std::string> lines;
};

struct UseLines {
  std::size_t page;
  std::vector<Block> blocks;
};

/// One picture's words, broken to the columns.
struct Entry {
  const content::PictureWords *words;
  std::string file;
  std::vector<std::string> about;
  std::vector<FactLines> facts;
  std::vector<UseLines> uses;
  std::vector<Block> after; ///< under the uses
  std::vector<std::string> patch;
  Length height;
};

class PictureWriter {
public:
  PictureWriter(const content::ProofContent &content, const Checked &checked, const ImageOf &images,
                const ImageOf &patches, const Typesetter &type)
      : content_(content), checked_(checked), images_(images), patches_(patches), type_(type) {
    for (const content::Mark &mark : content.marks)
      if (mark.picture) marks_of_[*mark.picture].push_back(fmt::format("{}", mark.number));
  }

  PictureSheets write() {
    for (const content::PictureWords &words : content_.pictures) {
      if (result_.sheets.empty()) begin_sheet("The pictures");
      const Entry entry = entry_of(words);
      if (y_ + entry.height > bottom) begin_sheet("The pictures, continued");
      draw(entry);
    }
    return std::move(result_);
  }

private:
  Canvas canvas() { return {type_, result_.sheets.back()}; }

  void begin_sheet(std::string_view heading) {
    result_.sheets.emplace_back();
    result_.sheets.back().size = style::sheet;
    Canvas on = canvas();
    on.as(Role::heading2).text({style::margin, style::margin}, style::heading, heading);
    y_ = style::head;
    {
      const auto heads = on.begin(Role::paragraph);
      on.text({style::margin, y_}, style::label, "What a frame shows");
      on.text({patch_left, y_}, style::label, "At true size");
      on.text({facts_left, y_}, style::label, "What the file is");
      on.text({uses_left, y_}, style::label, "Where it is used, and how large it may be");
    }
    y_ += style::label.leading + 0.5_mm;
    on.line({style::margin, y_}, {right, y_}, style::trim_line);
    y_ += 2_mm;
  }

  std::vector<std::string> broken(const TypeStyle &style, Length width, const std::string &text) {
    if (text.empty()) return {};
    return canvas().wrap(style, width, content::with_figures_kept_whole(text));
  }

  Entry entry_of(const content::PictureWords &words) {
    Entry entry;
    entry.words = &words;
    entry.file = canvas().shortened(style::label_strong, facts_width, words.file);
    entry.about = broken(style::label, facts_width, words.about);
    for (const content::FactRow &fact : words.facts)
      entry.facts.push_back({fact.label, broken(style::body, facts_width - label_width, fact.text)});
    const std::size_t shown = words.uses.size() > most_uses ? most_uses - 1 : words.uses.size();
    for (const content::PictureUse &use : std::span(words.uses).first(shown))
      entry.uses.push_back(lines_of(use));
    if (const std::size_t more = words.uses.size() - shown)
      entry.after.push_back(
          {&style::label, {fmt::format("and in {}", content::count(more, "frame more", "frames more"))}});
    if (words.uses.empty()) entry.after.push_back({&style::body_aside, {"No frame shows it."}});
    entry.after.push_back({&style::body, broken(style::body, uses_width, words.largest)});
    entry.after.push_back(
        {&style::label_strong, broken(style::label_strong, uses_width, marks_line(words.picture))});
    if (const auto &patch = checked_.patches[words.picture])
      entry.patch = broken(style::label, patch_width, content::patch_words(checked_.evidence, *patch));
    entry.height = entry_height(entry);
    return entry;
  }

  UseLines lines_of(const content::PictureUse &use) {
    return {use.page,
            {{&style::label_strong, {canvas().shortened(style::label_strong, uses_width, use.place)}},
             {&style::body, broken(style::body, uses_width, use.figures)}}};
  }

  std::string marks_line(std::size_t picture) const {
    const auto found = marks_of_.find(picture);
    if (found == marks_of_.end()) return {};
    std::vector<std::string> numbers = found->second;
    if (numbers.size() > most_marks) {
      numbers.resize(most_marks);
      numbers.push_back(fmt::format("{} more", found->second.size() - most_marks));
    }
    return (numbers.size() == 1 ? "Mark " : "Marks ") + content::listed(numbers);
  }

  static Length entry_height(const Entry &entry) {
    Length facts = style::label_strong.leading + height_of(style::label, entry.about.size());
    for (const FactLines &fact : entry.facts) facts += height_of(style::body, fact.lines.size());
    Length uses = height_of_blocks(entry.after);
    for (const UseLines &use : entry.uses) uses += height_of_blocks(use.blocks);
    const Length patch = patch_side + 1_mm + height_of(style::label, entry.patch.size());
    return std::max({thumbnail.height, facts, uses, patch});
  }

  void draw(const Entry &entry) {
    draw_facts(entry); // first, as they begin with the picture's name
    draw_thumbnail(entry);
    draw_patch(entry);
    draw_uses(entry);
    const Length top = y_;
    y_ += entry.height + row_gap / 2;
    canvas().line({style::margin, y_}, {right, y_}, style::row_rule);
    result_.places.push_back({entry.words->picture,
                              result_.sheets.size() - 1,
                              {style::margin, top, right - style::margin, y_ - top}});
    y_ += row_gap / 2;
  }

  /// The frame that the patch was cut from, else the first that shows the picture, as it stands on its page.
  void draw_thumbnail(const Entry &entry) {
    if (entry.words->uses.empty()) return;
    const auto &patch = checked_.patches[entry.words->picture];
    const PlacedFrame &placed =
        checked_.evidence.frames[patch ? patch->frame : entry.words->uses.front().frame];
    const double factor = std::min(thumbnail.width / placed.box.width, thumbnail.height / placed.box.height);
    const Point origin{style::margin - placed.box.x * factor, y_ - placed.box.y * factor};
    Canvas on = canvas();
    draw_frame(on, checked_, images_, placed, placed.box, {factor, origin});
  }

  void draw_patch(const Entry &entry) {
    const std::size_t picture = entry.words->picture;
    if (!patches_[picture]) return;
    const Patch &patch = *checked_.patches[picture];
    const Size size = printed_size(patch, checked_.evidence);
    const Rect box{patch_left, y_, size.width, size.height};
    const Corners corners{Point{box.left(), box.top()}, Point{box.right(), box.top()},
                          Point{box.right(), box.bottom()}, Point{box.left(), box.bottom()}};
    Canvas on = canvas();
    on.page().items.emplace_back(PictureItem{*patches_[picture],
                                             corners,
                                             {corners.begin(), corners.end()},
                                             "Part of " + entry.words->file + " at the size of print"});
    on.as(Role::paragraph).lines({patch_left, y_ + patch_side + 1_mm}, style::label, entry.patch);
  }

  void draw_facts(const Entry &entry) {
    Canvas on = canvas();
    Length y = y_;
    on.as(Role::heading3).text({facts_left, y}, style::label_strong, entry.file);
    y = on.as(Role::paragraph)
            .lines({facts_left, y + style::label_strong.leading}, style::label, entry.about);
    for (const FactLines &fact : entry.facts) {
      const auto row = on.begin(Role::row);
      on.as(Role::row_header).text_beside({facts_left, y}, style::label, style::body, fact.label);
      y = on.as(Role::cell).lines({facts_left + label_width, y}, style::body, fact.lines);
    }
  }

  void draw_uses(const Entry &entry) {
    Canvas on = canvas();
    Length y = y_;
    for (const UseLines &use : entry.uses) {
      const Length top = y;
      const auto item = on.begin(Role::list_item);
      for (const Block &block : use.blocks) y = on.lines({uses_left, y}, *block.style, block.lines);
      result_.uses.push_back({use.page, result_.sheets.size() - 1, {uses_left, top, uses_width, y - top}});
    }
    for (const Block &block : entry.after)
      y = on.as(Role::paragraph).lines({uses_left, y}, *block.style, block.lines);
  }

  const content::ProofContent &content_;
  const Checked &checked_;
  const ImageOf &images_, &patches_;
  const Typesetter &type_;
  std::map<std::size_t, std::vector<std::string>> marks_of_; ///< numbers, by picture
  PictureSheets result_;
  Length y_;
};

} // namespace

PictureSheets lay_out_pictures(const content::ProofContent &content, const Checked &checked,
                               const ImageOf &images, const ImageOf &patches, const Typesetter &type) {
  return PictureWriter(content, checked, images, patches, type).write();
}

} // namespace stoneproof::layout
