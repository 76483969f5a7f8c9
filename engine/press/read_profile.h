// The ICC profile that a press sheet names.
#pragma once

#include "engine/press/press_sheet.h"
#include "engine/xml/element_reader.h"

#include <filesystem>
#include <memory>

namespace stoneproof {

/// Reads the element and the file that it names, seen from `folder`; the file is opened read-only. Null, and
/// a fault told, where an attribute is wrong, or the file cannot be read, is beyond 32 MB, or is no profile
/// of a CMYK output device.
std::shared_ptr<const PressProfile>
read_press_profile(const Element &element, const std::filesystem::path &folder, FaultList &faults);

} // namespace stoneproof
