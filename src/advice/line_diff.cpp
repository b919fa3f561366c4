// The difference of two texts, line by line, with a little of what stands around it.
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "advice/rewrite.h"

namespace bedwright {
namespace {

constexpr int context = 3;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    lines.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  return lines;
}

struct Step {
  char mark;  // ' ', '-', '+'
  const std::string* line;
};

// By the longest common subsequence; an order file has some fifty lines.
std::vector<Step> steps_of(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  const std::size_t n = a.size(), m = b.size();
  std::vector<std::vector<std::uint32_t>> common(n + 1, std::vector<std::uint32_t>(m + 1, 0));
  for (std::size_t i = n; i-- > 0;)
    for (std::size_t j = m; j-- > 0;)
      common[i][j] = a[i] == b[j] ? common[i + 1][j + 1] + 1 : std::max(common[i + 1][j], common[i][j + 1]);
  std::vector<Step> steps;
  for (std::size_t i = 0, j = 0; i < n || j < m;) {
    if (i < n && j < m && a[i] == b[j])
      steps.push_back({' ', &a[i++]}), ++j;
    else if (i < n && (j == m || common[i + 1][j] >= common[i][j + 1]))
      steps.push_back({'-', &a[i++]});
    else
      steps.push_back({'+', &b[j++]});
  }
  return steps;
}

std::string range(int from, int count) {
  return count == 1 ? fmt::format("{}", from) : fmt::format("{},{}", count == 0 ? from - 1 : from, count);
}

}  // namespace

std::string line_diff(const std::string& before, const std::string& after, const std::string& name_before,
                      const std::string& name_after) {
  if (before == after) return {};
  const std::vector<std::string> a = lines_of(before), b = lines_of(after);
  const std::vector<Step> steps = steps_of(a, b);
  std::vector<bool> shown(steps.size(), false);
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (steps[i].mark != ' ')
      for (std::size_t k = i < context ? 0 : i - context; k <= std::min(i + context, steps.size() - 1); ++k)
        shown[k] = true;
  std::string out = fmt::format("--- {}\n+++ {}\n", name_before, name_after);
  int line_a = 1, line_b = 1;
  for (std::size_t i = 0; i < steps.size();) {
    std::size_t end = i;
    while (end < steps.size() && shown[end] == shown[i]) ++end;
    std::string block;
    int count_a = 0, count_b = 0;
    for (std::size_t k = i; k < end; ++k) {
      block += steps[k].mark + *steps[k].line + "\n";
      count_a += steps[k].mark != '+';
      count_b += steps[k].mark != '-';
    }
    if (shown[i])
      out += fmt::format("@@ -{} +{} @@\n", range(line_a, count_a), range(line_b, count_b)) + block;
    line_a += count_a;
    line_b += count_b;
    i = end;
  }
  return out;
}

}  // namespace bedwright
