#include "reports/record/measure_record.h"

#include "engine/press/read.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/reports/record/validate.h"

#include <nlohmann/json.hpp>

using namespace stoneproof;
using namespace stoneproof::test;
using nlohmann::json;

namespace {

const std::string schemas = STONEPROOF_SOURCE_DIR "/schema/";

/// Files of every kind that the document tells apart, measured: a photo, inks, one bit, 16 bits, a cut file
/// and a missing one.
struct Measured {
  Measured() {
    const auto at = [&](const char *name) { return files.emplace_back(folder / name); };
    made::JpegKind saved;
    saved.quality = 60;
    saved.unit = 1, saved.x = saved.y = 72;
    made::write_jpeg(at("Zdjęcia babci, ślub 1931.jpg"), made::busy(600, 400, 3), saved);
    made::write_tiff(at("inks.tif"), made::busy(300, 200, 4), {.photometric = 5});
    made::write_tiff(at("line art.tif"), made::busy(300, 200, 1, 1), {.photometric = 0});
    made::write_tiff(at("deep.tif"), made::busy(300, 200, 3, 16));
    const auto cut = at("cut.jpg");
    made::write_jpeg(cut, made::busy(400, 200, 3));
    std::filesystem::resize_file(cut, std::filesystem::file_size(cut) / 2);
    at("gone.jpg");
  }
  std::string text(bool pixels = true) const {
    RunOptions options;
    options.measure_pixels = pixels;
    return record::measure_text(measure_files(files, built_in_press_sheet(), options), built_in_press_sheet(),
                                "1.2.3");
  }
  test::Folder folder;
  std::vector<std::filesystem::path> files;
};

int refused(const std::vector<std::string> &documents) {
  return refused_by("measure.schema.json", documents);
}

} // namespace

TEST_CASE("what is measured is valid by its schema, and the same each time") {
  const Measured measured;
  CHECK(refused({measured.text(), measured.text(false)}) == 0);
  CHECK(measured.text() == measured.text());
}

TEST_CASE("a spoiled measurement is refused") {
  const std::string sound = Measured().text();
  const std::vector<std::string> spoiled = {
      replaced(sound, "\"measure\": 1", "\"measure\": 2"),
      replaced(sound, "\"measure\": 1", "\"measure\": 1, \"colour\": true"),
      replaced(sound, "\"press\": \"Common practice\",", ""),
      replaced(sound, "\"path\": ", "\"file\": "),
      replaced(sound, "\"use\": \"line-art\"", "\"use\": \"drawing\""),
      replaced(sound, "\"quality\": 60", "\"quality\": 101"),
      replaced(sound, "\"verdict\": \"too-few\"", "\"verdict\": \"too few\""),
      replaced(sound, "\"width_mm\": 130.0", "\"width_mm\": 0"),
      replaced(sound, "\"ink_at_ppi\": 300.0,", ""),
      replaced(sound, "\"white_share\": 0", "\"white_share\": 2"),
      replaced(sound, "\"photo\": null", "\"photo\": {}"),
      replaced(sound, "\"format\": \"jpeg\"", "\"format\": \"jpg\""),
  };
  for (const std::string &document : spoiled) CHECK(refused({document}) == 1);
}

TEST_CASE("figures of each file are told, and null where there are none") {
  const Measured measured;
  const json root = json::parse(measured.text());
  CHECK(root["stoneproof"] == "1.2.3");
  CHECK(root["press"] == "Common practice");
  const json &photo = root["pictures"][0], &inks = root["pictures"][1], &bits = root["pictures"][2],
             &deep = root["pictures"][3], &cut = root["pictures"][4], &gone = root["pictures"][5];
  CHECK(photo["path"] == measured.files[0].string());
  CHECK(photo["fault"] == nullptr);
  CHECK(photo["jpeg"]["quality"] == 60);
  CHECK(photo["stored_ppi_x"] == 72.0);
  CHECK(photo["ink"] == nullptr);
  CHECK(photo["ink_at_ppi"] == nullptr);
  CHECK(photo["largest_print_mm"]["photo"]["wanted"]["width"].get<double>() == Approx(50.8));
  CHECK(photo["largest_print_mm"]["photo"]["least"]["height"].get<double>() == Approx(400 / 200.0 * 25.4));
  CHECK(photo["frames"].size() == 8);
  CHECK(photo["frames"][0]["name"] == "9 × 13 cm");
  CHECK(photo["frames"][0]["width_mm"] == 130.0); // turned as the picture lies
  CHECK(photo["frames"][0]["ppi"].get<double>() == Approx(400 / (90 / 25.4)));
  CHECK(photo["frames"][0]["verdict"] == "too-few");
  CHECK(inks["ink"]["most"].get<double>() > 0.5);
  CHECK(inks["ink_at_ppi"] == 300.0);
  CHECK(bits["use"] == "line-art");
  CHECK(bits["largest_print_mm"]["photo"] == nullptr);
  CHECK(bits["largest_print_mm"]["line-art"]["wanted"]["width"].get<double>() == Approx(25.4 / 4));
  CHECK(deep["bits"] == 16);
  CHECK(deep["tone"]["channels"].size() == 3);
  CHECK(cut["fault"].is_string());
  CHECK(cut["width_px"] == 400);
  CHECK(cut["tone"] == nullptr);
  CHECK(gone["fault"] == "there is no such file");
  CHECK(gone["use"] == nullptr);
  CHECK(gone["largest_print_mm"] == nullptr);
  CHECK(gone["frames"].empty());
}

TEST_CASE("keys that the record has too have the same shape there and here") {
  const json here = json::parse(content_of(schemas + "measure.schema.json"))["$defs"],
             there = json::parse(content_of(schemas + "record.schema.json"))["$defs"];
  const json &mine = here["picture"]["properties"], &picture = there["picture"]["properties"],
             &frame = there["frame"]["properties"];
  std::size_t shared = 0;
  for (const auto &[key, shape] : mine.items()) {
    if (key == "use" || key == "true_detail" || !picture.contains(key)) continue;
    INFO(key);
    CHECK(shape == picture[key]);
    ++shared;
  }
  CHECK(shared > 15);
  CHECK(mine["tone"]["properties"] == frame["tone"]["properties"]);
  CHECK(mine["true_detail"]["properties"] == frame["true_detail"]["properties"]);
  CHECK(mine["ink"]["required"] == frame["ink"]["required"]);
  for (const char *name : {"sha256", "size", "share"}) CHECK(here[name] == there[name]);
}

TEST_CASE("every key of a measurement is described") {
  const std::string words = content_of(schemas + "measure.md");
  const auto told = [&](const std::string &key) {
    return words.find("`" + key + "`") != std::string::npos ||
           words.find("\"" + key + "\"") != std::string::npos;
  };
  const json root = json::parse(Measured().text());
  std::size_t keys = 0;
  const auto look = [&](const auto &again, const json &value) -> void {
    for (const auto &[key, part] : value.items()) {
      if (value.is_object()) {
        INFO(key);
        CHECK(told(key));
        ++keys;
      }
      if (part.is_structured()) again(again, part);
    }
  };
  look(look, root);
  CHECK(keys > 100);
}

TEST_CASE("a path that is not UTF-8 is written with a replacement character") {
  MeasuredFile file;
  file.file = "sc\xc3.tif";
  file.state.fault = Fault{"there is no such file", "sc\xc3.tif", "Ask for it."};
  const std::string text = record::measure_text({file}, built_in_press_sheet(), "1.2.3");
  CHECK(text.find("\"path\": \"sc\xEF\xBF\xBD.tif\"") != std::string::npos);
  CHECK(refused({text}) == 0);
}
