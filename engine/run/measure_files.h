// What picture files are good for, before any book exists.
#pragma once

#include "engine/placement/usual_prints.h"
#include "engine/rules/evidence.h"
#include "engine/run/run.h"

#include <filesystem>
#include <vector>

namespace stoneproof {

/// How a density stands to the press sheet's bars, less its tolerance: at the wanted one, at the least one,
/// or below both.
enum class Sharpness { good, usable, too_few };
inline constexpr Word<Sharpness> sharpness_words[] = {
    {Sharpness::good, "good"}, {Sharpness::usable, "usable"}, {Sharpness::too_few, "too-few"}};

/// The largest prints of the whole picture for one use.
struct LargestPrint {
  Use use = Use::photo;
  Size wanted, least; ///< at the press sheet's wanted and least density, no tolerance taken
};

/// The picture filling a usual size of paper.
struct FilledPrint {
  std::string_view name;
  Size size; ///< turned to suit the picture
  Density density;
  Sharpness sharpness = Sharpness::good;
};

/// Another file that shows the same picture.
struct CopyOf {
  std::filesystem::path file; ///< as given
  bool same_bytes = false;
  bool better = false, worse = false; ///< that file is; neither: both are worth the same
};

/// Dirt on the glass that the file was scanned on.
struct DirtOn {
  GlassSpot spot;
  std::optional<Rect> place;               ///< from the left and the top of the scan as stored
  std::vector<std::filesystem::path> also; ///< other files of the list that show it
};

struct MeasuredFile {
  std::filesystem::path file; ///< as given
  PictureState state;
  Use use = Use::photo;              ///< a photo, or line art where it has no tones of its own
  std::optional<Shown> whole;        ///< none: nobody looked, or the file cannot be used
  std::vector<LargestPrint> largest; ///< by Use; no photo where the picture is line art
  std::vector<FilledPrint> filled;   ///< one for each of usual_prints, as `use` asks
  std::vector<CopyOf> copies;        ///< other files of the list that show the same
  std::vector<DirtOn> dirt;          ///< that it shows, as other files from the same scanner do
};

/// Every file of the list, in its order. Ink is averaged over the press sheet's square, and `ink_place` tells
/// where that lies, when the whole picture is printed at the wanted density of its use. Of the options
/// `copy_density` is not looked at. Never fails: why a file cannot be used stands in its state; a folder
/// cannot.
std::vector<MeasuredFile> measure_files(const std::vector<std::filesystem::path> &files,
                                        const PressSheet &press, const RunOptions &options = {});

} // namespace stoneproof
