// The comparison as text and as JSON.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "compare/compare.h"
#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

std::string more_or_fewer(int a, int b) {
  if (a == b) return "";
  return b > a ? fmt::format("{} more", b - a) : fmt::format("{} fewer", a - b);
}

class Printer {
 public:
  Printer(const Comparison& c, const Told& a, const Told& b, int width)
      : c_(c), told_a_(a), told_b_(b), width_(width) {
    const Heading &in_a = a.heading, &in_b = b.heading;
    const bool revisions = in_a.number == in_b.number;
    a_ = revisions ? "revision " + in_a.revision : in_a.number;
    b_ = revisions ? "revision " + in_b.revision : in_b.number;
    if (a_ == b_) a_ = file_name(a.file), b_ = file_name(b.file);
    if (a_ == b_) a_ = a.file, b_ = b.file;
    if (a_ == b_) a_ = "the first", b_ = "the second";
    title_ = revisions ? fmt::format("{}: {} against {}", in_a.number, a_, b_)
                       : fmt::format("{} against {}", a_, b_);
    same_marks_ = revisions && in_a.revision == in_b.revision;
    if (!a.called.empty()) a_ = a.called;
    if (!b.called.empty()) b_ = b.called;
  }

  std::string changes() {
    ordered();
    changed();
    only(Fate::only_b, "Made parts that are new");
    only(Fate::only_a, "Made parts no longer needed");
    welded_in(true);
    supplied();
    hardware();
    std::string stay;
    for (const PartChange* p : made(Fate::same))
      stay += fmt::format("{}{} ({})", stay.empty() ? "" : ", ", label(*p),
                          p->in_a == p->in_b ? std::to_string(p->in_a) : counts(*p));
    if (!stay.empty()) head("Made parts that stay good"), line(stay);
    return std::move(out_);
  }

  std::string text() {
    out_ = title_ + "\n";
    verdict(a_, told_a_.stops);
    verdict(b_, told_b_.stops);
    standing();
    bed();
    ordered();
    same();
    changed();
    only(Fate::only_b, fmt::format("Made parts that are new in {}", b_));
    only(Fate::only_a, fmt::format("Made parts that {} no longer needs", b_));
    welded_in();
    supplied();
    hardware();
    shelf();
    return std::move(out_);
  }

 private:
  void head(const std::string& text) { out_ += "\n" + text + "\n"; }
  void line(const std::string& text, int indent = 2) { out_ += wrapped(text, indent, width_); }

  static std::string file_name(const std::string& path) { return path.substr(path.find_last_of('/') + 1); }

  void verdict(const std::string& name, int stops) {
    if (stops == 0) return line(name + " goes together", 0);
    line(fmt::format("{} is stopped: {} stop{} (see check); do not cut, drill or re-use pieces for it yet",
                     name, stops, stops == 1 ? "" : "s"),
         0);
  }

  void standing() {
    for (const auto& [stands, name] : {std::pair(c_.stands_a, a_), std::pair(c_.stands_b, b_)})
      if (stands)
        line(fmt::format("{} is on a frame that stands: its made parts are welded in and are no shelf parts",
                         name),
             0);
  }

  // In one row where the width allows, else one under the other.
  void columns(const std::string& title, const std::vector<HeadLine>& lines) {
    if (lines.empty()) return;
    std::size_t key = title.size();
    for (const HeadLine& h : lines) key = std::max(key, h.what.size() + 2);
    const std::size_t room = static_cast<std::size_t>(std::max(width_, 60)),
                      half = room > key + 24 ? (room - key - 4) / 2 : 10;
    const auto fits = [&](const HeadLine& h) { return h.a.size() <= half && h.b.size() <= half; };
    std::size_t what = title.size(), first = a_.size();
    for (const HeadLine& h : lines)
      if (fits(h)) what = std::max(what, h.what.size() + 2), first = std::max(first, h.a.size());
    out_ += "\n" + fmt::format("{:<{}}  {:<{}}  {}\n", title, what, a_, first, b_);
    for (const HeadLine& h : lines) {
      if (fits(h)) {
        out_ += fmt::format("  {:<{}}  {:<{}}  {}\n", h.what, what - 2, h.a, first, h.b);
      } else {
        line(h.what);
        line(fmt::format("{}: {}", a_, h.a), 6);
        line(fmt::format("{}: {}", b_, h.b), 6);
      }
    }
  }

  void bed() { columns("The bed", c_.bed); }
  void ordered() { columns("Ordered differently", c_.ordered); }

  std::vector<const PartChange*> made(Fate fate) const {
    std::vector<const PartChange*> all;
    for (const PartChange& p : c_.parts)
      if (p.origin == Origin::made && p.fate == fate && !p.welded_in) all.push_back(&p);
    return all;
  }

  std::string counts(const PartChange& p) const {
    const std::string more = more_or_fewer(p.in_a, p.in_b);
    return p.in_a == p.in_b ? fmt::format("{} in both", p.in_a)
                            : fmt::format("{} in {}, {} in {}: {}", p.in_a, a_, p.in_b, b_, more);
  }

  static std::string label(const PartChange& p) {
    return p.renamed ? fmt::format("{} (there: {})", p.name, p.name_b) : p.name;
  }

  void same() {
    const auto all = made(Fate::same);
    if (all.empty()) return;
    head("Made parts that serve both as they are");
    for (const PartChange* p : all) line(fmt::format("{}: {}", label(*p), counts(*p)));
  }

  void changed() {
    const auto all = made(Fate::changed);
    if (all.empty()) return;
    head("Made parts that change");
    for (const PartChange* p : all) {
      line(fmt::format("{}: {}", p->name, counts(*p)));
      for (const std::string& how : p->how) line(how, 6);
      if (!p->rework.empty()) line(p->rework, 6);
    }
  }

  void only(Fate fate, const std::string& title) {
    const auto all = made(fate);
    if (all.empty()) return;
    head(title);
    for (const PartChange* p : all) line(fmt::format("{}: {}", p->name, std::max(p->in_a, p->in_b)));
  }

  void welded_in(bool only_changes = false) {
    std::string text;
    for (const PartChange& p : c_.parts) {
      if (!p.welded_in || (only_changes && p.fate == Fate::same && p.in_a == p.in_b)) continue;
      const std::string where =
          p.fate == Fate::only_a ? fmt::format("{} in {} alone", p.in_a, a_)
          : p.fate == Fate::only_b
              ? fmt::format("{} in {} alone", p.in_b, b_)
              : fmt::format("{}, {}", counts(p), p.fate == Fate::same ? "alike" : "not alike");
      text += wrapped(fmt::format("{}: {}", label(p), where), 2, width_);
      for (const std::string& how : p.how) text += wrapped(how, 6, width_);
    }
    if (!text.empty()) head("Welded into a frame that stands: no shelf parts"), out_ += text;
  }

  // The kit's and the buyer's: only what differs.
  void supplied() {
    std::string text;
    for (const PartChange& p : c_.parts) {
      if (p.origin == Origin::made || (p.fate == Fate::same && p.in_a == p.in_b)) continue;
      std::string how = p.fate == Fate::only_a   ? fmt::format("{}, none in {}", p.in_a, b_)
                        : p.fate == Fate::only_b ? fmt::format("{}, none in {}", p.in_b, a_)
                                                 : counts(p);
      for (const std::string& h : p.how) how += "; " + h;
      text += wrapped(fmt::format("{}: {}", label(p), how), 2, width_);
    }
    if (!text.empty()) head("From the kit and bought"), out_ += text;
  }

  void hardware() {
    std::string text;
    for (const HardwareChange& h : c_.hardware)
      if (h.in_a != h.in_b)
        text += wrapped(
            fmt::format("{}: {} becomes {}, {}", h.name, h.in_a, h.in_b, more_or_fewer(h.in_a, h.in_b)), 2,
            width_);
    if (!text.empty()) head("Hardware"), out_ += text;
  }

  void shelf() {
    head(fmt::format("On the shelf: parts cut for {} that {} can use", a_, b_));
    bool any = false, renamed = false;
    for (const PartChange& p : c_.parts) {
      if (p.origin != Origin::made || p.in_a == 0 || p.welded_in) continue;
      const int used = std::min(p.in_a, p.in_b);
      const bool serves = p.fate == Fate::same, after_work = p.fate == Fate::changed && !p.rework.empty();
      if (!serves && !after_work) continue;
      any = true;
      renamed = renamed || p.renamed;
      std::string rest = p.in_a > used ? fmt::format(", {} left over", p.in_a - used) : "";
      if (p.in_b > used) rest += fmt::format(", {} more to make", p.in_b - used);
      if (after_work) rest = " after work; " + p.rework;
      line(fmt::format("{}: {} of {}{}", label(p), used, p.in_a, rest));
    }
    if (!any) line("none");
    if (any && (renamed || !same_marks_))
      line(
          fmt::format("Pieces scribed or marked for {} bear its part names, number and revision: re-mark "
                      "them for {} before they are used.",
                      a_, b_));
    const std::string none = listed([&](const PartChange& p) {
      // What stands in A's frame is no piece to be used or left.
      return p.origin == Origin::made && p.in_a > 0 && !(p.welded_in && c_.stands_a) &&
             (p.welded_in || p.fate == Fate::only_a || (p.fate == Fate::changed && p.rework.empty()));
    });
    if (!none.empty()) line(fmt::format("cannot be used in {}: {}", b_, none));
    if (!c_.stands_a && !c_.stands_b) return;
    const std::string alike =
        listed([](const PartChange& p) { return p.origin != Origin::made && p.fate == Fate::same; });
    if (!alike.empty())
      line(fmt::format(
          "from the kit and bought, alike in both, and can serve where they are not fitted yet: {}", alike));
  }

  // "main (2, which change), tongue (2)"
  template <class Wanted>
  std::string listed(Wanted wanted) const {
    std::string text;
    for (const PartChange& p : c_.parts)
      if (wanted(p))
        text += fmt::format("{}{} ({}{})", text.empty() ? "" : ", ", label(p), p.in_a,
                            p.fate == Fate::changed ? ", which change" : "");
    return text;
  }

  const Comparison& c_;
  const Told &told_a_, &told_b_;
  int width_;
  bool same_marks_ = false;  // the pieces of both bear the same number and revision
  std::string a_, b_, title_, out_;
};

Json told(const Told& t, bool stands) {
  return Json{{"number", t.heading.number},
              {"revision", t.heading.revision},
              {"file", t.file},
              {"stops", t.stops},
              {"frame_stands", stands}};
}

const char* word(Fate fate) {
  return fate == Fate::same      ? "same"
         : fate == Fate::changed ? "changed"
         : fate == Fate::only_a  ? "only a"
                                 : "only b";
}
const char* word(Origin origin) {
  return origin == Origin::made       ? "made"
         : origin == Origin::kit      ? "kit"
         : origin == Origin::standing ? "standing"
                                      : "bought";
}

}  // namespace

std::string comparison_text(const Comparison& comparison, const Told& a, const Told& b, int width) {
  return Printer(comparison, a, b, width).text();
}

std::string change_text(const Comparison& comparison, const Told& a, const Told& b, int width) {
  return Printer(comparison, a, b, width).changes();
}

std::string comparison_json(const Comparison& c, const Told& a, const Told& b) {
  Json bed = Json::array(), ordered = Json::array(), parts = Json::array(), hardware = Json::array();
  for (const HeadLine& h : c.bed) bed.push_back(Json{{"what", h.what}, {"a", h.a}, {"b", h.b}});
  for (const HeadLine& h : c.ordered) ordered.push_back(Json{{"key", h.what}, {"a", h.a}, {"b", h.b}});
  for (const PartChange& p : c.parts)
    parts.push_back(Json{{"name", p.name},
                         {"name_b", p.name_b.empty() ? Json() : Json(p.name_b)},
                         {"origin", word(p.origin)},
                         {"fate", word(p.fate)},
                         {"in_a", p.in_a},
                         {"in_b", p.in_b},
                         {"how", p.how},
                         {"rework", p.rework},
                         {"welded_in", p.welded_in}});
  for (const HardwareChange& h : c.hardware)
    hardware.push_back(Json{{"name", h.name}, {"in_a", h.in_a}, {"in_b", h.in_b}});
  const Json json{{"format", "bedwright compare"}, {"version", 1},
                  {"a", told(a, c.stands_a)},      {"b", told(b, c.stands_b)},
                  {"bed", std::move(bed)},         {"ordered", std::move(ordered)},
                  {"parts", std::move(parts)},     {"hardware", std::move(hardware)}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace bedwright
