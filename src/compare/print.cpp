// The comparison as text and as JSON.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "checks/table.h"
#include "compare/compare.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

std::string more_or_fewer(int a, int b) {
  if (a == b) return "";
  return b > a ? fmt::format("{} more", b - a) : fmt::format("{} fewer", a - b);
}

class Printer {
 public:
  Printer(const Comparison& c, const Heading& a, const Heading& b, int width) : c_(c), width_(width) {
    const bool revisions = a.number == b.number;
    a_ = revisions ? "revision " + a.revision : a.number;
    b_ = revisions ? "revision " + b.revision : b.number;
    if (a_ == b_) a_ = "the first", b_ = "the second";
    title_ = revisions ? fmt::format("{}: {} against {}", a.number, a_, b_) : fmt::format("{} against {}", a_, b_);
  }

  std::string text() {
    out_ = title_ + "\n";
    bed();
    same();
    changed();
    only(Fate::only_b, fmt::format("Made parts that are new in {}", b_));
    only(Fate::only_a, fmt::format("Made parts that {} no longer needs", b_));
    supplied();
    hardware();
    shelf();
    return std::move(out_);
  }

 private:
  void head(const std::string& text) { out_ += "\n" + text + "\n"; }
  void line(const std::string& text, int indent = 2) { out_ += wrapped(text, indent, width_); }

  void bed() {
    if (c_.bed.empty()) return;
    std::size_t what = 0, first = a_.size();
    for (const HeadLine& h : c_.bed) what = std::max(what, h.what.size()), first = std::max(first, h.a.size());
    out_ += "\n" + fmt::format("{:<{}}  {:<{}}  {}\n", "The bed", what + 2, a_, first, b_);
    for (const HeadLine& h : c_.bed) out_ += fmt::format("  {:<{}}  {:<{}}  {}\n", h.what, what, h.a, first, h.b);
  }

  std::vector<const PartChange*> made(Fate fate) const {
    std::vector<const PartChange*> all;
    for (const PartChange& p : c_.parts)
      if (p.origin == Origin::made && p.fate == fate) all.push_back(&p);
    return all;
  }

  std::string counts(const PartChange& p) const {
    const std::string more = more_or_fewer(p.in_a, p.in_b);
    return p.in_a == p.in_b ? fmt::format("{} in both", p.in_a) : fmt::format("{} in {}, {} in {}: {}", p.in_a, a_, p.in_b, b_, more);
  }

  void same() {
    const auto all = made(Fate::same);
    if (all.empty()) return;
    head("Made parts that serve both as they are");
    for (const PartChange* p : all) line(fmt::format("{}: {}", p->name, counts(*p)));
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

  // The kit's and the buyer's: only what differs.
  void supplied() {
    std::string text;
    for (const PartChange& p : c_.parts) {
      if (p.origin == Origin::made || (p.fate == Fate::same && p.in_a == p.in_b)) continue;
      std::string how = p.fate == Fate::only_a ? fmt::format("{}, none in {}", p.in_a, b_) : p.fate == Fate::only_b ? fmt::format("{}, none in {}", p.in_b, a_) : counts(p);
      for (const std::string& h : p.how) how += "; " + h;
      text += wrapped(fmt::format("{}: {}", p.name, how), 2, width_);
    }
    if (!text.empty()) head("From the kit and bought"), out_ += text;
  }

  void hardware() {
    std::string text;
    for (const HardwareChange& h : c_.hardware)
      if (h.in_a != h.in_b) text += wrapped(fmt::format("{}: {} becomes {}, {}", h.name, h.in_a, h.in_b, more_or_fewer(h.in_a, h.in_b)), 2, width_);
    if (!text.empty()) head("Hardware"), out_ += text;
  }

  void shelf() {
    head(fmt::format("On the shelf: parts cut for {} that {} can use", a_, b_));
    bool any = false;
    for (const PartChange& p : c_.parts) {
      if (p.origin != Origin::made || p.in_a == 0) continue;
      const int used = std::min(p.in_a, p.in_b);
      if (p.fate == Fate::same) {
        any = true;
        std::string rest = p.in_a > used ? fmt::format(", {} left over", p.in_a - used) : "";
        if (p.in_b > used) rest += fmt::format(", {} more to make", p.in_b - used);
        line(fmt::format("{}: {} of {}{}", p.name, used, p.in_a, rest));
      } else if (p.fate == Fate::changed && !p.rework.empty()) {
        any = true;
        line(fmt::format("{}: {} of {} after work; {}", p.name, used, p.in_a, p.rework));
      }
    }
    if (!any) line("none");
    std::string none;
    for (const PartChange& p : c_.parts)
      if (p.origin == Origin::made && p.in_a > 0 && (p.fate == Fate::only_a || (p.fate == Fate::changed && p.rework.empty())))
        none += fmt::format("{}{} ({}{})", none.empty() ? "" : ", ", p.name, p.in_a, p.fate == Fate::changed ? ", which change" : "");
    if (!none.empty()) line(fmt::format("cannot be used in {}: {}", b_, none));
  }

  const Comparison& c_;
  int width_;
  std::string a_, b_, title_, out_;
};

const char* word(Fate fate) {
  return fate == Fate::same ? "same" : fate == Fate::changed ? "changed" : fate == Fate::only_a ? "only a" : "only b";
}
const char* word(Origin origin) { return origin == Origin::made ? "made" : origin == Origin::kit ? "kit" : "bought"; }

}  // namespace

std::string comparison_text(const Comparison& comparison, const Heading& a, const Heading& b, int width) {
  return Printer(comparison, a, b, width).text();
}

std::string comparison_json(const Comparison& c, const Heading& a, const Heading& b) {
  Json bed = Json::array(), parts = Json::array(), hardware = Json::array();
  for (const HeadLine& h : c.bed) bed.push_back(Json{{"what", h.what}, {"a", h.a}, {"b", h.b}});
  for (const PartChange& p : c.parts)
    parts.push_back(Json{{"name", p.name}, {"origin", word(p.origin)}, {"fate", word(p.fate)}, {"in_a", p.in_a}, {"in_b", p.in_b}, {"how", p.how}, {"rework", p.rework}});
  for (const HardwareChange& h : c.hardware) hardware.push_back(Json{{"name", h.name}, {"in_a", h.in_a}, {"in_b", h.in_b}});
  const Json json{{"format", "bedwright compare"},
                  {"version", 1},
                  {"a", Json{{"number", a.number}, {"revision", a.revision}}},
                  {"b", Json{{"number", b.number}, {"revision", b.revision}}},
                  {"bed", std::move(bed)},
                  {"parts", std::move(parts)},
                  {"hardware", std::move(hardware)}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace bedwright
