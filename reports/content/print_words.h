// Sentences about what only a finished PDF shows.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

std::string trim_box_words(const Evidence &evidence, const Finding &finding);
std::string reduced_in_export_words(const Evidence &evidence, const Finding &finding);
std::string doubtful_master_words(const Evidence &evidence, const Finding &finding);
/// "Prints at 120 ppi", or where the file that it was made from has more: "Even the file it was made from,
/// mill.tif, gives 240 ppi and no more".
std::string reach_words(const Evidence &evidence, const Finding &finding, const std::string &density);
/// " The file it was made from, mill.tif, gives no more."; empty where no file is known, or it has more.
std::string master_words(const Evidence &evidence, const Finding &finding);
/// "Oma Trude/scan0001.jpg, 4000 × 3000 pixels, of which it shows 60 × 80 %": beside the picture's facts.
std::string master_fact(const Master &master);
/// How many of the files behind the pictures were found, where they were asked for.
std::string masters_line(const Evidence &evidence);
std::string empty_page_words(const Evidence &evidence, const Finding &finding);
std::string empty_page_remedy(const Evidence &evidence, const Finding &finding);
std::string boxes_amiss_words(const Evidence &evidence, const Finding &finding);
std::string no_room_for_bleed_words(const Evidence &evidence, const Finding &finding);
std::string font_not_embedded_words(const Evidence &evidence, const Finding &finding);
std::string paint_not_accepted_words(const Evidence &evidence, const Finding &finding);
std::string hairline_words(const Evidence &evidence, const Finding &finding);
std::string note_on_page_words(const Evidence &evidence, const Finding &finding);
std::string other_paper_words(const Evidence &evidence, const Finding &finding);
std::string broken_content_words(const Evidence &evidence, const Finding &finding);

} // namespace stoneproof::content
