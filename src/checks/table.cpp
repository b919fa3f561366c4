#include "checks/table.h"

#include <fmt/format.h>

#include <algorithm>

namespace bedwright {
namespace {

constexpr int indent = 6;

const char* colour_of(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return "\x1b[31m";
    case Severity::warn:
      return "\x1b[33m";
    case Severity::note:
      break;
  }
  return "\x1b[36m";
}

std::string figure(double value, const std::string& unit, const Figures& figures) {
  return unit == "mm" ? figures.say(value) : fmt::format("{:.3g} {}", value, unit);
}

std::size_t widest(const std::vector<Finding>& findings, const std::string& (*text)(const Finding&)) {
  std::size_t width = 0;
  for (const Finding& f : findings) width = std::max(width, text(f).size());
  return width;
}

const std::string& code_of(const Finding& f) { return f.code; }
const std::string& name_of(const Finding& f) {
  static const std::string none = "-";
  return f.subjects.empty() ? none : f.subjects.front();
}

int count(const std::vector<Finding>& findings, Severity severity) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                        [&](const Finding& f) { return f.severity == severity; }));
}

std::string counted(int n, const char* word) {
  return n == 0 ? fmt::format("no {}s", word) : fmt::format("{} {}{}", n, word, n == 1 ? "" : "s");
}

}  // namespace

const char* severity_word(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return "stop";
    case Severity::warn:
      return "warn";
    case Severity::note:
      break;
  }
  return "note";
}

std::string wrapped(const std::string& text, int indent_by, int width) {
  const std::size_t room = static_cast<std::size_t>(std::max(width - indent_by, 1));
  std::string out, line;
  const auto flush = [&] {
    out += std::string(indent_by, ' ') + line + "\n";
    line.clear();
  };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    if (!line.empty() && line.size() + 1 + word.size() > room) flush();
    line += (line.empty() ? "" : " ") + word;
  }
  if (!line.empty()) flush();
  return out;
}

std::string counts_text(const std::vector<Finding>& findings) {
  return fmt::format("{}, {}, {}", counted(count(findings, Severity::stop), "stop"),
                     counted(count(findings, Severity::warn), "warning"),
                     counted(count(findings, Severity::note), "note"));
}

std::string findings_table(const std::vector<Finding>& findings, const TableStyle& style) {
  const int width = std::max(style.width, 60);
  const std::size_t codes = widest(findings, code_of), names = widest(findings, name_of);
  std::string out;
  for (const Finding& f : findings) {
    const std::string word = severity_word(f.severity);
    const std::string head = style.colour ? colour_of(f.severity) + word + "\x1b[0m" : word;
    out += fmt::format("{}  {:<{}}  {:<{}}  at x {}\n", head, f.code, codes, name_of(f), names,
                       style.figures.say(f.x));
    out +=
        wrapped(fmt::format("measured {}, limit {}, margin {}", figure(f.measured, f.unit, style.figures),
                            figure(f.limit, f.unit, style.figures), figure(f.margin, f.unit, style.figures)),
                indent, width);
    out += wrapped(f.message + ".", indent, width);
    if (!f.remedy.empty()) out += wrapped("To clear it: " + f.remedy + ".", indent, width);
    for (const Change& c : f.changes) out += fmt::format("{:{}}--set '{}={}'\n", "", indent, c.key, c.value);
    out += "\n";
  }
  return out + counts_text(findings) + "\n";
}

}  // namespace bedwright
