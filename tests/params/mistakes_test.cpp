// The mistakes that somebody new to YAML makes in an order, one at a time: what stands in the
// file, what is written instead, and the one message. What is refused is refused in words that
// name the place and what to write. Collected from writing orders by hand (common practice, no
// published source); that quotes, tabs and blanks mean what is said here is YAML 1.2.2,
// sections 5.5, 6.1, 7.3 and 8.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "params/samples.h"

namespace bedwright {
namespace {

using samples::changed;
using samples::Folder;
using testing::ElementsAre;
using testing::IsEmpty;

struct Mistake {
  std::string from, to, message;  // no message: it reads as it stands
  friend void PrintTo(const Mistake& m, std::ostream* out) { *out << testing::PrintToString(m.to); }
};

const std::string rail = "  rail_length: 84 in";
const std::string told_length = "order.yaml:10:16: track.rail_length: ";
const std::string usual = "80 in, 6 ft 8 in or 2032 mm";

const Mistake mistakes[] = {
    // Blanks before a word.
    {rail, "\trail_length: 84 in",
     "order.yaml:10:1: a tab stands before the first word of this line; use spaces; tabs cannot be read "
     "here"},
    {rail, "  \trail_length: 84 in",
     "order.yaml:10:3: a tab stands before the first word of this line; use spaces; tabs cannot be read "
     "here"},
    {"    - bunk: 2", "\t- bunk: 2",
     "order.yaml:14:1: a tab stands before the first word of this line; use spaces; tabs cannot be read "
     "here"},
    {rail, "\u00a0 rail_length: 84 in",
     "order.yaml:10:1: a no-break space stands before the first word of this line; take it out and type "
     "ordinary spaces"},
    {rail, "   rail_length: 84 in",
     "order.yaml:11:3: this line begins behind 2 spaces, line 10 behind 3; let lines that belong together "
     "begin one under the other"},
    {rail, " rail_length: 84 in",
     "order.yaml:11:3: this line begins behind 2 spaces, line 10 behind 1; let lines that belong together "
     "begin one under the other"},
    {rail, "rail_length: 84 in",
     "order.yaml:11:3: this line begins behind 2 spaces, line 10 behind 0; let lines that belong together "
     "begin one under the other"},
    {"  bunk_pitch: 21 in", "    bunk_pitch: 21 in",
     "order.yaml:11:5: this line begins behind 4 spaces, line 10 behind 2; let lines that belong together "
     "begin one under the other"},
    {"  bunk_pitch: 21 in", " bunk_pitch: 21 in",
     "order.yaml:11:2: this line begins behind 1 space, line 10 behind 2; let lines that belong together "
     "begin one under the other"},
    {rail, "  rail_length:\t84 in", ""},
    {rail, "  rail_length:   84 in", ""},
    {rail, "  rail_length:\n    84 in", ""},
    // Colons, dashes, other marks.
    {rail, "  rail_length:84 in", "order.yaml:10:3: no space behind the colon; write rail_length: 84 in"},
    {"kit: kit.yaml", "kit:kit.yaml", "order.yaml:6:1: no space behind the colon; write kit: kit.yaml"},
    {"{position: 130 in}", "{position:130 in}",
     "order.yaml:17:8: axle.position: has no space behind its colon; write position: 130 in"},
    {rail, "  rail_length 84 in",
     "order.yaml:10:3: no colon behind the first word; write rail_length: 84 in"},
    {rail, "  rail_length = 84 in",
     "order.yaml:10:3: no colon behind the first word; write rail_length: 84 in"},
    {rail, "  rail_length; 84 in",
     "order.yaml:10:3: no colon behind the first word; write rail_length: 84 in"},
    {"    - bunk: 2", "    -bunk: 2", "order.yaml:14:5: no space behind the dash; write - bunk: 2"},
    // Brackets and quotes.
    {"[18 in, 222 in]", "[18 in, 222 in",
     "order.yaml:18:8: the [ that opens here is not closed; write ] where the list ends"},
    {"{position: 130 in}", "{position: 130 in",
     "order.yaml:17:7: the { that opens here is not closed; write } where the list ends"},
    {"[18 in, 222 in]", "[18 in, 222 in}",
     "order.yaml:18:22: } closes what [ opened on line 18; close it with ]"},
    {"[18 in, 222 in]", "18 in, 222 in",
     "order.yaml:18:8: jacks: is \"18 in, 222 in\" where a list is wanted; write it as a list, such as "
     "[first, "
     "second]"},
    {"[18 in, 222 in]", "[18 in 222 in]",
     "order.yaml:18:9: jacks[1]: \"18 in 222 in\" gives in twice; write it as " + usual},
    {"[18 in, 222 in]", "[18 in,, 222 in]",
     "order.yaml:18:15: jacks[2]: is nothing; write a length such as 80 in or 2000 mm"},
    {"number: A-17", "number: \"A-17",
     "order.yaml:3:11: order.number: the quote that opens here is not closed on its line; write \" behind "
     "the "
     "value"},
    {"customer: Hollow Creek", "customer: 'Hollow Creek",
     "order.yaml:4:13: order.customer: the quote that opens here is not closed on its line; write ' behind "
     "the "
     "value"},
    {"Hollow Creek", "'O''Neil'", ""},
    {"Hollow Creek", "O'Neil", ""},
    {"Hollow Creek", "\"The \\\"Mill\\\"\"", ""},
    // Values that want quotes.
    {"Hollow Creek", "Farm: north",
     "order.yaml:4:13: the value has a colon in it; put the value in quotes: \"Farm: north\""},
    {"Hollow Creek", "@home",
     "order.yaml:4:13: the value begins with @, which has a meaning of its own here; put the value in "
     "quotes: "
     "\"@home\""},
    {"Hollow Creek", "*new*",
     "order.yaml:4:13: the value begins with *, which has a meaning of its own here; put the value in "
     "quotes: "
     "\"*new*\""},
    {"Hollow Creek", "%home",
     "order.yaml:4:13: the value begins with %, which has a meaning of its own here; put the value in "
     "quotes: "
     "\"%home\""},
    {"Hollow Creek", "\"@home\"", ""},
    {"Hollow Creek", "\"Farm #3\"", ""},
    {"Hollow Creek", "true",
     "order.yaml:4:13: order.customer: is true, which reads as true or false; put it in quotes"},
    // Keys.
    {"rail_length:", "rail_lenght:",
     "order.yaml:10:3: track.rail_length: is written \"rail_lenght\"; write rail_length"},
    {"rail_length:", "Rail_Length:",
     "order.yaml:10:3: track.rail_length: is written \"Rail_Length\"; write rail_length"},
    {"rail_length:", "rail-length:",
     "order.yaml:10:3: track.rail_length: is written \"rail-length\"; write rail_length"},
    {"rail_length:", "rail length:",
     "order.yaml:10:3: track.rail_length: is written \"rail length\"; write rail_length"},
    {"  log_stops:", "  log_stop:",
     "order.yaml:16:3: track.log_stop: is no known key; did you mean log_stops?"},
    {rail, rail + "\n" + rail,
     "order.yaml:11:3: track.rail_length: is given a second time; keep one of the two; the first is on line "
     "10"},
    // Lengths as drawings, word processors and other tongues have them.
    {"84 in", "84\"", ""},
    {"84 in", "7'", ""},
    {"84 in", "84in", ""},
    {"84 in", "84", told_length + "\"84\" has no unit; add a unit: write it as " + usual},
    {"84 in", "84\u201d",
     told_length +
         "\"84\u201d\" has the unit \"\u201d\", which is none of ft, in, mm, cm or m; write 84\", if that "
         "is what is meant"},
    {"84 in", "6\u2032 5\u2033",
     told_length +
         "\"6\u2032 5\u2033\" has the unit \"\u2032\", which is none of ft, in, mm, cm or m; write 6' 5\", "
         "if that is what is meant"},
    {"84 in", "83\u00bd in",
     told_length +
         "\"83\u00bd in\" has \"in\" where a number belongs; write 83-1/2 in, if that is what is meant"},
    {"84 in", "6-5-1/2",
     told_length +
         "\"6-5-1/2\" has \"-\" where a number belongs; write 6 ft 5-1/2 in, if that is what is meant"},
    {"84 in", "6' 5 1/2",
     told_length + "\"6' 5 1/2\" has no unit behind 5 1/2; write 6 ft 5-1/2 in, if that is what is meant"},
    {"84 in", "83,5 in",
     told_length + "\"83,5 in\" has a comma in it; write 83.5 in, if that is what is meant"},
    {"84 in", "2,133 mm",
     told_length +
         "\"2,133 mm\" has a comma in it; write decimals with a point and leave out thousands marks, as " +
         usual},
    {"84 in", "84 in.",
     told_length + "\"84 in.\" has \".\" where a number belongs; write 84 in, if that is what is meant"},
    {"84 in", "84 inches",
     told_length +
         "\"84 inches\" has the unit \"inches\", which is none of ft, in, mm, cm or m; write in for "
         "inches: lengths are written as " +
         usual},
    {"84 in", "84\u00a0in",
     told_length +
         "\"84\u00a0in\" has the unit \"\u00a0in\", which is none of ft, in, mm, cm or m; write 84 in, if "
         "that is what is meant"},
    {"84 in", "",
     "order.yaml:10:3: track.rail_length: has no value; give it a length such as 80 in or 2000 mm"},
    {"84 in", "84 in#long",
     told_length + "\"84 in#long\" has \"#\" where a number belongs; write a number with its unit, as " +
         usual},
    // Counts, dates, files.
    {"extension_count: 1", "extension_count: one",
     "order.yaml:12:20: track.extension_count: is \"one\"; write a whole number from 0 to 12"},
    {"extension_count: 1", "extension_count: 1.5",
     "order.yaml:12:20: track.extension_count: is \"1.5\"; use a whole number from 0 to 12"},
    {"2024-02-29", "02/29/2024",
     "order.yaml:5:3: order.date: \"02/29/2024\" is no day of the calendar; write year-month-day, such as "
     "2025-03-31"},
    {"kit: kit.yaml", "kit: kits\\kit.yaml",
     "order.yaml:6:1: kit: kits\\kit.yaml does not exist; write / for \\ between a folder and a file"},
    {"kit: kit.yaml", "kit: kitt.yaml",
     "order.yaml:6:1: kit: kitt.yaml does not exist; check the spelling; files are looked for beside the "
     "order"},
    {"catalog: [catalog.yaml]", "catalog: catalog.yaml",
     "order.yaml:8:10: catalog: is \"catalog.yaml\" where a list is wanted; write it as a list, such as "
     "[first, "
     "second]"},
};

class Mistakes : public testing::TestWithParam<Mistake> {};

TEST_P(Mistakes, AreToldOnceAndWithWhatToWrite) {
  const Folder folder;
  const Mistake& m = GetParam();
  folder.write("order.yaml", changed(samples::order, m.from, m.to));
  if (m.message.empty()) {
    EXPECT_THAT(folder.faults(), IsEmpty());
  } else {
    EXPECT_THAT(folder.faults(), ElementsAre(m.message));
  }
}

INSTANTIATE_TEST_SUITE_P(Order, Mistakes, testing::ValuesIn(mistakes));

// Whole files that are no text to read.
TEST(Mistakes, FilesOfTheWrongKindAreToldApart) {
  const Folder folder;
  const auto told = [&](const std::string& text) {
    folder.write("order.yaml", text);
    return folder.faults();
  };
  std::string carriage_returns = samples::order;
  std::ranges::replace(carriage_returns, '\n', '\r');
  EXPECT_THAT(
      told(carriage_returns),
      ElementsAre("order.yaml:1:1: has lines that end with a carriage return alone; save the file with the "
                  "line ends of Linux or Windows"));
  EXPECT_THAT(told("\xFF\xFE"
                   "o"),
              ElementsAre("order.yaml:1:1: is text of two bytes a letter (UTF-16); save the file as UTF-8"));
  EXPECT_THAT(
      told("PK\x03\x04 and more"),
      ElementsAre("order.yaml:1:1: is a document of a word processor or a spreadsheet, or another packed "
                  "file; write parameters with a plain text editor"));
  EXPECT_THAT(told(changed(samples::order, "Hollow Creek", "Caf\xE9")),
              ElementsAre("order.yaml:4:16: byte 0xE9 is not UTF-8 text; save the file as UTF-8"));
  EXPECT_THAT(told("# nothing\n"), ElementsAre("order.yaml:1:1: is empty; write the keys it should hold"));
  std::string windows;
  for (const char c : samples::order) windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
  EXPECT_THAT(told(windows), IsEmpty());
}

}  // namespace
}  // namespace bedwright
