/**
 * The look of the HTML page. One light look for screen and paper; a wire with a solder joint at its end runs under
 * every heading. Sizes are in points and millimetres, and no paper size is named, so A4 and Letter both fit.
 */
export const PAGE_STYLE = `
:root { --ink: #20262e; --soft: #5b6570; --line: #cfd4d9; --tint: #f3f5f6; --copper: #b4572a; --warn: #fdf1e3; }
* { box-sizing: border-box; }
html { background: #e6e8ea; -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; max-width: 210mm; padding: 14mm 15mm 18mm; background: #fff; color: var(--ink);
  font: 10pt/1.42 "Source Sans 3", "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", sans-serif;
  font-variant-numeric: tabular-nums; overflow-wrap: break-word; }
h1, h2, h3 { line-height: 1.2; break-after: avoid; }
h1 { margin: 0; font-size: 22pt; font-weight: 650; letter-spacing: -.01em; }
.of { margin: 1mm 0 3mm; color: var(--soft); font-size: 11.5pt; }
section + .paper { margin-top: 16mm; }
.paper { border-top: 1.4mm solid var(--copper); padding-top: 4mm; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: .6mm 5mm; margin: 0 0 2mm; }
.facts dt { color: var(--soft); }
.facts dd { margin: 0; }
.facts dd:empty { border-bottom: .2mm solid var(--soft); min-width: 60mm; }
h2 { position: relative; margin: 8mm 0 3mm; padding-bottom: 1.6mm; border-bottom: .5mm solid var(--copper);
  font-size: 13.5pt; font-weight: 640; }
h2::after { content: ""; position: absolute; right: 0; bottom: -1.25mm; width: 2mm; height: 2mm;
  border-radius: 50%; background: var(--copper); }
h3 { margin: 5mm 0 1.5mm; font-size: 10.5pt; font-weight: 640; color: var(--copper); }
p { margin: 0 0 2.2mm; orphans: 3; widows: 3; }
ul { margin: 0 0 2.6mm; padding-left: 5mm; }
ul.ticks { list-style: none; padding-left: 0; }
ul.ticks li { position: relative; padding-left: 6.5mm; }
li { margin-bottom: 1mm; break-inside: avoid; }
.box { display: inline-block; width: 3.4mm; height: 3.4mm; border: .35mm solid var(--ink); border-radius: .5mm;
  vertical-align: -.5mm; }
ul.ticks .box { position: absolute; left: 0; top: .75mm; }
.caution { margin: 0 0 2.6mm; padding: 1.8mm 3mm; border-left: 1.2mm solid #d9822b; background: var(--warn);
  break-inside: avoid; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.scroll { overflow-x: auto; margin: 0 0 3mm; }
table { width: 100%; border-collapse: collapse; font-size: 9pt; line-height: 1.32; }
thead { display: table-header-group; }
th { padding: 1mm 1.6mm; border-bottom: .4mm solid var(--ink); text-align: left; font-weight: 640;
  vertical-align: bottom; color: var(--soft); font-size: 8pt; }
td { padding: 1.1mm 1.6mm; border-bottom: .2mm solid var(--line); vertical-align: top; }
tr { break-inside: avoid; }
.right { text-align: right; white-space: nowrap; }
.centre { text-align: center; }
th:first-child, td:first-child { padding-left: 0; }
th.tick, td.tick { width: 8mm; padding-left: 0; text-align: left; }
.wire { white-space: nowrap; }
.swatch { margin-right: 1.3mm; vertical-align: .1mm; }
svg.bands { display: block; margin: .3mm 0 .6mm; max-width: 100%; }
.bandnames { color: var(--soft); font-size: 8pt; }
code, pre { font-family: "Source Code Pro", Consolas, "DejaVu Sans Mono", monospace; font-size: 8.5pt; }
pre { margin: 0 0 3mm; padding: 2mm 3mm; background: var(--tint); white-space: pre-wrap; }
pre ins { text-decoration: none; background: #dcefdc; }
pre del { text-decoration: none; background: #f8dddd; }
figure { margin: 0 0 4mm; break-inside: avoid; }
figure img { display: block; max-width: 100%; max-height: 230mm; margin: 0 auto; }
figcaption { color: var(--soft); font-size: 8.5pt; }
nav { margin: 0 0 6mm; }
nav a { color: inherit; }
@page { margin: 13mm 12mm 15mm; @bottom-right { content: counter(page) " / " counter(pages);
  font: 8pt "Segoe UI", Arial, "Liberation Sans", sans-serif; color: #5b6570; } }
@media print {
  html, body { background: #fff; }
  body { max-width: none; padding: 0; font-size: 9.3pt; line-height: 1.36; }
  h2 { margin-top: 6.5mm; }
  h3 { margin-top: 3.6mm; }
  .caution { margin-bottom: 1.8mm; padding: 1.3mm 3mm; }
  li { margin-bottom: .7mm; }
  .scroll { overflow: visible; }
  .paper ~ .paper { break-before: page; margin-top: 0; }
  nav { display: none; }
  a { color: inherit; text-decoration: none; }
}
@media screen and (max-width: 700px) { body { padding: 6mm 4mm; } }
`.trim();
