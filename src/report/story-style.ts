/** How a story looks: paper by day, a dark shed by night, black on white in print. Nothing is fetched. */
export const storyStyle = `
:root{color-scheme:light dark;--paper:#f4f5f0;--sheet:#fbfcf8;--ink:#14191c;--soft:#4c5559;--rule:#c3cac4;--edge:#6a7478;--pencil:#6d7a80;--line:#7b4a1c;--neutral:#1c5fa8;--earth:#2f7d32;--white:#9a9a92;--mark:#ffd21f}
@media screen and (prefers-color-scheme:dark){:root{--paper:#0d1011;--sheet:#14181a;--ink:#ecebe2;--soft:#a9b0ad;--rule:#343b3d;--edge:#838d8f;--pencil:#8f9ba0;--line:#d39a5b;--neutral:#6db0f2;--earth:#7fca6f;--white:#b9b9b0}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,-apple-system,'Segoe UI',Roboto,'Noto Sans',sans-serif}
main{max-width:880px;margin:0 auto;padding:24px 16px 64px}
h1{margin:0;font-size:1.9rem;line-height:1.2}
h2{margin:44px 0 12px;padding-top:10px;border-top:2px solid var(--ink);font-size:1.25rem}
h3{margin:24px 0 8px;font-size:1rem}
p,li,td,th,figcaption{overflow-wrap:anywhere}
p{margin:8px 0}
.quiet,figcaption,caption{color:var(--soft);font-size:.9rem}
.invented{padding:8px 12px;border:2px solid var(--ink);background:var(--mark);color:#14191c;font-weight:600}
.said{margin:8px 0;padding-left:12px;border-left:4px solid var(--rule)}
figure{margin:0}
img{display:block;max-width:100%;height:auto;border:1px solid var(--rule)}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:12px;margin:16px 0}
.pair img{width:100%}
.row{display:grid;grid-template-columns:repeat(auto-fill,minmax(160px,1fr));gap:12px;margin:8px 0}
.row img{width:100%;aspect-ratio:4/3;object-fit:cover}
.gone{padding:12px;border:1px dashed var(--rule);color:var(--soft)}
.steps{margin:0;padding-left:20px}
.steps>li{margin:6px 0}
.steps>li.only{list-style:none}
table{width:100%;margin:12px 0;border-collapse:collapse}
caption{text-align:left}
th,td{padding:6px 8px 6px 0;border-bottom:1px solid var(--rule);text-align:left;vertical-align:top;font-weight:400}
thead th{color:var(--soft);font-size:.9rem}
td.amount,.chapters b{font-variant-numeric:tabular-nums}
.chapters{margin:8px 0;padding:0;list-style:none}
.drawing{overflow-x:auto;padding:8px 0}
.circuit{display:block;min-width:30rem;max-width:100%;height:auto;margin:0 auto;overflow:visible}
.sideways{display:none}
.key,.lines{display:grid;grid-template-columns:repeat(auto-fill,minmax(200px,1fr));gap:2px 16px;margin:8px 0;padding:0;list-style:none;font-size:.9rem}
.chart{max-width:100%;height:auto}
figure>.chart{display:block;margin:4px 0 12px}
.lines .chart{vertical-align:middle}
.tint{fill:none;stroke:var(--pencil);stroke-width:11px;stroke-opacity:.6;stroke-linejoin:round}
.conductor,.symbol{fill:none;stroke:var(--ink);stroke-width:1.25}
.conductor.line{stroke:var(--line);stroke-width:1.75}
.conductor.neutral{stroke:var(--neutral);stroke-width:1.75}
.conductor.earth{stroke:var(--earth)}
.black-and-white .conductor.line{stroke:var(--ink)}
.black-and-white .conductor.neutral{stroke:var(--white)}
.symbol.filled,.blank{fill:var(--paper)}
.symbol-letter{font-size:11px;font-weight:600;fill:var(--ink)}
.part-number{font-size:10px;fill:var(--soft)}
.point{fill:var(--ink)}
.outline{fill:none;stroke:var(--edge);stroke-dasharray:5 3}
.outline-letter{font-size:11px;font-weight:700;fill:var(--soft)}
.grid{stroke:var(--rule)}
.tick{font-size:12px;fill:var(--soft)}
.curve{fill:none;stroke-width:2}
.curve.now{stroke:var(--ink)}
.curve.before{stroke:var(--pencil);stroke-dasharray:8 3}
.curve.sound{stroke:var(--edge);stroke-width:1;stroke-dasharray:2 3}
.band{stroke:none}
.band.now{fill:var(--ink);fill-opacity:.14}
.band.before{fill:var(--pencil);fill-opacity:.2}
.band.sound{fill:none;stroke:var(--edge);stroke-dasharray:2 3}
.dot{stroke-width:2}
.dot.now{fill:var(--ink);stroke:var(--ink)}
.dot.before{fill:var(--paper);stroke:var(--pencil)}
@media screen and (max-width:512px){.sideways{display:block;margin:0}}
@media (max-width:480px){.pair{gap:6px}.row{grid-template-columns:1fr 1fr}}
@media print{:root{--paper:#fff}body{font-size:10.5pt}main{max-width:none;padding:0}h2,h3{break-after:avoid}.pair,figure,tr,.steps>li{break-inside:avoid}.drawing{overflow:visible}.circuit{min-width:0}}
`
