// What is said of where a picture comes from: print, the bed of a scanner, a screen, another file. Used in
// this folder only.
#pragma once

#include "engine/rules/rule.h"
#include "engine/run/measure_files.h"

#include <string>
#include <vector>

namespace stoneproof::content {

std::string printed_screen_words(const Evidence &evidence, const Finding &finding);
std::string printed_screen_remedy(const Evidence &evidence, const Finding &finding);
std::string bed_words(const Evidence &evidence, const Finding &finding);
std::string bed_remedy(const Evidence &evidence, const Finding &finding);
std::string tilted_words(const Evidence &evidence, const Finding &finding);
std::string near_copy_words(const Evidence &evidence, const Finding &finding);

/// For the table of a picture's facts; empty: nothing to tell.
std::string past_fact(const JpegPast &past);
std::string printed_fact(const PrintedScreen &printed);
std::string bed_fact(const Bed &bed);
std::string copy_fact(const CopyOf &copy);

} // namespace stoneproof::content
