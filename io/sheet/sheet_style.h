#pragma once

#include <string_view>

namespace deadshore::io {

/// The sheet's style: A4 upright, small but never below 7.5 pt. It may hold no `<` or `&`, so that
/// the page is XML too.
inline constexpr std::string_view sheet_style = R"css(
:root { --ink: #111; --faint: #4a5157; --line: #9aa2a8; --alarm: #a3161d; --alarm-shade: #fdeeee; }
* { box-sizing: border-box; }
html { color-scheme: light; }
body { margin: 0 auto; max-width: 194mm; background: #fff; color: var(--ink); padding: 4mm;
       font: 7.5pt/1.17 "DejaVu Sans Condensed", "DejaVu Sans", Verdana, Arial, sans-serif; }
h1 { font-size: 11.5pt; margin: 0 0 0.6mm; overflow-wrap: anywhere; }
h2 { font-size: 8.5pt; margin: 1.6mm 0 0.5mm; }
p { margin: 0.5mm 0; }
.sheet { width: 100%; border-collapse: collapse; }
.sheet > thead > tr > th, .sheet > tbody > tr > td { padding: 0; border: 0; }
.running { font-weight: normal; color: var(--faint); border-bottom: 0.3mm solid var(--ink);
           padding-bottom: 0.5mm; margin-bottom: 1mm; display: flex; justify-content: space-between; gap: 4mm; }
.running span { overflow-wrap: anywhere; }
.columns { display: grid; grid-template-columns: 72mm 1fr; gap: 3mm; align-items: start; }
.even { grid-template-columns: 1fr 1fr; margin: 1.2mm 0; }
.even h2 { margin-top: 0; }
.picture svg { display: block; width: 100%; height: auto; max-height: 84mm; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
.scroll { margin: 0; }
caption { text-align: left; font-weight: bold; padding-bottom: 0.3mm; }
th, td { text-align: left; vertical-align: top; font-weight: normal; padding: 0.3mm 1mm;
         border: 0.15mm solid var(--line); overflow-wrap: anywhere; }
thead th { color: var(--faint); vertical-align: bottom; }
.fig { text-align: right; white-space: nowrap; }
thead .fig, thead th { white-space: normal; }
.stop { font-weight: bold; }
#steps { table-layout: fixed; }
#steps th:nth-child(1) { width: 6mm; } #steps th:nth-child(2) { width: 8mm; }
#steps th:nth-child(3) { width: 60mm; } #steps th:nth-child(5) { width: 13mm; }
#steps th:nth-child(6) { width: 11mm; } #steps th:nth-child(7) { width: 11mm; }
#steps th:nth-child(8) { width: 11mm; }
#schedule th:nth-child(5) { width: 62%; }
#marks th:nth-child(5) { width: 30%; }
th { overflow-wrap: normal; }
tr.fails td { background: var(--alarm-shade); border-color: var(--alarm); }
.alarm { border: 0.6mm solid var(--alarm); background: var(--alarm-shade); padding: 1mm 2mm; margin: 1mm 0; }
ul { margin: 0.5mm 0; padding-left: 3.2mm; }
ul.holds { list-style: none; padding: 0; margin: 0; }
ul.holds li { display: inline-block; padding-left: 3.6mm; text-indent: -3.6mm; margin: 0 2mm 0 0; }
.box { display: inline-block; width: 2.2mm; height: 2.2mm; border: 0.25mm solid var(--ink);
       margin-right: 1.4mm; text-indent: 0; vertical-align: -0.2mm; }
#signatures tbody th { width: 58mm; } #signatures td:nth-child(3) { width: 24mm; }
#signatures tbody tr { height: 5.4mm; }
@page { size: A4; margin: 7mm 8mm 9mm;
        @bottom-right { content: "sheet " counter(page) " of " counter(pages);
                        font: 7.5pt "DejaVu Sans", sans-serif; color: #4a5157; } }
@media print {
  body { max-width: none; padding: 0; }
  tr, .columns, #signatures, .alarm, .keep { break-inside: avoid; }
  .sheet > tbody > tr { break-inside: auto; }
  thead { display: table-header-group; }
  .alarm, tr.fails td { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
)css";

}  // namespace deadshore::io
