// It is not sure that a file on disk is the one a picture was made from. The only way in is
// doubtful_master_rule; tested by tests/rules/doubtful-master.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    const Master *master = evidence.master_of(*placed.picture);
    if (!master || master->sure) return;
    findings.push_back(about_frame(Grade::query, evidence, placed));
    findings.back().measured = Share{master->likeness};
  });
}

} // namespace

extern const Rule doubtful_master_rule = {
    "doubtful-master",
    Grade::query,
    "File behind the picture is not sure",
    "What is said of the file may be said of another shot of the same scene.",
    "The correlation of picture and file, both small and laid on each other: at least 0.97 is sure, and of a "
    "crop also "
    "0.85 of what is left without slow changes of tone (our own choice; copies made by software come out "
    "above "
    "0.99).",
    "Look at both. If they are two shots, go by the picture alone.",
    check,
    true,
    true,
};

} // namespace stoneproof
