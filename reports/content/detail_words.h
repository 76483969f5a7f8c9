// What is said of a picture's detail. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

std::string enlarged_words(const Evidence &evidence, const Finding &finding);
std::string enlarged_remedy(const Evidence &evidence, const Finding &finding);
std::string soft_words(const Evidence &evidence, const Finding &finding);
std::string soft_remedy(const Evidence &evidence, const Finding &finding);
std::string saved_before_words(const Evidence &evidence, const Finding &finding);

/// "quality 60", "quality 57 to 63", "about quality 60".
std::string earlier_quality(const EarlierQuality &earlier);

/// For the table of a picture's facts: "every pixel counts", "for about 62 % of its pixels a side".
std::string detail_fact(const Detail &detail);

} // namespace stoneproof::content
