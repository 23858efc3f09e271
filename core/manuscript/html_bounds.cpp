// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/html_bounds.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_open = 400;
constexpr std::size_t most_attributes = 250;
constexpr std::size_t most_repeated = 4'000'000;  // formatting elements built anew, all paragraphs together

// Whether a name is among names parted and surrounded by spaces.
bool is_one_of(std::string_view name, std::string_view names) {
  for (auto at = names.find(name, 1); at != std::string_view::npos; at = names.find(name, at + 1))
    if (names[at - 1] == ' ' && names[at + name.size()] == ' ') return true;
  return false;
}

// Elements without an end, and those that the next of their kind ends: none of them goes deeper.
constexpr std::string_view never_deep =
    " area base br col embed hr img input link meta param source track wbr p li dt dd tr tbody "
    "thead tfoot body html head option ";
// Elements whose end tag ends what stands open inside them; other end tags do not reach beyond them.
constexpr std::string_view blocks =
    " address article aside blockquote button center details dir div dl fieldset figcaption "
    "figure footer form h1 h2 h3 h4 h5 h6 header hgroup listing main menu nav ol pre section "
    "summary ul ";
// Elements that no end tag from inside them reaches beyond.
constexpr std::string_view walls = " table td th caption object applet marquee template svg math select ";
// Elements whose content is no markup, outside of drawings and formulas.
constexpr std::string_view raw = " script style textarea title xmp iframe noembed noframes ";

// Elements that end a drawing or formula they begin in, and those that hold a page inside of one.
constexpr std::string_view leave_drawings =
    " b big blockquote body br center code dd div dl dt em embed font h1 h2 h3 h4 h5 h6 head hr i "
    "img li listing menu meta nobr ol p pre ruby s small span strong strike sub sup table tt u ul "
    "var foreignobject desc title annotation-xml mi mo mn ms mtext ";

class OpenElements {
 public:
  void start(std::string_view name, bool closes_itself) {
    if (is_one_of(name, " svg math ")) in_drawing_ = true;
    if (is_one_of(name, leave_drawings)) in_drawing_ = false;
    if (in_drawing_ && closes_itself) return;
    if (drawings_ == 0 && name == "option" && !open_.empty() && open_.back().name == name) return;
    if (!foreign() && is_one_of(name, never_deep)) {
      repeated_ += formatting_;
      if (name == "tr") end_cell();
      return;
    }
    const bool cell = name == "td" || name == "th";
    if (cell && !foreign()) {
      if (tables_ == 0) return;
      end_cell();
    }
    const Kind kind = kind_of(name);
    if (kind != Kind::formatting) repeated_ += formatting_;
    open_.push_back({std::string(name), kind});
    count(open_.back(), 1);
  }

  void end(std::string_view name) {
    if (is_one_of(name, " svg math p br ")) in_drawing_ = false;
    if (name == "tr") return end_cell();
    if (!foreign() && is_one_of(name, never_deep)) return;
    const Kind kind = kind_of(name);
    for (std::size_t at = open_.size(); at-- > 0;) {
      if (open_[at].name == name) return close(at);
      if (open_[at].kind == Kind::wall && name != "table") return;
      if (open_[at].kind == Kind::block && kind == Kind::formatting) return;
    }
  }

  // Inside drawings, formulas and lists of choices other rules hold.
  bool foreign() const { return drawings_ + selects_ > 0; }
  std::size_t depth() const { return open_.size(); }
  std::size_t repeated() const { return repeated_; }

 private:
  enum class Kind { formatting, block, wall };
  struct Element {
    std::string name;
    Kind kind;
  };
  static Kind kind_of(std::string_view name) {
    if (is_one_of(name, walls)) return Kind::wall;
    return is_one_of(name, blocks) ? Kind::block : Kind::formatting;
  }
  // What formatting stands open inside an ended block is opened again behind it; a wall ends it for good.
  void close(std::size_t at) {
    const Kind closed = open_[at].kind;
    std::size_t to = at;
    for (std::size_t i = at; i < open_.size(); ++i) {
      const bool stays = i != at && closed != Kind::wall && open_[i].kind == Kind::formatting;
      if (!stays) {
        count(open_[i], -1);
        continue;
      }
      if (to != i) open_[to] = std::move(open_[i]);
      ++to;
    }
    open_.resize(to);
  }
  void count(const Element& element, int by) {
    if (element.kind == Kind::formatting) formatting_ += static_cast<std::size_t>(by);
    if (element.name == "svg" || element.name == "math") drawings_ += by;
    if (element.name == "select") selects_ += by;
    if (element.name == "table") tables_ += by;
  }
  void end_cell() {
    for (std::size_t at = open_.size(); at-- > 0;) {
      if (open_[at].name == "table") return;
      if (open_[at].name == "td" || open_[at].name == "th") return close(at);
    }
  }

  std::vector<Element> open_;
  std::size_t formatting_ = 0;
  std::size_t repeated_ = 0;
  int drawings_ = 0, selects_ = 0, tables_ = 0;
  bool in_drawing_ = false;
};

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

constexpr std::string_view white = " \t\n\r\f";

struct Tag {
  std::string name;
  bool ends = false;
  bool closes_itself = false;  // "<path/>"
  std::size_t attributes = 0;
  std::size_t after = 0;  // behind its ">"
};

// Reads a tag at its "<". A quotation mark quotes only behind an equals sign.
Tag tag_at(std::string_view html, std::size_t at) {
  Tag tag;
  tag.ends = html[at + 1] == '/';
  const std::size_t name = at + (tag.ends ? 2 : 1);
  std::size_t i = std::min(html.find_first_of(" \t\n\r\f/>", name), html.size());
  tag.name = lower_ascii(html.substr(name, std::min<std::size_t>(i - name, 32)));
  while (i < html.size() && html[i] != '>') {
    i = std::min(html.find_first_not_of(" \t\n\r\f/", i), html.size());
    if (i == html.size() || html[i] == '>') break;
    ++tag.attributes;
    i = std::min(html.find_first_of(" \t\n\r\f/>=", i + 1), html.size());
    const std::size_t equals = std::min(html.find_first_not_of(white, i), html.size());
    if (equals == html.size() || html[equals] != '=') continue;
    i = std::min(html.find_first_not_of(white, equals + 1), html.size());
    if (i == html.size()) break;
    if (html[i] == '"' || html[i] == '\'')
      i = std::min(html.find(html[i], i + 1), html.size() - 1) + 1;
    else
      i = std::min(html.find_first_of(" \t\n\r\f>", i), html.size());
  }
  tag.closes_itself = i < html.size() && html[i - 1] == '/';
  tag.after = std::min(i, html.size() - 1) + 1;
  return tag;
}

std::size_t after_comment(std::string_view html, std::size_t at) {
  if (html.substr(at, 4) != "<!--") return std::min(html.find('>', at), html.size() - 1) + 1;
  const std::size_t plain = html.find("-->", at + 2), odd = html.find("--!>", at + 2);
  return std::min({plain == std::string_view::npos ? html.size() : plain + 3,
                   odd == std::string_view::npos ? html.size() : odd + 4, html.size()});
}

// Behind the content of an element that holds no markup: at its end tag.
std::size_t after_raw(std::string_view html, std::size_t at, const std::string& name) {
  for (at = html.find("</", at); at != std::string_view::npos; at = html.find("</", at + 2))
    if (lower_ascii(html.substr(at + 2, name.size())) == name) return at;
  return html.size();
}

Expected<void> refused(std::string found) {
  return failure(ErrorKind::out_of_range, std::move(found), "a page of text, lists and tables");
}

}  // namespace

Expected<void> check_html_bounds(std::string_view html) {
  OpenElements open;
  for (std::size_t at = html.find('<'); at < html.size(); at = html.find('<', at)) {
    const char next = at + 1 < html.size() ? html[at + 1] : '\0';
    const char after = at + 2 < html.size() ? html[at + 2] : '\0';
    if (next == '!' || next == '?' || (next == '/' && !is_letter(after))) {
      at = after_comment(html, at);
      continue;
    }
    if (!is_letter(next) && next != '/') {
      ++at;
      continue;
    }
    const Tag tag = tag_at(html, at);
    at = tag.after;
    if (tag.attributes > most_attributes)
      return refused("an element “" + tag.name + "” of more than " + std::to_string(most_attributes) +
                     " attributes");
    if (tag.ends) {
      open.end(tag.name);
      continue;
    }
    if (tag.name == "plaintext") break;
    if (!open.foreign() && is_one_of(tag.name, raw))
      at = after_raw(html, at, tag.name);
    else
      open.start(tag.name, tag.closes_itself);
    if (open.depth() > most_open)
      return refused("elements open inside each other more than " + std::to_string(most_open) + " deep");
    if (open.repeated() > most_repeated) return refused("formatting that is never closed, over and over");
  }
  return {};
}

}  // namespace skeinproof
