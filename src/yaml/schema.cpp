// Writes the schema's property for each kind of key.
#include "yaml/schema.h"

#include <fmt/format.h>

#include "units/print.h"
#include "yaml/quantity_help.h"

namespace bedwright {
namespace {

using Json = SchemaWriter::Json;

// A line of text, as the reader takes it: a plain number is one too.
Json text_property() {
  return {{"type", Json::array({"string", "number"})},
          {"pattern", "^[^\\x00-\\x1f\\x7f-\\x9f]*[^\\x00-\\x20\\x7f-\\x9f][^\\x00-\\x1f\\x7f-\\x9f]*$"}};
}

Json count_property(int low, int high) { return {{"type", "integer"}, {"minimum", low}, {"maximum", high}}; }

Json quantity_property(Dimension dimension, Range own) {
  return {{"type", "string"},
          {"pattern", quantity_pattern(dimension)},
          {"examples", example_quantities(dimension, own)}};
}

}  // namespace

SchemaWriter::SchemaWriter()
    : schema_{{"type", "object"},
              {"additionalProperties", false},
              {"properties", Json::object()},
              {"required", Json::array()}} {}

void SchemaWriter::add(const char* key, const Json& property, const std::string& doc, Need need) {
  Json described = {{"description", doc}};
  described.update(property);
  schema_["properties"][key] = std::move(described);
  if (need.required) schema_["required"].push_back(key);
}

void SchemaWriter::add_list(const char* key, Json items, std::size_t most, const std::string& doc,
                            Need need) {
  add(key, {{"type", "array"}, {"maxItems", most}, {"items", std::move(items)}}, doc, need);
}

void SchemaWriter::quantity(const char* key, Dimension dimension, Range range, std::optional<double> value,
                            const char* doc, Need need) {
  const Range own = own_range(dimension, range);
  Json property = quantity_property(dimension, own);
  if (value && !need.required && within(*value, own)) property["default"] = as_written(dimension, *value);
  add(key, property, fmt::format("{}; {}", doc, limits_text(dimension, own)), need);
}

void SchemaWriter::text(const char* key, std::string& value, const char* doc, Need need) {
  Json property = text_property();
  if (!need.required && !value.empty()) property["default"] = value;
  add(key, property, doc, need);
}

void SchemaWriter::name(const char* key, Name& value, const char* doc, Need need) {
  text(key, value.text, doc, need);
}

void SchemaWriter::path(const char* key, std::string& value, const char* doc, Need need) {
  text(key, value, doc, need);
}

void SchemaWriter::paths(const char* key, std::vector<std::string>&, std::size_t most, const char* doc,
                         Need need) {
  add_list(key, text_property(), most, doc, need);
}

void SchemaWriter::flag(const char* key, bool& value, const char* doc, Need need) {
  Json property = {{"type", "boolean"}};
  if (!need.required) property["default"] = value;
  add(key, property, doc, need);
}

void SchemaWriter::flag(const char* key, std::optional<bool>&, const char* doc, Need need) {
  add(key, {{"type", "boolean"}}, doc, need);
}

void SchemaWriter::number(const char* key, double& value, Range range, const char* doc, Need need) {
  Json property = {{"type", "number"}, {"minimum", range.low}, {"maximum", range.high}};
  if (!need.required && within(value, range)) property["default"] = value;
  add(key, property, doc, need);
}

void SchemaWriter::count(const char* key, int& value, int low, int high, const char* doc, Need need) {
  Json property = count_property(low, high);
  if (!need.required && value >= low && value <= high) property["default"] = value;
  add(key, property, doc, need);
}

void SchemaWriter::counts(const char* key, std::vector<int>&, int low, int high, std::size_t most,
                          const char* doc, Need need) {
  add_list(key, count_property(low, high), most, doc, need);
}

void SchemaWriter::length(const char* key, Mm& value, Range range, const char* doc, Need need) {
  quantity(key, Dimension::length, range, value, doc, need);
}

void SchemaWriter::length(const char* key, std::optional<Mm>& value, Range range, const char* doc,
                          Need need) {
  quantity(key, Dimension::length, range, value, doc, need);
}

void SchemaWriter::lengths(const char* key, std::vector<Mm>&, Range range, std::size_t most, const char* doc,
                           Need need) {
  const Range own = own_range(Dimension::length, range);
  add_list(key, quantity_property(Dimension::length, own), most,
           fmt::format("{}; each {}", doc, limits_text(Dimension::length, own)), need);
}

void SchemaWriter::mass(const char* key, Kg& value, Range range, const char* doc, Need need) {
  quantity(key, Dimension::mass, range, value, doc, need);
}

void SchemaWriter::stress(const char* key, Mpa& value, Range range, const char* doc, Need need) {
  quantity(key, Dimension::stress, range, value, doc, need);
}

void SchemaWriter::angle(const char* key, Radians& value, Range range, const char* doc, Need need) {
  quantity(key, Dimension::angle, range, value, doc, need);
}

std::string schema_text(const Json& schema, const std::string& title) {
  Json whole = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
  whole.update(schema);
  return whole.dump(2) + "\n";
}

}  // namespace bedwright
