// What is said of the book as an object: its pages, papers, cover and binding. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

/// Of a finished PDF whose binding nobody named.
inline bool is_binding_guessed(const Book &book) {
  return book.print_file && book.print_file->binding_guessed;
}
std::string page_count_words(const Evidence &evidence, const Finding &finding);
std::string page_count_remedy(const Evidence &evidence, const Finding &finding);
std::string left_over_words(const Evidence &evidence, const Finding &finding);
std::string left_over_remedy(const Evidence &evidence, const Finding &finding);
std::string pages_missing_words(const Evidence &evidence, const Finding &finding);
std::string mixed_trim_words(const Evidence &evidence, const Finding &finding);
std::string mixed_trim_remedy(const Evidence &evidence, const Finding &finding);
std::string contradicting_stock_words(const Evidence &evidence, const Finding &finding);
std::string spine_off_words(const Evidence &evidence, const Finding &finding);
std::string cover_size_words(const Evidence &evidence, const Finding &finding);
std::string spine_text_words(const Evidence &evidence, const Finding &finding);
std::string spine_text_remedy(const Evidence &evidence, const Finding &finding);
std::string cover_fold_words(const Evidence &evidence, const Finding &finding);

} // namespace stoneproof::content
