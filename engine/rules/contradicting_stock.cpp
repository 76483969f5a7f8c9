// The figures of a paper tell different thicknesses. The only way in is contradicting_stock_rule; tested by
// tests/rules/contradicting-stock.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const StockPart part : stock_parts) {
    const auto &stock = stock_of(evidence.book.stocks, part);
    if (!stock) continue;
    const auto differs = contradiction(*stock, evidence.press.spine.leaf_tolerance);
    if (!differs) continue;
    Finding finding;
    finding.grade = Grade::query;
    finding.stock = part;
    finding.measured = differs->thicker.leaf;
    finding.wanted = differs->thinner.leaf;
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule contradicting_stock_rule = {
    "contradicting-stock",
    Grade::query,
    "Figures of a paper contradict each other",
    "The spine and the cover are reckoned from the thickness of a leaf. One hundredth of a millimetre too "
    "much makes the spine of a book of 200 pages a whole millimetre too wide.",
    "The thickness of a leaf as each figure tells it: the caliper; grammage × bulk / 1000, in mm from g/m² "
    "and cm³/g; 50.8 mm / pages per inch, a leaf having two pages. The largest and the smallest may differ "
    "by the press sheet’s tolerance of a leaf (GPO, Government Paper Specification Standards, 1999: 0.013 "
    "mm).",
    "Ask the paper merchant or the printer which figure is right, and take out the other.",
    check,
};

} // namespace stoneproof
