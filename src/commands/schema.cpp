// bedwright schema: prints the JSON Schema of a file people write.
#include "params/schema.h"

#include <fmt/format.h>

#include <map>

#include "commands/session.h"
#include "commands/tell.h"

namespace bedwright {

ExitCode schema_command(const std::string& which) {
  const std::map<std::string, std::string (*)()> known = {
      {"order", order_schema}, {"kit", kit_schema}, {"frame", frame_schema}, {"built", built_schema}};
  const auto it = known.find(which);
  if (it == known.end()) {
    tell("bedwright: there is no schema \"{}\"; there are order, kit, frame and built\n", which);
    return bad_input;
  }
  fmt::print("{}", it->second());
  return released;
}

}  // namespace bedwright
