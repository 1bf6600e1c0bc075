#pragma once

#include <optional>
#include <string>
#include <vector>

/// A plane frame as plain values. Everything in N, mm, N/mm2 and radians.
///
/// A simple beam of 4 m with 10 kN at its middle, solved by solve_frame.h:
/// \code
/// Frame frame;
/// frame.nodes = {{0.0, 0.0, "left end"}, {4000.0, 0.0, "right end"}};
/// FrameMember member;
/// member.to = 1;  // from node 0
/// member.E = 210e3;
/// member.A = 3000.0;
/// member.I = 20e6;
/// frame.members = {member};
/// frame.supports = {pinned_support(0), pinned_support(1)};
/// frame.point_loads = {{.member = 0, .at = 2000.0, .y = -10e3}};
/// const FrameSolution beam = solve(frame).value();
/// const SectionState middle = section(beam.members[0], 2000.0);
/// fmt::print("{:.1f} kN, {:.1f} kNm, {:.2f} mm\n", beam.reactions[0].y / 1e3,
///            middle.moment / 1e6, middle.deflection);
/// \endcode
///
/// Sign conventions, for all of solver/frame:
/// - x to the right, y up; rotations and moments anticlockwise positive; loads and displacements
///   along +x and +y positive.
/// - A member runs from node `from` to node `to`; its left side is 90 degrees anticlockwise from
///   that. Distances along it are measured from `from`.
/// - Axial force: tension positive. Moment: positive where it stretches the member's right side
///   (sagging, for a member that runs to the right). Shear is the moment's slope along the member.
///   Deflection across the member: to its left positive.
/// - Springs and their forces: compression positive. Reactions: as they act on the frame.
namespace deadshore::solver {

/// A point at which members meet, are held or are loaded.
struct FrameNode {
  double x = 0.0;    ///< mm
  double y = 0.0;    ///< mm
  std::string name;  ///< for messages; may be empty
};

/// A straight prismatic member between two nodes.
struct FrameMember {
  int from = 0;                           ///< node at its start
  int to = 0;                             ///< node at its end
  double E = 0.0;                         ///< modulus of elasticity, N/mm2
  double A = 0.0;                         ///< area, mm2
  double I = 0.0;                         ///< second moment of area, mm4
  std::optional<double> shear_stiffness;  ///< G A_s, N; rigid in shear if empty
  bool pin_from = false;                  ///< no moment passes at `from`
  bool pin_to = false;                    ///< no moment passes at `to`
  double weight = 0.0;                    ///< N/mm of its length, acts down (-y)
  std::string name;                       ///< for messages; may be empty
};

/// Holds a node: each direction that has a value is held at that displacement, the others are free.
struct FrameSupport {
  int node = 0;
  std::optional<double> x;         ///< mm
  std::optional<double> y;         ///< mm
  std::optional<double> rotation;  ///< radians
};

/// A support held in x and y, free to turn.
[[nodiscard]] FrameSupport pinned_support(int node);
/// A support held in x, y and against turning.
[[nodiscard]] FrameSupport fixed_support(int node);

/// Stands for the ground as the other end of a spring.
inline constexpr int ground = -1;

/// A spring from `node` to `other`, which lies in direction (`towards_x`, `towards_y`) of any
/// length. It shortens as the node moves that way and pushes back by stiffness * (shortening -
/// gap). A negative gap is a preload.
struct FrameSpring {
  int node = 0;
  int other = ground;             ///< node, or `ground`
  double towards_x = 0.0;         ///< of the direction from `node` to `other`
  double towards_y = -1.0;        ///< likewise
  double stiffness = 0.0;         ///< N/mm, > 0
  bool compression_only = false;  ///< lets go where it would have to pull
  double gap = 0.0;               ///< that closes before it bears, mm; below 0: a preload
};

/// A spring against the relative rotation of `node` and `other`.
struct FrameRotationSpring {
  int node = 0;
  int other = ground;      ///< node, or `ground`
  double stiffness = 0.0;  ///< N mm per radian, > 0
};

/// A load on a node, along +x and +y; moment anticlockwise.
struct FrameNodeLoad {
  int node = 0;
  double x = 0.0;       ///< N
  double y = 0.0;       ///< N
  double moment = 0.0;  ///< N mm
};

/// A load in N per mm of a member's length, varying linearly between two places on it.
struct FrameLineLoad {
  int member = 0;
  double from = 0.0;       ///< mm along the member
  double to = 0.0;         ///< mm along the member, > from
  double x_at_from = 0.0;  ///< N/mm, along +x
  double y_at_from = 0.0;  ///< N/mm, along +y
  double x_at_to = 0.0;    ///< N/mm, along +x
  double y_at_to = 0.0;    ///< N/mm, along +y
};

/// A force and a moment at a place on a member; moment anticlockwise.
struct FramePointLoad {
  int member = 0;
  double at = 0.0;      ///< mm along the member
  double x = 0.0;       ///< N
  double y = 0.0;       ///< N
  double moment = 0.0;  ///< N mm
};

/// A frame and its loads; everything refers to nodes and members by index.
struct Frame {
  std::vector<FrameNode> nodes;
  std::vector<FrameMember> members;
  std::vector<FrameSupport> supports;
  std::vector<FrameSpring> springs;
  std::vector<FrameRotationSpring> rotation_springs;
  std::vector<FrameNodeLoad> node_loads;
  std::vector<FrameLineLoad> line_loads;
  std::vector<FramePointLoad> point_loads;
};

/// Distance between a member's nodes, mm.
[[nodiscard]] double member_length(const Frame& frame, int member);

/// A load along the whole of a member.
/// \param x N per mm of the member, along +x
/// \param y N per mm of the member, along +y
[[nodiscard]] FrameLineLoad uniform_load(const Frame& frame, int member, double x, double y);

/// What messages call a node: its name in quotes, or "node 3" (counted from 0).
[[nodiscard]] std::string node_label(const Frame& frame, int node);
/// What messages call a member: its name in quotes, or "member 3" (counted from 0).
[[nodiscard]] std::string member_label(const Frame& frame, int member);

/// The same frame and loads with one member cut into equal parts. It becomes its own first part;
/// the other parts and the nodes between them follow the old ones, in order.
/// \pre parts >= 1
[[nodiscard]] Frame with_member_divided(Frame frame, int member, int parts);

/// The same frame and loads with every member cut into `parts` equal parts.
[[nodiscard]] Frame divided(Frame frame, int parts);

/// Checks the values of a frame.
/// \throws SolveError for the first value that makes no sense: a number out of range or not finite,
///   a node or member that does not exist, a load beyond its member, a direction held twice.
void require_sound(const Frame& frame);

}  // namespace deadshore::solver
