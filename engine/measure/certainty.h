// How sure a measure is.
#pragma once

#include "engine/book/book.h"

namespace stoneproof {

/// Cannot tell: too little to look at, or a kind of picture that the measure is not made for.
enum class Certainty { cannot_tell, no, hint, firm };
inline constexpr Word<Certainty> certainty_words[] = {{Certainty::cannot_tell, "cannot-tell"},
                                                      {Certainty::no, "no"},
                                                      {Certainty::hint, "hint"},
                                                      {Certainty::firm, "firm"}};

} // namespace stoneproof
