// A fixture: a small book, what is known of its picture files, and the findings that the rules must give.
#pragma once

#include "engine/rules/rule.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace stoneproof::test {

/// A book with all that the rules look at. The sheet is the built-in one.
struct Scene {
  Book book;
  PressSheet press;
  std::vector<PictureState> pictures;

  /// Refers to this scene, which must outlive it.
  Evidence evidence() const;
};

/// The text of a file; a test fails where it cannot be read.
std::string text_of(const std::filesystem::path &file);

/// The scene of a description and a list of pictures, one a line: "ID WIDTH x HEIGHT FORMAT COLOUR", "ID
/// missing" or "ID unreadable". A JPEG may say how it was saved: "... quality N" for standard tables, "...
/// flat N" for tables of N throughout.
Scene scene_of(const std::string &description, const std::string &pictures);

/// The scene in STEM.xml and STEM.pictures.
Scene read_scene(const std::filesystem::path &stem);

/// One line for each finding: rule, grade, place, sides, measured of wanted, and each way out.
std::string listed(const Scene &scene, const std::vector<Finding> &findings);

} // namespace stoneproof::test
