// The user's pages in a document of ours, and notes in a copy of their PDF; read back by poppler and qpdf.
#include "reports/pdf/user_pdf.h"

#include "tests/reports/pdf/sample.h"
#include "tests/support/catch.h"
#include "tests/support/made_pdf.h"

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;

namespace {

/// A page of 300 x 200 points with a trim 10 points in, words at (50, 100) and a red corner at the trim's top
/// left.
std::string user_pdf(const std::string &page = {}) {
  MadePdf pdf;
  const int font = pdf.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>");
  return one_page(pdf, "BT /F 12 Tf 50 100 Td (Own words) Tj ET 1 0 0 rg 10 170 20 20 re f",
                  "/Font<</F " + std::to_string(font) + " 0 R>>", "/TrimBox[10 10 290 190]" + page);
}

/// The same page, whose words stand in a layer that is off, and its red corner in one that is on.
std::string layered_pdf() {
  MadePdf pdf;
  const int font = pdf.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>");
  const std::string off = std::to_string(pdf.add("<</Type/OCG/Name(Notes)>>")) + " 0 R",
                    on = std::to_string(pdf.add("<</Type/OCG/Name(Colour)>>")) + " 0 R";
  return one_page(pdf,
                  "/OC /Off BDC BT /F 12 Tf 50 100 Td (Own words) Tj ET EMC "
                  "/OC /On BDC 1 0 0 rg 10 170 20 20 re f EMC",
                  "/Font<</F " + std::to_string(font) + " 0 R>>/Properties<</Off " + off + "/On " + on + ">>",
                  "/TrimBox[10 10 290 190]",
                  "/OCProperties<</OCGs[" + off + " " + on + "]/D<</ON[" + on + "]/OFF[" + off + "]>>>>");
}

struct Files {
  Folder folder;
  std::string user, proof;
  explicit Files(const std::string &text) : user(folder.file("user.pdf")), proof(folder.file("proof.pdf")) {
    std::ofstream(user, std::ios::binary) << text;
  }
};

/// A document of one page that shows the user's first at half its size, its trim at (20, 30) mm.
layout::Document showing() {
  layout::Document document = titled_document();
  document.foreign_pages = true;
  document.pages.push_back(page_of(
      {200_mm, 150_mm},
      {layout::ShapeItem{{{0_mm, 0_mm}, {9_mm, 0_mm}, {9_mm, 9_mm}}, layout::Ink{255, 255, 255}, {}, 1},
       layout::OwnPageItem{0, {20_mm, 30_mm}, 0.5, {10_mm, 10_mm, 150_mm, 100_mm}}}));
  return document;
}

/// The colour that is seen at a place, from the left and from the top, in millimetres.
std::string colour_at(const Files &files, double x, double y) {
  run_command("pdftoppm -r 254 -png -singlefile " + files.proof + " " + files.folder.file("seen"));
  return run_command("convert " + files.folder.file("seen.png") + " -format '%[hex:p{" +
                     std::to_string(static_cast<int>(x * 10)) + "," +
                     std::to_string(static_cast<int>(y * 10)) + "}]' info:");
}

} // namespace

TEST_CASE("the user's page is shown where it was put, words and all") {
  const Files files(user_pdf());
  write(showing(), files.proof);
  CHECK(run_command("pdftotext " + files.proof + " -").find("Own words") == std::string::npos);
  REQUIRE(pdf::put_own_pages(files.proof, {files.user, {}}));
  CHECK(run_command("qpdf --check " + files.proof).find("No syntax or stream encoding errors") !=
        std::string::npos);
  CHECK(run_command("pdftotext " + files.proof + " -").find("Own words") != std::string::npos);
  // 20 points at half size are 3.5 mm; the words are black, though our own page last painted in white.
  CHECK(colour_at(files, 21, 31).substr(0, 6) == "FF0000");
  CHECK(colour_at(files, 19, 31).substr(0, 6) == "FFFFFF");
  CHECK(colour_at(files, 25, 35).substr(0, 6) == "FFFFFF");
  CHECK(run_command("convert " + files.folder.file("seen.png") +
                    " -fill white +opaque black -format '%k' info:") == "2");
}

TEST_CASE("a layer that is off in the user's PDF stays hidden, and one that is on is shown") {
  const Files files(layered_pdf());
  write(showing(), files.proof);
  CHECK(run_command("qpdf --json " + files.proof).find("/OCProperties") == std::string::npos);
  REQUIRE(pdf::put_own_pages(files.proof, {files.user, {}}));
  CHECK(run_command("qpdf --check " + files.proof).find("No syntax or stream encoding errors") !=
        std::string::npos);
  CHECK(colour_at(files, 21, 31).substr(0, 6) == "FF0000");
  // Nothing black: neither the words nor anything else.
  CHECK(run_command("convert " + files.folder.file("seen.png") +
                    " -fill white +opaque black -format '%k' info:") == "1");
}

TEST_CASE("no stream says that it is compressed and holds nothing") {
  for (const std::string content : {"", "0 0 9 9 re f"}) {
    CAPTURE(content);
    const Files files(one_page(MadePdf(), content, "", "/TrimBox[10 10 290 190]"));
    layout::Document document = showing();
    document.pages[0].notes.push_back({{10_mm, 10_mm, 5_mm, 5_mm}, "Title", "Words"});
    write(document, files.proof);
    REQUIRE(pdf::put_own_pages(files.proof, {files.user, {}}));
    CHECK(content_of(files.proof).find("/Length 0") == std::string::npos);
    const std::string copy = files.folder.file("copy.pdf");
    REQUIRE(pdf::write_annotated({files.user, {}}, {}, copy));
    CHECK(content_of(copy).find("FlateDecode") == std::string::npos);
  }
}

TEST_CASE("a page that is turned lies as it is seen") {
  const Files files(user_pdf("/Rotate 90"));
  write(showing(), files.proof);
  REQUIRE(pdf::put_own_pages(files.proof, {files.user, {}}));
  // A quarter turn clockwise takes the top left corner to the top right: the trim is then 180 points wide,
  // half of it 31.75 mm.
  CHECK(colour_at(files, 20 + 31.75 - 1, 31).substr(0, 6) == "FF0000");
  CHECK(colour_at(files, 21, 31).substr(0, 6) == "FFFFFF");
}

TEST_CASE("the same inputs give the same bytes, and no promise of an archive file") {
  const Files files(user_pdf());
  std::string bytes[2];
  for (std::string &one : bytes) {
    write(showing(), files.proof);
    REQUIRE(pdf::put_own_pages(files.proof, {files.user, {}}));
    one = content_of(files.proof);
  }
  CHECK(bytes[0] == bytes[1]);
  CHECK(run_command("pdfinfo -meta " + files.proof).find("pdfaid") == std::string::npos);
}

TEST_CASE("a PDF that cannot be taken from leaves the document as it was") {
  const Files files("%PDF-1.4 and nothing else");
  write(showing(), files.proof);
  const std::string before = content_of(files.proof);
  const auto put = pdf::put_own_pages(files.proof, {files.user, {}});
  REQUIRE_FALSE(put);
  CHECK(put.fault().where == files.user);
  CHECK(content_of(files.proof) == before);
}

TEST_CASE("notes lie in a copy where they belong, and the PDF stays as it was") {
  for (const std::string turn : {"", "/Rotate 90", "/Rotate 180", "/Rotate 270", "/UserUnit 2"}) {
    CAPTURE(turn);
    const Files files(user_pdf(turn));
    const std::string before = content_of(files.user), copy = files.folder.file("copy.pdf");
    pdf::UserNote box{0,
                      {Length::of_pt(5), Length::of_pt(6), Length::of_pt(40), Length::of_pt(30)},
                      pdf::NoteKind::solid_box,
                      0.3,
                      0.1,
                      0.5,
                      "Too few pixels",
                      "Hold. Str\xC3\xB3j\nWhat to do",
                      "one",
                      ""};
    pdf::UserNote sign = box;
    sign.kind = pdf::NoteKind::text;
    sign.name = "two";
    pdf::UserNote nowhere = box;
    nowhere.page = 7;
    REQUIRE(pdf::write_annotated({files.user, {}}, {box, sign, nowhere}, copy));
    CHECK(content_of(files.user) == before);
    CHECK(run_command("qpdf --check " + copy).find("No syntax or stream encoding errors") !=
          std::string::npos);
    const std::string annotations = run_command("qpdf --json --json-key=qpdf " + copy +
                                                " | python3 -c '"
                                                "import json,sys\n"
                                                "for o in json.load(sys.stdin)[\"qpdf\"][1].values():\n"
                                                "  v=o.get(\"value\")\n"
                                                "  if isinstance(v,dict) and v.get(\"/Type\")==\"/Annot\":\n"
                                                "    print(v[\"/Subtype\"],*[round(x) for x in "
                                                "v[\"/Rect\"]],v[\"/Contents\"].replace(\"\\n\",\"|\"))'");
    // From the trim's corner as it is seen back to user space: trim 10 10 290 190.
    const std::string place = turn == ""              ? "15 154 55 184"
                              : turn == "/Rotate 90"  ? "16 15 46 55"
                              : turn == "/Rotate 180" ? "245 16 285 46"
                              : turn == "/Rotate 270" ? "254 145 284 185"
                                                      : "12 172 32 187";
    CHECK(annotations.find("/Square " + place + " u:Hold. Str\xC3\xB3j|What to do") != std::string::npos);
    CHECK(annotations.find("/Text ") != std::string::npos);
    INFO(annotations);
    CHECK(std::count(annotations.begin(), annotations.end(), '\n') == 2);
  }
}

TEST_CASE("an encrypted PDF is copied open with its password") {
  const Files files(user_pdf());
  const std::string locked = files.folder.file("locked.pdf"), copy = files.folder.file("copy.pdf");
  run_command("qpdf --encrypt word owner 256 -- " + files.user + " " + locked);
  CHECK_FALSE(pdf::write_annotated({locked, {}}, {}, copy));
  CHECK_FALSE(std::filesystem::exists(copy));
  REQUIRE(pdf::write_annotated({locked, "word"}, {}, copy));
  CHECK(run_command("qpdf --show-encryption " + copy).find("not encrypted") != std::string::npos);
}
