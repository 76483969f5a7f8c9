// Every page, one after the other. The only way in is read_pages; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/read_pages.h"

#include "engine/import/page_reader.h"

#include <utility>

namespace stoneproof::finished {

namespace {

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
    PageReader reader(file, drawn.parts, layers, i, boxes);
    auto notes = notes_of(page);
    PageDrawing drawing = reader.read(page, resources, notes);
    drawn.sheets.push_back({boxes, labels[i], std::move(drawing), std::move(notes)});
  }
  return drawn;
}

} // namespace stoneproof::finished
