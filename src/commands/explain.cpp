// bedwright explain: prints one rule's entry, or lists them all.
#include <fmt/format.h>

#include "commands/session.h"
#include "commands/tell.h"
#include "rules/loads/rules.h"
#include "yaml/nearest.h"

namespace bedwright {

ExitCode explain_command(const std::string& code) {
  if (code.empty()) {
    for (const Rule& rule : all_rules()) fmt::print("{:<16} {}\n", rule.code, rule.asks);
    return released;
  }
  std::optional<std::string> text = explain(code);
  for (const Rule& rule : load_rules())
    if (rule.code == code) text = entry_text(rule);
  if (text) {
    fmt::print("{}", *text);
    return released;
  }
  std::vector<std::string> codes;
  for (const Rule& rule : all_rules()) codes.push_back(rule.code);
  tell("bedwright: there is no rule {}; {}\n", code, suggestion(code, codes));
  return bad_input;
}

}  // namespace bedwright
