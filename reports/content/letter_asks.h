// What each contributor is asked to do: one thing for each picture, however many findings concern it. A pure
// choice; the words are in letter_content.h.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace stoneproof::content {

enum class Ask {
  send_file,       ///< the file was never received
  send_again,      ///< the file that was received is broken or shows next to nothing
  scan,            ///< on a flatbed scanner, at PictureAsk::setting
  scan_film,       ///< slide or negative, on a film scanner
  scan_by_service, ///< at a setting that a flatbed scanner does not resolve
  photograph,      ///< an object
  measure,         ///< the original, whose size nobody told: without it there is no setting
  first_file,      ///< the file from the phone or camera, not a copy of it
  save_as_tiff,    ///< the same picture in a format that the printer takes
  own_file,        ///< one of several pictures in a file
  find_better,     ///< the original is lost: another copy of it
};
inline constexpr Word<Ask> ask_keywords[] = {{Ask::send_file, "send-file"},
                                             {Ask::send_again, "send-again"},
                                             {Ask::scan, "scan"},
                                             {Ask::scan_film, "scan-film"},
                                             {Ask::scan_by_service, "scan-by-service"},
                                             {Ask::photograph, "photograph"},
                                             {Ask::measure, "measure"},
                                             {Ask::first_file, "first-file"},
                                             {Ask::save_as_tiff, "save-as-tiff"},
                                             {Ask::own_file, "own-file"},
                                             {Ask::find_better, "find-better"}};

/// The one thing to do for a picture.
struct PictureAsk {
  std::size_t picture = 0; ///< index into Book::pictures
  Ask ask = Ask::scan;
  Grade grade = Grade::query;          ///< the gravest of the findings that it is to mend: hold or query
  std::string_view rule;               ///< id of the finding that tells why
  std::vector<std::string_view> rules; ///< ids of all that it is to mend: that one first, then the gravest
  std::optional<int> setting;          ///< ppi, where the original can be scanned and its size is told
  std::optional<PixelSize> pixels; ///< of the whole original at that setting; of an object the least that a
                                   ///< photograph must have
  std::optional<Size> no_larger;   ///< what the file at hand is good for, in its smallest-served frame
  std::vector<FrameAt> frames;     ///< that show it, in book order; at least one
  Size printed;                    ///< the largest of them
};

/// A speck on the glass of a scanner, in millimetres from the left and the top of the scan; a streak is as
/// long as the scan.
struct SpotAt {
  double x_mm = 0, y_mm = 0, width_mm = 0, height_mm = 0;
};

/// A glass whose specks show in several pictures of one person.
struct DirtyGlass {
  std::vector<SpotAt> spots;         ///< none where the files do not tell how large the scans are
  std::vector<std::size_t> pictures; ///< that are to be scanned again for it; indices into Book::pictures
};

struct ContributorAsks {
  std::optional<std::size_t> contributor; ///< index into Book::contributors; none: the book names nobody
  std::vector<PictureAsk> pictures;       ///< largest printed first, then in the order of the book
  std::vector<DirtyGlass> glasses;

  bool nothing() const { return pictures.empty() && glasses.empty(); }
};

struct Asks {
  std::vector<ContributorAsks> people; ///< one for each of Book::contributors
  ContributorAsks nobody;              ///< pictures that have no contributor; without glasses
};

/// Holds and queries about picture files count; notes, and what the book maker can mend in the layout or in
/// an image editor, never ask anything of a contributor. A new scan is asked for wherever one of the findings
/// wants it, since it mends the others too; else the gravest finding decides.
Asks letter_asks(const Evidence &evidence, const std::vector<Finding> &findings);

} // namespace stoneproof::content
