// Reads each kind of value, and says what is wrong with one that is not of the kind.
#include "yaml/reader_core.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "units/print.h"
#include "yaml/key_path.h"
#include "yaml/nearest.h"
#include "yaml/quantity_help.h"
#include "yaml/scalar.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

std::string count_help(int low, int high) { return fmt::format("a whole number from {} to {}", low, high); }

std::string number_help(Range range) {
  return fmt::format("a number from {} to {}", plain_figure(range.low), plain_figure(range.high));
}

const char* const key_is_missing = "is missing";
const char* const text_help = "a line of text";
const char* const path_help = "a file's path";

}  // namespace

ReaderCore::ReaderCore(const Document& document, const Node& node, std::string path,
                       std::vector<Problem>& problems)
    : document_(document), node_(node), path_(std::move(path)), problems_(problems) {}

std::string ReaderCore::path_of(const char* key) const { return path_to(path_, std::string(key)); }

void ReaderCore::problem(const Node& node, const std::string& path, std::string what, std::string would_do) {
  problems_.push_back({document_.mark(node.place, path), std::move(what), std::move(would_do)});
}

const Node* ReaderCore::take(const char* key, const char* doc, Need need, const Words& such_as) {
  known_.emplace_back(key);
  const Node* found = node_.find(key);
  if (!found && need.required) {
    const Place at = path_.empty() || node_.key.empty() ? node_.place : node_.key_place;
    problems_.push_back({document_.mark(at, path_of(key)), key_is_missing,
                         fmt::format("add {}: {} ({})", key, such_as(), doc)});
  }
  if (found && found->kind == NodeKind::null) {
    problems_.push_back(
        {document_.mark(found->key_place, path_of(key)), "has no value",
         fmt::format("give it {}{}", such_as(), need.required ? "" : ", or leave the key out")});
    return nullptr;
  }
  return found;
}

const Node* ReaderCore::take_map(const char* key, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return "keys of its own, indented below it"; });
  return node && require_map(*node, path_of(key)) ? node : nullptr;
}

bool ReaderCore::require_map(const Node& node, const std::string& path) {
  if (node.kind == NodeKind::map) return true;
  problem(node, path, fmt::format("is {} where keys of its own are wanted", describe_node(node)),
          "write its keys indented below it");
  return false;
}

const Node* ReaderCore::take_list(const char* key, std::size_t most, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return "a list, such as [first, second]"; });
  if (!node) return nullptr;
  if (node->kind != NodeKind::list) {
    problem(*node, path_of(key), fmt::format("is {} where a list is wanted", describe_node(*node)),
            "write it as a list, such as [first, second]");
    return nullptr;
  }
  if (node->children.size() > most) {
    problem(*node, path_of(key), fmt::format("has {} entries", node->children.size()),
            fmt::format("give at most {}", most));
    return nullptr;
  }
  return node;
}

std::optional<std::string> ReaderCore::line(const Node& node, const std::string& path) {
  const auto refuse = [&](std::string what, std::string would_do) {
    problem(node, path, std::move(what), std::move(would_do));
    return std::nullopt;
  };
  if (node.kind != NodeKind::scalar) {
    return refuse(fmt::format("is {} where {} is wanted", describe_node(node), text_help), "write one line");
  }
  if (!node.quoted && is_truth_word(node.scalar)) {
    return refuse(fmt::format("is {}, which reads as true or false", node.scalar), "put it in quotes");
  }
  if (node.scalar.find_first_not_of(" \t\r\n") == std::string::npos) {
    return refuse("is empty", fmt::format("write {}", text_help));
  }
  if (node.scalar.find_first_of("\r\n") != std::string::npos) {
    return refuse("runs over more than one line", "write it on one line");
  }
  if (const std::size_t at = control_character(node.scalar); at != std::string::npos) {
    return refuse(fmt::format("has the control character {} in it", one_line(node.scalar.substr(at, 1))),
                  "write letters, digits and signs that print");
  }
  return node.scalar;
}

void ReaderCore::text(const char* key, std::string& value, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return text_help; });
  if (!node) return;
  if (auto read = line(*node, path_of(key))) value = std::move(*read);
}

void ReaderCore::name(const char* key, Name& value, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return "a name"; });
  if (!node) return;
  value.mark = document_.mark(node->place, path_of(key));
  if (auto read = line(*node, path_of(key))) value.text = std::move(*read);
}

void ReaderCore::path(const char* key, std::string& value, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return path_help; });
  if (!node) return;
  if (auto read = line(*node, path_of(key))) value = std::move(*read);
}

void ReaderCore::paths(const char* key, std::vector<std::string>& values, std::size_t most, const char* doc,
                       Need need) {
  const Node* node = take_list(key, most, doc, need);
  if (!node) return;
  values.clear();
  for (std::size_t i = 0; i < node->children.size(); ++i) {
    // A faulty entry keeps its place, so that those behind it keep their numbers.
    values.push_back(line(node->children[i], path_to(path_of(key), i + 1)).value_or(""));
  }
}

void ReaderCore::flag(const char* key, bool& value, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [] { return "true or false"; });
  if (!node) return;
  if (node->kind != NodeKind::scalar || node->quoted || !is_truth_word(node->scalar)) {
    problem(*node, path_of(key), fmt::format("is {}", describe_node(*node)),
            "write true or false, without quotes");
    return;
  }
  value = node->scalar[0] == 't' || node->scalar[0] == 'T';
}

void ReaderCore::flag(const char* key, std::optional<bool>& value, const char* doc, Need need) {
  bool said = false;
  flag(key, said, doc, need);
  if (node_.find(key)) value = said;
}

std::optional<double> ReaderCore::plain_number(const Node& node, const std::string& path,
                                               const std::string& such_as) {
  const auto value = node.kind == NodeKind::scalar && !node.quoted ? number_in(node.scalar) : std::nullopt;
  if (!value)
    problem(node, path, fmt::format("is {}", describe_node(node)), fmt::format("write {}", such_as));
  return value;
}

void ReaderCore::number(const char* key, double& value, Range range, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [&] { return number_help(range); });
  if (!node) return;
  const auto read = plain_number(*node, path_of(key), number_help(range));
  if (!read) return;
  if (*read < range.low || *read > range.high) {
    problem(*node, path_of(key), fmt::format("is {}", quoted(node->scalar)),
            fmt::format("use {}", number_help(range)));
    return;
  }
  value = *read;
}

std::optional<int> ReaderCore::whole_number(const Node& node, const std::string& path, int low, int high) {
  const auto read = plain_number(node, path, count_help(low, high));
  if (!read) return std::nullopt;
  if (*read < low || *read > high || *read != std::floor(*read)) {
    problem(node, path, fmt::format("is {}", quoted(node.scalar)),
            fmt::format("use {}", count_help(low, high)));
    return std::nullopt;
  }
  return static_cast<int>(*read);
}

void ReaderCore::count(const char* key, int& value, int low, int high, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [&] { return count_help(low, high); });
  if (!node) return;
  if (const auto read = whole_number(*node, path_of(key), low, high)) value = *read;
}

void ReaderCore::counts(const char* key, std::vector<int>& values, int low, int high, std::size_t most,
                        const char* doc, Need need) {
  const Node* node = take_list(key, most, doc, need);
  if (!node) return;
  values.clear();
  for (std::size_t i = 0; i < node->children.size(); ++i) {
    values.push_back(whole_number(node->children[i], path_to(path_of(key), i + 1), low, high).value_or(low));
  }
}

std::optional<double> ReaderCore::quantity(const Node& node, const std::string& path, Dimension dimension,
                                           Range range) {
  if (node.kind != NodeKind::scalar) {
    problem(node, path, fmt::format("is {}", describe_node(node)),
            fmt::format("write {}", such_as(dimension, range)));
    return std::nullopt;
  }
  ParsedQuantity parsed = parse_quantity(dimension, node.scalar);
  if (!parsed.value) {
    problem(node, path, fmt::format("{} {}", quoted(node.scalar), parsed.what), std::move(parsed.would_do));
    return std::nullopt;
  }
  if (!within(*parsed.value, range)) {
    problem(node, path, fmt::format("{} is out of range", quoted(node.scalar)),
            fmt::format("use {}", limits_text(dimension, range)));
    return std::nullopt;
  }
  return parsed.value;
}

void ReaderCore::quantity(const char* key, double& value, Dimension dimension, Range range, const char* doc,
                          Need need) {
  const Range own = own_range(dimension, range);
  const Node* node = take(key, doc, need, [&] { return such_as(dimension, own); });
  if (!node) return;
  if (const auto read = quantity(*node, path_of(key), dimension, own)) value = *read;
}

void ReaderCore::length(const char* key, Mm& value, Range range, const char* doc, Need need) {
  quantity(key, value, Dimension::length, range, doc, need);
}

void ReaderCore::length(const char* key, std::optional<Mm>& value, Range range, const char* doc, Need need) {
  const Node* node = take(key, doc, need, [&] { return such_as(Dimension::length, range); });
  if (!node) return;
  if (const auto read = quantity(*node, path_of(key), Dimension::length, range)) value = *read;
}

void ReaderCore::lengths(const char* key, std::vector<Mm>& values, Range range, std::size_t most,
                         const char* doc, Need need) {
  const Node* node = take_list(key, most, doc, need);
  if (!node) return;
  values.clear();
  for (std::size_t i = 0; i < node->children.size(); ++i) {
    const auto read = quantity(node->children[i], path_to(path_of(key), i + 1), Dimension::length, range);
    values.push_back(read.value_or(range.low));
  }
}

void ReaderCore::mass(const char* key, Kg& value, Range range, const char* doc, Need need) {
  quantity(key, value, Dimension::mass, range, doc, need);
}

void ReaderCore::stress(const char* key, Mpa& value, Range range, const char* doc, Need need) {
  quantity(key, value, Dimension::stress, range, doc, need);
}

void ReaderCore::angle(const char* key, Radians& value, Range range, const char* doc, Need need) {
  quantity(key, value, Dimension::angle, range, doc, need);
}

std::optional<std::size_t> ReaderCore::take_choice(const char* key, const std::vector<std::string>& words,
                                                   const char* doc, Need need) {
  const Node* node = take(key, doc, need, [&] { return fmt::format("one of {}", fmt::join(words, ", ")); });
  if (!node) return std::nullopt;
  const auto found =
      node->kind == NodeKind::scalar ? std::find(words.begin(), words.end(), node->scalar) : words.end();
  if (found == words.end()) {
    const auto near = node->kind == NodeKind::scalar ? nearest(node->scalar, words) : std::nullopt;
    problem(*node, path_of(key), fmt::format("is {}", describe_node(*node)),
            fmt::format("{}use one of {}", near ? fmt::format("did you mean {}? ", *near) : "",
                        fmt::join(words, ", ")));
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - words.begin());
}

void ReaderCore::finish() {
  for (const Node& child : node_.children) {
    if (std::find(known_.begin(), known_.end(), child.key) != known_.end()) continue;
    const Mark mark = document_.mark(child.key_place, path_to(path_, child.key));
    if (child.key == "<<") {
      problems_.push_back({mark, "is no known key", "write the keys out; merging is not supported"});
      continue;
    }
    // {bunk:5} is one word to the parser.
    const std::size_t colon = child.key.find(':');
    const auto near = nearest(child.key.substr(0, colon), known_);
    if (!near) {
      problems_.push_back({mark, "is no known key", suggestion(child.key, known_)});
      continue;
    }
    const std::string meant = path_of(near->c_str());
    Problem slip{mark, "is no known key", fmt::format("did you mean {}?", *near)};
    if (colon != std::string::npos) {
      slip = {document_.mark(child.key_place, meant), "has no space behind its colon",
              fmt::format("write {}: {}", *near, child.key.substr(colon + 1))};
    }
    // Where that key is missing, the slip is why: one message, under the key that is meant.
    const auto missing = std::find_if(problems_.begin(), problems_.end(), [&](const Problem& p) {
      return p.where.key == meant && p.what == key_is_missing;
    });
    if (missing == problems_.end()) {
      problems_.push_back(std::move(slip));
      continue;
    }
    slip.where.key = meant;
    if (colon == std::string::npos) {
      slip.what = fmt::format("is written {}", quoted(child.key));
      slip.would_do = fmt::format("write {}", *near);
    }
    *missing = std::move(slip);
  }
}

}  // namespace bedwright
