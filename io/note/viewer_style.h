#pragma once

#include <string_view>

namespace deadshore::io {

/// What the viewer of the stages adds to the note's style sheet. Its buttons lie on figures, which
/// are on white paper in the dark too, and so have colours of their own. No `<` and no `&` here
/// either.
inline constexpr std::string_view viewer_style = R"css(
#viewer { margin: 2em 0; }
#viewer h2 { margin-top: 0; }
#viewer button, #viewer label { font: inherit; color: inherit; }
#viewer button { background: var(--shade); border: 1px solid var(--faint); border-radius: 4px;
                 min-height: 32px; padding: 0.2em 0.7em; cursor: pointer; }
#viewer button:disabled { color: var(--faint); border-color: var(--line); cursor: default; }
#viewer fieldset { border: 0; padding: 0; margin: 0.6em 0; }
#viewer legend { float: left; padding: 0 1em 0 0; color: var(--faint); }
#viewer label { margin-right: 1em; white-space: nowrap; }
.viewer-controls { display: grid; grid-template-columns: auto 1fr auto; gap: 0.8em; align-items: start; }
.viewer-track { min-width: 0; }
#viewer-slider { --end: calc(50% / var(--stages) - 8px); width: calc(100% - 2 * var(--end));
                 margin: 0 var(--end); height: 32px; accent-color: var(--link); }
.ticks { display: grid; grid-template-columns: repeat(var(--stages), 1fr);
         color: var(--faint); font-size: 0.74em; line-height: 1.25; text-align: center; }
.tick { padding: 0 2px; min-width: 0; overflow-wrap: break-word; }
.tick::before { content: ""; display: block; width: 1px; height: 5px; margin: 0 auto 2px;
                background: var(--faint); }
.tick.current { color: var(--ink); font-weight: bold; }
#viewer-words { display: block; margin: 0.5em 0 0.8em; min-height: 2.9em; }
.viewer-body { display: grid; gap: 0.8em 1.4em; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
               grid-template-rows: auto 1fr; }
.viewer-figure { grid-row: 1 / span 2; }
.paper { position: relative; background: #fff; }
.paper svg { display: block; width: 100%; height: auto; }
#viewer .spot { position: absolute; transform: translate(-50%, 26px); min-height: 24px; min-width: 24px;
                padding: 0 0.25em; font-size: 0.78em; line-height: 1.25; color: #0d4578; background: #fff;
                border: 1px solid #0d4578; white-space: nowrap; font-variant-numeric: tabular-nums; }
#viewer .spot:not(.of-needle) { transform: translate(-50%, -50%); }
#viewer .spot.lower { transform: translate(-50%, 64px); }
#viewer .spot .spot-name, #viewer .spot .spot-load { display: block; }
#viewer .spot .spot-name { font-weight: bold; }
#viewer .spot.absent { color: #5a636b; border-style: dashed; border-color: #5a636b; }
#viewer .spot.chosen { background: #0d4578; color: #fff; border-color: #0d4578; border-style: solid; }
.colour-scale { display: flex; flex-wrap: wrap; list-style: none; padding: 0; margin: 0.3em 0;
                font-size: 0.8em; }
.colour-scale li { margin: 0; flex: 1 1 3em; }
.colour-scale span { display: block; height: 12px; border: 1px solid var(--faint); }
.viewer-tables table { margin-bottom: 1.2em; }
#viewer-reactions button { background: none; border: 0; padding: 0 0.3em; margin-left: -0.3em;
                           min-height: 24px; text-align: left; text-decoration: underline dotted; }
#viewer tr.chosen th, #viewer tr.chosen td { background: var(--shade); font-weight: bold; }
#viewer-facts th { color: var(--faint); padding-right: 1em; }
#viewer-chart-words { font-weight: bold; margin: 0 0 0.2em; }
#viewer-chart svg { display: block; max-width: 100%; }
#viewer-chart text { font-size: 11px; fill: var(--ink); }
#viewer-chart .axis { stroke: var(--faint); }
#viewer-chart rect { fill: var(--bar); }
#viewer-chart .current rect { fill: var(--link); }
#viewer-chart .current text { font-weight: bold; }
@media screen and (min-width: 901px) {
  #viewer { width: min(94vw, 1180px); margin-left: calc(50% - min(47vw, 590px)); }
}
@media screen and (max-width: 700px) {
  .viewer-body { grid-template-columns: minmax(0, 1fr); }
  .viewer-figure { grid-row: auto; }
  .viewer-controls { grid-template-columns: 1fr 1fr; }
  .viewer-track { grid-column: 1 / -1; grid-row: 1; }
  .tick > span { display: none; }
}
)css";

}  // namespace deadshore::io
