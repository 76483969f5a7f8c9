// The sentences of the letters, one table a language. A test fails where a language lacks one.
#pragma once

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace stoneproof::content {

/// One for each sentence. {names} in braces stand for values. do_... is the one thing to do, short_... the
/// same at a glance, why_... what is wrong, by the rule that found it, how_... what to mind, else_... what
/// can be done if not.
enum class Say {
  letter_for,
  about_book,
  greeting,
  greeting_no_name,
  intro_one,
  intro_many,
  dpi,
  tiff,
  glance,
  glance_more,
  details,
  must,
  would_help,
  no_picture,
  picture_number,
  your_file,
  on_cover,
  on_page,
  on_pages,
  also_used,
  also_used_once,
  size,
  setting,
  short_scan,
  short_scan_film,
  short_scan_by_service,
  short_photograph,
  short_measure,
  short_send_file,
  short_send_again,
  short_first_file,
  short_save_as_tiff,
  short_own_file,
  short_find_better,
  do_scan,
  do_scan_film,
  do_scan_by_service,
  do_photograph,
  do_measure,
  do_send_file,
  do_send_again,
  do_first_file,
  do_save_as_tiff,
  do_own_file,
  do_find_better,
  the_print,
  the_slide,
  the_negative,
  the_document,
  the_clipping,
  the_object,
  why_missing_picture,
  why_unreadable_picture,
  why_nearly_blank,
  why_too_few_pixels,
  why_lost_original_too_small,
  why_enlarged_in_software,
  why_saved_before,
  why_coarse_jpeg,
  why_printed_screen,
  why_clipped_highlights,
  why_clipped_shadows,
  why_combed_tones,
  why_soft_detail,
  why_tilted_original,
  why_dirty_glass,
  why_screenshot,
  why_several_pictures,
  why_unaccepted_file,
  how_straight_flat,
  how_no_enlarging,
  how_no_correction,
  how_descreen,
  how_straight,
  how_pixels,
  how_phone,
  how_after_measuring,
  how_clean,
  else_lost,
  else_lost_size,
  else_not_found,
  else_not_found_size,
  else_scan,
  else_no_file,
  else_help,
  glass_heading,
  glass_sentence,
  glass_plain,
  glass_only,
  check_heading,
  check_clean,
  check_setting,
  check_whole,
  check_auto,
  check_save,
  check_send,
  check_film,
  check_fragile,
  slip_heading,
  slip_return,
  slip_from,
  slip_sent,
  slip_lost,
  slip_measure,
  slip_help,
  slip_sign,
  decimal,
  and_join,
};
inline constexpr std::size_t say_count = static_cast<std::size_t>(Say::and_join) + 1;

struct Sentence {
  Say say;
  std::string_view text;
};

/// A language that letters can be written in.
struct LetterLanguage {
  std::string_view tag; ///< BCP 47, the language alone
  std::span<const Sentence> sentences;
};

extern const LetterLanguage english_letters, german_letters;

/// English first.
std::span<const LetterLanguage *const> letter_languages();

/// The language of the first tag ("de-AT") whose language there are words in; else English.
const LetterLanguage &letter_language(std::span<const std::string_view> tags);

using Values = std::map<std::string_view, std::string>;

/// The sentence with its {names} replaced; a value is never looked into for names. Empty where the language
/// lacks the sentence (tested: none does).
std::string words(const LetterLanguage &language, Say say, const Values &values = {});

} // namespace stoneproof::content
