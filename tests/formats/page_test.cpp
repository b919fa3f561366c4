// The PDF and SVG writers of pages.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

#include "formats/page_svg.h"
#include "formats/pdf.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Page sample(const std::string& title) {
  Page page;
  page.title = title;
  const int thin = page.list.layer({"THIN", 7, LineKind::continuous, 0.25});
  const int hidden = page.list.layer({"HIDDEN", 1, LineKind::hidden, 0.18});
  page.list.add(Line{thin, {10, 10}, {410, 10}});
  page.list.add(Arc{hidden, {100, 100}, 20, 0, 90 * degree});
  page.list.add(Circle{thin, {100, 100}, 30});
  page.list.add(Closed{thin, hole_outline({200, 100}, 10, 40, 0)});
  page.list.add(Path{hidden, {{10, 20}, {20, 30}, {30, 20}}});
  page.list.add(Text{thin, {50, 200}, 5, title + " <77-1/2 in> & more", Across::left, Up::baseline, 0});
  page.list.add(Text{thin, {300, 150}, 5, "turned", Across::centre, Up::middle, 90 * degree});
  return page;
}

// Standard output of a command, and whether it ended well.
std::string output(const std::string& command) {
  FILE* pipe = ::popen(command.c_str(), "r");
  std::string text;
  char buffer[4096];
  for (std::size_t n; pipe && (n = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) text.append(buffer, n);
  return pipe && ::pclose(pipe) == 0 ? text : "failed: " + command;
}

class PdfFile : public ::testing::Test {
 protected:
  void SetUp() override {
    char name[] = "/tmp/bedwright-page-XXXXXX";
    folder = ::mkdtemp(name);
  }
  void TearDown() override { std::filesystem::remove_all(folder); }
  std::string written(const std::string& bytes) {
    const std::string path = folder / "page.pdf";
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
  }
  std::filesystem::path folder;
};

TEST_F(PdfFile, SameBytesTwiceWithTheDateGiven) {
  const std::vector<Page> pages = {sample("one"), sample("two")};
  const std::string a = pages_pdf(pages, {"A title", "2026-10-05"});
  EXPECT_EQ(a, pages_pdf(pages, {"A title", "2026-10-05"}));
  EXPECT_THAT(a, HasSubstr("(20261005000000Z)"));
  EXPECT_NE(a, pages_pdf(pages, {"A title", "2026-10-06"}));
}

// Read by another program: poppler's pdftotext and pdfinfo.
TEST_F(PdfFile, AnotherReaderFindsTheWordsTheSizeAndThePages) {
  Page letter = sample("two");
  letter.width = 279.4;
  letter.height = 215.9;
  const std::string path = written(pages_pdf({sample("one"), letter}, {"A title", "2026-10-05"}));
  EXPECT_THAT(output("pdftotext -layout " + path + " -"), HasSubstr("one <77-1/2 in> & more"));
  const std::string info = output("pdfinfo -l 2 " + path);
  EXPECT_THAT(info, ::testing::ContainsRegex("Pages: +2\n"));
  EXPECT_THAT(info, HasSubstr("A title"));
  EXPECT_THAT(info, HasSubstr("1190.55 x 841.89 pts (A3)"));
  EXPECT_THAT(info, HasSubstr("792 x 612 pts (letter)"));
}

// A text never runs past the box the lists reckon with (list2d.h): poppler reports
// the box of every word.
TEST_F(PdfFile, NoTextRunsPastItsBox) {
  Page page;
  const int layer = page.list.layer({"TEXT"});
  std::vector<Text> texts;
  for (const char* word : {"WWWWWWWWMMMM", "iiii", "HOLE-NO-TAB", "1-15/16", "mmmmmmmm"}) {
    texts.push_back({layer, {100, 250.0 - 20.0 * static_cast<double>(texts.size())}, 5, word});
    page.list.add(texts.back());
  }
  const std::string boxes =
      output("pdftotext -bbox " + written(pages_pdf({page}, {"", "2026-10-05"})) + " -");
  for (const Text& text : texts) {
    const auto at = boxes.find(">" + text.text + "<");
    ASSERT_NE(at, std::string::npos) << boxes;
    const auto value = [&](const char* name) {
      const auto from = boxes.rfind(std::string(name) + "=\"", at);
      return std::stod(boxes.substr(from + std::string(name).size() + 2)) * inch / 72;
    };
    const Box2 box = text_box(text);
    EXPECT_NEAR(value("xMin"), box.low.x, 0.6) << text.text;
    EXPECT_LE(value("xMax"), box.high.x + 0.1) << text.text;
  }
}

TEST(PageSvg, HoldsTheSameThings) {
  const std::string svg = page_svg(sample("one"));
  EXPECT_EQ(svg, page_svg(sample("one")));
  EXPECT_THAT(svg, HasSubstr("one &lt;77-1/2 in&gt; &amp; more</text>"));
  EXPECT_THAT(svg, HasSubstr("M10 287L410 287")) << "y runs down in SVG";
  EXPECT_THAT(svg, HasSubstr("stroke-dasharray=\"3 1.5\""));
  EXPECT_THAT(svg, HasSubstr("rotate(-90)"));
  EXPECT_THAT(svg, Not(HasSubstr("nan")));
}

}  // namespace
}  // namespace bedwright
