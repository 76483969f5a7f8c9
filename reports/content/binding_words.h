// What is said of things that the binding swallows, parts or moves. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

std::string creep_at_trim_words(const Evidence &evidence, const Finding &finding);
std::string lost_in_gutter_words(const Evidence &evidence, const Finding &finding);
std::string lost_in_gutter_remedy(const Evidence &evidence, const Finding &finding);
std::string halves_apart_words(const Evidence &evidence, const Finding &finding);

} // namespace stoneproof::content
