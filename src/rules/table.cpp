// Groups findings that are alike, and prints them.
#include "rules/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

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
  if (unit == "mm") return figures.say(value);
  return std::abs(value) >= 1000 ? fmt::format("{:.0f} {}", value, unit)
                                 : fmt::format("{:.3g} {}", value, unit);
}

const std::string& name_of(const Finding& f) {
  static const std::string none = "-";
  return f.subjects.empty() ? none : f.subjects.front().name;
}

// Of one kind, or the same; what is one of a kind is like nothing else.
bool like(const Subject& a, const Subject& b) {
  if (a.in_two.which.empty() || b.in_two.which.empty()) return a.id == b.id;
  return a.id.kind == b.id.kind && a.id.end == b.id.end;
}

// The way out, with the names of what it is about left out.
std::string without_names(const Finding& f) {
  std::string text;
  std::size_t from = 0;
  for (const NameAt& n : f.names_in_remedy) {
    text += f.remedy.substr(from, n.from - from);
    from = n.from + n.length;
  }
  return text + f.remedy.substr(from);
}

// Findings a person would read as one: the same fault at many like places, with
// the same figures and the same way out.
bool alike(const Finding& a, const Finding& b) {
  const auto same_changes = [&] {
    return std::equal(a.changes.begin(), a.changes.end(), b.changes.begin(), b.changes.end(),
                      [](const Change& p, const Change& q) { return p.key == q.key && p.value == q.value; });
  };
  return a.code == b.code && a.severity == b.severity && a.unit == b.unit &&
         std::abs(a.measured - b.measured) < 0.05 &&
         std::equal(a.subjects.begin(), a.subjects.end(), b.subjects.begin(), b.subjects.end(), like) &&
         without_names(a) == without_names(b) && same_changes();
}

struct Group {
  const Finding* first;
  std::vector<const Finding*> others;
};

std::vector<Group> grouped(const std::vector<Finding>& findings) {
  std::vector<Group> groups;
  for (const Finding& f : findings) {
    const auto at =
        std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return alike(*g.first, f); });
    if (at == groups.end())
      groups.push_back({&f, {}});
    else
      at->others.push_back(&f);
  }
  return groups;
}

// "The same at 25 more: bunk bolt L2, L3, ...".
std::string others_text(const Group& group) {
  std::string text = fmt::format("The same at {} more", group.others.size());
  if (group.first->subjects.empty()) return text + ".";
  text += ": " + group.first->subjects.front().in_two.kind;
  const char* comma = " ";
  std::set<Identity> said;
  for (const Finding* f : group.others) {
    const Subject& s = f->subjects.front();
    if (s.in_two.which.empty() || !said.insert(s.id).second) continue;
    text += comma + s.in_two.which;
    comma = ", ";
  }
  return text + ".";
}

std::string set_text(const Change& c) {
  std::string text = fmt::format("{:{}}--set '{}={}'", "", indent, c.key, c.value);
  if (c.brings > 0) text += fmt::format("   (brings {} other stop{})", c.brings, c.brings == 1 ? "" : "s");
  return text + "\n";
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
  const std::vector<Group> groups = grouped(findings);
  std::size_t codes = 0, names = 0;
  for (const Group& g : groups) {
    codes = std::max(codes, g.first->code.size());
    names = std::max(names, name_of(*g.first).size());
  }
  std::string out;
  for (const Group& g : groups) {
    const Finding& f = *g.first;
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
    for (const Change& c : f.changes) out += set_text(c);
    if (!g.others.empty()) out += wrapped(others_text(g), indent, width);
    out += "\n";
  }
  return out + counts_text(findings) + "\n";
}

}  // namespace bedwright
