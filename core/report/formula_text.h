// A formula of formulas.h told for people: in names, in symbols, or with numbers and their units.
// Pseudo-functions become words or the branch that was taken. Knows the notation, not the figures.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace widegate {

/// What a formula's figures are; each way of telling it has one.
class FormulaFigures {
 public:
  FormulaFigures() = default;
  FormulaFigures(const FormulaFigures&) = delete;
  FormulaFigures& operator=(const FormulaFigures&) = delete;
  virtual ~FormulaFigures() = default;

  /// The number, for branches.
  [[nodiscard]] virtual double value(std::string_view key) const = 0;
  /// How it stands in the line; `unit` replaces its own when it is not empty.
  [[nodiscard]] virtual std::string text(std::string_view key, std::string_view unit) const = 0;
};

/// A branch that the numbers took.
struct TakenStep {
  std::string_view key;   ///< Figure that decided: 1 or 0 of it drops an optional part.
  bool taken = false;     ///< The optional part stands, or the first form of if_less.
  bool optional = false;  ///< Of "[ ]"; false for if_less.
};

struct ToldFormula {
  std::string text;
  std::vector<TakenStep> steps;           ///< In the order of the formula.
  std::vector<std::string_view> figures;  ///< Keys that stand in the text, each once.
};

/// Tells a formula. What it branches on is taken from `figures`, so names, symbols and numbers of
/// one working have the same form.
[[nodiscard]] ToldFormula told_formula(std::string_view formula, const FormulaFigures& figures);

}  // namespace widegate
