// What is said of near misses in the layout, and of type. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

std::string nearly_aligned_words(const Evidence &evidence, const Finding &finding);
std::string sliver_overlap_words(const Evidence &evidence, const Finding &finding);
std::string stray_margin_words(const Evidence &evidence, const Finding &finding);
std::string stray_caption_words(const Evidence &evidence, const Finding &finding);
std::string stray_caption_remedy(const Evidence &evidence, const Finding &finding);
std::string hidden_text_words(const Evidence &evidence, const Finding &finding);
std::string type_on_picture_words(const Evidence &evidence, const Finding &finding);
std::string overfull_text_words(const Evidence &evidence, const Finding &finding);
std::string small_type_words(const Evidence &evidence, const Finding &finding);

} // namespace stoneproof::content
