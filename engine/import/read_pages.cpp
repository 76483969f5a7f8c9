// Every page, one after the other. The only way in is read_pages; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/read_pages.h"

#include "engine/import/page_reader.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

constexpr int hidden_flag = 2, print_flag = 4; // ISO 32000-1, table 165

std::vector<ShownNote> notes_of(const Object &page) {
  const Object list = page["Annots"];
  std::vector<ShownNote> notes;
  for (std::size_t i = 0; i < std::min<std::size_t>(list.size(), 2'000); ++i) {
    const Object note = list.at(i);
    const auto box = box_in(note["Rect"]);
    const std::string kind = note["Subtype"].name();
    const int flags = note["F"].whole_or(0, 0, 65'535);
    if (!box || kind == "Link" || kind == "Popup" || (flags & hidden_flag)) continue;
    notes.push_back({*box, kind, (flags & print_flag) != 0});
  }
  return notes;
}

std::string output_intent_of(const Object &catalog) {
  const Object intent = catalog["OutputIntents"].at(0);
  for (const char *key : {"OutputConditionIdentifier", "OutputCondition", "Info"})
    if (const std::string name = intent[key].text(); !name.empty()) return name;
  return intent.is_dictionary() ? "unnamed" : "";
}

} // namespace

Drawn read_pages(const PdfFile &file) {
  const Object catalog = file.catalog();
  Drawn drawn{{},
              DrawnParts(file),
              file.trailer()["Info"]["Title"].text(),
              catalog["Lang"].text(),
              output_intent_of(catalog),
              false};
  const PageTree tree = read_page_tree(file);
  const auto labels = read_page_labels(file, tree.pages.size());
  const Layers layers(catalog);
  drawn.cut_short = tree.cut_short;
  for (std::size_t i = 0; i < tree.pages.size(); ++i) {
    const auto &[page, resources, boxes] = tree.pages[i];
    PageReader reader(file, drawn.parts, layers, i, boxes.media);
    drawn.sheets.push_back({boxes, labels[i], reader.read(page, resources), notes_of(page)});
  }
  return drawn;
}

} // namespace stoneproof::finished
