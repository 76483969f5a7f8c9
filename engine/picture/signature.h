// The format of a file by its first bytes; a file name is never looked at.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/picture_file.h"
#include "engine/press/press_sheet.h"

namespace stoneproof {

/// The format that will read this file, or the Fault that says what else it is.
Outcome<Format> format_of(const PictureFile &file);

} // namespace stoneproof
