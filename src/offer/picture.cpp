// Draws panels, cells and legend on pages.
#include "offer/picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "offer/panels.h"
#include "rules/loads/rules.h"
#include "rules/table.h"

namespace bedwright {
namespace {

// Millimetres on paper.
constexpr Mm page_width = 420, page_height = 297, border = 10;
constexpr Mm letter = 2.6, line_step = 4.6,
             heading = 5;  // text heights; the smallest is read at arm's length
constexpr Mm cell_width = 13, cell_height = 9.4, between = 8;
constexpr std::size_t most_columns = 27, most_rows = 20, longest_label = 14, most_told_lines = 6;

constexpr std::array legend_lines{
    "Heavy frame, figure with +: it goes together. The letter is the rule that is nearest to its limit, the "
    "figure what is left.",
    "Thin frame: it does not. The letter is the rule that is broken worst (loads before lengths), the figure "
    "by how much; +2: two more rules are broken. Crossed: it cannot be laid out.",
    "*: with warnings, named in offer.csv. What fits here is checked again when it is drawn; local codes and "
    "licensed practice come before it."};

// A label that fits beside a cell; longer ones are cut.
std::string label(const std::string& value) {
  return value.size() <= longest_label ? value : value.substr(0, longest_label - 2) + "..";
}

// Sign and figures in at most five characters, so that they stand clear of the frame;
// thousands as "+12k".
std::string figure(double value) {
  const double size = std::abs(value);
  if (size < 9.995) return fmt::format("{:+.2f}", value);
  if (size < 99.95) return fmt::format("{:+.1f}", value);
  if (size < 9999.5) return fmt::format("{:+.0f}", value);
  return size < 999'499.5 ? fmt::format("{:+.0f}k", value / 1000) : value < 0 ? "-1M.." : "+1M..";
}

std::string percent(double value) { return fmt::format("{:+.0f}%", std::clamp(value, -999.0, 999.0)); }

// Rules by letter, in order of how often they bind.
class Letters {
 public:
  explicit Letters(const std::vector<MapRow>& rows) {
    std::map<std::string, int> count;
    for (const MapRow& r : rows) {
      if (r.code.empty()) continue;
      ++count[r.code];
      if (r.fit != Fit::impossible) unit_[r.code] = r.unit;
    }
    for (const auto& [code, n] : count) order_.push_back(code);
    std::stable_sort(order_.begin(), order_.end(),
                     [&](const std::string& a, const std::string& b) { return count[a] > count[b]; });
  }
  std::string of(const std::string& code) const {
    const auto at = static_cast<std::size_t>(std::find(order_.begin(), order_.end(), code) - order_.begin());
    const std::string last(1, static_cast<char>('A' + at % 26));
    return at < 26 ? last : std::string(1, static_cast<char>('A' + at / 26 - 1)) + last;
  }
  // "A  RAIL-REMAINDER, in: Is a rail a whole number of bunk pitches long?"; without
  // the question where there are many.
  std::vector<std::string> entries(Printing printing) const {
    constexpr std::size_t most_told = 10;
    std::vector<std::string> all;
    for (const std::string& code : order_)
      all.push_back(fmt::format("{}  {}{}{}", of(code), code, in_unit(code, printing),
                                order_.size() <= most_told ? asked(code) : ""));
    return all;
  }

 private:
  std::string in_unit(const std::string& code, Printing printing) const {
    const auto unit = unit_.find(code);
    if (unit == unit_.end() || unit->second.empty()) return "";
    if (unit->second == "%") return ", % of the limit";
    return ", " + margin_unit(unit->second, printing).name;
  }

  static std::string asked(const std::string& code) {
    for (const Rule& rule : all_rules())
      if (rule.code == code) return fmt::format(": {}", rule.asks);
    return "";
  }

  std::vector<std::string> order_;
  std::map<std::string, std::string> unit_;
};

class Pages {
 public:
  explicit Pages(const MapFile& file) : file_(file), letters_(file.map.rows) {
    const std::vector<std::string> entries = letters_.entries(file.printing);
    std::size_t longest = 0;
    for (const std::string& e : entries) longest = std::max(longest, e.size());
    legend_step_ = (static_cast<double>(longest) + 2) * letter * text_width_factor;
    legend_columns_ = std::max(1, static_cast<int>((page_width - 2 * border) / legend_step_));
    const int rows = (static_cast<int>(entries.size()) + legend_columns_ - 1) / legend_columns_;
    bottom_ = border + (rows + static_cast<int>(legend_lines.size()) + 1) * line_step;
    const auto columns = static_cast<int>((page_width - 2 * border) / (letter * text_width_factor));
    for (const std::string& line : file.holds_for)
      for (std::string& l : lines_of(wrapped(line, 0, columns), static_cast<std::size_t>(columns)))
        if (holds_for_.size() < most_told_lines) holds_for_.push_back(std::move(l));
  }

  std::vector<Page> all() {
    for (const Panel& panel : panels(file_.map.grid, most_columns, rows_that_fit())) place(panel);
    near_misses();
    number_pages();
    return std::move(pages_);
  }

 private:
  // Of a panel with as many titles and as long labels as any.
  std::size_t rows_that_fit() const {
    const std::size_t titles = file_.map.grid.varied().size();
    const Mm top = page_height - border - heading - line_step * static_cast<double>(2 + holds_for_.size());
    const Mm above =
        line_step * static_cast<double>(titles) + text_width(std::string(longest_label, 'x'), letter) + 2;
    return static_cast<std::size_t>(
        std::clamp(std::floor((top - above - bottom_) / cell_height), 1.0, static_cast<double>(most_rows)));
  }

  struct Pens {
    int text, frame, heavy, cross;
  };

  void begin_page(const std::string& title) {
    Page page;
    page.title = title;
    page.width = page_width;
    page.height = page_height;
    pages_.push_back(std::move(page));
    List2d& list = pages_.back().list;
    pens_ = {list.layer({"TEXT", 7, LineKind::continuous, 0.25}),
             list.layer({"FRAME", 8, LineKind::continuous, 0.18}),
             list.layer({"FITS", 3, LineKind::continuous, 0.9}),
             list.layer({"CANNOT", 8, LineKind::continuous, 0.18})};
    text({border, page_height - border - heading}, heading, title);
    y_ = page_height - border - heading - 2 * line_step;
    x_ = border;
    shelf_ = y_;
  }

  void text(Vec2 at, Mm height, const std::string& what, Across across = Across::left, Radians rotation = 0) {
    pages_.back().list.add(Text{pens_.text, at, height, what, across, Up::baseline, rotation});
  }

  std::string order_title() const {
    return fmt::format("Order {}, revision {}: what can be offered", file_.number, file_.revision);
  }

  void begin_map_page() {
    begin_page(order_title());
    for (const std::string& line : holds_for_) {
      text({border, y_ + line_step / 2}, letter, line);
      y_ -= line_step;
    }
    shelf_ = y_;
    has_panel_ = false;
    legend();
  }

  void legend() {
    Mm y = bottom_ - line_step;
    for (const char* line : legend_lines) {
      y -= line_step;
      text({border, y}, letter, line);
    }
    const std::vector<std::string> entries = letters_.entries(file_.printing);
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const int column = static_cast<int>(i) % legend_columns_;
      if (column == 0) y -= line_step;
      text({border + column * legend_step_, y}, letter, entries[i]);
    }
  }

  struct Measure {
    Mm labels_left = 0, labels_above = 0, width = 0, height = 0;
    std::vector<std::string> titles;
  };

  static Mm longest(const std::vector<std::string>& texts) {
    Mm most = 0;
    for (const std::string& t : texts) most = std::max(most, text_width(label(t), letter));
    return most;
  }

  static Measure measure(const Panel& panel) {
    Measure m;
    m.titles = panel.titles;
    m.titles.push_back("across: " + panel.across);
    if (!panel.down.empty()) m.titles.push_back("down: " + panel.down);
    m.labels_left = panel.rows.empty() ? 0 : longest(panel.rows) + 2;
    m.labels_above = longest(panel.columns) + 2;
    m.width = m.labels_left + cell_width * static_cast<double>(panel.columns.size());
    for (const std::string& t : m.titles) m.width = std::max(m.width, text_width(t, letter));
    m.height = line_step * static_cast<double>(m.titles.size()) + m.labels_above +
               cell_height * static_cast<double>(panel.cells.size());
    return m;
  }

  // Side by side, then on the next shelf, then on the next page.
  void place(const Panel& panel) {
    const Measure m = measure(panel);
    if (pages_.empty()) begin_map_page();
    if (x_ > border && x_ + m.width > page_width - border) {
      x_ = border;
      y_ = shelf_;
    }
    if (y_ - m.height < bottom_ && has_panel_) begin_map_page();
    draw(panel, m, {x_, y_});
    has_panel_ = true;
    x_ += m.width + between;
    shelf_ = std::min(shelf_, y_ - m.height - between);
  }

  void draw(const Panel& panel, const Measure& m, Vec2 top_left) {
    Mm y = top_left.y;
    for (const std::string& t : m.titles) {
      y -= line_step;
      text({top_left.x, y + (line_step - letter)}, letter, t);
    }
    y -= m.labels_above;
    const Mm x = top_left.x + m.labels_left;
    for (std::size_t c = 0; c < panel.columns.size(); ++c)
      text({x + (static_cast<double>(c) + 0.5) * cell_width + letter / 2, y + 1}, letter,
           label(panel.columns[c]), Across::left, 90 * degree);
    for (std::size_t r = 0; r < panel.cells.size(); ++r) {
      y -= cell_height;
      if (!panel.rows.empty())
        text({x - 1, y + (cell_height - letter) / 2}, letter, label(panel.rows[r]), Across::right);
      for (std::size_t c = 0; c < panel.cells[r].size(); ++c)
        cell({x + static_cast<double>(c) * cell_width, y}, panel.cells[r][c]);
    }
  }

  void cell(Vec2 at, std::uint64_t combination) {
    const MapRow& row = file_.map.rows.at(combination - file_.map.part.from(file_.map.grid.size().value()));
    List2d& list = pages_.back().list;
    const Vec2 size{cell_width, cell_height};
    list.add(Closed{pens_.frame, rectangle(at, at + size)});
    if (row.fit == Fit::impossible) {
      list.add(Line{pens_.cross, at, at + size});
      list.add(Line{pens_.cross, {at.x, at.y + cell_height}, {at.x + cell_width, at.y}});
      return;
    }
    constexpr Mm inset = 0.6;
    if (row.fit == Fit::fits)
      list.add(Closed{pens_.heavy, rectangle(at + Vec2{inset, inset}, at + size - Vec2{inset, inset})});
    const Mm middle = at.x + cell_width / 2;
    const auto further = std::count(row.by_rule.begin(), row.by_rule.end(), ',');
    text({middle, at.y + 5.0}, letter,
         (row.code.empty() ? "" : letters_.of(row.code)) + (further > 0 ? fmt::format("+{}", further) : "") +
             (row.warnings > 0 ? "*" : ""),
         Across::centre);
    if (!row.unit.empty())
      text({middle, at.y + 1.7}, letter - 0.1, row.unit == "%" ? percent(row.margin) : figure(shown(row)),
           Across::centre);
  }

  double shown(const MapRow& row) const { return row.margin / margin_unit(row.unit, file_.printing).one; }

  // Lines of text down the page, a new page when it is full.
  void near_misses() {
    if (file_.map.near.empty()) return;
    const std::string title = fmt::format("Order {}, revision {}: near misses, and what would have to change",
                                          file_.number, file_.revision);
    const int columns = static_cast<int>((page_width - 2 * border) / (letter * text_width_factor));
    begin_page(title);
    const auto stopped = std::count_if(file_.map.rows.begin(), file_.map.rows.end(),
                                       [](const MapRow& r) { return r.fit == Fit::stopped; });
    text({border, y_}, letter,
         fmt::format("{} of the {} combinations that do not fit: those nearest to fitting, at most {} that "
                     "the same rules stop.",
                     file_.map.near.size(), stopped, most_alike));
    y_ -= 1.5 * line_step;
    int number = 0;
    for (const NearMiss& n : file_.map.near) {
      std::vector<std::string> lines = paragraph(n, ++number, columns);
      if (y_ - line_step * static_cast<double>(lines.size()) < border) begin_page(title);
      for (const std::string& line : lines) {
        text({border, y_}, letter, line);
        y_ -= line_step;
      }
      y_ -= line_step / 2;
    }
  }

  std::vector<std::string> paragraph(const NearMiss& near, int number, int columns) const {
    const MapRow& row =
        file_.map.rows.at(near.combination - file_.map.part.from(file_.map.grid.size().value()));
    std::string head = fmt::format("{}. ", number);
    const std::vector<std::size_t> values = file_.map.grid.values_of(near.combination);
    for (std::size_t i = 0; i < values.size(); ++i)
      head += fmt::format("{}{} {}", i == 0 ? "" : ", ", in_words(file_.map.grid.varied()[i].key),
                          file_.map.grid.varied()[i].values[values[i]]);
    std::string text =
        wrapped(fmt::format("{}: stopped by {}.", head, rules_in_words(row.by_rule)), 0, columns);
    if (!near.changes.empty()) {
      std::string all;
      for (const Change& c : near.changes)
        all += fmt::format("{}{} {}", all.empty() ? "" : " and ", c.key, c.value);
      text += wrapped(fmt::format("Would fit with {}.", all), 3, columns);
    }
    if (near.changes.empty())
      text += wrapped(
          "No one or two changes beside the sizes varied were found to clear it; what each rule asks for:", 3,
          columns);
    for (const std::string& r : near.remedies) text += wrapped(r + ".", 3, columns);
    return lines_of(text, static_cast<std::size_t>(columns));
  }

  // "HOLE-FIT 3, TIP 1" as "HOLE-FIT (3 places), TIP".
  static std::string rules_in_words(const std::string& by_rule) {
    std::string text;
    for (std::size_t from = 0; from < by_rule.size();) {
      const std::size_t end = std::min(by_rule.find(", ", from), by_rule.size());
      const std::string one = by_rule.substr(from, end - from), count = one.substr(one.rfind(' ') + 1);
      text += (from == 0 ? "" : ", ") + one.substr(0, one.rfind(' ')) +
              (count == "1" ? "" : fmt::format(" ({} places)", count));
      from = end + 2;
    }
    return text;
  }

  // A word longer than a line (a file's path) goes on in the next.
  static std::vector<std::string> lines_of(const std::string& text, std::size_t columns) {
    const auto is_inside_letter = [&](std::size_t at) {
      return (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80;
    };
    std::vector<std::string> lines;
    for (std::size_t from = 0; from < text.size();) {
      std::size_t end = std::min(text.find('\n', from), text.size());
      if (end - from > columns)
        for (end = from + columns; end > from + 1 && is_inside_letter(end); --end) continue;
      lines.push_back(text.substr(from, end - from));
      from = end + (end < text.size() && text[end] == '\n');
    }
    return lines;
  }

  void number_pages() {
    for (std::size_t i = 0; i < pages_.size(); ++i)
      pages_[i].list.add(Text{pens_.text,
                              {page_width - border, page_height - border - heading},
                              letter,
                              fmt::format("{}   page {} of {}", file_.date, i + 1, pages_.size()),
                              Across::right,
                              Up::baseline,
                              0});
  }

  const MapFile& file_;
  Letters letters_;
  std::vector<Page> pages_;
  Pens pens_{};
  std::vector<std::string> holds_for_;
  bool has_panel_ = false;
  Mm legend_step_ = 0, bottom_ = 0;
  int legend_columns_ = 1;
  Mm x_ = 0, y_ = 0, shelf_ = 0;  // where the next panel's upper left corner goes
};

}  // namespace

std::vector<Page> map_pages(const MapFile& file) { return Pages(file).all(); }

}  // namespace bedwright
