// Sentences about one original of the scanning plan. Used in this folder only.
#pragma once

#include "reports/content/plan_content.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::content {

/// The row of a picture that is to be scanned, photographed or measured.
PlanRow plan_row(const Book &book, const PlannedPicture &planned);

/// What must be decided about a picture; none where its plan is whole.
std::vector<PlanTrouble> plan_troubles(const Book &book, const PlannedPicture &planned);

/// What is particular of a pile of one setting: what the scanner must do, and what no setting brings out.
std::string pile_words(const Book &book, const PressSheet &press,
                       const std::vector<const PlannedPicture *> &pile);

/// "Maud Ellerby-Finch"; empty where nobody is named.
std::string owner_name(const Book &book, const Picture &picture);

/// Whether a picture has a row in somebody's pile: it is to be scanned, or its original is to be measured.
bool is_in_pile(const PlannedPicture &planned);

} // namespace stoneproof::content
