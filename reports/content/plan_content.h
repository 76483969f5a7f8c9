// What the scanning plan says, in the order in which it says it: sentences and figures, no coordinates.
#pragma once

#include "engine/plan/scan_plan.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stoneproof::content {

/// One original in a pile.
struct PlanRow {
  std::string name;              ///< id of the picture
  std::string file;              ///< under which the book looks for it
  std::string original;          ///< "Print, 90 × 68 mm"
  std::vector<std::string> uses; ///< "Page 7: 152 × 102 mm", the one that decides first
  std::string pixels, bytes;     ///< "2126 × 1606 px", "11 MB"; empty where nothing is known
  std::string remark;            ///< or empty
};

/// Originals that are worked through in one go.
struct PlanPile {
  std::string device;  ///< "Flatbed scanner"
  std::string setting; ///< "600 ppi"; empty where there is nothing to set
  std::string amount;  ///< "9 originals, 310 MB"
  std::string how;     ///< what is particular of this pile; or empty
  std::vector<PlanRow> rows;
};

/// What one person has to do.
struct PersonPlan {
  std::string name, contact;
  std::size_t line = 0;        ///< index into PlanContent::table
  std::string summary;         ///< "14 originals: 10 on a flatbed scanner, 4 of film; 1.2 GB"
  std::vector<PlanPile> piles; ///< flatbed by rising setting, film likewise, camera, what must be measured
  std::string nothing_to_do;   ///< which files are there already; or empty
};

/// A person in the table on the front.
struct PersonLine {
  std::string name, flatbed, film, camera;
  std::string open; ///< what is to be decided or measured
  std::string ready, bytes;
};

/// Something to decide before anybody scans.
struct PlanTrouble {
  std::string name, owner; ///< of the picture; whose it is, or empty
  std::string where;       ///< "Page 7, frame 7a"
  std::string what, remedy;
};

struct Advice {
  std::string heading, text;
};

struct PlanContent {
  std::string title;
  std::string job;     ///< what the plan is, in one sentence
  std::string verdict; ///< "47 originals to scan or photograph, 1.9 GB"
  std::string counts;  ///< the same by kind, and what need not be scanned
  std::string sizes;   ///< how the sizes of files were reckoned
  std::string film;    ///< what a film scanner must do; empty: there is no film
  std::string unused;  ///< pictures that no frame shows; or empty
  std::string press;   ///< which press sheet was used, and who has the last word
  std::vector<PersonLine> table;
  std::vector<PlanTrouble> troubles;
  std::vector<PersonPlan> people; ///< in the order of the book; those without a name last
  std::vector<Advice> advice;
};

/// `plan` is that of the same book.
PlanContent plan_content(const Book &book, const PressSheet &press, const ScanPlan &plan);

/// How to scan, for people who do not scan every day.
std::vector<Advice> scanning_advice();

} // namespace stoneproof::content
