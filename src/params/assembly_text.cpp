// Reads the text files, and fills in figures where braces name them.
#include "params/assembly_text.h"

#include <fmt/args.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <filesystem>

#include "params/input.h"
#include "yaml/nearest.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

constexpr std::string_view kinds = "=-*!@";

// What one file's lines are filled with, and where its problems go.
class Filler {
 public:
  Filler(const std::string& file, const TemplateFigures& figures, std::vector<Problem>& problems)
      : file_(file), figures_(figures), problems_(problems) {
    for (const auto& [name, value] : figures) arguments_.push_back(fmt::arg(name.c_str(), value));
  }

  // `first` is the column of the text's first character. `whole` turns false where
  // a figure is empty.
  std::string filled(const std::string& text, int line, int first, bool& whole) {
    const std::size_t before = problems_.size();
    if (const std::size_t at = control_character(text); at != std::string::npos)
      report(line, first + static_cast<int>(at),
             fmt::format("has the control character {} in it", one_line(text.substr(at, 1))),
             "write letters, digits and signs that print");
    if (problems_.size() == before)
      if (const std::size_t bad = first_bad_byte(text); bad != std::string::npos) {
        report(line, first + static_cast<int>(bad),
               fmt::format("byte 0x{:02X} is not UTF-8 text", static_cast<unsigned char>(text[bad])),
               "save the file as UTF-8");
        return {};
      }
    check(text, line, first, whole);
    if (problems_.size() != before) return {};
    try {
      return fmt::vformat(text, arguments_);
    } catch (const fmt::format_error& e) {
      report(line, first, fmt::format("a figure's layout is not understood ({})", e.what()),
             "write the name alone in its braces");
      return {};
    }
  }

  void report(int line, int column, const std::string& what, const std::string& would_do) {
    problems_.push_back({{file_, line, column, {}}, what, would_do});
  }

 private:
  void check(const std::string& text, int line, int first, bool& whole) {
    const auto column = [&](std::size_t i) { return first + static_cast<int>(i); };
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] != '{' && text[i] != '}') continue;
      if (i + 1 < text.size() && text[i + 1] == text[i]) {
        ++i;
        continue;
      }
      const std::size_t close = text.find_first_of("{}", i + 1);
      if (text[i] == '}' || close == std::string::npos || text[close] == '{') {
        report(line, column(i),
               text[i] == '}' ? "a brace is closed that was not opened" : "a brace is opened and not closed",
               "write {name} for a figure, {{ or }} for a brace that is to be printed");
        return;
      }
      check_name(text.substr(i + 1, close - i - 1), line, column(i), whole);
      i = close;
    }
  }

  void check_name(const std::string& field, int line, int column, bool& whole) {
    const std::string name = field.substr(0, field.find(':'));
    const auto known =
        std::find_if(figures_.begin(), figures_.end(), [&](const auto& f) { return f.first == name; });
    if (known != figures_.end()) {
      whole = whole && !known->second.empty();
      return;
    }
    std::vector<std::string> names;
    for (const auto& f : figures_) names.push_back(f.first);
    std::sort(names.begin(), names.end());
    report(line, column, fmt::format("there is no figure {{{}}}", name),
           fmt::format("the names are {}", fmt::join(names, ", ")));
  }

  const std::string& file_;
  const TemplateFigures& figures_;
  std::vector<Problem>& problems_;
  fmt::dynamic_format_arg_store<fmt::format_context> arguments_;
};

// Lines without their ends; a tab counts as a blank.
std::vector<std::string> lines_of(const std::string& content) {
  std::vector<std::string> lines{""};
  // Some editors write a mark ahead of the first letter of a UTF-8 file.
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  for (const char c : content.starts_with(mark) ? content.substr(mark.size()) : content) {
    if (c == '\n') {
      lines.emplace_back();
    } else if (c != '\r') {
      lines.back() += c == '\t' ? ' ' : c;
    }
  }
  for (std::string& l : lines) l.erase(l.find_last_not_of(' ') + 1);
  return lines;
}

class StepReader {
 public:
  StepReader(Filler& filler, const std::vector<std::string>& pictures)
      : filler_(filler), pictures_(pictures) {}

  std::vector<AssemblyLine> read(const std::string& content) {
    int number = 0;
    for (const std::string& line : lines_of(content)) take(line, ++number);
    end();
    return std::move(lines_);
  }

 private:
  void end() {
    if (open_ && whole_) lines_.push_back(current_);
    open_ = false;
  }

  void take(const std::string& line, int number) {
    if (line.empty() || line[0] == '#') return end();
    const std::size_t start = line.find_first_not_of(' ', line[0] == ' ' ? 0 : 1);
    if (line.starts_with("  ") && open_) {
      current_.text += " " + filler_.filled(line.substr(start), number, static_cast<int>(start) + 1, whole_);
      return;
    }
    end();
    if (kinds.find(line[0]) == std::string_view::npos || start == std::string::npos) {
      filler_.report(number, 1, "a line that is neither heading, step, item, caution, picture nor note",
                     "start it with =, -, *, !, @ or #, or with two blanks to go on with the line before");
      return;
    }
    open_ = whole_ = true;
    current_ = {line[0], filler_.filled(line.substr(start), number, static_cast<int>(start) + 1, whole_)};
    if (line[0] == '@' && std::find(pictures_.begin(), pictures_.end(), current_.text) == pictures_.end())
      filler_.report(number, static_cast<int>(start) + 1,
                     fmt::format("there is no picture or table {}", current_.text),
                     fmt::format("there are {}", fmt::join(pictures_, ", ")));
  }

  Filler& filler_;
  const std::vector<std::string>& pictures_;
  std::vector<AssemblyLine> lines_;
  AssemblyLine current_;
  bool open_ = false, whole_ = true;
};

TemplateFile read_one(const std::string& folder, const std::string& shipped, const char* name,
                      const Mark& where, std::vector<Problem>& problems) {
  namespace fs = std::filesystem;
  const fs::path own = fs::path(folder) / name;
  const std::string path = (!folder.empty() && fs::exists(own) ? own : fs::path(shipped) / name).string();
  return {path, read_bytes(path, where, problems).value_or("")};
}

}  // namespace

AssemblyFiles read_assembly_files(const std::string& shipped, const std::string& order_path, const Name& own,
                                  std::vector<Problem>& problems) {
  namespace fs = std::filesystem;
  constexpr const char *letterhead = "letterhead.txt", *steps = "steps.txt";
  const std::string folder = own.text.empty() ? "" : beside(order_path, own.text);
  const Mark where = own.text.empty() ? Mark{order_path, 0, 0, {}} : own.mark;
  std::error_code error;
  if (!folder.empty() && !fs::exists(fs::path(folder) / letterhead, error) &&
      !fs::exists(fs::path(folder) / steps, error)) {
    problems.push_back({where, fmt::format("{} has neither {} nor {}", folder, letterhead, steps),
                        "name a folder that has one of them, or leave the key out"});
    return {};
  }
  return {read_one(folder, shipped, letterhead, where, problems),
          read_one(folder, shipped, steps, where, problems)};
}

AssemblyText fill_assembly(const AssemblyFiles& files, const TemplateFigures& figures,
                           const std::vector<std::string>& pictures, std::vector<Problem>& problems) {
  AssemblyText out;
  Filler head(files.letterhead.path, figures, problems);
  int number = 0;
  for (const std::string& line : lines_of(files.letterhead.content)) {
    ++number;
    bool whole = true;
    const std::string text = line.starts_with("#") ? "" : head.filled(line, number, 1, whole);
    if (whole && !text.empty()) out.letterhead.push_back(text);
  }
  Filler steps(files.steps.path, figures, problems);
  out.lines = StepReader(steps, pictures).read(files.steps.content);
  return out;
}

}  // namespace bedwright
