#include "tests/reports/pdf/sample.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;

namespace {

layout::Document sample(const Folder &folder) {
  layout::Document document = titled_document();
  document.images = {picture(folder, 600, 400), picture(folder, 30, 20)};
  for (int i = 0; i < 3; ++i) {
    layout::DocumentPage page = page_of({210_mm, 297_mm}, {placed(0, {20_mm, 30_mm, 1_in * 2, 1_in})});
    page.items.emplace_back(layout::TextItem{{20_mm, 100_mm}, Face::text, 10_pt, {}, "page"});
    page.items.emplace_back(
        layout::ShapeItem{{{0_mm, 0_mm}, {9_mm, 0_mm}, {9_mm, 9_mm}}, layout::Ink{9, 9, 9}, {}, 0.5});
    page.bleed = Rect{7_mm, 17_mm, 196_mm, 260_mm};
    page.trim = Rect{10_mm, 20_mm, 190_mm, 254_mm};
    page.label = "p" + std::to_string(i + 1);
    page.links = {{{20_mm, 30_mm, 10_mm, 10_mm}, 2}};
    page.notes = {{{5_mm, 5_mm, 4_mm, 4_mm}, "1", "za ma\u0142o"},
                  {{5_mm, 15_mm, 4_mm, 4_mm}, "2", "line\nline"}};
    document.pages.push_back(page);
  }
  document.bookmarks = {{"Summary", 0, 0}, {"Page", 1, 0},   {"Mark", 1, 1},
                        {"Mark 2", 1, 1},  {"Deeper", 2, 2}, {"End", 2, 0}};
  return document;
}

/// The values of all objects of a file as qpdf sees them.
std::vector<nlohmann::json> objects(const std::string &path) {
  const auto file = nlohmann::json::parse(run_command("qpdf --json=2 --json-key=qpdf " + path));
  std::vector<nlohmann::json> found;
  for (const auto &[key, object] : file["qpdf"][1].items())
    if (object.contains("value") && object["value"].is_object()) found.push_back(object["value"]);
  return found;
}

std::ptrdiff_t count(const std::vector<nlohmann::json> &all, const std::string &key,
                     const std::string &value) {
  return std::count_if(all.begin(), all.end(),
                       [&](const auto &object) { return object.value(key, nlohmann::json()) == value; });
}

} // namespace

TEST_CASE("boxes, title and dates are told") {
  const Folder folder;
  const std::string pdf = folder.file("s.pdf");
  write(sample(folder), pdf);
  const std::string info = run_command("TZ=UTC pdfinfo -box " + pdf);
  for (const char *line :
       {"Title:           Album \u0141\u00F3d\u017A\n", "Subject:         Proof <1> & more\n",
        "CreationDate:    Tue Nov 14 22:13:20 2023 UTC\n", "Pages:           3\n",
        "MediaBox:            0.00     0.00   595.28   841.89\n",
        "BleedBox:           19.84    56.69   575.43   793.70\n",
        "TrimBox:            28.35    65.20   566.93   785.20\n", "PDF version:     1.7\n"})
    CHECK(info.find(line) != std::string::npos);
  const std::string xmp = run_command("pdfinfo -meta " + pdf);
  CHECK(xmp.find("Proof &lt;1&gt; &amp; more") != std::string::npos);
  std::ofstream(folder.file("xmp.xml")) << xmp;
  run_command("xmllint --noout " + folder.file("xmp.xml"));
}

TEST_CASE("bookmarks, links, notes and labels are all there") {
  const Folder folder;
  write(sample(folder), folder.file("s.pdf"));
  const auto all = objects(folder.file("s.pdf"));
  CHECK(count(all, "/Subtype", "/Link") == 3);
  CHECK(count(all, "/Subtype", "/Text") == 6);
  CHECK(count(all, "/Contents", "u:za ma\u0142o") == 3);
  CHECK(count(all, "/Contents", "u:line\nline") == 3);
  CHECK(count(all, "/M", "u:D:20231114221320Z") == 6);
  const auto outline = nlohmann::json::parse(
      run_command("qpdf --json=2 --json-key=outlines --json-key=pagelabels " + folder.file("s.pdf")));
  const auto &top = outline["outlines"];
  REQUIRE(top.size() == 3);
  CHECK(top[1]["title"] == "Page");
  CHECK(top[1]["destpageposfrom1"] == 2);
  REQUIRE(top[1]["kids"].size() == 2);
  CHECK(top[1]["kids"][1]["kids"][0]["title"] == "Deeper");
  CHECK(outline["pagelabels"][2]["label"]["/P"] == "u:p3");
}

TEST_CASE("a picture is in the file once, byte for byte, at the size it was placed") {
  const Folder folder;
  const layout::Document document = sample(folder);
  write(document, folder.file("s.pdf"));
  std::istringstream list(run_command("pdfimages -list " + folder.file("s.pdf")));
  std::string line, object;
  std::getline(list, line);
  std::getline(list, line);
  int rows = 0;
  for (; std::getline(list, line); ++rows) {
    std::istringstream row(line);
    std::vector<std::string> cells{std::istream_iterator<std::string>(row), {}};
    REQUIRE(cells.size() == 16);
    CHECK(cells[3] + "x" + cells[4] + " " + cells[5] + " " + cells[8] == "600x400 rgb jpeg");
    CHECK(cells[12] == "300"); // 600 px on 2 in
    CHECK(cells[13] == "400"); // 400 px on 1 in
    if (!object.empty()) CHECK(cells[10] == object);
    object = cells[10];
  }
  CHECK(rows == 3);
  CHECK(count(objects(folder.file("s.pdf")), "/Type", "/Pages") == 1);
  run_command("pdfimages -all -f 1 -l 1 " + folder.file("s.pdf") + " " + folder.file("out"));
  const std::string jpeg = content_of(folder.file("out-000.jpg"));
  CHECK(std::equal(jpeg.begin(), jpeg.end(), document.images[0].jpeg.begin(), document.images[0].jpeg.end(),
                   [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; }));
}

TEST_CASE("the same document gives the same bytes, another fingerprint another id") {
  const Folder folder;
  layout::Document document = sample(folder);
  write(document, folder.file("a.pdf"));
  setenv("TZ", "Pacific/Auckland", 1);
  tzset();
  write(document, folder.file("b.pdf"));
  unsetenv("TZ");
  tzset();
  CHECK((content_of(folder.file("a.pdf")) == content_of(folder.file("b.pdf"))));
  const auto id = [](const std::string &bytes) { return bytes.substr(bytes.rfind("/ID"), 80); };
  document.fingerprint = "second";
  write(document, folder.file("c.pdf"));
  CHECK(id(content_of(folder.file("a.pdf"))) != id(content_of(folder.file("c.pdf"))));
}

TEST_CASE("a document without a date carries none") {
  const Folder folder;
  layout::Document document = sample(folder);
  document.made_at.reset();
  write(document, folder.file("s.pdf"));
  CHECK(run_command("pdfinfo " + folder.file("s.pdf")).find("Date") == std::string::npos);
  CHECK((content_of(folder.file("s.pdf")).find("(D:") == std::string::npos));
}

TEST_CASE("pages may be enormous, tiny or empty") {
  const Folder folder;
  layout::Document document;
  document.pages = {page_of({1_mm * 1000, 1_mm * 1000}), page_of({1_mm, 2_mm})};
  write(document, folder.file("s.pdf"));
  const std::string info = run_command("pdfinfo -f 1 -l 2 " + folder.file("s.pdf"));
  CHECK(info.find("Page    1 size:  2834.65 x 2834.65 pts") != std::string::npos);
  CHECK(info.find("Page    2 size:  2.835 x 5.669 pts") != std::string::npos);
}

TEST_CASE("a turned picture shows inside its clip only") {
  const Folder folder;
  layout::Document document;
  document.images = {picture(folder, 90, 60)};
  // Turned by a quarter: the image's top runs down the right side.
  layout::PictureItem item{
      0, {{{80_pt, 20_pt}, {80_pt, 80_pt}, {20_pt, 80_pt}, {20_pt, 20_pt}}}, {}, "red \u0142"};
  item.clip = {{50_pt, 30_pt}, {70_pt, 50_pt}, {50_pt, 70_pt}, {30_pt, 50_pt}};
  document.pages = {page_of({100_pt, 100_pt}, {item})};
  write(document, folder.file("s.pdf"));
  run_command("pdftoppm -r 72 -png -singlefile " + folder.file("s.pdf") + " " + folder.file("s"));
  const auto colour = [&](int x, int y) {
    return run_command("convert " + folder.file("s.png") + " -format '%[pixel:p{" + std::to_string(x) + "," +
                       std::to_string(y) + "}]' info:");
  };
  const std::string white = colour(2, 2);
  for (const auto &[x, y] : {std::pair{25, 25}, {75, 75}, {33, 35}, {67, 66}, {25, 50}})
    CHECK(colour(x, y) == white);
  for (const auto &[x, y] : {std::pair{50, 50}, {35, 50}, {65, 50}, {50, 35}, {50, 65}})
    CHECK(colour(x, y) != white);
}

TEST_CASE("an output that cannot be written, or a picture that does not exist, is a fault") {
  const Folder folder;
  layout::Document document;
  document.pages = {page_of({10_mm, 10_mm})};
  const std::string target = folder.file("none/s.pdf");
  const auto written = write_pdf(document, typesetter(), target);
  REQUIRE_FALSE(written);
  CHECK(written.fault() ==
        Fault{"the folder does not exist", folder.file("none"), "Create it, or write somewhere else."});
  document.pages[0].items.emplace_back(placed(7, {0_mm, 0_mm, 1_mm, 1_mm}));
  const auto broken = write_pdf(document, typesetter(), folder.file("s.pdf"));
  REQUIRE_FALSE(broken);
  CHECK(broken.fault().where == folder.file("s.pdf"));
  CHECK(std::filesystem::is_empty(folder.path));
}
