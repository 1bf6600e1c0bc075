#pragma once

#include <string_view>

namespace deadshore::io {

/// The note's style sheet: A4 in print, one column on screen, figures that scroll sideways on a
/// phone rather than shrink past reading; light or dark as the reader has it, figures on white
/// paper. It may hold no `<` or `&`, so that the page is XML too.
inline constexpr std::string_view note_style = R"css(
:root { --ink: #1c2126; --faint: #5a636b; --line: #c9cfd4; --shade: #f2f4f5;
        --paper: #fff; --focus: #b04a00; --bar: #8fb1cf; --link: #0b4f8a; --good: #1d6331; --good-shade: #edf6ef;
        --alarm: #a3161d; --alarm-shade: #fdeeee; --warning: #8a5a00; --warning-shade: #fdf5e4; }
* { box-sizing: border-box; }
html { color-scheme: light; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #e4e7ea; --faint: #a4adb5; --line: #434b52; --shade: #262c31; --paper: #171b1e;
          --link: #8cc0f0; --focus: #ffb45c; --bar: #4b7397; --good: #8fd3a3; --good-shade: #1b2d21;
          --alarm: #ff9d9d; --alarm-shade: #3b1f20; --warning: #f0c069; --warning-shade: #33290f; }
  html { color-scheme: dark; }
  figure .scroll { background: #fff; border-radius: 4px; padding: 6px; }
}
body { margin: 0; background: var(--paper); color: var(--ink); line-height: 1.42;
       font-family: "DejaVu Sans", Verdana, "Segoe UI", Helvetica, Arial, sans-serif;
       font-size: 15px; }
main { max-width: 180mm; margin: 0 auto; padding: 1.2rem 1rem 3rem; }
h1 { font-size: 1.6em; line-height: 1.2; margin: 0.1em 0 0.4em; overflow-wrap: anywhere; }
h2 { font-size: 1.22em; margin: 2em 0 0.5em; padding-bottom: 0.2em;
     border-bottom: 2px solid var(--ink); }
h3 { font-size: 1em; margin: 1.2em 0 0.3em; }
.number { color: var(--faint); padding-right: 0.35em; }
a { color: var(--link); }
p { margin: 0.5em 0; }
ul { margin: 0.5em 0; padding-left: 1.3em; }
li { margin: 0.25em 0; overflow-wrap: anywhere; }
.kind { color: var(--faint); margin: 0; }
.small { color: var(--faint); font-size: 0.87em; }
.alarm, .warning { margin: 0.6em 0; padding: 0.6em 0.8em; border-left: 5px solid; overflow-wrap: anywhere; }
.alarm { border-color: var(--alarm); background: var(--alarm-shade); }
.warning { border-color: var(--warning); background: var(--warning-shade); }
.alarm strong { color: var(--alarm); }
.warning strong { color: var(--warning); }
.alarm > p:first-child, .alarm > p:only-child { margin-top: 0; }
#summary { border: 2px solid var(--ink); padding: 0.2em 1em 0.6em; margin-top: 1.2em; }
#summary h2 { border: 0; margin-top: 0.4em; padding: 0; }
#title-block { margin: 0.9em 0; border: 1px solid var(--ink); }
#title-block th, #title-block td { border: 1px solid var(--line); padding: 0.35em 0.5em;
                                   overflow-wrap: anywhere; }
#title-block th { color: var(--faint); white-space: nowrap; width: 1%; }
#title-block td { width: 49%; }
#title-block td.blank { color: var(--faint); font-size: 0.87em; }
#contents h2 { border: 0; margin: 1.2em 0 0.3em; padding: 0; }
#contents ol { list-style: none; margin: 0; padding: 0; column-width: 20em; }
#contents li { padding-left: 1.9em; break-inside: avoid; }
#contents .number { display: inline-block; width: 1.9em; margin-left: -1.9em; padding: 0; }
#summary h3 { margin-top: 0.9em; }
#findings th { white-space: nowrap; }
#findings td:last-child { min-width: 9em; }
.verdict { font-size: 1.06em; }
.good { margin: 0.6em 0; padding: 0.6em 0.8em; border-left: 5px solid var(--good);
        background: var(--good-shade); }
.good strong { color: var(--good); }
#job-file td, #job-file th { overflow-wrap: anywhere; }
pre.job { font: 0.8em/1.4 "DejaVu Sans Mono", monospace; white-space: pre-wrap;
          overflow-wrap: anywhere; background: var(--shade); padding: 0.8em; margin: 0; }
.print-only { display: none; }
.scroll { overflow-x: auto; margin: 0.8em 0 1.1em; }
table { border-collapse: collapse; width: 100%; font-size: 0.9em;
        font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--faint); padding-bottom: 0.35em; }
th, td { text-align: left; vertical-align: baseline; padding: 0.28em 0.9em 0.28em 0;
         border-bottom: 1px solid var(--line); font-weight: normal; }
th:last-child, td:last-child { padding-right: 0.2em; }
thead th { color: var(--faint); vertical-align: bottom; border-bottom: 1px solid var(--ink); }
th.fig, td.fig { text-align: right; white-space: nowrap; }
thead th.fig { white-space: normal; }
tr.group th { font-weight: bold; padding-top: 1em; border-bottom: 1px solid var(--line); }
tr.total th, tr.total td { font-weight: bold; border-top: 1px solid var(--ink); }
#checks { font-size: 0.84em; }
#take-down-lines { font-size: 0.84em; }
#take-down-sums td:nth-child(2) { min-width: 11em; }
#checks tr > :nth-child(-n+2):not([colspan]) { white-space: nowrap; }
tr.worked th, tr.worked td { border-bottom: 0; padding-bottom: 0; }
tr.working td { color: var(--faint); font-size: 0.84em; padding-top: 0.1em; padding-bottom: 0.5em;
                overflow-wrap: anywhere; }
tr.fails th, tr.fails td { font-weight: bold; background: var(--alarm-shade); }
tr.fails > :first-child { border-left: 5px solid var(--alarm); padding-left: 0.4em; }
tr.unverified th, tr.unverified td { font-weight: bold; background: var(--warning-shade); }
tr.unverified > :first-child { border-left: 5px double var(--warning); padding-left: 0.4em; }
#design-loads td:nth-child(5) { font-weight: bold; }
figure { margin: 1.2em 0 1.8em; }
figure .scroll { margin: 0 0 0.5em; }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { font-size: 0.9em; }
[hidden] { display: none !important; }
:focus-visible { outline: 3px solid var(--focus); outline-offset: 2px; }
@media print, screen and (min-width: 701px) {
  .hand-sum:has(figure) { display: grid; gap: 1.4em; align-items: start;
                          grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); }
  .hand-sum figure { margin-top: 0.8em; }
}
@media screen and (min-width: 701px) {
  figure.wide { width: min(94vw, 1180px); margin-left: calc(50% - min(47vw, 590px)); }
  figure.wide svg { width: 100%; min-width: 900px; max-width: none; }
}
@media screen and (max-width: 700px) {
  #title-block tr { display: grid; grid-template-columns: 7.5em 1fr; }
  #title-block th, #title-block td { width: auto; white-space: normal; }
  #findings, #findings tbody, #findings tr, #findings th, #findings td { display: block; }
  #findings thead { display: none; }
  #findings tr { border-bottom: 1px solid var(--line); padding: 0.3em 0; }
  #findings th, #findings td { border: 0; padding: 0.1em 0; }
  #findings th { color: var(--faint); }
  figure svg { max-width: none; width: 640px; }
  figure.wide svg { width: 1000px; }
  .hand-sum figure svg { width: 100%; }
  th, td { padding-right: 0.7em; }
}
@page { size: A4; margin: 17mm 15mm 18mm;
        @bottom-right { content: counter(page) " / " counter(pages);
                        font: 8pt "DejaVu Sans", sans-serif; color: #5a636b; } }
@page wide { size: A4 landscape; margin: 10mm 10mm 12mm; }
@media print {
  figure.wide { page: wide; margin: 0; }
  body { font-size: 9.5pt; }
  main { max-width: none; padding: 0; }
  h2, h3, caption, thead { break-after: avoid; }
  .keep { break-after: avoid; }
  a { color: inherit; text-decoration: none; }
  #title-block td.blank { height: 9mm; }
  #contents { font-size: 0.93em; }
  #summary { break-before: page; break-inside: avoid; margin-top: 0; border-width: 1pt;
             font-size: 0.9em; padding: 0 0.8em 0.2em; }
  pre.job { padding: 0; background: none; font-size: 7.5pt; }
  p, li { orphans: 3; widows: 3; }
  .screen-only { display: none; }
  .print-only { display: block; }
  .keep, .hand-sum, tr, figure, .alarm, .warning, .good, table, .hand-sum tbody, #hand-sums tbody, #checks tbody, #take-down-lines tbody, #safety-factors tbody { break-inside: avoid; }
  #not-checked, #cautions { break-inside: avoid; }
  #hand-sums, #checks, #take-down-lines, #prop-schedule, #stages-of-work, #safety-factors { break-inside: auto; }
  #checks tr > :nth-child(-n+2):not([colspan]) { white-space: normal; }
  thead { display: table-header-group; }
  .scroll { overflow: visible; }
  .alarm, .warning, .good, #summary, tr.fails > *, tr.unverified > * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
  figure svg { max-height: 215mm; }
  figure.wide svg { width: 277mm; max-width: none; max-height: 170mm; }
}
)css";

}  // namespace deadshore::io
