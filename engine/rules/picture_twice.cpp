// One picture stands in more than one frame. The only way in is picture_twice_rule; tested by
// tests/rules/picture-twice.
#include "engine/rules/about.h"
#include "engine/rules/facing_halves.h"

#include <map>
#include <string_view>

namespace stoneproof {

namespace {

/// For each picture the first one of the book whose file has the same content; itself where no other has.
std::vector<std::size_t> first_of_its_kind(const Evidence &evidence) {
  std::map<std::string_view, std::size_t> first_with;
  std::vector<std::size_t> first;
  for (std::size_t picture = 0; picture < evidence.pictures.size(); ++picture) {
    const std::string &content = evidence.pictures[picture].sha256;
    first.push_back(content.empty() ? picture : first_with.try_emplace(content, picture).first->second);
  }
  return first;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto first = first_of_its_kind(evidence);
  std::vector<bool> second_half(evidence.frames.size());
  for (const FacingHalves &halves : facing_halves(evidence)) second_half[halves.right] = true;
  std::vector<std::vector<const PlacedFrame *>> uses(first.size());
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) {
    const PlacedFrame &placed = evidence.frames[i];
    if (placed.picture && !second_half[i]) uses[first[*placed.picture]].push_back(&placed);
  }
  for (const auto &frames : uses) {
    if (frames.size() < 2) continue;
    Finding finding = about_frame(Grade::query, evidence, *frames[1]);
    finding.measured = Count{frames.size()};
    finding.wanted = Count{1};
    for (const PlacedFrame *placed : frames) finding.same_picture.push_back({placed->page, placed->frame});
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule picture_twice_rule = {
    "picture-twice",
    Grade::query,
    "Same picture is placed more than once",
    "Readers notice, and most often a second picture was meant: the wrong file was linked.",
    "Frames that name the same picture of the description, or pictures whose files are the same to the byte "
    "(SHA-256). Two halves of a picture on facing pages, which halves-apart looks at, count once.",
    "Look whether both are meant. If not, put the right picture into one of the frames.",
    check,
};

} // namespace stoneproof
