#include "formats/dxf.h"

#include <gtest/gtest.h>

#include <locale>

namespace bedwright {
namespace {

TEST(DxfNumber, is_plain_and_never_minus_zero) {
  EXPECT_EQ(dxf_number(0), "0.0");
  EXPECT_EQ(dxf_number(-0.0), "0.0");
  EXPECT_EQ(dxf_number(-1e-12), "0.0");
  EXPECT_EQ(dxf_number(12.5), "12.5");
  EXPECT_EQ(dxf_number(100), "100.0");
  EXPECT_EQ(dxf_number(-1.0 / 3), "-0.33333333");
  EXPECT_EQ(dxf_number(1e9), "1000000000.0");
  EXPECT_THROW(dxf_number(std::numeric_limits<double>::infinity()), std::invalid_argument);
  EXPECT_THROW(dxf_number(std::nan("")), std::invalid_argument);
}

struct DecimalComma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(DxfNumber, does_not_follow_the_locale) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new DecimalComma));
  const std::string written = dxf_number(12345.5);
  std::locale::global(before);
  EXPECT_EQ(written, "12345.5");
}

List2d one(Entity entity) {
  List2d list;
  list.layer({"ONE"});
  list.entities.push_back(std::move(entity));
  return list;
}

TEST(Dxf, lines_end_alike_and_bytes_repeat) {
  const List2d list = one(Text{0, {1, 2}, 3, "A"});
  const std::string file = dxf(list);
  EXPECT_EQ(file, dxf(list));
  for (std::size_t i = 0; i < file.size(); ++i) {
    if (file[i] == '\n') {
      ASSERT_TRUE(i > 0 && file[i - 1] == '\r') << i;
    }
    if (file[i] == '\r') {
      ASSERT_TRUE(file[i + 1] == '\n') << i;
    }
  }
  EXPECT_TRUE(file.ends_with("EOF\r\n"));
}

TEST(Dxf, text_cannot_break_out_of_its_line_or_act_as_a_code) {
  const std::string file = dxf(one(Text{0, {0, 0}, 3, "a\r\n  0\nEOF ^I %%c 5% \xC3\xA9 \xFF"}));
  EXPECT_NE(file.find("\r\na    0 EOF ^ I %%%%%%c 5% \\U+00E9 \\U+FFFD\r\n"), std::string::npos) << file;
  EXPECT_EQ(file.find("EOF\r\n"), file.size() - 5);
}

TEST(Dxf, refuses_what_is_no_entity) {
  EXPECT_THROW(dxf(one(Line{0, {1, 1}, {1, 1}})), std::invalid_argument);
  EXPECT_THROW(dxf(one(Circle{0, {1, 1}, 0})), std::invalid_argument);
  EXPECT_THROW(dxf(one(Path{0, {{0, 0}, {0, 0}}})), std::invalid_argument);
  EXPECT_THROW(dxf(one(Closed{0, {{{0, 0}, 0}, {{5, 0}, 0}, {{5, 0}, 0}}})), std::invalid_argument);
  EXPECT_THROW(dxf(one(Circle{0, {std::nan(""), 1}, 2})), std::invalid_argument);
  EXPECT_THROW(dxf(one(Circle{3, {0, 1}, 2})), std::out_of_range);
  List2d bad;
  bad.layer({"two words"});
  EXPECT_THROW(dxf(bad), std::invalid_argument);
}

TEST(Dxf, scale_leaves_bulges_and_angles_alone) {
  const std::string file = dxf(one(Closed{0, hole_outline({254, 0}, 50.8, 50.8, 0)}), 1 / inch);
  EXPECT_NE(file.find(" 42\r\n1.0\r\n"), std::string::npos);
  EXPECT_NE(file.find(" 10\r\n11.0\r\n"), std::string::npos);
}

}  // namespace
}  // namespace bedwright
