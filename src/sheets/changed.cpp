// Sets passages and words of two issues of a sheet against each other.
#include "sheets/changed.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace bedwright {
namespace {

// Marks stand left of what they mark, in the room that sheets leave there (mark_room).
constexpr Mm bar_off = 0.8, triangle_width = 5.9, triangle_height = 5.3;
constexpr Mm frame_off = 0.3;  // of a frame around words
constexpr const char* continued = " (continued)";

bool holds(const Box2& box, Vec2 p) {
  return p.x >= box.low.x - same_place && p.x <= box.high.x + same_place && p.y >= box.low.y - same_place &&
         p.y <= box.high.y + same_place;
}

std::string without_continued(std::string text) {
  if (text.ends_with(continued)) text.resize(text.size() - std::string(continued).size());
  return text;
}

// A sheet's words by where they stand: in a row, in a picture, or in neither.
struct Words {
  std::map<std::size_t, std::vector<const Text*>> in_picture;  // by passage
  std::vector<const Text*> loose;
};
Words words_of(const List2d& list) {
  Words words;
  for (const Entity& e : list.entities) {
    const Text* text = std::get_if<Text>(&e);
    if (!text) continue;
    const auto within = [&](bool picture) {
      return std::find_if(list.passages.begin(), list.passages.end(),
                          [&](const Passage& p) { return p.picture == picture && holds(p.box, text->at); });
    };
    if (within(false) != list.passages.end()) continue;
    const auto picture = within(true);
    if (picture == list.passages.end())
      words.loose.push_back(text);
    else
      words.in_picture[static_cast<std::size_t>(picture - list.passages.begin())].push_back(text);
  }
  return words;
}

// All that the sheets of one title said.
class Said {
 public:
  explicit Said(const std::vector<const List2d*>& lists) {
    for (const List2d* list : lists) {
      for (const Passage& p : list->passages) (p.picture ? pictures_ : rows_).insert(p.says);
      const Words words = words_of(*list);
      for (const Text* text : words.loose) loose_.insert(without_continued(text->text));
      for (const auto& [passage, texts] : words.in_picture)
        for (const Text* text : texts) in_pictures_[list->passages[passage].subject].insert(text->text);
    }
  }
  // Each row counts once: of two alike where there was one, the second is new.
  bool take_row(const std::string& says) { return take(rows_, says); }
  bool take_picture(const std::string& says) { return take(pictures_, says); }
  bool take_word(const std::string& subject, const std::string& text) {
    return take(in_pictures_[subject], text);
  }
  bool has_loose(const std::string& text) const { return loose_.contains(without_continued(text)); }

 private:
  static bool take(std::multiset<std::string>& from, const std::string& one) {
    const auto found = from.find(one);
    if (found == from.end()) return false;
    from.erase(found);
    return true;
  }

  std::multiset<std::string> rows_, pictures_;
  std::map<std::string, std::multiset<std::string>> in_pictures_;
  std::set<std::string> loose_;
};

class Marks {
 public:
  Marks(List2d& list, const std::string& letter)
      : list_(list), letter_(letter), layer_(list.layer({"CHANGED", 6, LineKind::continuous, 0.35})) {}

  void triangle(Vec2 right_top) {
    const Mm right = right_top.x, left = right - triangle_width, low = right_top.y - triangle_height;
    list_.add(Closed{layer_, polygon({{left, low}, {right, low}, {(left + right) / 2, right_top.y}})});
    // Longer letters stand in the title block alone.
    if (letter_.size() == 1)
      list_.add(Text{
          layer_, {(left + right) / 2, low + 0.75}, small_text, letter_, Across::centre, Up::baseline, 0});
  }
  // Beside one row the triangle stands at its middle, beside more at their top.
  void bar(const Box2& box) {
    const Mm x = box.low.x - bar_off;
    list_.add(Line{layer_, {x, box.low.y}, {x, box.high.y}});
    triangle({x - 0.3, box.high.y + std::max(0.0, triangle_height - box.height()) / 2});
  }
  void frame(const Text& text) {
    const Box2 box = text_box(text).grown(frame_off);
    list_.add(Closed{layer_, rectangle(box.low, box.high)});
  }

 private:
  List2d& list_;
  const std::string& letter_;
  int layer_;
};

// What of one sheet was not said before.
struct Fresh {
  std::vector<Box2> rows;  // joined where they follow each other
  std::vector<std::size_t> pictures;
};

// Takes what is as it was out of what was said, so that nothing else leans on it.
Fresh take_known(const List2d& list, Said& said) {
  Fresh fresh;
  const Words all = words_of(list);
  for (std::size_t i = 0; i < list.passages.size(); ++i) {
    const Passage& p = list.passages[i];
    if (!p.picture) {
      if (said.take_row(p.says)) continue;
      const bool goes_on = !fresh.rows.empty() && fresh.rows.back().low.x == p.box.low.x &&
                           std::abs(fresh.rows.back().low.y - p.box.high.y) < same_place;
      if (goes_on)
        fresh.rows.back().join(p.box);
      else
        fresh.rows.push_back(p.box);
    } else if (!said.take_picture(p.says)) {
      fresh.pictures.push_back(i);
    } else if (const auto own = all.in_picture.find(i); own != all.in_picture.end()) {
      for (const Text* text : own->second) said.take_word(p.subject, text->text);
    }
  }
  return fresh;
}

// Marks on one sheet; whether there were any.
bool mark(List2d& list, const Fresh& fresh, Said& said, const std::string& letter) {
  std::vector<Text> words;
  const Words all = words_of(list);
  for (const std::size_t i : fresh.pictures)
    if (const auto own = all.in_picture.find(i); own != all.in_picture.end())
      for (const Text* text : own->second)
        if (!said.take_word(list.passages[i].subject, text->text)) words.push_back(*text);
  for (const Text* text : all.loose)
    if (!said.has_loose(text->text)) words.push_back(*text);
  Marks marks(list, letter);
  for (const Box2& box : fresh.rows) marks.bar(box);
  for (const std::size_t i : fresh.pictures) marks.bar(list.passages[i].box);
  for (const Text& text : words) marks.frame(text);
  return !fresh.rows.empty() || !fresh.pictures.empty() || !words.empty();
}

std::string all_of(const std::vector<std::string>& phrases) {
  std::string text;
  for (const std::string& phrase : phrases) text += (text.empty() ? "" : "; ") + phrase;
  return text;
}

}  // namespace

const char* word(SheetFate fate) {
  switch (fate) {
    case SheetFate::as_before:
      return "as before";
    case SheetFate::changed:
      return "changed";
    case SheetFate::fresh:
      return "new";
    case SheetFate::gone:
      break;
  }
  return "no longer used";
}

std::vector<FateOfSheet> mark_changes(std::vector<Sheet>& sheets, const Before& before,
                                      const std::string& letter) {
  std::vector<FateOfSheet> fates;
  if (!before.known) {
    for (Sheet& sheet : sheets) {
      sheet.note = fmt::format("What changed since {} is not marked: what {} was made from cannot be read.",
                               before.revision, before.revision);
      fates.push_back({sheet.file, sheet.title, SheetFate::changed});
    }
    return fates;
  }
  std::map<std::string, std::vector<const List2d*>> titles;
  std::map<std::string, const Sheet*> files;
  for (const Sheet& sheet : before.sheets) {
    titles[sheet.title].push_back(&sheet.list);
    files[sheet.file] = &sheet;
  }
  std::map<std::string, Said> said;
  for (const auto& [title, lists] : titles) said.emplace(title, Said(lists));
  // On all pages of a title before any is marked.
  std::vector<Fresh> fresh;
  for (const Sheet& sheet : sheets) {
    const auto words = said.find(sheet.title);
    fresh.push_back(words == said.end() ? Fresh{} : take_known(sheet.list, words->second));
  }
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    Sheet& sheet = sheets[i];
    const auto old = files.find(sheet.file);
    if (old == files.end()) {
      fates.push_back({sheet.file, sheet.title, SheetFate::fresh});
    } else {
      const bool same = fingerprint(old->second->list) == fingerprint(sheet.list) &&
                        old->second->title == sheet.title && old->second->scale == sheet.scale &&
                        old->second->material == sheet.material;
      fates.push_back({sheet.file, sheet.title, same ? SheetFate::as_before : SheetFate::changed});
      files.erase(old);
    }
    const auto words = said.find(sheet.title);
    const bool marked = words != said.end() && mark(sheet.list, fresh[i], words->second, letter);
    const std::string at = fmt::format("at {}", letter);
    if (fates.back().fate == SheetFate::as_before)
      sheet.note = fmt::format("As at {}: nothing on this sheet changed {}.", before.revision, at);
    else if (words == said.end())
      sheet.note = fmt::format("NEW {}: {}", at, all_of(before.changes));
    else if (!marked)
      sheet.note = fmt::format("CHANGED {}: rows or views stand on another page than at {}. Print it again.",
                               at, before.revision);
    else
      sheet.note = fmt::format("CHANGED {}, marked on this sheet: {}", at, all_of(before.changes));
  }
  for (const auto& [file, sheet] : files) fates.push_back({file, sheet->title, SheetFate::gone});
  return fates;
}

}  // namespace bedwright
