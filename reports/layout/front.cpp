// The first sheet. The only way in is lay_out_front; tested in tests/reports/layout.
#include "reports/layout/front.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

namespace stoneproof::layout {

namespace {

using namespace literals;

// Two columns: what was found on the left, what to do with the proof on the right.
constexpr Length left = style::margin, left_width = 172_mm;
constexpr Length right = 200_mm, right_width = style::sheet.width - style::margin - right;
constexpr Length bottom = style::sheet.height - style::foot;
// The columns of what weighs most.
constexpr Length grade_left = left, count_left = left + 14_mm, title_left = left + 29_mm,
                 where_left = left + 104_mm;

class FrontWriter {
public:
  FrontWriter(const content::ProofContent &content, const std::vector<Section> &sections,
              const SheetOfMark &sheet_of, const Typesetter &type)
      : content_(content), sections_(sections), sheet_of_(sheet_of), on_(type, page_) {}

  DocumentPage write() {
    page_.size = style::sheet;
    const auto press = on_.wrap_at_most(style::body_aside, left_width, content_.press, 3);
    matters_bottom_ = bottom - layout::height_of(style::body_aside, press.size()) - 9_mm;
    head();
    counts();
    matters();
    contents();
    answer();
    on_.as(Role::paragraph)
        .lines({left, bottom - layout::height_of(style::body_aside, press.size())}, style::body_aside, press);
    return std::move(page_);
  }

private:
  void put(Role role, const TypeStyle &style, std::string_view text, std::size_t most) {
    const auto part = on_.begin(role);
    y_ = on_.lines({left, y_}, style, on_.wrap_at_most(style, left_width, text, most));
  }

  void head() {
    put(Role::paragraph, style::label, kind_line(), 1);
    y_ += 1_mm;
    put(Role::heading1, style::title, content_.title, 2);
    put(Role::paragraph, style::body_aside, content_.job, 2);
    y_ += 5_mm;
    put(Role::heading2, style::verdict, content_.verdict, 2);
    if (!content_.round.empty()) put(Role::paragraph, style::body, content_.round, 1);
    y_ += 2.5_mm;
  }

  std::string kind_line() const {
    const std::string kind = "Layout proof";
    if (content_.file.empty()) return kind;
    return on_.shortened(style::label, left_width, kind + " of " + content_.file);
  }

  /// Doubles as the key to the lines of the marks.
  void counts() {
    constexpr std::array<std::string_view, 3> meanings = {"must be mended before printing",
                                                          "somebody must decide", "good to know"};
    for (std::size_t grade = 0; grade < meanings.size(); ++grade) {
      const auto item = on_.begin(Role::list_item);
      const Length line_y = y_ + style::label_strong.leading / 2;
      on_.line({left, line_y}, {left + 9_mm, line_y}, style::grade_line(static_cast<Grade>(grade)));
      on_.text({left + 12_mm, y_}, style::label_strong,
               content::grade_count(static_cast<Grade>(grade), content_.counts[grade]));
      on_.text_beside({left + 34_mm, y_}, style::label, style::label_strong, meanings[grade]);
      y_ += style::label_strong.leading + 1_pt;
    }
    y_ += 6_mm;
  }

  void matters() {
    if (content_.matters.empty()) return;
    put(Role::heading2, style::heading, "What weighs most", 1);
    y_ += 1_mm;
    on_.line({left, y_}, {left + left_width, y_}, style::trim_line);
    y_ += 1.2_mm;
    std::size_t shown = 0;
    while (shown < content_.matters.size() && y_ + height_of(content_.matters[shown]) < matters_bottom_)
      matter_row(content_.matters[shown++]);
    if (shown < content_.matters.size())
      put(Role::paragraph, style::body_aside, more_words(std::span(content_.matters).subspan(shown)), 1);
  }

  /// What finds no room, and whether holds are among it.
  static std::string more_words(std::span<const content::Matter> left_out) {
    const auto holds =
        static_cast<std::size_t>(std::ranges::count(left_out, Grade::hold, &content::Matter::grade));
    const std::string all = content::count(left_out.size(), "kind of fault more", "kinds of fault more");
    if (holds == 0) return fmt::format("and {}, in the table that follows.", all);
    return fmt::format("and {}, {} among them, in the table that follows.", all,
                       content::grade_count(Grade::hold, holds));
  }

  std::vector<std::string> title_of(const content::Matter &matter) const {
    return on_.wrap_at_most(style::body, where_left - title_left - 3_mm, matter.title, 2);
  }
  std::vector<std::string> where_of(const content::Matter &matter) const {
    return on_.wrap_at_most(style::body, left + left_width - where_left, matter.where, 2);
  }
  Length height_of(const content::Matter &matter) const {
    return layout::height_of(style::body, std::max(title_of(matter).size(), where_of(matter).size())) +
           1.6_mm;
  }

  void matter_row(const content::Matter &matter) {
    const Length top = y_;
    const auto item = on_.begin(Role::list_item);
    on_.text_beside({grade_left, y_}, style::label_strong, style::body, content::grade_name(matter.grade));
    on_.text_beside({count_left, y_}, style::label_strong, style::body, fmt::format("{} ×", matter.count));
    const Length title_end = on_.lines({title_left, y_}, style::body, title_of(matter));
    y_ = std::max(title_end, on_.lines({where_left, y_}, style::body, where_of(matter))) + 0.8_mm;
    on_.line({left, y_}, {left + left_width, y_}, style::row_rule);
    if (const auto sheet = sheet_of_.find(matter.mark); sheet != sheet_of_.end())
      page_.links.push_back({{left, top, left_width, y_ - top}, sheet->second});
    y_ += 0.8_mm;
  }

  /// What follows, by the number of its sheet.
  void contents() {
    Length y = style::margin + style::label.leading + 2_mm;
    on_.as(Role::heading2).text({right, y}, style::heading, "In this proof");
    y += style::heading.leading + 1_mm;
    on_.line({right, y}, {right + right_width, y}, style::trim_line);
    y += 1.2_mm;
    for (const Section &section : sections_) {
      const auto item = on_.begin(Role::list_item);
      on_.text({right, y}, style::body, section.title);
      on_.text_to_right({right + right_width, y}, style::body, fmt::format("{}", section.sheet + 1));
      page_.links.push_back({{right, y, right_width, style::body.leading}, section.sheet});
      y += style::body.leading + 0.8_mm;
    }
  }

  void answer() {
    struct Choice {
      std::string_view name, meaning;
    };
    constexpr std::array<Choice, 3> choices = {
        {{"Approved", "Print it as it is."},
         {"Approved as marked", "Mend what is marked, then print; no new proof."},
         {"New proof wanted", "Mend what is marked and send a new proof."}}};
    constexpr std::array<std::string_view, 3> lines = {"Name", "Date", "Signature"};
    constexpr Length box_height = 78_mm, inset = 5_mm, tick = 4_mm;
    Length y = bottom - box_height;
    on_.box({right, y, right_width, box_height}, std::nullopt, style::hair);
    y += 4_mm;
    on_.as(Role::heading2).text({right + inset, y}, style::heading, "The answer to this proof");
    y += style::heading.leading + 3_mm;
    for (const Choice &choice : choices) {
      on_.box({right + inset, y + 0.3_mm, tick, tick}, style::white, style::trim_line);
      const Length words = right + inset + tick + 3_mm;
      const auto item = on_.begin(Role::list_item);
      on_.text({words, y}, style::label_strong, choice.name);
      on_.text({words, y + style::label_strong.leading}, style::body, choice.meaning);
      y += style::label_strong.leading + style::body.leading + 2_mm;
    }
    for (const std::string_view line : lines) {
      y += 9_mm;
      on_.as(Role::paragraph).text({right + inset, y - style::label.leading}, style::label, line);
      on_.line({right + inset + 18_mm, y - 1_pt}, {right + right_width - inset, y - 1_pt}, style::hair);
    }
  }

  const content::ProofContent &content_;
  const std::vector<Section> &sections_;
  const SheetOfMark &sheet_of_;
  DocumentPage page_;
  Canvas on_;
  Length y_ = style::margin;
  Length matters_bottom_; ///< above what is told of the press sheet
};

} // namespace

DocumentPage lay_out_front(const content::ProofContent &content, const std::vector<Section> &sections,
                           const SheetOfMark &sheet_of, const Typesetter &type) {
  return FrontWriter(content, sections, sheet_of, type).write();
}

} // namespace stoneproof::layout
