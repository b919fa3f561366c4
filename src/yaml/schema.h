// Writes a JSON Schema (draft 2020-12) of a parameter struct, through the
// struct's describe() (yaml/describe.h), so that an editor knows the same keys,
// limits and words as the loader.
#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "units/parse.h"
#include "units/units.h"
#include "yaml/describe.h"
#include "yaml/mark.h"
#include "yaml/need.h"

namespace bedwright {

class SchemaWriter {
 public:
  static constexpr OptionalKey optional{};
  using Json = nlohmann::ordered_json;

  // The schema of one map; complete once describe() has run.
  const Json& schema() const { return schema_; }

  SchemaWriter();
  void text(const char* key, std::string& value, const char* doc, Need need = {});
  void name(const char* key, Name& value, const char* doc, Need need = {});
  void path(const char* key, std::string& value, const char* doc, Need need = {});
  void paths(const char* key, std::vector<std::string>& values, std::size_t most, const char* doc,
             Need need = {});
  void flag(const char* key, bool& value, const char* doc, Need need = {});
  void flag(const char* key, std::optional<bool>& value, const char* doc, Need need = {});
  void number(const char* key, double& value, Range range, const char* doc, Need need = {});
  void count(const char* key, int& value, int low, int high, const char* doc, Need need = {});
  void counts(const char* key, std::vector<int>& values, int low, int high, std::size_t most, const char* doc,
              Need need = {});
  void length(const char* key, Mm& value, Range range, const char* doc, Need need = {});
  void length(const char* key, std::optional<Mm>& value, Range range, const char* doc, Need need = {});
  void lengths(const char* key, std::vector<Mm>& values, Range range, std::size_t most, const char* doc,
               Need need = {});
  void mass(const char* key, Kg& value, Range range, const char* doc, Need need = {});
  void stress(const char* key, Mpa& value, Range range, const char* doc, Need need = {});
  void angle(const char* key, Radians& value, Range range, const char* doc, Need need = {});

  template <class Enum>
  void choice(const char* key, Enum& value,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>> words,
              const char* doc, Need need = {}) {
    Json choice = {{"enum", Json::array()}};
    for (const auto& [word, meaning] : words) {
      choice["enum"].push_back(word);
      if (!need.required && meaning == value) choice["default"] = word;
    }
    add(key, choice, doc, need);
  }

  template <class S>
  void object(const char* key, S& value, const char* doc, Need need = {}) {
    add(key, inner(value), doc, need);
  }

  template <class S>
  void object(const char* key, std::optional<S>&, const char* doc, Need need = {}) {
    S value;
    add(key, inner(value), doc, need);
  }

  template <class S>
  void list(const char* key, std::vector<S>&, std::size_t most, const char* doc, Need need = {}) {
    S value;
    add_list(key, inner(value), most, doc, need);
  }

 private:
  template <class S>
  static Json inner(S& value) {
    SchemaWriter writer;
    describe(writer, value);
    return writer.schema();
  }
  void add(const char* key, const Json& property, const std::string& doc, Need need);
  void add_list(const char* key, Json items, std::size_t most, const std::string& doc, Need need);
  // `value` is stated as the default of an optional key, when it is one the key may have.
  void quantity(const char* key, Dimension dimension, Range range, std::optional<double> value,
                const char* doc, Need need);

  Json schema_;
};

// The schema of S as a file's text, two spaces a level, with a line end.
std::string schema_text(const SchemaWriter::Json& schema, const std::string& title);

template <class S>
std::string schema_of(const std::string& title) {
  S value;
  SchemaWriter writer;
  describe(writer, value);
  return schema_text(writer.schema(), title);
}

}  // namespace bedwright
