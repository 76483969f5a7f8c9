// Rounds on the command line: compare, and proof --since.
#include "tests/reports/terminal/album.h"

using namespace stoneproof::test;

namespace {

/// A held first round, and the second one, in which the frame is smaller and another picture is too large.
struct RoundsFolder : AlbumFolder {
  RoundsFolder() {
    run(path, {"proof", "held.xml", "--quick", "--record", "round 1.json"});
    write_file(path / "second.xml",
               album_xml(harbour + "    <picture id=\"quay\" file=\"scans/harbour.tif\"/>\n",
                         harbour_well +
                             "      <frame id=\"f2\" picture=\"quay\" x=\"20mm\" y=\"100mm\" width=\"6in\" "
                             "height=\"4in\"/>\n"));
  }
};

} // namespace

TEST_CASE("a proof tells what changed since the last round, on its first page too") {
  const RoundsFolder folder;
  const Untouched last(folder / "round 1.json");
  const Ran ran = run(folder.path, {"proof", "second.xml", "--quick", "--since", "round 1.json"});
  CHECK(ran.err.empty());
  CHECK(ran.status == 1);
  CHECK(ran.out.find("Since the last round: 2 new, 0 standing, 1 mended.") != std::string::npos);
  CHECK(last.still());
  const std::string first = print_of("pdftotext -l 1 '" + folder.file("second.proof.pdf") + "' -").out;
  CHECK(first.find("Since the last round: 2 new, 0 standing, 1 mended.") != std::string::npos);
}

TEST_CASE("two records are compared") {
  const RoundsFolder folder;
  run(folder.path, {"proof", "second.xml", "--quick"});
  const Ran ran = run(folder.path, {"compare", "round 1.json", "second.record.json"});
  CHECK(ran.err.empty());
  CHECK(ran.status == 1);
  CHECK(ran.out.starts_with("The harbour\n2 new, 0 standing, 1 mended; the book is held.\n\nNew\n"
                            "Hold   Page 1, frame f2  too-few-pixels\n"));
  CHECK(ran.out.find("\nMended\nHold   Page 1, frame f1  too-few-pixels\n       Prints at 100 ppi") !=
        std::string::npos);
  const Ran same = run(folder.path, {"compare", "round 1.json", "round 1.json"});
  CHECK(same.out.find("0 new") != std::string::npos);
  CHECK(same.out.find("0 mended") != std::string::npos);
}

TEST_CASE("what is no record of this book is refused with one clear message") {
  const RoundsFolder folder;
  write_file(folder / "list.json", "[1, 2]");
  write_file(folder / "newer.json", R"({"record": 2, "findings": []})");
  write_file(folder / "bare.json", R"({"record": 1, "findings": []})");
  write_file(folder / "other.json",
             R"({"record": 1, "verdict": "clear", "book": {"title": "Żółw"}, "frames": [], "findings": []})");
  const auto refusal = [&](const std::string &name) {
    const Ran ran = run(folder.path, {"compare", name, "round 1.json"});
    CHECK(ran.status == 3);
    CHECK(ran.out.empty());
    return ran.err;
  };
  const std::string remedy = "  Name a record that stoneproof proof wrote, as BOOK.record.json.\n";
  CHECK(refusal("list.json") == "list.json: this is no record\n" + remedy);
  CHECK(refusal("none.json") == "none.json: the record cannot be read: No such file or directory\n" + remedy);
  CHECK(refusal("scans") == "scans: this is a folder\n" + remedy);
  CHECK(refusal("newer.json") ==
        "newer.json: the record has schema number 2; this program reads 1\n"
        "  Proof the earlier book again with this program, or compare with the program that wrote it.\n");
  CHECK(refusal("bare.json") ==
        "bare.json: the record lacks some of its keys, or they hold something else\n" + remedy);
  CHECK(refusal("other.json") == "round 1.json: the records are of two books, “Żółw” and “The harbour”\n"
                                 "  Name two records of the same book.\n");
  const Ran proof = run(folder.path, {"proof", "second.xml", "--since", "other.json"});
  CHECK(proof.status == 3);
  CHECK(proof.err == "other.json: this is the record of another book, “Żółw”\n"
                     "  Name the record of an earlier round of this book.\n");
}

TEST_CASE("the last round's record is an input, and is not written over") {
  const RoundsFolder folder;
  const Untouched last(folder / "round 1.json");
  const Ran ran =
      run(folder.path, {"proof", "second.xml", "--since", "round 1.json", "--record", "round 1.json"});
  CHECK(ran.status == 2);
  CHECK(ran.err.find("the last round's record") != std::string::npos);
  CHECK(last.still());
}

TEST_CASE("compare wants two records") {
  const RoundsFolder folder;
  const std::string help = "  Run stoneproof compare --help to see how it is used.\n";
  CHECK(run(folder.path, {"compare", "a.json"}).err ==
        "stoneproof: two RECORDs to compare are wanted, the earlier one first\n" + help);
  CHECK(run(folder.path, {"compare", "a", "b", "c"}).status == 2);
}
