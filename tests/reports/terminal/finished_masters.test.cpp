// The files behind the pictures of a finished PDF: found, named, and put in their place in a draft.
#include "tests/reports/terminal/finished_order.h"

using namespace stoneproof::test;

TEST_CASE("the files behind the pictures are found, and what the export threw away") {
  const Order order;
  const Ran ran = order.run({"proof", "album.pdf", "--pictures", "scans of the m\xC5\x82yn"});
  CHECK(ran.status == 1);
  const auto record = order.record("album.record.json");
  CHECK(findings_of(record).find(
            "reduced-in-export hold 1 The PDF holds it at 100 ppi; the file it was made from, "
            "mill.png, would give ") != std::string::npos);
  CHECK(ran.out.find("\nFiles behind pictures: 1 of 1 found.\n") != std::string::npos);
  CHECK(findings_of(record).find("too-few-pixels") == std::string::npos);
  const auto master = record["pictures"][0]["master"];
  CHECK(master["file"] == "mill.png");
  CHECK(master["finer"].get<double>() == Approx(4).epsilon(0.02));
  CHECK(master["sure"] == true);
  fs::create_directory(order.folder.path / "empty");
  REQUIRE(order.run({"proof", "album.pdf", "--pictures", "empty"}).status == 1);
  CHECK(order.record("album.record.json")["pictures"][0]["master"].is_null());
}

TEST_CASE("a drafted description can name the files that the pictures were made from") {
  const Order order;
  fs::create_directory(order.folder.path / "scans of the m\xC5\x82yn/Ciocia \xC5\x81ucja");
  fs::rename(order.folder.path / "scans of the m\xC5\x82yn/mill.png",
             order.folder.path / "scans of the m\xC5\x82yn/Ciocia \xC5\x81ucja/mill.png");
  const Ran drafted = order.run({"draft", "album.pdf", "--pictures", "scans of the m\xC5\x82yn"});
  CHECK(drafted.status == 0);
  CHECK(drafted.out.find("1 of 1 pictures found") != std::string::npos);
  CHECK(drafted.out.find("Its pictures") == std::string::npos);
  CHECK_FALSE(fs::exists(order.folder.path / "album pictures"));
  const std::string text = content_of(order.folder / "album.xml");
  CHECK(text.find("file=\"scans of the m\xC5\x82yn/Ciocia \xC5\x81ucja/mill.png\"") != std::string::npos);
  CHECK(text.find("name=\"Ciocia \xC5\x81ucja\"") != std::string::npos);
  REQUIRE(order.run({"proof", "album.xml"}).status != 3);
  const auto record = order.record("album.record.json");
  CHECK(findings_of(record).find("too-few-pixels") == std::string::npos); // the file has pixels enough
}

TEST_CASE("a draft never takes its own pictures for the files behind them, nor an earlier draft's") {
  const Order order;
  REQUIRE(order.run({"draft", "album.pdf", "--out", "first.xml"}).status == 0);
  REQUIRE(fs::exists(order.folder.path / "first pictures"));
  const Ran drafted = order.run({"draft", "album.pdf", "--pictures", "."});
  CHECK(drafted.status == 0);
  const std::string text = content_of(order.folder / "album.xml");
  CAPTURE(text);
  CHECK((text.find("mill.png") != std::string::npos || text.find("small.jpg") != std::string::npos));
  CHECK(text.find("first pictures") == std::string::npos);
  CHECK(text.find(".stoneproof") == std::string::npos);
}

TEST_CASE("a description in a linked folder finds its files") {
  const Order order;
  fs::create_directories(order.folder.path / "deep/er");
  fs::create_directory_symlink("deep/er", order.folder.path / "link");
  REQUIRE(order.run({"draft", "album.pdf", "--pictures", "scans of the m\xC5\x82yn", "--out", "link/fam.xml"})
              .status == 0);
  REQUIRE(order.run({"proof", "link/fam.xml", "--record", "fam.json"}).status != 3);
  CHECK(order.record("fam.json")["pictures"][0]["fault"].is_null());
}

TEST_CASE("no output replaces a file behind a picture") {
  const Order order;
  const std::string scan = "scans of the m\xC5\x82yn/mill.png";
  const Untouched kept(order.folder / scan);
  const std::string folder = "scans of the m\xC5\x82yn";
  CHECK(order.run({"draft", "album.pdf", "--pictures", folder, "--out", scan}).status == 2);
  CHECK(order.run({"proof", "album.pdf", "--pictures", folder, "--annotate", scan}).status == 2);
  CHECK(kept.still());
  // What was written beside them once may be written again.
  CHECK(order.run({"proof", "album.pdf", "--pictures", "."}).status == 1);
  CHECK(order.run({"proof", "album.pdf", "--pictures", "."}).status == 1);
}

TEST_CASE("a file behind a picture is named by its path in the folder, however that is named") {
  const Order order;
  fs::create_directories(order.folder.path / "people/Oma Trude");
  fs::rename(order.folder.path / "scans of the m\xC5\x82yn/mill.png",
             order.folder.path / "people/Oma Trude/scan0001.png");
  std::ofstream(order.folder.path / "people/notes.txt") << "Trude, 1931";
  for (const std::string &folder : {std::string("people"), std::string("people/"), std::string("./people//"),
                                    order.folder.file("people")}) {
    CAPTURE(folder);
    const Ran ran = order.run({"proof", "album.pdf", "--pictures", folder});
    CHECK(ran.status == 1);
    CHECK(order.record("album.record.json")["pictures"][0]["master"]["file"] == "Oma Trude/scan0001.png");
    CHECK(ran.out.find("Files behind pictures: 1 of 1 found; 1 of the folder’s 2 files could not be") !=
          std::string::npos);
  }
  CHECK(run_command("pdftotext -layout " + order.folder.file("album.proof.pdf") + " -")
            .find("Oma Trude/scan0001.png, 1200 × 800") != std::string::npos);
}
