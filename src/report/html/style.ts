/** The one style sheet of the page. Levels are told by words and by the weight of a border, never by colour alone. */
export const style = (isStopped: boolean, revision: string): string => `
@page {
  size: A4;
  margin: 16mm 14mm;
  @top-center { content: ${isStopped ? '"STOP: do not make or run this tool as it is"' : '""'}; font: bold 10pt sans-serif; }
  @bottom-left { content: "revision ${revision}"; font: 8pt sans-serif; }
  @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; }
}
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 194mm; padding: 6mm; background: #fff; color: #1a1a1a; font: 11pt/1.4 sans-serif; }
h1 { margin: 0 0 1mm; font-size: 20pt; line-height: 1.2; overflow-wrap: anywhere; }
h2 { margin: 9mm 0 3mm; padding-bottom: 1mm; border-bottom: 0.5mm solid #1a1a1a; font-size: 15pt; break-after: avoid; }
h3 { margin: 5mm 0 1.5mm; font-size: 12pt; break-after: avoid; }
p { margin: 0 0 2mm; }
a { color: #123f78; }
nav ul { display: flex; flex-wrap: wrap; gap: 0 5mm; margin: 2mm 0 0; padding: 0; list-style: none; }
.stopped { margin: 0 0 5mm; padding: 4mm; border: 1.5mm solid #9c1c12; background: #fff; color: #7a120a; font-size: 15pt; font-weight: bold; text-align: center; }
.findings { margin: 0; padding: 0; list-style: none; }
.findings li { margin: 0 0 2.5mm; padding: 2mm 3mm; border: 0.3mm solid #777; border-left-width: 1.2mm; break-inside: avoid; }
.findings li.stop { border: 0.9mm solid #9c1c12; border-left-width: 3mm; }
.findings li.caution { border-left: 2mm double #6b4a00; }
.findings p { margin: 0; }
.level { display: inline-block; margin-right: 2mm; padding: 0 1.5mm; border: 0.4mm solid currentColor; font-weight: bold; letter-spacing: 0.05em; }
.stop .level { background: #9c1c12; color: #fff; }
.caution .level { color: #5c3f00; }
.note .level { color: #333; }
.clear { margin-top: 1mm !important; }
table { width: 100%; margin: 0 0 4mm; border-collapse: collapse; font-size: 9.5pt; line-height: 1.3; }
caption { padding: 3mm 0 1mm; font-size: 11pt; font-weight: bold; text-align: left; break-after: avoid; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 0.7mm 2mm 0.7mm 0; border-bottom: 0.2mm solid #bbb; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
thead th { border-bottom: 0.4mm solid #1a1a1a; vertical-align: bottom; }
tbody th { font-weight: normal; }
.number { text-align: right; font-variant-numeric: tabular-nums; overflow-wrap: normal; }
.number { white-space: nowrap; }
.listed .number { white-space: normal; }
.figures { table-layout: fixed; }
.figures th:nth-child(2) { width: 17%; }
.figures th:nth-child(3) { width: 19%; }
.figures td:last-child, .parameters td:last-child { color: #444; font-size: 8.5pt; }
.figures th:first-child { width: 38%; }
.parameters { table-layout: fixed; }
.parameters th:first-child { width: 32%; }
.parameters th:nth-child(2) { width: 20%; }
.parameters th:nth-child(3) { width: 14%; }
.listed { font-size: 8pt; break-inside: avoid; }
.listed th, .listed td { padding-right: 1.2mm; overflow-wrap: break-word; }
h4 { margin: 0 0 1mm; font-size: 11.5pt; break-after: avoid; }
h3.set-up { padding: 1.5mm 2mm; border: 0.4mm solid #1a1a1a; background: #eef0f3; }
.step { margin: 0 0 5mm; padding: 2mm 0 0 4mm; border-left: 1mm solid #9aa3af; }
.step ol { margin: 0 0 2mm; padding-left: 6mm; }
.step li, .notes li, .mind li { margin-bottom: 0.7mm; break-inside: avoid; }
.step caption { padding-top: 1mm; font-size: 9.5pt; }
.cut { font-weight: bold; }
.as-before, .why { color: #333; font-size: 9.5pt; }
.mind { margin: 0 0 2mm; padding: 1mm 2mm 1mm 7mm; border: 0.4mm solid #6b4a00; }
.notes { margin: 0 0 2mm; padding-left: 6mm; }
.steps td, .steps th { font-size: 9pt; }
.places, .measured, .step table { break-inside: avoid; }
.places th:first-child { width: 34%; }
.measured th:first-child { width: 26%; }
.cautions li { margin-bottom: 1mm; break-inside: avoid; }
figure { margin: 0 0 6mm; break-inside: avoid; }
figcaption { font-size: 9.5pt; color: #333; }
.view svg { width: auto; max-width: 100%; }
figure:not(.view) svg { width: 100%; }
figure svg { display: block; height: auto; margin-bottom: 1.5mm; }
svg { font-family: sans-serif; stroke-linejoin: round; }
svg.marks { position: absolute; }
:where(:not(.view)) > svg text { fill: #1a1a1a; stroke: none; }
:where(:not(.view)) > svg line, :where(:not(.view)) > svg polyline, :where(:not(.view)) > svg path, :where(:not(.view)) > svg polygon, :where(:not(.view)) > svg circle { fill: none; stroke: #1a1a1a; stroke-width: 0.25; }
:where(:not(.view)) > svg .hatch { stroke-width: 0.2; stroke: #444; }
:where(:not(.view)) > svg marker path { fill: #1a1a1a; stroke: none; }
:where(:not(.view)) > svg .outline, :where(:not(.view)) > svg .edge { stroke-width: 0.5; stroke-linecap: round; }
:where(:not(.view)) > svg .edge { stroke-width: 0.7; }
:where(:not(.view)) > svg .thin, :where(:not(.view)) > svg .dimension { stroke-width: 0.18; }
:where(:not(.view)) > svg .leader { stroke-width: 0.15; stroke: #333; }
:where(:not(.view)) > svg circle.leader { fill: #333; }
:where(:not(.view)) > svg .hidden { stroke-width: 0.2; stroke-dasharray: 1.6 0.9; }
:where(:not(.view)) > svg .axis { stroke-width: 0.16; stroke-dasharray: 4 0.9 0.7 0.9; }
:where(:not(.view)) > svg .circle { stroke-width: 0.35; stroke: #123f78; }
:where(:not(.view)) > svg .swept { stroke-width: 0.3; stroke: #123f78; stroke-dasharray: 2.6 1; }
:where(:not(.view)) > svg .work { fill: #eef1e6; stroke: #5b6b33; stroke-width: 0.25; }
:where(:not(.view)) > svg .metal { fill: #dcdfe3; stroke: none; }
:where(:not(.view)) > svg .cut-metal { fill: url(#hatch-metal); stroke: none; }
:where(:not(.view)) > svg .ground-away { fill: url(#hatch-ground); stroke: none; }
:where(:not(.view)) > svg .void { fill: #fff; stroke: #fff; stroke-width: 0.3; }
:where(:not(.view)) > svg .bit { fill: #cfd9e8; stroke-width: 0.3; }
:where(:not(.view)) > svg .inserted { fill: #ece7da; stroke-width: 0.3; }
:where(:not(.view)) > svg .bar { fill: #c9ccd1; }
:where(:not(.view)) > svg .bar-main { fill: #5d6b7e; }
:where(:not(.view)) > svg .advice { fill: url(#hatch-ground); stroke: #2f5d2f; stroke-width: 0.4; }
:where(:not(.view)) > svg .grid { stroke-width: 0.2; stroke: #555; }
:where(:not(.view)) > svg .limit { stroke-width: 0.8; stroke: #9c1c12; }
:where(:not(.view)) > svg .turn { stroke-width: 0.6; }
:where(:not(.view)) > svg circle.turn { fill: #1a1a1a; stroke: none; }
:where(:not(.view)) > svg .heavy { stroke-width: 0.8; stroke: #9c1c12; }
:where(:not(.view)) > svg .hole { fill: #fff; stroke-width: 0.4; }
:where(:not(.view)) > svg .gap { stroke-width: 0.7; stroke: #fff; }
:where(:not(.view)) > svg .mark { stroke-width: 0.8; }
@media screen {
  main > section { overflow-x: auto; }
}
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; }
  nav { display: none; }
  #cautions { break-inside: avoid; }
  #pictures { break-before: page; }
  #pictures h2 { margin-top: 0; }
  a { color: inherit; text-decoration: none; }
}
`
