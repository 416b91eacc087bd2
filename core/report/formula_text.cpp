#include "core/report/formula_text.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <tuple>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr std::string_view kTimes = "·";
constexpr std::string_view kMinus = "−";
constexpr std::string_view kSquare = "²";

/// How far a piece binds: what holds it together when it stands in another.
enum class Binding { sum, product, atom };

struct Piece {
  std::string text;
  double value = 0;
  Binding binding = Binding::atom;
};

std::string in_brackets(const Piece& piece) {
  return piece.binding == Binding::atom ? piece.text : "(" + piece.text + ")";
}

/// "a", "a and b", "a, b and c"
std::string listed(const std::vector<Piece>& pieces) {
  std::string text;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (i > 0) text += i + 1 == pieces.size() ? " and " : ", ";
    text += pieces[i].text;
  }
  return text;
}

/// Reads a formula and tells it in one go.
class Teller {
 public:
  Teller(std::string_view formula, const FormulaFigures& figures)
      : rest_(formula), figures_(figures) {}

  ToldFormula tell() {
    told_.text = sum().text;
    return std::move(told_);
  }

 private:
  void skip_blanks() {
    while (rest_.starts_with(' ')) rest_.remove_prefix(1);
  }
  bool take(std::string_view sign) {
    skip_blanks();
    if (!rest_.starts_with(sign)) return false;
    rest_.remove_prefix(sign.size());
    return true;
  }

  Piece sum() {
    Piece left = product();
    while (true) {
      const bool plus = take("+");
      if (!plus && !take(kMinus)) return left;
      const Piece right = product();
      left.text += (plus ? " + " : " − ") + right.text;
      left.value += plus ? right.value : -right.value;
      left.binding = Binding::sum;
    }
  }

  Piece product() {
    Piece left = factor();
    while (true) {
      const bool times = take(kTimes);
      if (!times && !take("/")) return left;
      const Piece right = factor();
      if (left.text.empty()) {  // An optional part that is not there.
        left = right;
        continue;
      }
      if (right.text.empty()) continue;
      left.text += (times ? " · " : " / ") + right.text;
      left.value = times ? left.value * right.value : left.value / right.value;
      left.binding = Binding::product;
    }
  }

  Piece factor() {
    if (take(kMinus)) {
      Piece piece = factor();
      piece.text = "−" + piece.text;
      piece.value = -piece.value;
      return piece;
    }
    Piece piece = atom();
    if (!take(kSquare)) return piece;
    // A number with its unit is squared as a whole.
    const bool bare = piece.text.find(' ') == std::string::npos || piece.text.front() == '(';
    piece.text = (bare ? piece.text : "(" + piece.text + ")") + "²";
    piece.value *= piece.value;
    return piece;
  }

  Piece atom() {
    skip_blanks();
    if (take("(")) {
      Piece inside = sum();
      take(")");
      const bool alone = inside.binding == Binding::atom;
      return {alone ? inside.text : "(" + inside.text + ")", inside.value, Binding::atom};
    }
    if (take("[")) return optional();
    if (take("{")) return figure();
    if (!rest_.empty() && (rest_.front() >= 'a' && rest_.front() <= 'z')) return function();
    return constant();
  }

  Piece figure() {
    const std::size_t end = rest_.find('}');
    std::string_view key = rest_.substr(0, end);
    rest_.remove_prefix(end + 1);
    std::string_view unit;
    if (const std::size_t at = key.find('@'); at != std::string_view::npos) {
      unit = key.substr(at + 1);
      key = key.substr(0, at);
    }
    last_key_ = key;
    auto& seen = told_.figures;
    if (std::find(seen.begin(), seen.end(), key) == seen.end()) seen.push_back(key);
    return {figures_.text(key, unit), figures_.value(key), Binding::atom};
  }

  /// "1000 mm/m": a number and whatever follows it up to the next sign.
  Piece constant() {
    const std::string number(rest_.substr(0, rest_.find_first_not_of("0123456789.")));
    rest_.remove_prefix(number.size());
    const bool large = number.size() > 4 && number.find('.') == std::string::npos;
    std::string text = large ? print_grouped(std::atoll(number.c_str())) : number;
    std::string_view unit = rest_;
    std::size_t end = 0;
    const auto ends = [&](std::size_t at) {
      const std::string_view tail = unit.substr(at);
      return tail.empty() || tail.starts_with(" ·") || tail.starts_with(" /") ||
             tail.starts_with(" +") || tail.starts_with(" −") || tail.starts_with(")") ||
             tail.starts_with(",") || tail.starts_with("]");
    };
    while (!ends(end)) ++end;
    text += unit.substr(0, end);
    rest_.remove_prefix(end);
    return {std::move(text), std::strtod(number.c_str(), nullptr), Binding::atom};
  }

  /// "[piece]": left out when its first figure changes nothing: a factor of 1, a share of 0.
  Piece optional() {
    const std::size_t known = told_.figures.size();
    Piece piece = sum();
    take("]");
    const std::string_view key = told_.figures.size() > known ? told_.figures[known] : last_key_;
    const double deciding = figures_.value(key);
    const bool stands = std::abs(piece.value - 1) > 1e-12 && std::isfinite(deciding);
    told_.steps.push_back({key, stands, true});
    if (stands) return {in_brackets(piece), piece.value, Binding::atom};
    told_.figures.resize(known);
    return {"", 1, Binding::atom};
  }

  Piece function() {
    const std::string_view name = rest_.substr(0, rest_.find_first_of("( ,)"));
    rest_.remove_prefix(name.size());
    if (name == "pi") return {"π", 3.14159265358979323846, Binding::atom};
    take("(");
    if (name == "if_less") return branch();
    std::vector<Piece> parts = arguments();
    return call(name, parts);
  }

  std::vector<Piece> arguments() {
    std::vector<Piece> parts;
    do {
      parts.push_back(sum());
    } while (take(","));
    take(")");
    return parts;
  }

  /// if_less(a, b, x, y): only the form that was taken is told; the other is read and forgotten.
  Piece branch() {
    const std::size_t known = told_.figures.size();
    const Piece first = sum();
    const std::string_view key = last_key_;
    take(",");
    const Piece second = sum();
    told_.figures.resize(known);
    take(",");
    const bool less = first.value < second.value;
    const std::size_t steps = told_.steps.size();
    Piece chosen = sum();
    take(",");
    if (less) {
      const std::size_t kept = told_.figures.size();
      const std::size_t kept_steps = told_.steps.size();
      (void)sum();
      told_.figures.resize(kept);
      told_.steps.resize(kept_steps);
    } else {
      told_.figures.resize(known);
      told_.steps.resize(steps);
      chosen = sum();
    }
    take(")");
    told_.steps.push_back({key, less, false});
    return {in_brackets(chosen), chosen.value, Binding::atom};
  }

  static Piece call(std::string_view name, const std::vector<Piece>& parts) {
    const Piece& first = parts.front();
    const double x = first.value;
    const auto rounded = [&](const char* how, double value) {
      return Piece{"(" + first.text + ", " + how + ")", value, Binding::atom};
    };
    if (name == "sqrt") return {"√(" + first.text + ")", std::sqrt(x), Binding::atom};
    if (name == "abs") return {"|" + first.text + "|", std::abs(x), Binding::atom};
    if (name == "atan") return {"arctan(" + first.text + ")", std::atan(x), Binding::atom};
    if (name == "sin") return {"sin(" + first.text + ")", x, Binding::atom};
    if (name == "log2") return {"log₂(" + first.text + ")", std::log2(x), Binding::atom};
    if (name == "ceil") return rounded("rounded up", std::ceil(x));
    if (name == "floor") return rounded("rounded down", std::floor(x));
    if (name == "round") return rounded("to the nearest whole number", std::floor(x + 0.5));
    if (name == "even_up") return rounded("up to the next even number", x);
    if (name == "even_down") return rounded("down to an even number", x);
    if (name == "shared") return shared(parts);
    if (name == "roll") return roll(parts);
    return extreme(name == "min", parts);
  }

  static Piece extreme(bool least, const std::vector<Piece>& parts) {
    double value = parts.front().value;
    for (const Piece& part : parts)
      value = least ? std::min(value, part.value) : std::max(value, part.value);
    const char* word =
        parts.size() == 2 ? (least ? "smaller" : "larger") : (least ? "smallest" : "largest");
    return {"(the " + std::string(word) + " of " + listed(parts) + ")", value, Binding::atom};
  }

  /// shared(left, top, right, bottom, circle): an area that has no short formula.
  static Piece shared(const std::vector<Piece>& parts) {
    return {"(the area shared by a circle " + parts[4].text + " across and the rectangle from " +
                parts[0].text + ", " + parts[1].text + " to " + parts[2].text + ", " +
                parts[3].text + " around its middle)",
            0, Binding::atom};
  }

  /// roll(a, b, x): the roll at which the corner (a, b) first meets a side at distance x.
  static Piece roll(const std::vector<Piece>& parts) {
    const auto& [a, b, x] = std::tie(parts[0], parts[1], parts[2]);
    const double reach = std::sqrt(a.value * a.value + b.value * b.value);
    if (x.value >= reach) return {"90°", 90, Binding::atom};
    const double radians = std::atan2(b.value, a.value) - std::acos(x.value / reach);
    constexpr double kDegrees = 57.295779513082320877;
    return {"arctan(" + in_brackets(b) + " / " + in_brackets(a) + ") − arccos(" + in_brackets(x) +
                " / √(" + squared(a) + " + " + squared(b) + "))",
            radians * kDegrees, Binding::sum};
  }
  static std::string squared(const Piece& piece) {
    const bool bare = piece.text.find(' ') == std::string::npos;
    return (bare ? piece.text : "(" + piece.text + ")") + "²";
  }

  std::string_view rest_;
  const FormulaFigures& figures_;
  std::string_view last_key_;
  ToldFormula told_;
};

}  // namespace

ToldFormula told_formula(std::string_view formula, const FormulaFigures& figures) {
  return Teller(formula, figures).tell();
}

}  // namespace widegate
