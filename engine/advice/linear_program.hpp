#pragma once
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace guywright {

/// Eight guys, three legs that may also pull, the largest and what is lacking.
inline constexpr std::size_t k_most_unknowns = 16;

/// A linear program with few unknowns and many conditions: least cost . x with x >= 0 and, for every row, a . x >= at_least (or =).
struct LinearProgram {
    using Coefficients = std::array<double, k_most_unknowns>;
    struct Row {
        Coefficients a{};
        double at_least = 0.0;
        bool equal = false;
    };
    std::size_t unknowns = 0;
    Coefficients cost{};  ///< none negative
    std::vector<Row> rows;
};

struct ProgramAnswer {
    bool solved = false;  ///< false: no x keeps every row, or rounding stopped the search
    LinearProgram::Coefficients x{};
};

namespace detail {

/// The dual program in a simplex table: a row for every unknown, a column for every condition. It starts feasible because no cost is
/// negative, and a column more costs nothing, which suits few unknowns and many conditions.
class DualTable {
public:
    explicit DualTable(const LinearProgram& p) : rows_(p.unknowns) {
        for (const LinearProgram::Row& r : p.rows) {
            add_column(r, 1.0);
            if (r.equal) add_column(r, -1.0);
        }
        conditions_ = gain_.size();
        for (std::size_t i = 0; i < rows_; ++i) {
            for (std::size_t k = 0; k < rows_; ++k) body_[k].push_back(i == k ? 1.0 : 0.0);
            gain_.push_back(0.0);
            right_[i] = p.cost[i];
            basis_[i] = conditions_ + i;
        }
    }

    ProgramAnswer solve() {
        constexpr int quick_rounds = 300, most_rounds = 3000;
        for (int round = 0; round < most_rounds; ++round) {
            std::size_t column = 0, row = 0;
            if (!entering(column, round < quick_rounds)) return answer();
            if (!leaving(column, row)) return {};
            pivot(row, column);
        }
        return {};
    }

private:
    static constexpr double k_tiny = 1e-10;

    void add_column(const LinearProgram::Row& r, double sign) {
        for (std::size_t i = 0; i < rows_; ++i) body_[i].push_back(sign * r.a[i]);
        gain_.push_back(sign * r.at_least);
    }

    /// The column that gains most; later the first that gains (Bland), which cannot go round in circles.
    [[nodiscard]] bool entering(std::size_t& column, bool most) const {
        double best = k_tiny;
        bool found = false;
        for (std::size_t c = 0; c < gain_.size(); ++c) {
            if (!(gain_[c] > best)) continue;
            column = c;
            found = true;
            if (!most) break;
            best = gain_[c];
        }
        return found;
    }

    [[nodiscard]] bool leaving(std::size_t column, std::size_t& row) const {
        double least = HUGE_VAL;
        bool found = false;
        for (std::size_t i = 0; i < rows_; ++i) {
            if (!(body_[i][column] > k_tiny)) continue;
            const double room = right_[i] / body_[i][column];
            if (room > least || (room == least && basis_[i] > basis_[row])) continue;
            least = room;
            row = i;
            found = true;
        }
        return found;
    }

    void pivot(std::size_t row, std::size_t column) {
        const double by = 1.0 / body_[row][column];
        for (double& v : body_[row]) v *= by;
        right_[row] *= by;
        for (std::size_t i = 0; i < rows_; ++i)
            if (i != row) right_[i] = std::fmax(0.0, right_[i] - body_[i][column] * right_[row]);
        for (std::size_t i = 0; i < rows_; ++i)
            if (i != row) subtract(body_[i], body_[row], body_[i][column]);
        subtract(gain_, body_[row], gain_[column]);
        basis_[row] = column;
    }

    static void subtract(std::vector<double>& from, const std::vector<double>& what, double times) {
        if (times == 0.0) return;
        for (std::size_t c = 0; c < from.size(); ++c) from[c] -= times * what[c];
    }

    [[nodiscard]] ProgramAnswer answer() const {
        ProgramAnswer out{.solved = true, .x = {}};
        for (std::size_t i = 0; i < rows_; ++i) out.x[i] = -gain_[conditions_ + i];
        return out;
    }

    std::size_t rows_, conditions_ = 0;
    std::array<std::vector<double>, k_most_unknowns> body_;
    std::vector<double> gain_;
    LinearProgram::Coefficients right_{};
    std::array<std::size_t, k_most_unknowns> basis_{};
};

}  // namespace detail

/// Solves it, the same way every time. Exact to rounding where every number is of about the size of one.
[[nodiscard]] inline ProgramAnswer solve(const LinearProgram& p) { return detail::DualTable(p).solve(); }

}  // namespace guywright
