#include "reports/layout/canvas.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::layout;
using stoneproof::test::type;

namespace {

struct Seen {
  Role role;
  std::optional<std::size_t> parent;
  std::size_t first, end;
  friend bool operator==(const Seen &, const Seen &) = default;
};

std::vector<Seen> seen(const DocumentPage &page) {
  std::vector<Seen> all;
  for (const Element &element : page.elements)
    all.push_back({element.role, element.parent, element.first, element.end});
  return all;
}

} // namespace

TEST_CASE("elements hold what is drawn in their scopes, and know what they are a part of") {
  DocumentPage page;
  Canvas canvas(type(), page);
  canvas.as(Role::heading1).text({}, style::title, "Heading");
  {
    const auto row = canvas.begin(Role::row);
    canvas.as(Role::cell).text({}, style::body, "one");
    {
      // A canvas of the same page goes on where another stopped.
      Canvas again(type(), page);
      const auto cell = again.begin(Role::cell);
      again.as(Role::paragraph).lines({}, style::body, {"two", "lines"});
      again.as(Role::paragraph).text({}, style::body, "more");
    }
    canvas.line({}, {9_mm, 0_mm}, style::row_rule);
  }
  {
    const auto figure = canvas.begin(Role::figure, "a line");
    canvas.line({}, {9_mm, 0_mm}, style::row_rule);
  }
  CHECK((seen(page) == std::vector<Seen>{{Role::heading1, {}, 0, 1},
                                         {Role::row, {}, 1, 6},
                                         {Role::cell, 1, 1, 2},
                                         {Role::cell, 1, 2, 5},
                                         {Role::paragraph, 3, 2, 4},
                                         {Role::paragraph, 3, 4, 5},
                                         {Role::figure, {}, 6, 7}}));
  CHECK(page.elements.back().alternative == "a line");
}

TEST_CASE("an element in which nothing was drawn is taken back, but for a cell") {
  DocumentPage page;
  Canvas canvas(type(), page);
  canvas.as(Role::paragraph).text({}, style::body, "");
  {
    const auto row = canvas.begin(Role::row);
    canvas.as(Role::cell).text({}, style::body, "");
    canvas.as(Role::cell).text({}, style::body, "words");
  }
  CHECK(
      (seen(page) == std::vector<Seen>{{Role::row, {}, 0, 1}, {Role::cell, 0, 0, 0}, {Role::cell, 0, 0, 1}}));
}
