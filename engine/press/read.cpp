// Reads a press sheet from its root down. Ways in: the functions of read.h.
// Tested in tests/engine/press/read.test.cpp and, against the schema, in schema.test.cpp beside it.
#include "engine/press/read.h"

#include "engine/book/read_parts.h"
#include "engine/press/read_each.h"
#include "engine/press/read_object.h"
#include "engine/press/read_profile.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

namespace stoneproof {
namespace {

// The one attribute of an element that has no other, or a default value when the element is missing.
template <class Parse>
auto only_value(ElementReader &parent, std::string_view element, std::string_view attribute, Parse parse,
                FaultList &faults) {
  using Value = std::decay_t<decltype(parse(std::string_view()).value())>;
  const Element *child = parent.one(element);
  if (!child) return Value();
  ElementReader reader(*child, faults);
  return reader.required(attribute, parse);
}

void read_densities(const Element &element, PressSheet &sheet, FaultList &faults) {
  ElementReader reader(element, faults);
  sheet.density_tolerance = reader.required("tolerance", parse_share);
  read_each(reader, "density", "use", use_words, "density", faults, [&](ElementReader &one, Use use) {
    const std::size_t before = faults.count();
    const DensityBar bar{one.required("wanted", parse_density), one.required("least", parse_density)};
    if (faults.count() == before && bar.least > bar.wanted)
      one.fault(one.place_of("least"), "the least density is above the wanted one", "Swap the two values.");
    sheet.density[static_cast<std::size_t>(use)] = bar;
  });
}

QualityBar read_quality(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  const std::size_t before = faults.count();
  const QualityBar bar{reader.required("wanted", parse_quality), reader.required("least", parse_quality)};
  if (faults.count() == before && bar.least > bar.wanted)
    reader.fault(reader.place_of("least"), "the least quality is above the wanted one",
                 "Swap the two values.");
  return bar;
}

// A list of words, each in an element of its own, at least one, none twice.
template <class Table>
auto read_list(const Element &element, std::string_view child, std::string_view attribute, const Table &words,
               FaultList &faults) {
  using Value = std::decay_t<decltype(words[0].value)>;
  ElementReader reader(element, faults);
  std::vector<Value> values;
  const auto children = reader.all({child});
  if (children.empty())
    reader.fault(element.place, fmt::format("<{}> has no <{}>", element.name, child), "Add at least one.");
  for (const Element *item : children) {
    ElementReader item_reader(*item, faults);
    const std::size_t before = faults.count();
    const Value value = item_reader.required(attribute, one_of(words));
    if (faults.count() > before) continue;
    if (std::find(values.begin(), values.end(), value) != values.end())
      item_reader.fault(item_reader.place_of(attribute), "this is written twice", "Keep one of the two.");
    values.push_back(value);
  }
  return values;
}

InkBar read_ink(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return {reader.required("limit", parse_coverage), reader.required("square", parse_positive_length)};
}

FinishedPdfBar read_finished_pdf(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return {reader.required("thinnest-line", parse_length_from_zero),
          reader.required("transparency", parse_yes_no)};
}

ToneBar read_tone(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return {reader.required("clipped", parse_share), reader.required("range", parse_share)};
}

// The book as an object.
void read_object(ElementReader &reader, PressSheet &sheet, FaultList &faults) {
  if (const Element *counts = reader.one("page-counts"))
    sheet.page_counts = read_page_counts(*counts, faults);
  if (const Element *margins = reader.one("inside-margins"))
    sheet.inside_margins = read_inside_margins(*margins, faults);
  sheet.fold_tolerance = only_value(reader, "fold", "tolerance", parse_length_from_zero, faults);
  if (const Element *spine = reader.one("spine")) sheet.spine = read_spine(*spine, faults);
  sheet.creep_compensated = only_value(reader, "creep", "compensated", parse_yes_no, faults);
  if (const Element *sizes = reader.one("type-sizes")) sheet.least_type = read_type_sizes(*sizes, faults);
}

PressSheet read_sheet(const Element &root, const std::filesystem::path &folder, FaultList &faults) {
  ElementReader reader(root, faults);
  PressSheet sheet;
  sheet.name = reader.required("name", parse_line);
  if (const Element *densities = reader.one("densities")) read_densities(*densities, sheet, faults);
  sheet.stretch_tolerance = only_value(reader, "stretch", "tolerance", parse_share, faults);
  if (const Element *bleed = reader.one("bleed")) sheet.bleed = read_edges(*bleed, faults);
  if (const Element *safe_margin = reader.one("safe-margin"))
    sheet.safe_margin = read_edges(*safe_margin, faults);
  sheet.cut_tolerance = only_value(reader, "cut", "tolerance", parse_length_from_zero, faults);
  read_object(reader, sheet, faults);
  sheet.flatbed_limit = only_value(reader, "flatbed", "limit", parse_density, faults);
  if (const Element *quality = reader.one("jpeg-quality"))
    sheet.jpeg_quality = read_quality(*quality, faults);
  if (const Element *tone = reader.one("tone")) sheet.tone = read_tone(*tone, faults);
  if (const Element *ink = reader.one("ink")) sheet.ink = read_ink(*ink, faults);
  if (const Element *pdf = reader.maybe("finished-pdf")) sheet.finished_pdf = read_finished_pdf(*pdf, faults);
  if (const Element *profile = reader.maybe("profile"))
    sheet.profile = read_press_profile(*profile, folder, faults);
  if (const Element *formats = reader.one("formats"))
    sheet.formats = read_list(*formats, "format", "name", format_words, faults);
  if (const Element *colours = reader.one("colours"))
    sheet.colours = read_list(*colours, "colour", "model", colour_words, faults);
  return sheet;
}

Reading<PressSheet> read_sheet(std::variant<Document, SourceFault> document) {
  if (auto *fault = std::get_if<SourceFault>(&document)) return {std::nullopt, {std::move(*fault)}};
  const Document &read = std::get<Document>(document);
  FaultList faults(read.source);
  if (!check_root(read, "press", press_namespace, faults)) return {std::nullopt, faults.sorted()};
  PressSheet sheet = read_sheet(read.root, std::filesystem::path(read.source.name()).parent_path(), faults);
  if (!faults.empty()) return {std::nullopt, faults.sorted()};
  sheet.source = read.source.name();
  return {std::move(sheet), {}};
}

} // namespace

Reading<PressSheet> read_press_sheet(const std::filesystem::path &file) {
  return read_sheet(read_document(file));
}
Reading<PressSheet> parse_press_sheet(SourceText source) {
  return read_sheet(parse_document(std::move(source)));
}

PressSheet built_in_press_sheet() {
  // A test reads the built-in text, so that there always is a value.
  return parse_press_sheet(SourceText("built in", std::string(built_in_press_sheet_text()))).value.value();
}

} // namespace stoneproof
