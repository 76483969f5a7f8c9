// How far two colours look apart.
// Source: Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary
// test data, and mathematical observations", Color Research and Application 30 (2005), 21-30; as ISO/CIE
// 11664-6.
#pragma once

namespace stoneproof {

/// A colour in CIE 1976 L*a*b*; in this folder always against D50, as profiles have it. L from 0 to 100.
struct Lab {
  double L = 0, a = 0, b = 0;
};

/// The difference by CIEDE2000 with kL = kC = kH = 1. About 1 is just seen when the colours lie side by side.
double ciede2000(Lab one, Lab other);

} // namespace stoneproof
