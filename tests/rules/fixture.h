// A fixture: a small book, what is known of its picture files, and the findings that the rules must give.
#pragma once

#include "engine/rules/rule.h"
#include "tests/support/catch.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace stoneproof::test {

/// What is known of one picture: its file, and its pixels as every frame shows them.
struct Known {
  PictureState state;
  std::optional<Shown> shown;   ///< none: not measured
  std::optional<Master> master; ///< the file that it was made from
};

/// A book with all that the rules look at. The sheet is the built-in one.
struct Scene {
  Book book;
  PressSheet press;
  std::vector<Known> pictures;
  std::vector<CopyPair> copies;
  std::vector<Glass> glasses;
  std::vector<std::string> scanners; ///< the name of each
  bool masters = false;              ///< files that the pictures were made from were looked for

  /// Refers to this scene, which must outlive it.
  Evidence evidence() const;
};

/// The text of a file; a test fails where it cannot be read.
std::string text_of(const std::filesystem::path &file);

/// The scene of a description and a list of pictures, one a line: "ID WIDTH x HEIGHT FORMAT COLOUR WORDS",
/// "ID missing" or "ID unreadable". WORDS, each once or not at all:
///   quality N, flat N       a JPEG saved with standard tables, or with tables of N throughout
///   tag WORD, profile KIND  what the file says of its colours (else srgb); KIND: broken, wide, link, rgb,
///   gray, cmyk alpha, pages N          opacity; pictures in the file neutral                 gray, though
///   stored as RGB white P, black P, range P, comb P, ink P, beyond P   what was measured of the part shown,
///   in per cent
///   detail P, enlarged F, roughly F, perhaps F   what its detail is worth, in per cent; that it was enlarged
///   F times, surely, by a factor that is not sure, or perhaps
///   resaved N, was-jpeg N   firmly saved before on the same grid, or once a JPEG, at quality N, give or take
///   1 dots N, finer-dots N, perhaps-dots N   a printed screen of a row of dots every N pixels, turned by 45
///   degrees white-left N, white-bottom N, black-top N   a strip of N pixels of scanner bed at that side of
///   the picture perhaps-white-top N     the same, not sure tilt D                  the original is turned by
///   D degrees; only beside a strip screenshot WORD         firm or hint ///   scan WORD               from
///   the scanner with that name, which scans 200 x 300 mm speck P, perhaps-speck P, streak P   dirt on its
///   glass that the picture shows: P % from the left, and a speck P % from the top; after scan like ID,
///   better-than ID, worse-than ID   shows the same as another picture, which comes before it

///   master N, perhaps-master N    was made from MADE.tif, which has N times as many pixels each way
///
/// A first line "files" says that such files were looked for.
/// A first line "press profile" gives the sheet a profile: up to 10 % may lie beyond it; "press strict" has
/// it accept gray and CMYK alone, and no transparency.
Scene scene_of(const std::string &description, const std::string &pictures);

/// The scene in STEM.xml and STEM.pictures.
Scene read_scene(const std::filesystem::path &stem);

/// Calls `check` with the path of every fixture, without its ending.
template <class Check>
void each_fixture(Check check) {
  const std::filesystem::path folder = STONEPROOF_SOURCE_DIR "/tests/rules";
  for (const Rule *rule : all_rules())
    for (const char *stem : {"fires", "silent"}) {
      const auto path = folder / rule->id / stem;
      CAPTURE(path);
      check(path);
    }
}

/// One line for each finding: rule, grade, place, sides, measured of wanted, and each way out.
std::string listed(const Scene &scene, const std::vector<Finding> &findings);

} // namespace stoneproof::test
