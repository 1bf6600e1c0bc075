#include "solver/limit/flow_elements.h"

#include "solver/fem/index.h"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

#include <array>
#include <cmath>

namespace deadshore::solver {

namespace {

constexpr int points = 3;

/// Places of velocities, two a place, before those that are held are left out.
struct Places {
  int count = 0;
  std::vector<std::vector<int>> of_triangle;
  std::vector<std::array<bool, 2>> held;
};

/// Equation of each place and component, -1 where it is held, in an order that keeps the factor
/// sparse (approximate minimum degree of the places).
struct PlaceNumbers {
  std::vector<int> equation;
  int count = 0;

  [[nodiscard]] int at(int place, int component) const {
    return equation[index_of(2 * place + component)];
  }
};

PlaceNumbers number(const Places& places) {
  std::vector<Eigen::Triplet<double>> entries;
  for (const std::vector<int>& own : places.of_triangle) {
    for (const int row : own)
      for (const int column : own) entries.emplace_back(row, column, 1.0);
  }
  Eigen::SparseMatrix<double> graph(places.count, places.count);
  graph.setFromTriplets(entries.begin(), entries.end());
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> order;
  Eigen::AMDOrdering<int>()(graph.selfadjointView<Eigen::Lower>(), order);
  PlaceNumbers numbers{std::vector<int>(2 * index_of(places.count), -1), 0};
  for (int i = 0; i < places.count; ++i) {
    const int place = order.indices()(i);
    for (int c = 0; c < 2; ++c) {
      if (places.held[index_of(place)][index_of(c)]) continue;
      numbers.equation[index_of(2 * place + c)] = numbers.count++;
    }
  }
  return numbers;
}

/// Gradients of the three area coordinates, 1/mm.
std::array<Eigen::Vector2d, 3> gradients(const BoundProblem& problem, int triangle) {
  const auto& t = problem.triangles[index_of(triangle)];
  const double twice = 2.0 * problem.area(triangle);
  std::array<Eigen::Vector2d, 3> g;
  for (std::size_t i = 0; i < 3; ++i) {
    const mesh::Point b = problem.nodes[index_of(t[(i + 1) % 3])];
    const mesh::Point c = problem.nodes[index_of(t[(i + 2) % 3])];
    g[i] = Eigen::Vector2d(b.y - c.y, c.x - b.x) / twice;
  }
  return g;
}

/// What a Mohr stress exerts along x and y through a face with area normal `n`: columns of B.
Mohr along_x(const Eigen::Vector2d& n) {
  return {n(0), n(0), n(1)};
}
Mohr along_y(const Eigen::Vector2d& n) {
  return {n(1), -n(1), n(0)};
}

double unit_of_force(const BoundProblem& problem) {
  double area = 0.0;
  double volume = 0.0;
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    area += problem.area(triangle);
    volume += problem.area(triangle) * problem.thickness[index_of(triangle)];
  }
  const double size = std::sqrt(area / std::max(1, problem.triangle_count()));
  return problem.masonry_strength * volume / area * size;
}

/// Elements with their numbers and zero matrices.
FlowElements empty_elements(const BoundProblem& problem, const Places& places,
                            const PlaceNumbers& numbers) {
  FlowElements elements;
  elements.force_unit = unit_of_force(problem);
  ElementMatrices& matrices = elements.matrices;
  matrices.points = points;
  matrices.width = 2 * static_cast<int>(places.of_triangle.front().size());
  matrices.equations = numbers.count;
  for (const std::vector<int>& own : places.of_triangle) {
    for (const int place : own) {
      for (int c = 0; c < 2; ++c) matrices.numbers.push_back(numbers.at(place, c));
    }
  }
  matrices.values.assign(
      places.of_triangle.size() * points * 3 * index_of(matrices.width), 0.0);
  elements.load = Eigen::VectorXd::Zero(numbers.count);
  return elements;
}

void add_term(LinearForm& form, int equation, double coefficient) {
  if (equation >= 0) form.add(equation, coefficient);
}

/// Takes weight and edge loads, given along `form`s, into the load.
void load_weight(const BoundProblem& problem, FlowElements& elements) {
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    elements.lifting[index_of(triangle)].push(
        -problem.weight[index_of(triangle)] / elements.force_unit, elements.load);
  }
}

// Lower: the places are the triangles, then the first and second ends of the edges.

int end_place(const BoundProblem& problem, int edge, int node) {
  const bool is_first = problem.edges[index_of(edge)].nodes.first == node;
  return problem.triangle_count() + 2 * edge + (is_first ? 0 : 1);
}

Places lower_places(const BoundProblem& problem) {
  Places places;
  places.count = problem.triangle_count() + 2 * static_cast<int>(problem.edges.size());
  places.held.assign(index_of(places.count), {false, false});
  for (std::size_t edge = 0; edge < problem.edges.size(); ++edge) {
    const std::size_t first = index_of(problem.triangle_count()) + 2 * edge;
    places.held[first] = places.held[first + 1] = problem.edges[edge].held;
  }
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const auto& t = problem.triangles[index_of(triangle)];
    std::vector<int> own{triangle};
    for (std::size_t i = 0; i < 3; ++i) {
      const int edge = problem.edges_of[index_of(triangle)][i];
      own.push_back(end_place(problem, edge, t[i]));
      own.push_back(end_place(problem, edge, t[(i + 1) % 3]));
    }
    places.of_triangle.push_back(std::move(own));
  }
  return places;
}

void fill_lower(const BoundProblem& problem, int triangle, FlowElements& elements) {
  const auto& t = problem.triangles[index_of(triangle)];
  const auto g = gradients(problem, triangle);
  const double t_unit = problem.thickness[index_of(triangle)] * problem.masonry_strength /
                        elements.force_unit;
  const double volume = t_unit * problem.area(triangle);
  for (int corner = 0; corner < points; ++corner) {
    auto B = elements.matrices.of(triangle, corner);
    B.col(0) = -volume * along_x(g[index_of(corner)]);
    B.col(1) = -volume * along_y(g[index_of(corner)]);
  }
  for (int i = 0; i < 3; ++i) {
    const mesh::Point a = problem.nodes[index_of(t[index_of(i)])];
    const mesh::Point b = problem.nodes[index_of(t[index_of((i + 1) % 3)])];
    const Eigen::Vector2d half_normal = 0.5 * t_unit * Eigen::Vector2d(b.y - a.y, a.x - b.x);
    for (int end = 0; end < 2; ++end) {
      auto B = elements.matrices.of(triangle, (i + end) % 3);
      B.col(2 + 4 * i + 2 * end) = along_x(half_normal);
      B.col(3 + 4 * i + 2 * end) = along_y(half_normal);
    }
  }
}

// Upper: the places are the nodes, then the middles of the edges.

Places upper_places(const BoundProblem& problem) {
  Places places;
  const int nodes = static_cast<int>(problem.nodes.size());
  places.count = nodes + static_cast<int>(problem.edges.size());
  places.held.assign(index_of(places.count), {false, false});
  std::vector<char> is_used(problem.nodes.size(), 0);
  for (const auto& t : problem.triangles)
    for (const int node : t) is_used[index_of(node)] = 1;
  for (std::size_t node = 0; node < is_used.size(); ++node)
    if (is_used[node] == 0) places.held[node] = {true, true};
  for (std::size_t edge = 0; edge < problem.edges.size(); ++edge) {
    const BoundEdge& e = problem.edges[edge];
    for (const std::size_t place :
         {index_of(e.nodes.first), index_of(e.nodes.second), index_of(nodes) + edge}) {
      for (std::size_t c = 0; c < 2; ++c)
        places.held[place][c] = places.held[place][c] || e.held[c];
    }
  }
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    const auto& t = problem.triangles[index_of(triangle)];
    std::vector<int> own{t[0], t[1], t[2]};
    for (const int edge : problem.edges_of[index_of(triangle)]) own.push_back(nodes + edge);
    places.of_triangle.push_back(std::move(own));
  }
  return places;
}

void fill_upper(const BoundProblem& problem, int triangle, FlowElements& elements) {
  const auto g = gradients(problem, triangle);
  const double third = problem.thickness[index_of(triangle)] * problem.masonry_strength /
                       elements.force_unit * problem.area(triangle) / 3.0;
  for (int corner = 0; corner < points; ++corner) {
    auto B = elements.matrices.of(triangle, corner);
    const auto set = [&](int node, const Eigen::Vector2d& gradient) {
      B.col(2 * node) = third * along_x(gradient);
      B.col(2 * node + 1) = third * along_y(gradient);
    };
    for (int i = 0; i < 3; ++i) {
      set(i, (i == corner ? 3.0 : -1.0) * g[index_of(i)]);
      const int j = (i + 1) % 3;
      Eigen::Vector2d middle = Eigen::Vector2d::Zero();
      if (i == corner) middle += 4.0 * g[index_of(j)];
      if (j == corner) middle += 4.0 * g[index_of(i)];
      set(3 + i, middle);
    }
  }
}

}  // namespace

FlowElements lower_elements(const BoundProblem& problem) {
  const Places places = lower_places(problem);
  const PlaceNumbers numbers = number(places);
  FlowElements elements = empty_elements(problem, places, numbers);
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    fill_lower(problem, triangle, elements);
    add_term(elements.lifting.emplace_back(), numbers.at(triangle, 1), 1.0);
  }
  load_weight(problem, elements);
  for (int k = 0; k < static_cast<int>(problem.edges.size()); ++k) {
    const BoundEdge& edge = problem.edges[index_of(k)];
    for (const int node : {edge.nodes.first, edge.nodes.second}) {
      const int equation = numbers.at(end_place(problem, k, node), 1);
      if (equation < 0) continue;
      elements.load(equation) -= 0.5 * edge.load * problem.length(edge) / elements.force_unit;
      if (edge.pushed) elements.pushing.emplace_back().add(equation, 1.0);
    }
  }
  return elements;
}

FlowElements upper_elements(const BoundProblem& problem) {
  const Places places = upper_places(problem);
  const PlaceNumbers numbers = number(places);
  FlowElements elements = empty_elements(problem, places, numbers);
  const int nodes = static_cast<int>(problem.nodes.size());
  for (int triangle = 0; triangle < problem.triangle_count(); ++triangle) {
    fill_upper(problem, triangle, elements);
    LinearForm& lifting = elements.lifting.emplace_back();
    for (const int edge : problem.edges_of[index_of(triangle)])
      add_term(lifting, numbers.at(nodes + edge, 1), 1.0 / 3.0);
  }
  load_weight(problem, elements);
  for (int k = 0; k < static_cast<int>(problem.edges.size()); ++k) {
    const BoundEdge& edge = problem.edges[index_of(k)];
    const int first = numbers.at(edge.nodes.first, 1);
    const int second = numbers.at(edge.nodes.second, 1);
    const int middle = numbers.at(nodes + k, 1);
    LinearForm mean;
    add_term(mean, first, 1.0 / 6.0);
    add_term(mean, second, 1.0 / 6.0);
    add_term(mean, middle, 4.0 / 6.0);
    mean.push(-edge.load * problem.length(edge) / elements.force_unit, elements.load);
    if (!edge.pushed) continue;
    if (first >= 0) elements.pushing.emplace_back().add(first, 1.0);
    if (second >= 0) elements.pushing.emplace_back().add(second, 1.0);
    LinearForm& bulge = elements.pushing.emplace_back();
    add_term(bulge, first, -0.5);
    add_term(bulge, second, -0.5);
    add_term(bulge, middle, 2.0);
  }
  return elements;
}

}  // namespace deadshore::solver
