#include "yaml/flow_value.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "yaml/parse_value.h"

namespace bedwright {
namespace {

const Place start{3, 7, 3};

Node read(const std::string& text) {
  auto node = flow_value(text, start);
  EXPECT_TRUE(node) << text;
  return node ? *node : Node{};
}

// What the YAML parser makes of it; none where it has anything to say against it.
std::optional<Node> as_yaml(const std::string& text) {
  Document document;
  Node node = parse_other_value(document, text, start, "key");
  return document.problems.empty() ? std::optional(std::move(node)) : std::nullopt;
}

TEST(FlowValue, ReadsWordsAndFigures) {
  for (const char* text : {"84 in", "-5 mm", "6' 8\"", "1-1/4 in", "../kits/tansy.yaml", "M12", ".5 in", "+3",
                           "A & B", "a:b", "25\xC2\xB0", "18 in, 222 in"}) {
    const Node node = read(text);
    EXPECT_EQ(node.kind, NodeKind::scalar);
    EXPECT_EQ(node.scalar, text);
    EXPECT_FALSE(node.quoted);
    EXPECT_EQ(node.place, start);
  }
  EXPECT_EQ(read("  84 in  ").scalar, "84 in");
  EXPECT_EQ(read("  84 in  ").place, (Place{3, 9, 3}));
  EXPECT_EQ(read("").kind, NodeKind::null);
  EXPECT_EQ(read("  ").place, start);
  for (const char* text : {"~", "null", "Null", "NULL"}) EXPECT_EQ(read(text).kind, NodeKind::null);
}

TEST(FlowValue, ReadsQuotes) {
  EXPECT_EQ(read("\"true\"").scalar, "true");
  EXPECT_TRUE(read("\"true\"").quoted);
  EXPECT_EQ(read("'it''s'").scalar, "it's");
  EXPECT_EQ(read("\" a: [b] # c \"").scalar, " a: [b] # c ");
  EXPECT_EQ(read("''").kind, NodeKind::scalar);
  EXPECT_EQ(read("''").scalar, "");
}

TEST(FlowValue, ReadsListsAndMapsWithTheirPlaces) {
  const Node list = read("[18 in, [], {bunk: 4, 'at': ~}]");
  ASSERT_EQ(list.kind, NodeKind::list);
  ASSERT_EQ(list.children.size(), 3u);
  EXPECT_EQ(list.children[0].scalar, "18 in");
  EXPECT_EQ(list.children[0].place, (Place{3, 8, 3}));
  EXPECT_EQ(list.children[1].kind, NodeKind::list);
  const Node& map = list.children[2];
  ASSERT_EQ(map.kind, NodeKind::map);
  EXPECT_EQ(map.place, (Place{3, 19, 3}));
  EXPECT_EQ(map.find("bunk")->scalar, "4");
  EXPECT_EQ(map.find("bunk")->key_place, (Place{3, 20, 3}));
  EXPECT_EQ(map.find("at")->kind, NodeKind::null);
  EXPECT_EQ(read("[et\xC3\xA9s, b]").children.at(1).place, (Place{3, 14, 3}));  // in characters
}

TEST(FlowValue, LeavesTheRest) {
  for (const char* text : {"a: 1",         "- a",      "# c",    "a # c", "&a b", "*a",   "!!str a",  "|",
                           "> a",          "\"a\\n\"", "a\nb",   "\t",    "[a",   "[a,]", "[a b: c]", "{a:1}",
                           "{a: 1, a: 2}", "{: 1}",    "{~: 1}", "{a: }", "'a",   "a]",   "---",      "...",
                           "...a",         "? a",      "%a",     "@a",    "`a`",  "<<",   "[a]b"})
    EXPECT_FALSE(flow_value(text, start)) << text;
}

TEST(FlowValue, BoundsWhatItTakes) {
  EXPECT_TRUE(flow_value(std::string(10, '[') + std::string(10, ']'), start));
  EXPECT_FALSE(flow_value(std::string(60, '[') + std::string(60, ']'), start));
  EXPECT_FALSE(flow_value(std::string(100'000, '['), start));
  EXPECT_FALSE(flow_value(std::string(100'000, 'a'), start));
}

// Texts as people write them, with now and then a character that belongs nowhere.
rc::Gen<std::string> written(int depth) {
  const auto word = rc::gen::element<std::string>(
      "84 in", "1-1/4 in", "-5 mm", "6' 8\"", "a", "true", "null", "Null", "nULL", "~", "\"x y\"", "'it''s'",
      "''", "a:b", "a : b", "a b", " a", "a ", "", "#", " #", "-", "- ", "?", ":", "\xC3\xA9", "\xC2\xB0",
      "\xE2\x80\xA8", "*a", "&a", "a&b", "1e5", "../a.yaml", ".", "...", "%", "=", "<<", "!", "|", "(a)",
      "+1", "-.5", "a;b", "\"a: b\"", "\\", "\"\\t\"", "a\\", "x:", "x:/", ",", "\xEF\xBB\xBF", "\xC2\x85",
      "\xC2\xA0");
  if (depth == 0) return word;
  const auto inner = rc::gen::resize(3, rc::gen::container<std::vector<std::string>>(written(depth - 1)));
  const auto joined = [](const std::vector<std::string>& parts, const std::string& between) {
    std::string out;
    for (const std::string& part : parts) out += (out.empty() ? "" : between) + part;
    return out;
  };
  const auto comma = rc::gen::element<std::string>(", ", ", ", ", ", ",", " , ", ",  ", " ");
  const auto colon = rc::gen::element<std::string>(": ", ": ", ": ", ":", " : ", ":  ");
  const auto list =
      rc::gen::apply([=](auto parts, auto c) { return "[" + joined(parts, c) + "]"; }, inner, comma);
  const auto map = rc::gen::apply(
      [=](auto keys, auto values, auto c, auto k) {
        std::vector<std::string> entries;
        for (std::size_t i = 0; i < std::min(keys.size(), values.size()); ++i)
          entries.push_back(keys[i] + k + values[i]);
        return "{" + joined(entries, c) + "}";
      },
      rc::gen::resize(3, rc::gen::container<std::vector<std::string>>(word)), inner, comma, colon);
  return rc::gen::weightedOneOf<std::string>({{2, word}, {2, list}, {2, map}});
}

bool agrees(const std::string& text) {
  const auto read = flow_value(text, start);
  return !read || as_yaml(text) == read;
}

RC_GTEST_PROP(FlowValue, IsWhatTheYamlParserHas, ()) {
  const auto texts = *rc::gen::container<std::vector<std::string>>(100, written(3));
  const std::string odd =
      *rc::gen::element<std::string>(" ", "\"", "'", ",", ":", "[", "}", "#", "-", "\t", "\\", ": ");
  const auto at = *rc::gen::arbitrary<unsigned>();
  for (std::string text : texts) {
    if (!agrees(text)) RC_FAIL(text);
    text.insert(at % (text.size() + 1), odd);
    if (!agrees(text)) RC_FAIL(text);
  }
}

// Every text of three characters of those that mean something somewhere, alone and between brackets.
TEST(FlowValue, IsWhatTheYamlParserHasOfEveryShortText) {
  const std::string alphabet = "aN1 ,:[]{}'\"#-.~?&*!|>%@`\\<=+/_(\t\n\xE9";
  int taken = 0;
  for (const char a : alphabet)
    for (const char b : alphabet)
      for (const char c : alphabet)
        for (const char* form : {"%", "[%]", "{k: %}", "{%: v}", "[x, %]", "a%"}) {
          std::string text = form;
          std::string middle{a, b, c};
          for (std::size_t at; (at = middle.find('\xE9')) != std::string::npos;)
            middle.replace(at, 1, "\xC3\xA8");
          text.replace(text.find('%'), 1, middle);
          taken += flow_value(text, start).has_value();
          ASSERT_TRUE(agrees(text)) << text;
        }
  EXPECT_GT(taken, 10'000);  // or the comparison says little
}

}  // namespace
}  // namespace bedwright
