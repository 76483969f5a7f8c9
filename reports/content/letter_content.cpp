// What somebody is asked -> the sentences of the letter. The only way in is letter_content; tested in
// tests/reports/content/letter_content.test.cpp.
#include "reports/content/letter_content.h"

#include "reports/content/figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>

namespace stoneproof::content {

namespace {

struct RuleWords {
  std::string_view rule;
  Say why;
};
constexpr std::array rule_words = {
    RuleWords{"missing-picture", Say::why_missing_picture},
    RuleWords{"unreadable-picture", Say::why_unreadable_picture},
    RuleWords{"nearly-blank", Say::why_nearly_blank},
    RuleWords{"too-few-pixels", Say::why_too_few_pixels},
    RuleWords{"lost-original-too-small", Say::why_lost_original_too_small},
    RuleWords{"enlarged-in-software", Say::why_enlarged_in_software},
    RuleWords{"saved-before", Say::why_saved_before},
    RuleWords{"coarse-jpeg", Say::why_coarse_jpeg},
    RuleWords{"printed-screen", Say::why_printed_screen},
    RuleWords{"clipped-highlights", Say::why_clipped_highlights},
    RuleWords{"clipped-shadows", Say::why_clipped_shadows},
    RuleWords{"combed-tones", Say::why_combed_tones},
    RuleWords{"soft-detail", Say::why_soft_detail},
    RuleWords{"tilted-original", Say::why_tilted_original},
    RuleWords{"dirty-glass", Say::why_dirty_glass},
    RuleWords{"screenshot", Say::why_screenshot},
    RuleWords{"several-pictures", Say::why_several_pictures},
    RuleWords{"unaccepted-file", Say::why_unaccepted_file},
};

struct AskWords {
  Say instruction, glance;
};
AskWords ask_words(Ask ask) {
  switch (ask) {
  case Ask::send_file: return {Say::do_send_file, Say::short_send_file};
  case Ask::send_again: return {Say::do_send_again, Say::short_send_again};
  case Ask::scan: return {Say::do_scan, Say::short_scan};
  case Ask::scan_film: return {Say::do_scan_film, Say::short_scan_film};
  case Ask::scan_by_service: return {Say::do_scan_by_service, Say::short_scan_by_service};
  case Ask::photograph: return {Say::do_photograph, Say::short_photograph};
  case Ask::measure: return {Say::do_measure, Say::short_measure};
  case Ask::first_file: return {Say::do_first_file, Say::short_first_file};
  case Ask::save_as_tiff: return {Say::do_save_as_tiff, Say::short_save_as_tiff};
  case Ask::own_file: return {Say::do_own_file, Say::short_own_file};
  case Ask::find_better: return {Say::do_find_better, Say::short_find_better};
  }
  return {Say::do_send_again, Say::short_send_again};
}

Say original_words(OriginalKind kind) {
  switch (kind) {
  case OriginalKind::print: return Say::the_print;
  case OriginalKind::slide: return Say::the_slide;
  case OriginalKind::negative: return Say::the_negative;
  case OriginalKind::document: return Say::the_document;
  case OriginalKind::clipping: return Say::the_clipping;
  case OriginalKind::object: return Say::the_object;
  }
  return Say::the_print;
}

bool is_scan(Ask ask) { return ask == Ask::scan || ask == Ask::scan_film || ask == Ask::scan_by_service; }

const Contributor &person_of(const Book &book, const ContributorAsks &asks) {
  static const Contributor nobody;
  return asks.contributor ? book.contributors[*asks.contributor] : nobody;
}

/// The words of one letter.
class Letter {
public:
  Letter(const Book &book, const ContributorAsks &asks)
      : book_(book), asks_(asks), person_(person_of(book, asks)),
        language_(letter_language(std::array<std::string_view, 2>{
            person_.language ? std::string_view(*person_.language) : std::string_view(), book.language})) {}

  LetterContent write() const {
    LetterContent content;
    content.language = language_.tag;
    content.letter_for = say(Say::letter_for);
    content.name = person_.name;
    content.about = say(Say::about_book, {{"book", book_.title}});
    content.greeting =
        person_.name.empty() ? say(Say::greeting_no_name) : say(Say::greeting, {{"name", person_.name}});
    content.intro = intro();
    content.glance = say(Say::glance);
    content.glance_more = say(Say::glance_more);
    content.details = say(Say::details);
    content.no_picture = say(Say::no_picture);
    for (std::size_t i = 0; i < asks_.pictures.size(); ++i)
      content.pictures.push_back(picture(i + 1, asks_.pictures[i]));
    content.explained = explained(content.pictures);
    for (const DirtyGlass &dirty : asks_.glasses) content.glasses.push_back(glass(dirty));
    content.check_heading = say(Say::check_heading);
    for (const Say check : {Say::check_clean, Say::check_setting, Say::check_whole, Say::check_auto,
                            Say::check_save, Say::check_send, Say::check_film, Say::check_fragile})
      content.checks.push_back(say(check));
    content.slip = slip();
    return content;
  }

private:
  std::string say(Say which, const Values &values = {}) const { return words(language_, which, values); }

  std::string intro() const {
    const std::size_t count = asks_.pictures.size();
    if (count == 0) return say(Say::glass_only);
    return count == 1 ? say(Say::intro_one) : say(Say::intro_many, {{"count", fmt::format("{}", count)}});
  }

  std::vector<std::string> explained(const std::vector<LetterPicture> &pictures) const {
    const auto any = [&](auto has) { return std::any_of(pictures.begin(), pictures.end(), has); };
    const auto tells_tiff = [](const LetterPicture &each) {
      return each.instruction.find("TIFF") != std::string::npos;
    };
    std::vector<std::string> texts;
    if (any([](const LetterPicture &each) { return !each.setting.empty(); })) texts.push_back(say(Say::dpi));
    if (any(tells_tiff)) texts.push_back(say(Say::tiff));
    return texts;
  }

  std::string centimetres(double tenths) const {
    std::string text = fmt::format("{:.1f}", tenths / 10);
    const std::size_t point = text.find('.');
    return text.replace(point, 1, say(Say::decimal));
  }
  /// In centimetres, to the nearest tenth.
  std::string size(const Size &size) const {
    return say(Say::size, {{"width", centimetres(std::round(size.width.mm()))},
                           {"height", centimetres(std::round(size.height.mm()))}});
  }
  /// Rounded down to a tenth: of a size that a picture may be printed at.
  std::string size_down(const Size &size) const {
    const auto down = [](Length length) { return std::floor(length.mm() + size_rounding); };
    return say(Say::size,
               {{"width", centimetres(down(size.width))}, {"height", centimetres(down(size.height))}});
  }

  /// The page that a frame stands on; of a spread the left one, the right one, or both.
  std::string caption(const PictureAsk &ask) const {
    const FrameAt &at = ask.frames.front();
    const Page &page = book_.pages[at.page];
    const Rect &rect = page.frames[at.frame].rect;
    const Length fold = page.trim.value_or(book_.trim).width;
    const bool spread = page.kind == PageKind::spread, right = spread && rect.x >= fold;
    Say where = Say::on_page;
    if (page.kind == PageKind::cover) where = Say::on_cover;
    if (spread && !right && rect.x + rect.width > fold) where = Say::on_pages;
    std::string text = say(where, {{"page", fmt::format("{}", page.number + (right ? 1 : 0))},
                                   {"next", fmt::format("{}", page.number + 1)},
                                   {"size", size(ask.printed)}});
    const std::size_t more = ask.frames.size() - 1;
    if (more == 1) text += " " + say(Say::also_used_once);
    if (more > 1) text += " " + say(Say::also_used, {{"count", fmt::format("{}", more)}});
    return text;
  }

  std::string why(const PictureAsk &ask) const {
    for (const RuleWords &each : rule_words)
      if (each.rule == ask.rule) return say(each.why);
    return {};
  }

  std::string how(const PictureAsk &ask) const {
    if (ask.ask == Ask::photograph && ask.pixels)
      return say(Say::how_pixels, {{"width", fmt::format("{}", ask.pixels->width)},
                                   {"height", fmt::format("{}", ask.pixels->height)}});
    if (ask.ask == Ask::measure) return say(Say::how_after_measuring);
    if (ask.ask == Ask::first_file || ask.ask == Ask::send_again) return say(Say::how_phone);
    return is_scan(ask.ask) ? how_to_scan(ask) : std::string();
  }

  /// Whatever the new scan is to mend it must be made for; more than two things nobody minds.
  std::string how_to_scan(const PictureAsk &ask) const {
    constexpr std::size_t most = 2;
    std::vector<std::string> sentences;
    for (const std::string_view rule : ask.rules) {
      const std::string sentence = how_for(rule, ask.ask);
      if (sentence.empty() || std::ranges::count(sentences, sentence) > 0) continue;
      sentences.push_back(sentence);
      if (sentences.size() == most) break;
    }
    std::string text;
    for (const std::string &sentence : sentences) text += (text.empty() ? "" : " ") + sentence;
    return text;
  }

  std::string how_for(std::string_view rule, Ask ask) const {
    if (rule == "printed-screen") return say(Say::how_descreen);
    if (rule == "dirty-glass") return say(Say::how_clean);
    if (rule == "enlarged-in-software") return say(Say::how_no_enlarging);
    if (rule.starts_with("clipped-") || rule == "combed-tones") return say(Say::how_no_correction);
    if (rule == "tilted-original") return say(Say::how_straight);
    return rule == "soft-detail" && ask == Ask::scan ? say(Say::how_straight_flat) : std::string();
  }

  std::string if_lost(const PictureAsk &ask, const Values &values) const {
    const auto sized = [&](Say plain, Say with_size) {
      return ask.no_larger ? say(with_size, {{"size", size_down(*ask.no_larger)}}) : say(plain);
    };
    switch (ask.ask) {
    case Ask::scan:
    case Ask::scan_film:
    case Ask::scan_by_service:
    case Ask::photograph:
    case Ask::measure: return sized(Say::else_lost, Say::else_lost_size);
    case Ask::first_file:
    case Ask::find_better: return sized(Say::else_not_found, Say::else_not_found_size);
    case Ask::send_file:
    case Ask::send_again: return ask.setting ? say(Say::else_scan, values) : say(Say::else_no_file);
    case Ask::save_as_tiff:
    case Ask::own_file: break;
    }
    return say(Say::else_help);
  }

  LetterPicture picture(std::size_t number, const PictureAsk &ask) const {
    const Picture &picture = book_.pictures[ask.picture];
    LetterPicture told;
    told.picture = ask.picture;
    told.number = fmt::format("{}", number);
    told.name = std::filesystem::path(picture.file).filename().string();
    told.caption = caption(ask);
    told.file = ask.ask == Ask::send_file ? told.name : say(Say::your_file, {{"file", told.name}});
    told.badge = say(ask.grade == Grade::hold ? Say::must : Say::would_help);
    const std::string setting =
        ask.setting ? say(Say::setting, {{"ppi", fmt::format("{}", *ask.setting)}}) : std::string();
    if (is_scan(ask.ask)) told.setting = setting;
    const OriginalKind kind = picture.original ? picture.original->kind : OriginalKind::print;
    const Values values = {{"original", say(original_words(kind))}, {"setting", setting}};
    told.instruction = say(ask_words(ask.ask).instruction, values);
    told.glance = say(ask_words(ask.ask).glance);
    told.why = why(ask);
    told.how = how(ask);
    told.if_lost = if_lost(ask, values);
    return told;
  }

  LetterGlass glass(const DirtyGlass &dirty) const {
    std::string names;
    constexpr std::size_t most = 12; // named; more would fill the page
    const auto &pictures = dirty.pictures;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      if (i == most) {
        names += " …";
        break;
      }
      if (i > 0) names += i + 1 == pictures.size() ? " " + say(Say::and_join) + " " : ", ";
      names += std::filesystem::path(book_.pictures[pictures[i]].file).filename().string();
    }
    const Say sentence = dirty.spots.empty() ? Say::glass_plain : Say::glass_sentence;
    return {say(Say::glass_heading), say(sentence, {{"pictures", names}}), dirty.spots};
  }

  LetterSlip slip() const {
    return {say(Say::slip_heading), say(Say::slip_return), say(Say::slip_from, {{"name", person_.name}}),
            say(Say::slip_sent),    say(Say::slip_lost),   say(Say::slip_measure),
            say(Say::slip_help),    say(Say::slip_sign)};
  }

  const Book &book_;
  const ContributorAsks &asks_;
  const Contributor &person_;
  const LetterLanguage &language_;
};

} // namespace

LetterContent letter_content(const Book &book, const ContributorAsks &asks) {
  return Letter(book, asks).write();
}

std::string with_letter_figures_kept_whole(std::string text) {
  return with_units_kept_whole(std::move(text), {"dpi", "cm"});
}

} // namespace stoneproof::content
