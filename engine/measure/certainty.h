// How sure a measure is of what it says.
#pragma once

namespace stoneproof {

/// Cannot tell: too little to look at, or a kind of picture that the measure is not made for.
enum class Certainty { cannot_tell, no, hint, firm };

} // namespace stoneproof
