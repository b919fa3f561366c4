#include "yaml/document.h"

#include <gtest/gtest.h>

#include <ctime>
#include <random>

namespace bedwright {
namespace {

std::string only_problem(const std::string& text) {
  const Document document = parse_document("f.yaml", text);
  EXPECT_EQ(document.problems.size(), 1u) << text.substr(0, 200);
  return document.problems.empty() ? "" : to_line(document.problems[0]);
}
bool starts(const std::string& line, const std::string& with) { return line.starts_with(with); }
#define EXPECT_STARTS(line, with) EXPECT_PRED2(starts, line, with)

TEST(Document, KeepsKeysKindsAndPlaces) {
  const Document document = parse_document("f.yaml", "# head\na: 1\nb:\n  - 'x'\n  - {c: ~, \"é\": y}\n");
  ASSERT_TRUE(document.problems.empty());
  const Node& root = document.root;
  ASSERT_EQ(root.children.size(), 2u);
  EXPECT_EQ(root.find("a")->scalar, "1");
  EXPECT_EQ(root.find("a")->place.line, 2);
  EXPECT_EQ(root.find("a")->place.column, 4);
  EXPECT_EQ(root.find("a")->key_place.column, 1);
  const Node& list = *root.find("b");
  ASSERT_EQ(list.kind, NodeKind::list);
  EXPECT_TRUE(list.children[0].quoted);
  EXPECT_FALSE(root.find("a")->quoted);
  EXPECT_EQ(list.children[1].find("c")->kind, NodeKind::null);
  EXPECT_EQ(list.children[1].find("é")->place.column, 17);  // counted in characters, not bytes
  EXPECT_EQ(root.find("none"), nullptr);
}

TEST(Document, ReadsByteOrderMarkAndCarriageReturns) {
  const Document document = parse_document("f.yaml",
                                           "\xEF\xBB\xBF"
                                           "a: 1\r\nb: 2\r\n");
  ASSERT_TRUE(document.problems.empty());
  EXPECT_EQ(document.root.find("a")->scalar, "1");
  EXPECT_EQ(document.root.find("b")->scalar, "2");
  EXPECT_EQ(document.root.find("b")->place.line, 2);
}

TEST(Document, SaysWhereTheSyntaxBreaks) {
  // In the parser's words only where no slip of the hand is seen; those are in params/mistakes_test.cpp.
  EXPECT_STARTS(only_problem("a: [1, *x]\n"), "f.yaml:1:8: cannot be read as YAML");
  EXPECT_STARTS(only_problem("a: \"\\q\"\n"), "f.yaml:1:7: cannot be read as YAML");
}

TEST(Document, FindsRepeatedKeys) {
  EXPECT_EQ(only_problem("a:\n  b: 1\n  c: 2\n  b: 3\n"),
            "f.yaml:4:3: a.b: is given a second time; keep one of the two; the first is on line 2");
  EXPECT_STARTS(only_problem("l: [{b: 1}, {b: 1, \"b\": 2}]\n"),
                "f.yaml:1:20: l[2].b: is given a second time");
}

TEST(Document, RefusesTagsKeysThatAreNoWordsAndManyDocuments) {
  EXPECT_STARTS(only_problem("a: !!str 1\n"), "f.yaml:1:4: a: has the tag \"tag:yaml.org,2002:str\"");
  EXPECT_STARTS(only_problem("[x]: 1\n"), "f.yaml:1:1: has a list for a key");
  EXPECT_STARTS(only_problem("a:\n  ~: 1\n"), "f.yaml:2:3: a: has nothing for a key");
  EXPECT_STARTS(only_problem("a: 1\n---\nb: 1\n"), "f.yaml:1:1: holds more than one document");
  EXPECT_STARTS(only_problem(""), "f.yaml:1:1: is empty");
  EXPECT_STARTS(only_problem("# only words\n"), "f.yaml:1:1: is empty");
  EXPECT_STARTS(only_problem("- a\n- b\n"), "f.yaml:1:1: holds a list where keys are wanted");
  EXPECT_STARTS(only_problem("word\n"), "f.yaml:1:1: holds \"word\" where keys are wanted");
}

TEST(Document, RefusesBytesThatAreNoText) {
  EXPECT_STARTS(only_problem("a: x\nb: \xff\n"), "f.yaml:2:4: byte 0xFF is not UTF-8 text");
  EXPECT_STARTS(only_problem(std::string("a: \0b\n", 6)), "f.yaml:1:4: byte 0x00 is not UTF-8 text");
  EXPECT_STARTS(only_problem("a: \xc0\xaf\n"), "f.yaml:1:4: byte 0xC0");      // overlong
  EXPECT_STARTS(only_problem("a: \xed\xa0\x80\n"), "f.yaml:1:4: byte 0xED");  // surrogate
  EXPECT_STARTS(only_problem(std::string(largest_file + 1, '#')), "f.yaml:1:1: is larger than");
}

TEST(Document, CopiesAliases) {
  const Document document = parse_document("f.yaml", "a: &x {b: 1}\nc: *x\nd: [*x, *x]\n");
  ASSERT_TRUE(document.problems.empty());
  EXPECT_EQ(document.root.find("c")->find("b")->scalar, "1");
  EXPECT_EQ(document.root.find("d")->children.size(), 2u);
  EXPECT_EQ(document.root.find("c")->key, "c");
}

TEST(Document, RefusesAnAliasInsideItsOwnAnchor) {
  EXPECT_STARTS(only_problem("a: &x\n  b: *x\n"),
                "f.yaml:2:6: a.b: is an alias to something it is itself part of");
  EXPECT_STARTS(only_problem("a: &x [1, [*x]]\n"), "f.yaml:1:12: a[2][1]: is an alias");
}

TEST(Document, RefusesAliasesThatMultiply) {
  std::string text = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
  for (int i = 1; i < 30; ++i) {
    text.append("a").append(std::to_string(i)).append(": &a").append(std::to_string(i)).append(" [");
    for (int j = 0; j < 10; ++j) text.append("*a").append(std::to_string(i - 1)).append(",");
    text += "]\n";
  }
  EXPECT_NE(only_problem(text).find("holds more than 100000 values"), std::string::npos);
}

// Each of these is as long as a file may be and made to be slow or deep.
TEST(Document, HostileFilesCostAMessageNotTheMachine) {
  const auto repeated = [](const std::string& piece) {
    std::string text;
    while (text.size() + piece.size() <= largest_file) text += piece;
    return text;
  };
  for (const char* piece :
       {"[",    "{",  "- ",  "? ",   "[[a,", "{a: ",  "&a ",  "*a ", "a: ",   "'",      "\"",
        "|\n",  "!",  "!a ", "%Y\n", "--- ", "---\n", "# \n", "\n",  "a\n",   "a: 1\n", "- a\n",
        "&a [", "a,", "[],", ":",    ": ",   "}",     "]",    "\t",  "\"\\u", ">\n ",   "? a\n: "}) {
    const std::clock_t start = std::clock();  // of this program alone, however busy the machine
    const Document document = parse_document("f.yaml", repeated(piece));
    const double spent = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    EXPECT_FALSE(document.problems.empty()) << piece;
    EXPECT_LT(spent, 20) << piece;
  }
}

TEST(Document, DeepNestingIsAProblemWithItsPlace) {
  const auto nested = [](int depth) { return "a: " + std::string(depth, '[') + std::string(depth, ']'); };
  EXPECT_TRUE(parse_document("f.yaml", nested(63)).problems.empty());  // the map round it is the 64th
  EXPECT_STARTS(only_problem(nested(64)), "f.yaml:1:67: is nested more than 64 deep");
  EXPECT_STARTS(only_problem(nested(100000)), "f.yaml:1:67: is nested more than 64 deep");
  EXPECT_NE(only_problem("a: " + std::string(100000, '[')).find("is nested more than 64 deep"),
            std::string::npos);
  EXPECT_NE(only_problem("a: " + std::string(100000, '{')).find("is nested more than 64 deep"),
            std::string::npos);
}

TEST(Document, AnyBytesEitherParseOrHaveAProblem) {
  std::mt19937_64 random(11);
  const std::string alphabet = "ab:-[]{},&*!|>'\"%@`#?\n\n  \t01~\\";
  for (int i = 0; i < 20000; ++i) {
    std::string text(1 + random() % 40, ' ');
    for (char& c : text) c = alphabet[random() % alphabet.size()];
    const Document document = parse_document("f.yaml", text);
    ASSERT_TRUE(document.root.kind == NodeKind::map || !document.problems.empty()) << text;
    for (const Problem& problem : document.problems) ASSERT_GT(problem.where.line, 0) << text;
  }
}

TEST(MarkOf, FindsKeysAndEntries) {
  const Document document = parse_document("f.yaml", "track:\n  clamps:\n    - {bunk: 4}\n    - bunk: 5\n");
  EXPECT_EQ(mark_of(document, "track.clamps[2].bunk").line, 4);
  EXPECT_EQ(mark_of(document, "track.clamps[2].bunk").column, 7);
  EXPECT_EQ(mark_of(document, "track.clamps[1]").line, 3);
  EXPECT_EQ(mark_of(document, "track.none").line, 1);
  EXPECT_EQ(mark_of(document, "track.none").key, "track.none");
}

TEST(ToLine, LeavesOutWhatIsAbsentAndStaysOnOneLine) {
  EXPECT_EQ(to_line({{"f", 3, 4, "a.b"}, "is bad", "do this"}), "f:3:4: a.b: is bad; do this");
  EXPECT_EQ(to_line({{"f", 0, 0, ""}, "is bad", ""}), "f: is bad");
  EXPECT_EQ(to_line({{"", 0, 0, ""}, "is\nbad", ""}), "is\\nbad");
}

}  // namespace
}  // namespace bedwright
