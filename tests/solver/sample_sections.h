#pragma once

#include "solver/members/steel_member.h"

/// A few sections by their dimensions (EN 10365; from memory, unverified).
namespace deadshore::solver::testing {

inline const SteelSection uc_152x23{
    "UC 152x152x23", SectionKind::i_section, 152.4, 152.2, 5.8, 6.8, 7.6};
inline const SteelSection uc_152x30{
    "UC 152x152x30", SectionKind::i_section, 157.6, 152.9, 6.5, 9.4, 7.6};
inline const SteelSection uc_203x46{
    "UC 203x203x46", SectionKind::i_section, 203.2, 203.6, 7.2, 11.0, 10.2};
inline const SteelSection ub_203x25{
    "UB 203x133x25", SectionKind::i_section, 203.2, 133.2, 5.7, 7.8, 7.6};
inline const SteelSection ub_254x31{
    "UB 254x146x31", SectionKind::i_section, 251.4, 146.1, 6.0, 8.6, 7.6};
inline const SteelSection ipe_330{"IPE 330", SectionKind::i_section, 330.0, 160.0, 7.5, 11.5, 18.0};
inline const SteelSection pfc_200x90{
    "PFC 200x90x30", SectionKind::channel, 200.0, 90.0, 7.0, 14.0, 12.0};
inline const SteelSection shs_100x5{
    "SHS 100x100x5", SectionKind::rectangular_hollow, 100.0, 100.0, 5.0, 5.0, 0.0};

}  // namespace deadshore::solver::testing
