// From a file to a description, through the process of its own.
#include "engine/import/draft.h"
#include "engine/book/read.h"
#include "tests/support/catch.h"
#include "tests/support/made_pdf.h"
#include "tests/support/programs.h"

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::finished;

namespace {

Outcome<std::string> drafted(const std::string &pdf, const Folder &folder) {
  std::ofstream(folder.path / "made.pdf", std::ios::binary) << pdf;
  return draft_book({folder / "made.pdf", {}, folder.path, BindingKind::saddle},
                    bounds_for(folder / "made.pdf"));
}

std::string sound_pdf() {
  MadePdf pdf;
  const int picture =
      pdf.stream("/Subtype/Image/Width 3/Height 2/BitsPerComponent 8/ColorSpace/DeviceGray", "abcdef");
  return one_page(pdf, "30 0 0 20 10 20 cm /I Do", "/XObject<</I " + std::to_string(picture) + " 0 R>>");
}

} // namespace

TEST_CASE("a PDF becomes a description that the reader takes, its pictures files") {
  Folder folder;
  const auto text = drafted(sound_pdf(), folder);
  REQUIRE(text);
  const auto book = parse_book(SourceText("made.xml", text.value()));
  REQUIRE(book);
  REQUIRE(book.value->pictures.size() == 1);
  CHECK(book.value->pictures[0].file == "page-001-1.tif");
  CHECK(std::filesystem::exists(folder / "page-001-1.tif"));
  REQUIRE(book.value->pages.size() == 1);
  CHECK(book.value->pages[0].frames.at(0).rect ==
        Rect{Length::of_mm(3.528), Length::of_mm(56.444), Length::of_mm(10.583), Length::of_mm(7.056)});
  CHECK(book.value->binding.kind == BindingKind::saddle);
  REQUIRE(book.value->print_file);
  CHECK(book.value->print_file->version == "1.6");
}

TEST_CASE("what is no PDF, damaged or without pages gives a fault that names the file") {
  Folder folder;
  const auto fault_of = [&](const std::string &pdf) {
    const auto text = drafted(pdf, folder);
    REQUIRE_FALSE(text);
    CHECK(text.fault().where == folder.file("made.pdf"));
    CHECK_FALSE(text.fault().remedy.empty());
    return text.fault().what;
  };
  CHECK(fault_of("<book/>") == "the file is not a PDF");
  CHECK(fault_of("%PDF-1.4\nnothing else").find("the PDF is damaged") == 0);
  MadePdf empty; // nor does mending it find one
  CHECK(fault_of(empty.text(empty.add("<</Type/Catalog>>"))) == "the PDF has no page");
}

TEST_CASE("an encrypted PDF asks for its password and opens with it") {
  Folder folder;
  std::ofstream(folder.path / "open.pdf", std::ios::binary) << sound_pdf();
  for (const std::string strength : {"40", "128", "256"}) {
    CAPTURE(strength);
    const std::string weak = strength == "256" ? "" : "--allow-weak-crypto ";
    run_command("qpdf " + weak + "--encrypt word owner " + strength + " -- " + folder.file("open.pdf") + " " +
                folder.file("locked.pdf"));
    const auto draft = [&](const std::string &password) {
      return draft_book({folder / "locked.pdf", password, folder.path, {}},
                        bounds_for(folder / "locked.pdf"));
    };
    REQUIRE_FALSE(draft(""));
    CHECK(draft("").fault().what == "the PDF is encrypted and asks for a password");
    REQUIRE_FALSE(draft("wrong"));
    CHECK(draft("wrong").fault().what == "the PDF is encrypted, and the password does not open it");
    CHECK(draft("word"));
  }
  run_command("qpdf --encrypt '' owner 256 -- " + folder.file("open.pdf") + " " + folder.file("free.pdf"));
  CHECK(draft_book({folder / "free.pdf", "", folder.path, {}}, bounds_for(folder / "free.pdf")));
}

TEST_CASE("titles come out of an encrypted PDF whole, whatever their length") {
  Folder folder;
  for (const bool unicode : {false, true})
    for (std::size_t length = 1; length < 20; ++length) {
      CAPTURE(unicode, length);
      MadePdf pdf;
      std::string title = unicode ? "<FEFF" : "(", wanted;
      for (std::size_t i = 0; i < length; ++i)
        title += unicode ? "0101" : "x", wanted += unicode ? "\xC4\x81" : "x";
      const int pages = pdf.add("");
      const int page = pdf.add("<</Type/Page/Parent " + std::to_string(pages) + " 0 R>>");
      pdf.set(pages, "<</Type/Pages/Count 1/Kids[" + std::to_string(page) + " 0 R]/MediaBox[0 0 300 200]>>");
      const int root = pdf.add("<</Type/Catalog/Pages " + std::to_string(pages) + " 0 R>>");
      const int info = pdf.add("<</Title" + title + (unicode ? ">" : ")") + ">>");
      std::ofstream(folder.path / "open.pdf", std::ios::binary)
          << pdf.text(root, "/Info " + std::to_string(info) + " 0 R");
      // Strings in object streams are not padded by themselves.
      const std::string packed = length % 2 ? "--object-streams=generate " : "";
      run_command("qpdf " + packed + "--encrypt word owner 256 -- " + folder.file("open.pdf") + " " +
                  folder.file("locked.pdf"));
      const auto text =
          draft_book({folder / "locked.pdf", "word", folder.path, {}}, bounds_for(folder / "locked.pdf"));
      REQUIRE(text);
      CHECK(text.value().find("title=\"" + wanted + "\"") != std::string::npos);
    }
}

TEST_CASE("object streams, linearized files and updates are read") {
  Folder folder;
  std::ofstream(folder.path / "plain.pdf", std::ios::binary) << sound_pdf();
  for (const std::string how :
       {"--object-streams=generate", "--linearize", "--qdf", "--newline-before-endstream"}) {
    CAPTURE(how);
    run_command("qpdf " + how + " " + folder.file("plain.pdf") + " " + folder.file("other.pdf"));
    const auto text =
        draft_book({folder / "other.pdf", "", folder.path, {}}, bounds_for(folder / "other.pdf"));
    REQUIRE(text);
    CHECK(text.value().find("<frame id=\"p1-1\"") != std::string::npos);
  }
}

TEST_CASE("a PDF whose table of objects is broken is mended, and says so") {
  Folder folder;
  std::string pdf = sound_pdf();
  pdf.replace(pdf.rfind("startxref"), std::string::npos, "startxref\n7\n%%EOF\n");
  const auto text = drafted(pdf, folder);
  REQUIRE(text);
  const auto book = parse_book(SourceText("made.xml", text.value()));
  REQUIRE(book);
  CHECK(book.value->print_file->mended);
  CHECK(book.value->pages.at(0).frames.size() == 1);
  CHECK(std::filesystem::exists(folder / "page-001-1.tif"));
  CHECK_FALSE(std::filesystem::exists(folder / ".mended.pdf"));
}

TEST_CASE("a folder that cannot be written to is a fault") {
  Folder folder;
  std::ofstream(folder.path / "made.pdf", std::ios::binary) << sound_pdf();
  const auto text =
      draft_book({folder / "made.pdf", "", folder / "missing", {}}, bounds_for(folder / "made.pdf"));
  REQUIRE_FALSE(text);
  CHECK(text.fault().what == "the picture could not be written");
}
