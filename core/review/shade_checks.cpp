// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/base/text.h"
#include "core/review/description_rules.h"
#include "core/review/finding_words.h"
#include "core/review/printed_words.h"
#include "core/review/yarn_contents.h"

namespace skeinproof {
namespace {

std::string words_of(const PrintedView& printed, const Statement& statement) {
  return statement.words.empty() ? std::string(printed.words(statement.span)) : statement.words;
}

// "no. 08", "#08" and "08" are the same number.
std::string bare_number(const PrintedView& printed, const Statement& number) {
  std::string words = compared(words_of(printed, number));
  for (const std::string_view sign :
       {"shade", "colour", "color", "col.", "col", "no.", "nr.", "no", "nr", "#"})
    if (words.rfind(sign, 0) == 0 && words.size() > sign.size()) words.erase(0, sign.size());
  return std::string(trimmed(words));
}

// Letters of a name as they are compared.
std::vector<char32_t> letters_of(std::string_view name) {
  std::vector<char32_t> letters;
  for (const char32_t c : code_points(compared(name)))
    if (c != U' ' && c != U'-' && c != U'\'' && c != U'’') letters.push_back(c);
  return letters;
}

// Optimal string alignment: single letters changed, added, left out, or exchanged with the next.
std::size_t slips_between(const std::vector<char32_t>& a, const std::vector<char32_t>& b) {
  std::vector<std::size_t> before(b.size() + 1), row(b.size() + 1), next(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    next[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = a[i - 1] == b[j - 1];
      next[j] = std::min({row[j] + 1, next[j - 1] + 1, row[j - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        next[j] = std::min(next[j], before[j - 2] + 1);
    }
    before = std::exchange(row, next);
  }
  return row[b.size()];
}

bool has_no_shade_by_nature(const ReviewInput& input, const PrintedRole& role) {
  const PrintedView& printed = input.printed;
  std::string words;
  for (const Statement* one : {role.role, role.shade, role.number})
    if (one != nullptr)
      words += lower_ascii(printed.words(sentence_around(printed.text(), one->span.begin))) + " ";
  if (role.yarn >= 0 && static_cast<std::size_t>(role.yarn) < printed.yarns().size())
    words += printed_description(printed, printed.yarns()[static_cast<std::size_t>(role.yarn)]);
  return says(words, {"undyed", "natural", "handspun", "hand-spun", "oddment", "leftover", "scrap",
                      "waste yarn", "any colour", "any color", "one-off", "one of a kind"});
}

void say_incomplete(const ReviewInput& input, Findings& findings,
                    const std::vector<const PrintedRole*>& roles, const std::string& missing) {
  if (roles.empty()) return;
  std::vector<std::string> labels;
  Finding& finding = findings.add("");
  finding.apart = missing;
  for (const PrintedRole* role : roles) {
    labels.push_back(role->label.empty() ? "the yarn" : role->label);
    if (!role->label.empty()) finding.roles.push_back(role->label);
    for (const Statement* one : {role->shade, role->number, role->role})
      if (one != nullptr) {
        show(finding, input.printed, *one);
        break;
      }
    if (const Role* fact = input.pattern.role(role->fact)) {
      const std::string& known = missing == "shade name" ? fact->shade.name : fact->shade.number;
      const Statement* beside = missing == "shade name" ? role->number : role->shade;
      if (known.empty() || beside == nullptr) continue;
      if (missing == "shade name")
        propose(finding, input.printed, {beside->span.begin, beside->span.begin}, known + " ");
      else
        propose(finding, input.printed, {beside->span.end, beside->span.end}, " " + known);
    }
  }
  if (finding.places.empty()) finding.places.push_back(TextSpan{});
  finding.title = "no " + missing + ": " + quoted(join(labels, ", "));
  finding.evidence.push_back("the house prints " + std::string(missing == "shade number"
                                                                   ? "name and number of each shade"
                                                                   : "the name of each shade"));
  finding.query = "Could you add the " + missing + " of " + listed(labels) + "?";
}

// Whether the text says that two colours are the same yarn on purpose.
bool says_same_on_purpose(const PrintedView& printed, const std::vector<const PrintedRole*>& roles) {
  for (const PrintedRole* role : roles)
    for (const Statement* one : {role->role, role->shade, role->number})
      if (one != nullptr && says(lower_ascii(printed.words(sentence_around(printed.text(), one->span.begin))),
                                 {"same shade", "same colour", "same color", "same yarn", "both", "as mc",
                                  "as main colour", "also"}))
        return true;
  return false;
}

// The right number of one of two roles, where the facts know another than the one printed.
void propose_number(Finding& finding, const ReviewInput& input,
                    const std::vector<const PrintedRole*>& roles) {
  for (const PrintedRole* role : roles) {
    const Role* fact = input.pattern.role(role->fact);
    if (fact == nullptr || fact->shade.number.empty()) continue;
    const std::string printed = bare_number(input.printed, *role->number);
    if (compared(fact->shade.number) == printed) continue;
    const TextSpan& span = role->number->span;
    const auto at = compared(input.printed.words(span)).rfind(printed);
    if (at == std::string::npos || input.printed.words(span).size() < at + printed.size()) continue;
    propose(finding, input.printed, {span.begin + at, span.begin + at + printed.size()}, fact->shade.number);
  }
}

void say_shared(const ReviewInput& input, Findings& findings, const std::vector<const PrintedRole*>& roles,
                const std::string& title, const std::string& question) {
  std::vector<std::string> each;
  for (const PrintedRole* role : roles) {
    std::string words = role->label;
    if (role->shade != nullptr) words += " " + words_of(input.printed, *role->shade);
    each.push_back(words + " " + bare_number(input.printed, *role->number));
  }
  Finding& finding = findings.add(title + ": " + quoted(join(each, ", ")));
  for (const PrintedRole* role : roles) {
    finding.roles.push_back(role->label);
    show(finding, input.printed, *role->number);
    if (role->shade != nullptr) rest_on(finding, input.printed, *role->shade);
  }
  finding.evidence = each;
  propose_number(finding, input, roles);
  finding.query = listed(each) + " " + question;
}

// A name that is listed in the block, and where.
struct ListedName {
  std::string name;  // as printed
  std::vector<char32_t> letters;
  std::string role;  // label; empty for a yarn
  const Statement* statement = nullptr;
};

bool is_slip(const std::vector<char32_t>& name, const std::vector<char32_t>& other) {
  const std::size_t length = std::min(name.size(), other.size());
  if (length < 4 || name == other) return false;
  const std::size_t allowed = length < 6 ? 1 : 2;
  const std::size_t apart = std::max(name.size(), other.size()) - length;
  if (apart > allowed || (allowed == 2 && name.front() != other.front())) return false;
  return slips_between(name, other) <= allowed;
}

class ListedNames {
 public:
  explicit ListedNames(const PrintedView& printed) {
    constexpr std::size_t most = 200;  // of a block that a person wrote
    for (const PrintedRole& role : printed.roles())
      if (role.shade != nullptr && names_.size() < most)
        add(words_of(printed, *role.shade), role.label, role.shade);
    for (const PrintedYarn& yarn : printed.yarns())
      for (const Statement* name : yarn.names) {
        add_known_words(words_of(printed, *name));
        if (names_.size() >= most) continue;
        for (const std::string& word : split(tidy_spaces(words_of(printed, *name)), ' '))
          if (letters_of(word).size() >= 6) add(word, "", name);
      }
    for (const Statement* shade : printed.all(StatementKind::shade_name))
      add_known(words_of(printed, *shade));
  }

  // The listed name that this one is likely a slip for.
  const ListedName* meant_by(const std::string& name) const {
    const auto letters = letters_of(name);
    if (letters.size() > 40 || known_.count(letters) > 0) return nullptr;
    for (const ListedName& listed : names_)
      if (is_slip(letters, listed.letters)) return &listed;
    return nullptr;
  }

 private:
  void add(const std::string& name, const std::string& role, const Statement* statement) {
    names_.push_back({name, letters_of(name), role, statement});
    add_known(name);
  }
  void add_known(const std::string& name) {
    known_.insert(letters_of(name));
    add_known_words(name);
  }
  void add_known_words(const std::string& name) {
    for (const std::string& word : split(tidy_spaces(name), ' ')) known_.insert(letters_of(word));
  }

  std::vector<ListedName> names_;
  std::set<std::vector<char32_t>> known_;
};

void say_slip(const ReviewInput& input, Findings& findings, const TextSpan& span, const std::string& name,
              const ListedName& meant, const Statement* statement) {
  const PrintedView& printed = input.printed;
  Finding& finding = findings.add("a name that the block does not list: " + quoted(name));
  if (!meant.role.empty()) finding.roles.push_back(meant.role);
  finding.apart = compared(name);
  finding.places.push_back(span);
  if (statement != nullptr) rest_on(finding, printed, *statement);
  show(finding, printed, *meant.statement);
  finding.evidence = {quoted(name) + " here, " + quoted(meant.name) + " in the block"};
  propose(finding, printed, span, meant.name);
  finding.query =
      "The text has " + quoted(name) + ", the block " + quoted(meant.name) + ". Are they the same?";
}

bool is_letter(unsigned char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c >= 0x80; }

// Names in running text: words with a capital that open no sentence. There, other words are so many that only
// those that begin like the listed name are taken.
void look_through_text(const ReviewInput& input, Findings& findings, const ListedNames& names,
                       std::set<std::string>& said) {
  const std::string& text = input.printed.text();
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < text.size();) {
    if (!is_letter(static_cast<unsigned char>(text[i]))) {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < text.size() && is_letter(static_cast<unsigned char>(text[end]))) ++end;
    std::size_t before = i;
    while (before > 0 && (text[before - 1] == ' ' || text[before - 1] == '"' || text[before - 1] == '\''))
      --before;
    const bool opens =
        before == 0 || std::string_view(".!?\n\r\t").find(text[before - 1]) != std::string_view::npos;
    const bool capital = text[i] >= 'A' && text[i] <= 'Z';
    const TextSpan span{i, end};
    i = end;
    if (!capital || opens || end - span.begin < 4 || end - span.begin > 40) continue;
    if (!seen.insert(input.printed.words(span)).second) continue;
    const std::string name(input.printed.words(span));
    if (said.count(compared(name)) > 0) continue;
    const ListedName* meant = names.meant_by(name);
    if (meant == nullptr || code_points(meant->name).front() != code_points(name).front()) continue;
    said.insert(compared(name));
    say_slip(input, findings, span, name, *meant, nullptr);
  }
}

}  // namespace

bool is_slip_of(std::string_view name, std::string_view other) {
  return is_slip(letters_of(name), letters_of(other));
}

void shades_are_complete(const ReviewInput& input, Findings& findings) {
  const bool numbers = input.pattern.house().shade_number != ShadeNumber::left_out;
  std::vector<const PrintedRole*> no_name, no_number;
  for (const PrintedRole& role : input.printed.roles()) {
    if (has_no_shade_by_nature(input, role)) continue;
    if (role.shade == nullptr)
      no_name.push_back(&role);
    else if (role.number == nullptr && numbers)
      no_number.push_back(&role);
  }
  if (input.printed.roles().empty())
    findings.cannot("no colours were read in the yarn block", "a block that lists them");
  say_incomplete(input, findings, no_name, "shade name");
  say_incomplete(input, findings, no_number, "shade number");
}

void one_number_one_shade(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  std::map<std::pair<int, std::string>, std::vector<const PrintedRole*>> by_number, by_name;
  for (const PrintedRole& role : printed.roles()) {
    if (role.number == nullptr) continue;
    by_number[{role.yarn, bare_number(printed, *role.number)}].push_back(&role);
    if (role.shade != nullptr)
      by_name[{role.yarn, compared(words_of(printed, *role.shade))}].push_back(&role);
  }
  for (const auto& row : by_number) {
    const auto& roles = row.second;
    if (roles.size() < 2) continue;
    const auto name_of_role = [&](const PrintedRole* role) {
      return role->shade == nullptr ? std::string() : compared(words_of(printed, *role->shade));
    };
    const bool same_shade = std::all_of(roles.begin(), roles.end(), [&](const PrintedRole* role) {
      return name_of_role(role) == name_of_role(roles.front());
    });
    if (same_shade && says_same_on_purpose(printed, roles)) continue;
    say_shared(input, findings, roles, same_shade ? "two colours are one shade" : "one number for two shades",
               same_shade ? "are the same shade. Is that meant?" : "share a number. Which of them is right?");
  }
  for (const auto& row : by_name) {
    const auto& roles = row.second;
    const bool differ = std::any_of(roles.begin(), roles.end(), [&](const PrintedRole* role) {
      return bare_number(printed, *role->number) != bare_number(printed, *roles.front()->number);
    });
    if (roles.size() > 1 && differ)
      say_shared(input, findings, roles, "two numbers for one shade",
                 "give one shade two numbers. Which of them is right?");
  }
}

void names_are_those_listed(const ReviewInput& input, Findings& findings) {
  const PrintedView& printed = input.printed;
  const ListedNames names(printed);
  std::set<std::string> said;
  for (const Statement& one : printed.reading().statements) {
    if (one.kind != StatementKind::legend_shade && one.kind != StatementKind::shade_mention) continue;
    const std::string name = words_of(printed, one);
    if (said.count(compared(name)) > 0) continue;
    const ListedName* meant = names.meant_by(name);
    if (meant == nullptr) continue;
    said.insert(compared(name));
    const auto at = printed.words(one.span).find(name);
    const TextSpan span = at == std::string_view::npos
                              ? one.span
                              : TextSpan{one.span.begin + at, one.span.begin + at + name.size()};
    say_slip(input, findings, span, name, *meant, &one);
  }
  look_through_text(input, findings, names, said);
}

}  // namespace skeinproof
