// A finished PDF in place of a description: drafted, proofed, copied with notes.
#include "reports/terminal/annotations.h"
#include "tests/reports/terminal/finished_order.h"
#include "tests/support/small_book.h"

using namespace stoneproof::test;

TEST_CASE("a finished PDF is proofed, and its pages are in the proof") {
  const Order order;
  const Untouched pdf(order.folder / "album.pdf");
  const Ran ran = order.run({"proof", "album.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.err.empty());
  CHECK(pdf.still());
  const std::string found = findings_of(order.record("album.record.json"));
  CHECK(found.find("too-few-pixels hold 1 Prints at 100 ppi") != std::string::npos);
  CHECK(found.find("no-output-intent note null") != std::string::npos);
  CHECK(run_command("qpdf --check " + order.folder.file("album.proof.pdf")).find("No syntax") !=
        std::string::npos);
  CHECK(run_command("pdfimages -list " + order.folder.file("album.proof.pdf")).find(" 300   200") !=
        std::string::npos);
  // The pictures that were taken out for it are gone.
  for (const auto &entry : fs::directory_iterator(fs::temp_directory_path()))
    CHECK(entry.path().filename().string().find(".stoneproof-") != 0);
}

TEST_CASE("a drafted description gives the same findings as the PDF itself") {
  const Order order;
  REQUIRE(order.run({"proof", "album.pdf", "--binding", "perfect", "--record", "first.json"}).status == 1);
  const Ran drafted = order.run({"draft", "album.pdf", "--out", "book of mine.xml"});
  CHECK(drafted.status == 0);
  CHECK(drafted.err.empty());
  CHECK(content_of(order.folder / "book of mine pictures/page-001-1.jpg") ==
        content_of(order.folder / "small.jpg"));
  CHECK(run_command("xmllint --noout --schema " STONEPROOF_SOURCE_DIR "/schema/book.xsd '" +
                    order.folder.file("book of mine.xml") + "' 2>&1")
            .find("validates") != std::string::npos);
  REQUIRE(order.run({"proof", "book of mine.xml", "--record", "second.json"}).status == 1);
  CHECK(findings_of(order.record("first.json")) == findings_of(order.record("second.json")));
}

TEST_CASE("empty pages of a PDF are asked about once, and nothing says that they are meant") {
  const Order order;
  MadePdf pdf;
  const int pages = pdf.add("");
  std::string kids;
  for (const char *content :
       {"0.5 g 50 50 80 80 re f", "", "1 g 0 0 300 200 re f", "0.5 g 50 50 80 80 re f"}) {
    const int stream = pdf.stream("", content);
    kids += std::to_string(pdf.add("<</Type/Page/MediaBox[0 0 299.99 200.01]/TrimBox[10 10 289.99 190.01]"
                                   "/BleedBox[1 1 298.99 199.01]/Contents " +
                                   std::to_string(stream) + " 0 R>>")) +
            " 0 R ";
  }
  pdf.set(pages, "<</Type/Pages/Count 4/Kids[" + kids + "]>>");
  std::ofstream(order.folder.path / "pages.pdf", std::ios::binary)
      << pdf.text(pdf.add("<</Type/Catalog/Pages " + std::to_string(pages) + " 0 R>>"));
  REQUIRE(order.run({"proof", "pages.pdf", "--binding", "saddle"}).status < 2);
  const std::string found = findings_of(order.record("pages.record.json"));
  CHECK(found.find("empty-page query 2 Pages 2 and 3 are empty: are they meant to be?\n") !=
        std::string::npos);
  CHECK(found.find("empty-page", found.find("empty-page") + 1) == std::string::npos);
  const std::string words = run_command("pdftotext " + order.folder.file("pages.proof.pdf") + " -");
  CHECK(words.find("Pages 2 and 3 are empty") != std::string::npos);
  CHECK(words.find("meant to be blank") == std::string::npos);
  REQUIRE(order.run({"draft", "pages.pdf", "--binding", "saddle"}).status == 0);
  REQUIRE(order.run({"proof", "pages.xml", "--record", "second.json"}).status < 2);
  CHECK(findings_of(order.record("second.json")) == found);
}

TEST_CASE("the copy of a protected PDF is open, which is said") {
  const Order order;
  run_command("qpdf --encrypt word owner 256 -- " + order.folder.file("album.pdf") + " " +
              order.folder.file("locked.pdf"));
  const Ran ran = order.run({"proof", "locked.pdf", "--password", "word", "--annotate", "noted.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.err == "noted.pdf: the copy with notes is not protected by a password, as the PDF is\n"
                   "  Keep it where only those come who may read the PDF.\n");
  CHECK(order.run({"proof", "locked.pdf", "--password", "word"}).err.empty());
}

TEST_CASE("a copy of the PDF takes the findings") {
  const Order order;
  const Ran ran = order.run({"proof", "album.pdf", "--annotate", "noted.pdf"});
  CHECK(ran.status == 1);
  CHECK(ran.out.find("noted.pdf") != std::string::npos);
  const std::size_t findings = order.record("album.record.json")["findings"].size();
  const std::string counted =
      run_command("qpdf --json " + order.folder.file("noted.pdf") + " | grep -c '\"/NM\"'");
  CHECK(std::stoul(counted) == findings);
  CHECK(ran.err.empty());
}

TEST_CASE("notes have their mark's number, and stand clear of what they mark and of each other") {
  using stoneproof::Length;
  stoneproof::Book book = small_book();
  book.print_file = stoneproof::PrintFile{"album.pdf"};
  stoneproof::PrintPage print;
  const stoneproof::Rect trim{{}, {}, book.trim.width, book.trim.height};
  print.boxes.media = trim.grown(Length::of_mm(10));
  print.boxes.crop = trim.grown(Length::of_mm(3));
  book.pages[0].print = print;
  book.pages[0].frames = {frame("middle", {}, 50, 50, 100, 100), frame("all", {}, -3, -3, 206, 256)};
  auto made = checked(std::move(book));
  const stoneproof::Finding middle = made.findings.at(0), all = made.findings.at(1);
  REQUIRE(made.findings.size() >= 2);
  REQUIRE(middle.frame == 0);
  REQUIRE(all.frame == 1);
  made.findings = {middle, middle, all, all, middle};
  const auto content = stoneproof::content::proof_content(made.evidence, made.findings);
  const auto notes = stoneproof::terminal::notes_on_pdf(made.evidence, made.findings, content, {});
  REQUIRE(notes.size() == 5);
  for (const auto &mark : content.marks) {
    CHECK(notes[mark.finding].title.rfind(std::to_string(mark.number) + " · ", 0) == 0);
    CHECK(notes[mark.finding].words.rfind(std::to_string(mark.number) + " · Hold. Page 1", 0) == 0);
  }
  CHECK(notes[0].area == middle.area->grown(Length::of_mm(1)));
  CHECK(notes[1].area == middle.area->grown(Length::of_mm(2)));
  CHECK(notes[4].area == middle.area->grown(Length::of_mm(3)));
  // No room outside: the outer one goes along the page's edge, the inner one inside it.
  CHECK(notes[3].area == *print.boxes.crop);
  CHECK(notes[2].area == print.boxes.crop->grown(-Length::of_mm(1)));
}

TEST_CASE("a file that is a PDF by its name alone is refused as such") {
  const Order order;
  std::ofstream(order.folder.path / "Zo\xC5\x82za book.PDF") << "a letter of Zo\xC5\x82za's";
  const Ran ran = order.run({"proof", "Zo\xC5\x82za book.PDF"});
  CHECK(ran.status == 3);
  CHECK(ran.err.find("the file is not a PDF, whatever its name says") != std::string::npos);
  CHECK(ran.err.find("Zo\xC5\x82za book.PDF") != std::string::npos);
  CHECK(order.run({"proof", "none.pdf"}).err.find("there is no such file") != std::string::npos);
}

TEST_CASE("what is neither a finished PDF nor a description is told by what it is") {
  const Order order;
  const auto write = [&](const std::string &name, const std::string &bytes) {
    std::ofstream(order.folder.path / name, std::ios::binary) << bytes;
  };
  fs::create_directory(order.folder.path / "folder.pdf");
  write("empty.pdf", "");
  write("page.pdf", "\n<!DOCTYPE html>\n<html><body>Sign in</body></html>");
  write("book.docx", std::string("PK\x03\x04\x14\0", 6));
  run_command("cp " + order.folder.file("small.jpg") + " " + order.folder.file("scan.pdf"));
  struct Case {
    std::string file, err;
  };
  for (const Case &c : std::vector<Case>{
           {"folder.pdf",
            "this is a folder, not a file\n  Name the finished PDF, or the description of the book, "
            "inside the folder.\n"},
           {"empty.pdf", "the file is empty\n  Export it anew from the layout program, or copy it again.\n"},
           {"page.pdf",
            "this is a web page, not a book\n  Download the PDF itself anew; the page, in a browser, "
            "may tell why it did not come.\n"},
           {"book.docx",
            "this is a document of a writing or layout program, or another packed file\n  Export it "
            "as a PDF, and name that.\n"},
           {"small.jpg",
            "this is a picture, not a book\n  Name the finished PDF or the description of the book; "
            "stoneproof measure tells what a picture is good for.\n"},
           {"scan.pdf",
            "this is a picture, not a book\n  Name the finished PDF or the description of the book; "
            "stoneproof measure tells what a picture is good for.\n"}}) {
    const Ran ran = order.run({"proof", c.file});
    CHECK(ran.err == c.file + ": " + c.err);
    CHECK(ran.out.empty());
    CHECK(ran.status == 3);
  }
}

TEST_CASE("a binding that nobody named is told as a guess") {
  const Order order;
  const auto front = [&](const Words &words) {
    REQUIRE(order.run(words).status == 1);
    return run_command("pdftotext -layout -l 1 " + order.folder.file("album.proof.pdf") + " -");
  };
  CHECK(front({"proof", "album.pdf"}).find("taken for perfect bound (--binding names it)") !=
        std::string::npos);
  const std::string named = front({"proof", "album.pdf", "--binding", "perfect"});
  CHECK(named.find("mm trim, perfect bound,") != std::string::npos);
}

TEST_CASE("the proof names the file, once where the PDF has no title") {
  const Order order;
  const auto front = [&](const std::string &title) {
    std::string pdf = content_of(order.folder / "album.pdf");
    pdf.replace(pdf.find("trailer\n<<"), std::string("trailer\n<<").size(),
                "trailer\n<</Info<</Title(" + title + ")>>");
    std::ofstream(order.folder.path / "Zo\xC5\x82za.pdf", std::ios::binary) << pdf;
    REQUIRE(order.run({"proof", "Zo\xC5\x82za.pdf"}).status == 1);
    return run_command("pdftotext -raw -l 1 " + order.folder.file("Zo\xC5\x82za.proof.pdf") + " -");
  };
  CHECK(front("The mill").find("Layout proof of Zo\xC5\x82za.pdf\nThe mill\n") != std::string::npos);
  for (const char *none : {"", " ", "untitled"})
    CHECK(front(none).find("Layout proof\nZo\xC5\x82za\n") != std::string::npos);
}

TEST_CASE("what makes no sense for a finished PDF, or for a description, is said") {
  const Order order;
  const auto refused = [&](const Words &words, int status) {
    const Ran ran = order.run(words);
    CHECK(ran.status == status);
    return ran.err;
  };
  CHECK(refused({"proof", "album.pdf", "--marks", "a.xfdf"}, 2).find("--annotate") != std::string::npos);
  CHECK(refused({"proof", "album.pdf", "--annotate", "album.pdf"}, 2).find("album.pdf") != std::string::npos);
  CHECK(refused({"proof", "album.pdf", "--pictures", "nowhere"}, 3).find("nowhere") != std::string::npos);
  CHECK(refused({"proof", "album.pdf", "--binding", "glued"}, 2).find("not \"glued\"") != std::string::npos);
  CHECK(refused({"draft", "small.jpg"}, 3).find("this is a picture, not a book") != std::string::npos);
  CHECK(refused({"draft", "missing.pdf"}, 3).find("there is no such file") != std::string::npos);
  REQUIRE(order.run({"draft", "album.pdf"}).status == 0);
  CHECK(refused({"draft", "album.pdf"}, 4).find("is there already") != std::string::npos);
  CHECK(refused({"proof", "album.xml", "--pictures", "."}, 1).empty());
  CHECK(refused({"proof", "album.xml", "--annotate", "b.pdf"}, 2).find("no finished PDF to copy") !=
        std::string::npos);
  std::ofstream(order.folder.path / "broken.pdf") << "%PDF-1.7\nnothing";
  CHECK(refused({"proof", "broken.pdf"}, 3).find("the PDF is damaged") != std::string::npos);
}
