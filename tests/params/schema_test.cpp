// The schema and the loader say the same of every single key. The schema is
// read by python3-jsonschema, which knows nothing of this program.
#if defined(__GNUC__) && !defined(__clang__)
// GCC 12 sees an uninitialised member inside std::regex when the sanitizers are on.
#pragma GCC diagnostic ignored "-Wmaybe-uninitialized"
#endif

#include "params/schema.h"

#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cstdio>
#include <functional>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>
#include <set>
#include <sstream>

#include "params/samples.h"
#include "yaml/reader.h"
#include "yaml/scalar.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

struct Kind {
  const char* name;
  std::string schema;
  const std::string* sample;
  std::function<std::vector<Problem>(const std::string&)> load;
};

template <class S>
std::vector<Problem> load_as(const std::string& text) {
  std::vector<Problem> problems;
  S value;
  read_document(parse_document("f.yaml", text), value, problems);
  return problems;
}

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{{"order", order_schema(), &samples::order, load_as<Order>},
                                     {"kit", kit_schema(), &samples::kit, load_as<Kit>},
                                     {"frame", frame_schema(), &samples::frame, load_as<FrameFile>}};
  return all;
}

// What an editor makes of a document, after the YAML 1.2 core schema.
Json to_json(const Node& node) {
  switch (node.kind) {
    case NodeKind::null:
      return nullptr;
    case NodeKind::list: {
      Json list = Json::array();
      for (const Node& child : node.children) list.push_back(to_json(child));
      return list;
    }
    case NodeKind::map: {
      Json map = Json::object();
      for (const Node& child : node.children) map[child.key] = to_json(child);
      return map;
    }
    case NodeKind::scalar:
      break;
  }
  if (node.quoted) return node.scalar;
  if (is_truth_word(node.scalar)) return node.scalar[0] == 't' || node.scalar[0] == 'T';
  const auto number = number_in(node.scalar);
  return number ? Json(*number) : Json(node.scalar);
}

struct Item {
  const Kind* kind;
  Json instance;
  std::string verdict;  // of the outside reader
};

// Fills in the verdicts; false when the outside reader is not installed.
bool ask_outside_reader(std::vector<Item>& items) {
  const samples::Folder folder;
  std::string listing;
  for (const Kind& kind : kinds()) folder.write(std::string(kind.name) + ".schema.json", kind.schema);
  for (const Item& item : items) {
    listing += Json{{"schema", item.kind->name}, {"instance", item.instance}}.dump() + "\n";
  }
  folder.write("listing.jsonl", listing);
  const std::string command =
      "/usr/bin/python3 " BEDWRIGHT_SOURCE "/tests/params/validate.py " + folder.path("listing.jsonl");
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) throw std::runtime_error("cannot start " + command);
  std::string output;
  char buffer[4096];
  for (std::size_t got; (got = fread(buffer, 1, sizeof buffer, pipe)) > 0;) output.append(buffer, got);
  const int status = pclose(pipe);
  if (WIFEXITED(status) && WEXITSTATUS(status) == 3) return false;
  if (status != 0) throw std::runtime_error("the outside reader failed");
  std::istringstream lines(output);
  for (Item& item : items) {
    if (!std::getline(lines, item.verdict)) throw std::runtime_error("the outside reader stopped early");
  }
  return true;
}

// Random instances of a schema. Quantities are taken from its own examples.
class Maker {
 public:
  explicit Maker(unsigned seed) : random_(seed) {}
  std::size_t pick(std::size_t below) { return random_() % below; }

  Json make(const Json& schema, bool everything) {
    if (schema.contains("enum")) return schema["enum"][pick(schema["enum"].size())];
    if (schema.contains("examples")) return schema["examples"][pick(schema["examples"].size())];
    const Json& type = schema["type"];
    if (type == "boolean") return pick(2) == 0;
    if (type == "integer") {
      const int low = schema["minimum"], high = schema["maximum"];
      return low + static_cast<int>(pick(static_cast<std::size_t>(high - low) + 1));
    }
    if (type == "number") {
      const double low = schema["minimum"], high = schema["maximum"];
      return low + (high - low) * static_cast<double>(pick(1001)) / 1000;
    }
    if (type == "array") {
      Json list = Json::array();
      const std::size_t size =
          everything ? 1 : pick(std::min<std::size_t>(schema["maxItems"].get<std::size_t>(), 3) + 1);
      for (std::size_t i = 0; i < size; ++i) list.push_back(make(schema["items"], everything));
      return list;
    }
    if (type == "object") return make_object(schema, everything);
    static const std::vector<Json> texts{"word", "two words", "A-17", 2041, "é", "true", "#3"};
    return texts[pick(texts.size())];
  }

  // A value, object or list of the instance made wrong in one way; what was done, or nothing when it could
  // not be.
  std::string spoil(Json& value, const Json& schema) {
    const Json& type = schema.contains("type") ? schema["type"] : Json();
    if (type == "object" && pick(3) > 0 && !value.empty()) {  // go down
      auto it = value.begin();
      std::advance(it, static_cast<long>(pick(value.size())));
      return spoil(it.value(), schema["properties"][it.key()]);
    }
    if (type == "array" && pick(2) == 0 && !value.empty())
      return spoil(value[pick(value.size())], schema["items"]);
    switch (pick(4)) {
      case 0:
        return value = nullptr, "nothing";
      case 1:
        return wrong_kind(value, type);
      default:
        return wrong_in_kind(value, schema, type);
    }
  }

 private:
  Json make_object(const Json& schema, bool everything) {
    std::set<std::string> required;
    for (const auto& key : schema["required"]) required.insert(key);
    Json object = Json::object();
    for (const auto& [key, property] : schema["properties"].items()) {
      if (everything || required.contains(key) || pick(2) == 0) object[key] = make(property, everything);
    }
    return object;
  }

  std::string wrong_kind(Json& value, const Json& type) {
    value = type == "object" || type == "array" ? Json("word")
            : pick(2) == 0                      ? Json::array()
                                                : Json::object();
    return "wrong kind";
  }

  std::string wrong_in_kind(Json& value, const Json& schema, const Json& type) {
    if (type == "object") {
      if (pick(2) == 0 || schema["required"].empty()) return value["no_such_key"] = 1, "unknown key";
      const std::string key = schema["required"][pick(schema["required"].size())];
      return value.erase(key), "missing " + key;
    }
    if (type == "array") {
      if (value.empty()) return "";
      while (value.size() <= schema["maxItems"].get<std::size_t>()) value.push_back(Json(value[0]));
      return "list too long";
    }
    if (schema.contains("enum")) return value = "no such word", "no choice";
    if (type == "integer")
      return value = pick(2) == 0 ? Json(schema["maximum"].get<int>() + 1) : Json(1.5), "count";
    if (type == "number") return value = schema["maximum"].get<double>() + 1, "number";
    if (schema.contains("examples")) {
      static const std::vector<Json> bad{"5", 5, "5 parsecs", "5 in 3 ft", "nan", "1/0 in", ""};
      return value = bad[pick(bad.size())], "bad quantity";
    }
    return value = type == "boolean" ? Json("yes") : Json(true), "truth";
  }

  std::mt19937 random_;
};

TEST(Schema, SamplesAreValidToTheOutsideReader) {
  std::vector<Item> items;
  for (const Kind& kind : kinds()) {
    EXPECT_TRUE(kind.load(*kind.sample).empty());
    items.push_back({&kind, to_json(parse_document("f.yaml", *kind.sample).root), {}});
  }
  if (!ask_outside_reader(items)) GTEST_SKIP() << "python3-jsonschema is not installed";
  for (const Item& item : items) EXPECT_EQ(item.verdict, "ok") << item.kind->name;
}

TEST(Schema, RandomDocumentsAreTakenByBoth) {
  Maker maker(5);
  std::vector<Item> items;
  for (const Kind& kind : kinds()) {
    const Json schema = Json::parse(kind.schema);
    for (int i = 0; i < 100; ++i) items.push_back({&kind, maker.make(schema, i == 0), {}});
  }
  for (const Item& item : items) {
    const auto problems = item.kind->load(item.instance.dump(1));
    EXPECT_TRUE(problems.empty()) << to_line(problems[0]) << "\n" << item.instance.dump(1);
  }
  if (!ask_outside_reader(items)) GTEST_SKIP() << "python3-jsonschema is not installed";
  for (const Item& item : items) EXPECT_EQ(item.verdict, "ok") << item.instance.dump(1);
}

TEST(Schema, SpoiltDocumentsAreRefusedByBoth) {
  Maker maker(6);
  std::vector<Item> items;
  std::vector<std::string> deeds;
  for (const Kind& kind : kinds()) {
    const Json schema = Json::parse(kind.schema);
    for (int i = 0; i < 400; ++i) {
      Json instance = maker.make(schema, false);
      const std::string deed = maker.spoil(instance, schema);
      if (deed.empty() || !instance.is_object()) continue;  // the document reports a file that is no map
      items.push_back({&kind, std::move(instance), {}});
      deeds.push_back(deed);
    }
  }
  EXPECT_GT(items.size(), 700u);
  const bool asked = ask_outside_reader(items);
  for (std::size_t i = 0; i < items.size(); ++i) {
    EXPECT_FALSE(items[i].kind->load(items[i].instance.dump(1)).empty())
        << deeds[i] << items[i].instance.dump(1);
    if (asked) {
      EXPECT_NE(items[i].verdict, "ok") << deeds[i] << items[i].instance.dump(1);
    }
  }
  if (!asked) GTEST_SKIP() << "python3-jsonschema is not installed";
}

// A visitor of its own: the keys describe() names, with whether each is required.
class KeyLister {
 public:
  static constexpr OptionalKey optional{};
  KeyLister(std::string path, std::set<std::string>& keys) : path_(std::move(path)), keys_(keys) {}

#define LISTS(method)                                                    \
  template <class... Rest>                                               \
  void method(const char* key, Rest&&... rest) {                         \
    note(key, (std::is_same_v<std::decay_t<Rest>, OptionalKey> || ...)); \
    ((void)rest, ...);                                                   \
  }
  // clang-format off
  LISTS(text) LISTS(name) LISTS(path) LISTS(paths) LISTS(flag)
#undef LISTS
      // clang-format on
      template <class T, class... Rest>
      void number(const char* key, T&, Range, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void count(const char* key, int&, int, int, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void counts(const char* key, std::vector<int>&, int, int, std::size_t, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class T, class... Rest>
  void length(const char* key, T&, Range, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void lengths(const char* key, std::vector<Mm>&, Range, std::size_t, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void mass(const char* key, Kg&, Range, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void stress(const char* key, Mpa&, Range, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class... Rest>
  void angle(const char* key, Radians&, Range, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class E, class... Rest>
  void choice(const char* key, E&, std::initializer_list<std::pair<const char*, std::type_identity_t<E>>>,
              const char*, Rest...) {
    note(key, sizeof...(Rest) > 0);
  }
  template <class S, class... Rest>
  void object(const char* key, S& value, const char*, Rest...) {
    note(key, sizeof...(Rest) > 0), inner(key, value);
  }
  template <class S, class... Rest>
  void object(const char* key, std::optional<S>&, const char*, Rest...) {
    S value;
    note(key, sizeof...(Rest) > 0), inner(key, value);
  }
  template <class S, class... Rest>
  void list(const char* key, std::vector<S>&, std::size_t, const char*, Rest...) {
    S value;
    note(key, sizeof...(Rest) > 0), inner(key, value);
  }

 private:
  template <class S>
  void inner(const char* key, S& value) {
    KeyLister lister(path_ + "." + key, keys_);
    describe(lister, value);
  }
  void note(const char* key, bool optional_key) {
    keys_.insert(path_ + "." + key + (optional_key ? "?" : ""));
  }

  std::string path_;
  std::set<std::string>& keys_;
};

template <class S>
std::set<std::string> described_keys() {
  std::set<std::string> keys;
  KeyLister lister("", keys);
  S value;
  describe(lister, value);
  return keys;
}

void schema_keys(const Json& schema, const std::string& path, std::set<std::string>& keys) {
  if (schema.contains("items")) return schema_keys(schema["items"], path, keys);
  if (!schema.contains("properties")) return;
  EXPECT_EQ(schema["additionalProperties"], false) << path;
  std::set<std::string> required;
  for (const auto& key : schema["required"]) required.insert(key);
  for (const auto& [key, property] : schema["properties"].items()) {
    EXPECT_NE(property.value("description", ""), "") << path << key;
    keys.insert(path + "." + key + (required.contains(key) ? "" : "?"));
    schema_keys(property, path + "." + key, keys);
  }
}

TEST(Schema, NamesTheLoadersKeysAndNoOthers) {
  const std::set<std::string> described[] = {described_keys<Order>(), described_keys<Kit>(),
                                             described_keys<FrameFile>()};
  for (std::size_t i = 0; i < kinds().size(); ++i) {
    std::set<std::string> keys;
    schema_keys(Json::parse(kinds()[i].schema), "", keys);
    EXPECT_EQ(keys, described[i]) << kinds()[i].name;
    EXPECT_GT(keys.size(), 30u);
  }
}

TEST(Schema, DefaultsAndExamplesAreValid) {
  const std::function<void(const Json&, const std::string&)> walk = [&](const Json& schema,
                                                                        const std::string& at) {
    if (schema.contains("examples")) {
      const std::regex pattern(schema["pattern"].get<std::string>());
      for (const std::string text : schema["examples"])
        EXPECT_TRUE(std::regex_search(text, pattern)) << at << text;
      if (schema.contains("default")) {
        EXPECT_TRUE(std::regex_search(schema["default"].get<std::string>(), pattern)) << at;
      }
    }
    if (schema.contains("items")) walk(schema["items"], at);
    if (!schema.contains("properties")) return;
    for (const auto& [key, property] : schema["properties"].items()) walk(property, at + "." + key);
  };
  for (const Kind& kind : kinds()) walk(Json::parse(kind.schema), kind.name);
}

}  // namespace
}  // namespace bedwright
