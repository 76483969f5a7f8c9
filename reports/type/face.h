// The type faces of our documents: one serif family for reading, one sans family for labels and figures.
#pragma once

namespace stoneproof {

enum class Face { text, text_bold, text_italic, label, label_bold };

} // namespace stoneproof
