// Reads the papers of block, cover and endpapers. Only way in: read_stocks.
// Tested in tests/engine/book/read_object.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

namespace stoneproof {
namespace {

enum class Part { block, cover, endpaper };
constexpr Word<Part> part_words[] = {
    {Part::block, "block"}, {Part::cover, "cover"}, {Part::endpaper, "endpaper"}};

std::optional<Stock> &stock_of(Stocks &stocks, Part part) {
  if (part == Part::block) return stocks.block;
  return part == Part::cover ? stocks.cover : stocks.endpaper;
}

// A stock must tell a thickness; what is missing for that is named.
void check_thickness(ElementReader &reader) {
  const bool grammage = reader.has("grammage"), bulk = reader.has("bulk");
  const SourcePlace place = reader.element().place;
  if (bulk && !grammage)
    reader.fault(place, "the stock has a bulk but no grammage",
                 "Add grammage=\"...\": only both together tell a thickness.");
  if (bulk || reader.has("caliper") || reader.has("pages-per-inch")) return;
  if (grammage)
    reader.fault(place, "the stock has a grammage but no bulk, caliper or pages per inch",
                 "Add one of them: a grammage alone tells no thickness.");
  else
    reader.fault(place, "the stock does not tell how thick it is",
                 "Add caliper=\"...\", or grammage=\"...\" and bulk=\"...\", or pages-per-inch=\"...\".");
}

void read_stock(const Element &element, Stocks &stocks, FaultList &faults) {
  ElementReader reader(element, faults);
  const std::size_t before = faults.count();
  const Part part = reader.required("part", one_of(part_words));
  const bool part_told = faults.count() == before;
  Stock stock;
  stock.place = element.place;
  stock.caliper = reader.optional("caliper", parse_positive_length);
  stock.grammage = reader.optional("grammage", parse_grammage);
  stock.bulk = reader.optional("bulk", parse_bulk);
  stock.pages_per_inch = reader.optional("pages-per-inch", parse_pages_per_inch);
  check_thickness(reader);
  if (!part_told) return;
  std::optional<Stock> &given = stock_of(stocks, part);
  if (given)
    reader.fault(reader.place_of("part"),
                 fmt::format("the stock of the {} is there already, in line {}", word_of(part_words, part),
                             given->place.line),
                 "Keep one of the two.");
  given = stock;
}

} // namespace

Stocks read_stocks(const Element &list, FaultList &faults) {
  ElementReader reader(list, faults);
  Stocks stocks;
  for (const Element *element : reader.all({"stock"})) read_stock(*element, stocks, faults);
  return stocks;
}

} // namespace stoneproof
