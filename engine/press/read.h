// Reads a press sheet (schema/press.md) and holds the built-in one. A press sheet is what the user was told;
// the printer's own word always wins over it.
#pragma once

#include "engine/press/press_sheet.h"
#include "engine/xml/source_fault.h"
#include "engine/xml/source_text.h"

#include <filesystem>
#include <string_view>

namespace stoneproof {

inline constexpr std::string_view press_namespace = "urn:stoneproof:press:1";

/// The sheet, or every fault found in the file, up to a limit. The file is opened read-only.
Reading<PressSheet> read_press_sheet(const std::filesystem::path &file);

/// The same from text; its name becomes PressSheet::source.
Reading<PressSheet> parse_press_sheet(SourceText source);

/// Common practice in book printing, each value commented: default_sheet.xml, as it stands.
std::string_view built_in_press_sheet_text();

/// The sheet in that text; its source is "built in".
PressSheet built_in_press_sheet();

} // namespace stoneproof
