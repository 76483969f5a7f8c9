// The checks of the sources themselves. Each takes text and gives complaints, so that each can be shown to
// fail.
#pragma once

#include <string>
#include <vector>

namespace stoneproof::test {

/// A source file: its path from the top of the repository, and its text.
struct Source {
  std::string path, text;
};
using Complaints = std::vector<std::string>;

/// Includes of the project's own files go downwards only: from demo and tests to reports to engine, and
/// within engine and reports only to folders that stand earlier in the flow. Every folder with sources stands
/// in the list.
Complaints upward_includes(const Source &source);

/// A library's header is included in its own folder only.
Complaints stray_libraries(const Source &source);

/// Measures, placement, the plan and rules touch no file and no terminal.
Complaints impure_includes(const Source &source);

/// A .cpp opens with a comment that says its purpose.
Complaints missing_purpose(const Source &source);

/// A header guards itself with #pragma once.
Complaints missing_guard(const Source &source);

/// No file is longer than 400 lines.
Complaints too_long(const Source &source);

/// `paths` are all tracked files: what stands at the top is what the map of the repository names.
Complaints strangers_at_the_top(const std::vector<std::string> &paths);

} // namespace stoneproof::test
