#include <fmt/format.h>

#include "commands/session.h"
#include "yaml/nearest.h"

namespace bedwright {

ExitCode explain_command(const std::string& code) {
  if (code.empty()) {
    for (const Rule& rule : rules()) fmt::print("{:<16} {}\n", rule.code, rule.asks);
    return released;
  }
  if (const auto text = explain(code)) {
    fmt::print("{}", *text);
    return released;
  }
  std::vector<std::string> codes;
  for (const Rule& rule : rules()) codes.push_back(rule.code);
  fmt::print(stderr, "bedwright: there is no rule {}; {}\n", code, suggestion(code, codes));
  return bad_input;
}

}  // namespace bedwright
