// What holds for the sources themselves: the include law, what stands at the top, how files begin and how
// long they are.
#include "tests/conventions/checks.h"

#include "tests/support/programs.h"

#include <cstdio>
#include <fstream>
#include <memory>
#include <sstream>

using namespace stoneproof::test;

namespace {

const std::string top = STONEPROOF_SOURCE_DIR;

/// Every tracked file that is there.
std::vector<std::string> tracked() {
  const std::string command = "git -c safe.directory='*' -C '" + top + "' ls-files";
  std::istringstream lines(run_command(command));
  std::vector<std::string> paths;
  for (std::string line; std::getline(lines, line);)
    if (std::ifstream(top + '/' + line)) paths.push_back(line);
  REQUIRE(paths.size() > 50); // the list was read
  return paths;
}

bool ends(const std::string &text, const std::string &with) {
  return text.size() >= with.size() && text.compare(text.size() - with.size(), with.size(), with) == 0;
}

std::vector<Source> sources() {
  std::vector<Source> all;
  for (const std::string &path : tracked()) {
    const bool product = path.rfind("engine/", 0) == 0 || path.rfind("reports/", 0) == 0;
    if (!product || (!ends(path, ".cpp") && !ends(path, ".h"))) continue;
    all.push_back({path, content_of(top + '/' + path)});
  }
  REQUIRE(all.size() > 30);
  return all;
}

void check_all(Complaints (*check)(const Source &)) {
  for (const Source &source : sources()) CHECK(check(source) == Complaints{});
}

} // namespace

TEST_CASE("includes go downwards only") {
  using C = Complaints;
  CHECK(upward_includes(
            {"engine/rules/a.cpp", "#include \"engine/rules/rule.h\"\n#include \"engine/units/length.h\"\n"})
            .empty());
  CHECK(
      upward_includes({"reports/pdf/a.cpp", "#include \"engine/run/run.h\"\n#include \"engine/outcome.h\"\n"})
          .empty());
  CHECK(upward_includes({"engine/units/a.h", "#include \"engine/book/book.h\"\n"}) ==
        C{"engine/units/a.h includes engine/book/book.h"});
  CHECK(upward_includes({"engine/run/a.cpp", "  # include  \"reports/files/a.h\"\n"}) ==
        C{"engine/run/a.cpp includes reports/files/a.h"});
  CHECK(upward_includes({"reports/layout/a.cpp", "#include \"reports/pdf/a.h\"\n"}).size() == 1);
  CHECK(upward_includes({"reports/pdf/a.cpp", "#include \"tests/support/catch.h\"\n"}).size() == 1);
  CHECK(upward_includes({"engine/outcome.h", "#include \"engine/units/length.h\"\n"}).size() == 1);
  CHECK(upward_includes({"engine/misc/a.cpp", ""}).size() == 1);
  check_all(upward_includes);
}

TEST_CASE("a library is included in one folder only") {
  CHECK(
      stray_libraries({"engine/picture/a.cpp", "#include <tiffio.h>\n#include <png.h>\n#include <vector>\n"})
          .empty());
  for (const char *header :
       {"tiffio.h", "jpeglib.h", "png.h", "libexif/exif-data.h", "openssl/evp.h", "podofo/podofo.h",
        "pugixml.hpp", "hb.h", "hb-subset.h", "fontconfig/fontconfig.h", "CLI/CLI.hpp", "nlohmann/json.hpp",
        "tbb/parallel_for.h"}) {
    CAPTURE(header);
    CHECK(stray_libraries({"engine/rules/a.cpp", "#include <" + std::string(header) + ">\n"}).size() == 1);
  }
  CHECK(stray_libraries({"reports/layout/a.cpp", "#include <podofo/podofo.h>\n"}).size() == 1);
  check_all(stray_libraries);
}

TEST_CASE("placement and rules touch no file") {
  CHECK(impure_includes({"engine/rules/a.cpp", "#include <vector>\n"}).empty());
  CHECK(impure_includes({"engine/picture/a.cpp", "#include <fstream>\n"}).empty());
  CHECK(impure_includes({"engine/rules/a.cpp", "#include <fstream>\n"}).size() == 1);
  CHECK(impure_includes({"engine/measure/a.cpp", "#include <cstdio>\n"}).size() == 1);
  CHECK(impure_includes({"engine/plan/a.cpp", "#include <fstream>\n"}).size() == 1);
  CHECK(impure_includes({"engine/placement/a.h", "#include <filesystem>\n#include <sys/stat.h>\n"}).size() ==
        2);
  check_all(impure_includes);
}

TEST_CASE("every source opens with its purpose") {
  CHECK(missing_purpose({"engine/run/a.cpp", "// Reads every picture and runs the rules.\n"}).empty());
  CHECK(missing_purpose({"engine/run/a.cpp", "#include <vector>\n// Too late.\n"}).size() == 1);
  CHECK(missing_purpose({"engine/run/a.cpp", "// run\n"}).size() == 1);
  CHECK(missing_purpose({"engine/run/a.cpp", ""}).size() == 1);
  check_all(missing_purpose);
}

TEST_CASE("every header guards itself") {
  CHECK(missing_guard({"engine/run/a.h", "// A header.\n#pragma once\n"}).empty());
  CHECK(missing_guard({"engine/run/a.h", "// A header without #pragma once\n"}).size() == 1);
  check_all(missing_guard);
}

TEST_CASE("no file is longer than 400 lines") {
  CHECK(too_long({"engine/run/a.cpp", std::string(400, '\n')}).empty());
  CHECK(too_long({"engine/run/a.cpp", std::string(401, '\n')}) ==
        Complaints{"engine/run/a.cpp has 401 lines"});
  check_all(too_long);
}

TEST_CASE("the top holds what the map of the repository names") {
  std::vector<std::string> paths = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "engine/a",
                                    "schema/a",       "reports/a", "tests/a",       "demo/a",  ".gitignore"};
  CHECK(strangers_at_the_top(paths).empty());
  paths.push_back("misc/a.cpp");
  CHECK(strangers_at_the_top(paths) == Complaints{"misc does not belong at the top"});
  paths.pop_back();
  paths.erase(paths.begin());
  CHECK(strangers_at_the_top(paths) == Complaints{"CMakeLists.txt is missing at the top"});
  CHECK(strangers_at_the_top(tracked()) == Complaints{});
}
