// What became of one bed in another, in phrases short enough for a title block.
#include <fmt/format.h>

#include "compare/compare.h"

namespace bedwright {

std::vector<std::string> change_phrases(const Comparison& comparison) {
  std::vector<std::string> phrases;
  for (const PartChange& p : comparison.parts) {
    const std::string named = p.renamed ? fmt::format("{} (was {})", p.name_b, p.name) : p.name;
    switch (p.fate) {
      case Fate::only_a:
        phrases.push_back(fmt::format("{}: no longer used", p.name));
        continue;
      case Fate::only_b:
        phrases.push_back(fmt::format("{}: new, {}", p.name, p.in_b));
        continue;
      case Fate::changed:
        phrases.push_back(fmt::format("{}: {}", named, fmt::join(p.how, ", ")));
        break;
      case Fate::same:
        if (p.renamed) phrases.push_back(fmt::format("{}: as it was by another name", named));
        break;
    }
    if (p.in_a != p.in_b) phrases.push_back(fmt::format("{}: {} become {}", named, p.in_a, p.in_b));
  }
  for (const HardwareChange& h : comparison.hardware)
    if (h.in_a != h.in_b) phrases.push_back(fmt::format("{}: {} become {}", h.name, h.in_a, h.in_b));
  for (const HeadLine& line : comparison.ordered) {
    // What became of their keys says more than that the files differ.
    if (line.what == "kit" || line.what == "frame" || line.what == "catalog") continue;
    phrases.push_back(fmt::format("as ordered: {} {} becomes {}", line.what, line.a, line.b));
  }
  return phrases;
}

}  // namespace bedwright
