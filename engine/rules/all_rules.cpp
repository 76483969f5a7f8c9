// The list of rules and the one loop over them. The only ways in are all_rules, find_rule and check_rules;
// tested in tests/engine/rules and by the fixtures under tests/rules.
#include "engine/rules/rule.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace stoneproof {

extern const Rule missing_picture_rule, unreadable_picture_rule, empty_frame_rule, too_few_pixels_rule,
    lost_original_too_small_rule, enlarged_in_software_rule, soft_detail_rule, uneven_stretch_rule,
    uncovered_frame_rule, short_bleed_rule, near_trim_rule, inside_safe_margin_rule, off_page_rule,
    across_gutter_rule, picture_twice_rule, unaccepted_file_rule, coarse_jpeg_rule, saved_before_rule,
    nearly_blank_rule, clipped_highlights_rule, clipped_shadows_rule, low_contrast_rule, combed_tones_rule,
    too_much_ink_rule, out_of_gamut_rule, gray_as_colour_rule, broken_profile_rule, mismatched_profile_rule,
    wide_gamut_rule, no_profile_rule, several_pictures_rule, see_through_picture_rule, unused_picture_rule,
    nearly_aligned_rule, stray_margin_rule, stray_caption_rule, sliver_overlap_rule, type_on_picture_rule,
    hidden_text_rule, small_type_rule, overfull_text_rule, page_count_off_rule, signature_left_over_rule,
    first_page_left_rule, pages_missing_rule, empty_page_rule, mixed_trim_rule, contradicting_stock_rule,
    spine_off_rule, cover_size_off_rule, narrow_spine_text_rule, over_cover_fold_rule, creep_at_trim_rule,
    lost_in_gutter_rule, halves_apart_rule, printed_screen_rule, screenshot_rule, near_copy_rule,
    bed_showing_rule, tilted_original_rule, dirty_glass_rule, trim_box_missing_rule, boxes_amiss_rule,
    no_room_for_bleed_rule, font_not_embedded_rule, paint_not_accepted_rule, transparent_page_rule,
    hidden_picture_rule, hairline_rule, locked_file_rule, note_on_page_rule, no_output_intent_rule,
    other_paper_rule, broken_content_rule, reduced_in_export_rule, doubtful_master_rule, no_master_rule;

namespace {

constexpr std::array rules = {
    &page_count_off_rule,
    &pages_missing_rule,
    &first_page_left_rule,
    &mixed_trim_rule,
    &other_paper_rule,
    &trim_box_missing_rule,
    &boxes_amiss_rule,
    &locked_file_rule,
    &font_not_embedded_rule,
    &broken_content_rule,
    &no_output_intent_rule,
    &empty_page_rule,
    &signature_left_over_rule,
    &contradicting_stock_rule,
    &spine_off_rule,
    &cover_size_off_rule,
    &narrow_spine_text_rule,
    &over_cover_fold_rule,
    &missing_picture_rule,
    &unreadable_picture_rule,
    &empty_frame_rule,
    &too_few_pixels_rule,
    &lost_original_too_small_rule,
    &reduced_in_export_rule,
    &doubtful_master_rule,
    &no_master_rule,
    &enlarged_in_software_rule,
    &soft_detail_rule,
    &printed_screen_rule,
    &screenshot_rule,
    &uneven_stretch_rule,
    &uncovered_frame_rule,
    &short_bleed_rule,
    &near_trim_rule,
    &no_room_for_bleed_rule,
    &inside_safe_margin_rule,
    &off_page_rule,
    &hidden_picture_rule,
    &lost_in_gutter_rule,
    &across_gutter_rule,
    &halves_apart_rule,
    &creep_at_trim_rule,
    &nearly_aligned_rule,
    &sliver_overlap_rule,
    &stray_margin_rule,
    &stray_caption_rule,
    &hidden_text_rule,
    &type_on_picture_rule,
    &overfull_text_rule,
    &small_type_rule,
    &hairline_rule,
    &paint_not_accepted_rule,
    &transparent_page_rule,
    &note_on_page_rule,
    &picture_twice_rule,
    &near_copy_rule,
    &bed_showing_rule,
    &tilted_original_rule,
    &dirty_glass_rule,
    &coarse_jpeg_rule,
    &saved_before_rule,
    &nearly_blank_rule,
    &clipped_highlights_rule,
    &clipped_shadows_rule,
    &low_contrast_rule,
    &combed_tones_rule,
    &too_much_ink_rule,
    &out_of_gamut_rule,
    &gray_as_colour_rule,
    &broken_profile_rule,
    &mismatched_profile_rule,
    &wide_gamut_rule,
    &no_profile_rule,
    &several_pictures_rule,
    &see_through_picture_rule,
    &unaccepted_file_rule,
    &unused_picture_rule,
};

/// What is about the whole book comes after what has a page; on a page frames come before texts.
auto reading_place(const Finding &finding) {
  constexpr auto last = static_cast<std::size_t>(-1);
  return std::tuple(finding.grade, finding.page.value_or(last), finding.frame.value_or(last),
                    finding.text.value_or(last));
}

} // namespace

std::span<const Rule *const> all_rules() { return rules; }

const Rule *find_rule(std::string_view id) {
  const auto found =
      std::find_if(rules.begin(), rules.end(), [&](const Rule *rule) { return rule->id == id; });
  return found == rules.end() ? nullptr : *found;
}

std::vector<Finding> check_rules(const Evidence &evidence) {
  std::vector<Finding> findings;
  for (const Rule *rule : rules) {
    const std::size_t before = findings.size();
    rule->check(evidence, findings);
    for (std::size_t i = before; i < findings.size(); ++i) findings[i].rule = rule->id;
  }
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding &a, const Finding &b) { return reading_place(a) < reading_place(b); });
  return findings;
}

} // namespace stoneproof
