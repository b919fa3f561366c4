// What is too large for a page: reduced to it, or gone on with; nothing is left out.
#include "sheets/flow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "sheets/plan.h"

namespace bedwright {
namespace {

const Box2 page{{10, 10}, {410, 210}};  // 400 x 200

std::vector<Sheet> put(const std::function<void(Flow&)>& what) {
  Sheet sheet;
  sheet.title = "A TITLE";
  sheet.file = "file";
  Flow flow(sheet, page);
  what(flow);
  return std::move(flow).sheets();
}

void expect_on_the_page(const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets) {
    if (sheet.list.entities.empty()) continue;
    const Box2 box = bounds(sheet.list);
    EXPECT_GE(box.low.x, page.low.x - 1e-6);
    EXPECT_GE(box.low.y, page.low.y - 1e-6);
    EXPECT_LE(box.high.x, page.high.x + 1e-6);
    EXPECT_LE(box.high.y, page.high.y + 1e-6);
  }
}

std::vector<std::string> texts(const std::vector<Sheet>& sheets) {
  std::vector<std::string> all;
  for (const Sheet& sheet : sheets)
    for (const Entity& e : sheet.list.entities)
      if (const Text* text = std::get_if<Text>(&e)) all.push_back(text->text);
  return all;
}

List2d picture(Mm width, Mm height) {
  List2d list;
  list.add(Closed{Pens(list).outline, rectangle({0, 0}, {width, height})});
  return list;
}

TEST(Flow, APictureLargerThanThePageIsReducedAndSaysSo) {
  for (const Vec2 size : {Vec2{419, 81}, Vec2{50, 900}, Vec2{4000, 3000}}) {
    const auto sheets = put([&](Flow& flow) { flow.picture(picture(size.x, size.y)); });
    expect_on_the_page(sheets);
    EXPECT_EQ(texts(sheets), std::vector<std::string>{"REDUCED TO THE PAGE, NOT TO THE SCALE STATED"});
  }
  EXPECT_TRUE(texts(put([](Flow& flow) { flow.picture(picture(400, 200)); })).empty());
}

TEST(Flow, ATableWiderThanThePageGoesOnInRowsBelow) {
  std::string words;
  for (int i = 0; i < 60; ++i) words += "word" + std::to_string(i) + " ";
  const Table2d table{{"A", "WHAT"}, {{"1", words}, {"2", std::string(400, 'x')}}};
  const auto sheets = put([&](Flow& flow) { flow.table("A CAPTION", table, bench_text); });
  expect_on_the_page(sheets);
  std::string all;
  for (const std::string& text : texts(sheets)) all += text + " ";
  for (int i = 0; i < 60; ++i) EXPECT_NE(all.find("word" + std::to_string(i) + " "), std::string::npos) << i;
  EXPECT_EQ(std::count(all.begin(), all.end(), 'x'), 400);
}

TEST(Flow, ATableOfManyColumnsIsSetSmaller) {
  Table2d table;
  table.rows.emplace_back();
  for (int i = 0; i < 60; ++i) {
    table.head.push_back("COLUMN " + std::to_string(i));
    table.rows[0].push_back("cell");
  }
  const auto sheets = put([&](Flow& flow) { flow.table(std::string(300, 'C'), table, bench_text); });
  expect_on_the_page(sheets);
  EXPECT_EQ(texts(sheets).size(), 121U);
}

TEST(Tags, TooManyForTheRowAreThinnedOut) {
  const auto numbers = [](int n) {
    std::vector<Tag> tags;
    for (int i = 1; i <= n; ++i) tags.push_back({3.0 * i, std::to_string(i)});
    return tags;
  };
  std::vector<Tag> few = numbers(20), many = numbers(145);
  EXPECT_EQ(thin_out(few, small_text, 300), 1);
  EXPECT_EQ(few.size(), 20U);
  const int every = thin_out(many, small_text, 300);
  EXPECT_GT(every, 1);
  EXPECT_EQ(many.front().label, "1");
  EXPECT_EQ(many.back().label, "145");
  EXPECT_LE(static_cast<double>(many.size()) * (text_width("145", small_text) + 0.4 * small_text), 300);
  for (std::size_t i = 1; i + 1 < many.size(); ++i) EXPECT_EQ(std::stoi(many[i].label) % every, 0);
}

}  // namespace
}  // namespace bedwright
