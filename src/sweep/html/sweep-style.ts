/** What the pictures of a sweep add to the style sheet of the reports. Hatches tell areas apart without colour. */
export const sweepStyle = `
svg path[class^='shade-'], svg path[class^='level-'], svg path.free { shape-rendering: crispEdges; }
svg text.strong { font-weight: bold; }
svg text.sign { font-weight: bold; paint-order: stroke; stroke: #fff; stroke-width: 0.6; }
svg text.halo { paint-order: stroke; stroke: #fff; stroke-width: 0.9; stroke-linejoin: round; }
svg rect, svg path.level-none { fill: #fff; stroke: none; }
svg rect.key { stroke: #1a1a1a; stroke-width: 0.2; }
svg .level-none { fill: #fff; stroke: none; }
svg .free { fill: #dcead0; stroke: none; }
svg .level-note { fill: url(#dots-note); stroke: none; }
svg .level-caution { fill: url(#hatch-caution); stroke: none; }
svg .level-stop { fill: url(#hatch-stop); stroke: none; }
svg .level-impossible { fill: url(#hatch-impossible); stroke: none; }
svg .stopped-region { fill: url(#hatch-over); stroke: none; }
svg path.border, svg line.border { fill: none; stroke: #1a1a1a; stroke-width: 0.8; stroke-linecap: square; }
svg path.frame { fill: none; stroke: #1a1a1a; stroke-width: 0.25; }
svg .faint { stroke: #999; stroke-width: 0.12; }
svg .own { stroke: #123f78; stroke-width: 0.45; stroke-dasharray: 4 0.9 0.8 0.9; }
svg path.curve { fill: none; stroke: #1a1a1a; stroke-width: 0.5; }
svg path.contour { fill: none; stroke: #1a1a1a; stroke-width: 0.25; }
svg path.limit-line { fill: none; stroke: #9c1c12; stroke-width: 0.5; stroke-dasharray: 2.4 1; }
svg circle.dot { fill: #1a1a1a; stroke: none; }
svg path.cross { fill: none; stroke: #9c1c12; stroke-width: 0.45; }
svg path.frame, svg line.grid { stroke-width: 0.3; }
${['#f6f9fc', '#e2ecf4', '#cbddec', '#b2cde3', '#98bbd8', '#7da8cc', '#6496bf']
  .map((fill, at) => `svg .shade-${at} { fill: ${fill}; stroke: none; }`)
  .join('\n')}
.sets { font-size: 8pt; }
.sets td, .sets th { padding-right: 2.5mm; overflow-wrap: normal; }
.sets thead th { white-space: normal; }
.stops td:nth-child(2), .varied th { white-space: nowrap; overflow-wrap: normal; }
.result { margin: 3mm 0; padding: 3mm 4mm; border: 0.5mm solid #1a1a1a; font-size: 12.5pt; }
.result p { margin: 0 0 1mm; }
`

/** The hatches; go into the page once. */
export const hatches = [
  '<svg xmlns="http://www.w3.org/2000/svg" class="marks" aria-hidden="true" width="0" height="0"><defs>',
  '<pattern id="dots-note" width="2.4" height="2.4" patternUnits="userSpaceOnUse"><rect width="2.4" height="2.4" style="fill:#eef3e6"/><circle cx="1.2" cy="1.2" r="0.3" style="fill:#5b6b33;stroke:none"/></pattern>',
  '<pattern id="hatch-caution" width="2.2" height="2.2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="2.2" height="2.2" style="fill:#fbf0cf"/><path d="M1.1 0V2.2" style="stroke:#b38a1e;stroke-width:0.25"/></pattern>',
  '<pattern id="hatch-stop" width="1.8" height="1.8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="1.8" height="1.8" style="fill:#f6d3cd"/><path d="M0.9 0V1.8M0 0.9H1.8" style="stroke:#9c1c12;stroke-width:0.3"/></pattern>',
  '<pattern id="hatch-impossible" width="1.2" height="1.2" patternUnits="userSpaceOnUse"><rect width="1.2" height="1.2" style="fill:#d9d9d9"/><path d="M0 0.6H1.2" style="stroke:#555;stroke-width:0.3"/></pattern>',
  '<pattern id="hatch-over" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M1 0V2" style="stroke:#9c1c12;stroke-width:0.3"/></pattern>',
  '</defs></svg>',
].join('\n')
