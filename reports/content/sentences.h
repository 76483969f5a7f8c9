// A finding in words for the book maker: what is wrong, and what to do. Every sentence of the proof, the
// record and the terminal that speaks of a finding comes from here.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

/// What is wrong, in one sentence with its figures.
std::string message(const Evidence &evidence, const Finding &finding);

/// What to do, with computed figures where there are some; one to four sentences.
std::string remedy(const Evidence &evidence, const Finding &finding);

/// "Page 7", "Pages 8–9" for a spread, "The book" for a finding without a page.
std::string page_name(const Evidence &evidence, const Finding &finding);
std::string page_name(const Page &page);

/// The thing that it is about: the picture's file, the frame, or the first words of a text block.
std::string subject(const Evidence &evidence, const Finding &finding);

/// As the reader names a side: those of a spread by left, right and fold, those of a page from its binding.
std::string_view side_name(const PageSpace &space, PageSide side);

/// "at the top, outside and bottom": the sides of the page that a finding is about.
std::string sides_phrase(const Evidence &evidence, const Finding &finding);

/// "Hold", "Query", "Note".
std::string_view grade_name(Grade grade);

/// "1 hold", "3 queries".
std::string grade_count(Grade grade, std::size_t n);

} // namespace stoneproof::content
