#include "yaml/tree_json.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "support/damage.h"
#include "yaml/override.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

Document there_and_back(const Document& document) {
  return document_from_json(Json::parse(tree_json(document).dump()));
}

struct File {
  std::string path, text;
};

// Every parameter file the program comes with.
const std::vector<File>& shipped() {
  static const std::vector<File> files = [] {
    std::vector<File> found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(BEDWRIGHT_SOURCE "/params")) {
      if (entry.path().extension() != ".yaml") continue;
      std::ifstream stream(entry.path(), std::ios::binary);
      found.push_back({entry.path().string(), {std::istreambuf_iterator<char>(stream), {}}});
    }
    if (found.size() < 10) throw std::logic_error("the parameter files are not where they were");
    std::sort(found.begin(), found.end(), [](const File& a, const File& b) { return a.path < b.path; });
    return found;
  }();
  return files;
}

TEST(TreeJson, HasThisForm) {
  const Document document = parse_document("f.yaml", "a: {b: '1', c: }\nl: [x, x]\na: 2\n");
  EXPECT_EQ(
      tree_json(document).dump(),
      R"({"file":"f.yaml","root":{"at":[1,1],"map":[)"
      R"({"key":"a","key_at":[1,1],"at":[1,4],"map":[)"
      R"({"key":"b","key_at":[1,5],"at":[1,8],"quoted":"1"},{"key":"c","key_at":[1,13],"at":[1,16]}]},)"
      R"({"key":"l","key_at":[2,1],"at":[2,4],"list":[{"at":[2,5],"text":"x"},{"at":[2,8],"text":"x"}]}]},)"
      R"("problems":[{"where":{"file":"f.yaml","at":[3,1],"key":"a"},"what":"is given a second time",)"
      R"("would_do":"keep one of the two; the first is on line 1"}]})");
}

TEST(TreeJson, EveryShippedFileComesBackTheSame) {
  for (const File& file : shipped()) {
    const Document document = parse_document(file.path, file.text);
    EXPECT_TRUE(document.problems.empty()) << file.path;
    EXPECT_GT(document.root.children.size(), 1u) << file.path;
    EXPECT_EQ(there_and_back(document), document) << file.path;
  }
}

TEST(TreeJson, WhatCannotBeReadComesBackTheSame) {
  for (const char* text :
       {"", "- a\n", "a: [", "a: 1\n---\nb: 2\n", "a: \xff", "a: !t 1\n", "a: \"\\0\\x07\"\n"}) {
    const Document document = parse_document("f.yaml", text);
    EXPECT_EQ(there_and_back(document), document) << text;
  }
}

RC_GTEST_PROP(TreeJson, DamagedFilesComeBackTheSame, (unsigned seed)) {
  testing::Damage damage(seed);
  const File& file = shipped()[damage.pick(shipped().size())];
  Document document = parse_document(file.path, damage(file.text));
  RC_ASSERT(there_and_back(document) == document);
  // And with overrides laid on, some of them damaged.
  document.key_prefix = "kit.";
  const std::string set = damage("rail.thickness=1/4 in");
  RC_PRE(first_bad_byte(set) == std::string::npos);  // the message quotes it, and JSON is UTF-8
  apply_set(document, set, 2, 4);
  apply_set(document, "box[1]={bolt: 1/2 in, lengths: [1 in, 2 in]}", 3, 4);
  apply_written(document, "gauge", "35 in", {"order.yaml", 20, 7, "overrides[1].value"});
  RC_CLASSIFY(!document.problems.empty(), "with problems");
  RC_ASSERT(there_and_back(document) == document);
}

// One change for the worse, and what is said of it.
struct Fault {
  std::function<void(Json&)> change;
  std::string said;
};

TEST(TreeJson, RefusesWhatItDoesNotWrite) {
  const Json good = tree_json(parse_document("f.yaml", "a: {b: 1}\nl: [x]\na: 2\n"));
  ASSERT_NO_THROW(document_from_json(good));
  const std::vector<Fault> faults{
      {[](Json& t) { t = Json::array(); }, "the whole: is no object"},
      {[](Json& t) { t.erase("file"); }, "the whole: has no file"},
      {[](Json& t) { t["file"] = 1; }, "the whole: file is no text"},
      {[](Json& t) { t.erase("root"); }, "the whole: has no root"},
      {[](Json& t) { t["more"] = 1; }, "the whole: has a key that is not known"},
      {[](Json& t) { t["problems"] = 1; }, "the whole: problems is no list"},
      {[](Json& t) { t["problems"][0].erase("would_do"); }, "problems/1: has no would_do"},
      {[](Json& t) {
         t["problems"][0]["where"]["at"] = {1, 2, 3};
       },
       "problems/1/where: at is no place"},
      {[](Json& t) { t["root"] = nullptr; }, "root: is no object"},
      {[](Json& t) { t["root"].erase("at"); }, "root: has no at"},
      {[](Json& t) { t["root"]["at"] = {1}; }, "root: at is no place"},
      {[](Json& t) {
         t["root"]["at"] = {1, 2.5};
       },
       "root: at is no place"},
      {[](Json& t) {
         t["root"]["at"] = {1, 18446744073709551615ull};
       },
       "root: at is no place"},
      {[](Json& t) { t["root"]["text"] = "x"; },
       "root: has a key that is not known, or two where one belongs"},
      {[](Json& t) { t["root"]["map"] = "x"; }, "root: what it holds is no list"},
      {[](Json& t) { t["root"]["map"][0].erase("key"); }, "root: has an entry with a key too many or few"},
      {[](Json& t) { t["root"]["map"][0]["key"] = "l"; }, "root: has the key l twice"},
      {[](Json& t) { t["root"]["map"][0]["map"][0]["text"] = 1; }, "root/1/1: its text is no text"},
      {[](Json& t) { t["root"]["map"][1]["list"][0]["key"] = "k"; },
       "root/2: has an entry with a key too many"},
      {[](Json& t) {
         Json deep = {{"at", {1, 1}}};
         for (int i = 0; i < 200; ++i) deep = {{"at", {1, 1}}, {"list", Json::array({deep})}};
         t["root"] = deep;
       },
       "is nested too deep"}};
  for (const Fault& fault : faults) {
    Json bad = good;
    fault.change(bad);
    try {
      document_from_json(bad);
      ADD_FAILURE() << "taken, though " << fault.said;
    } catch (const std::invalid_argument& error) {
      EXPECT_NE(std::string(error.what()).find(fault.said), std::string::npos) << error.what();
    }
  }
}

}  // namespace
}  // namespace bedwright
