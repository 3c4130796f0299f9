/**
 * The look of the picture. Every colour is a variable with a default for light paper; a page that shows the picture sets
 * them to its own, and a file follows what its reader prefers.
 */
export const STYLE = `
.wt{--ink:var(--wt-ink,#1d2430);--soft:var(--wt-soft,#5b6675);--paper:var(--wt-paper,#fbfbf8);--board:var(--wt-board,#e7ecef);
--edge:var(--wt-edge,#4a5563);--rail:var(--wt-rail,#7a5c00);--focus:var(--wt-focus,#0b62d6);
--error:var(--wt-error,#b3261e);--warning:var(--wt-warning,#8a5a00);--note:var(--wt-note,#0b5c9e);--on-mark:var(--wt-on-mark,#fff);
font-family:var(--wt-font,ui-monospace,"DejaVu Sans Mono",Menlo,Consolas,monospace);background:var(--paper)}
@media (prefers-color-scheme:dark){.wt{--ink:var(--wt-ink,#e6e9ee);--soft:var(--wt-soft,#a4afbd);--paper:var(--wt-paper,#16191e);
--board:var(--wt-board,#252b33);--edge:var(--wt-edge,#8b98a8);--rail:var(--wt-rail,#e0bd5b);--focus:var(--wt-focus,#6db1ff);
--error:var(--wt-error,#ff8a80);--warning:var(--wt-warning,#ffc53d);--note:var(--wt-note,#7cc4ff);--on-mark:var(--wt-on-mark,#111)}}
@media (prefers-contrast:more){.wt{--soft:var(--wt-soft,var(--ink));--board:var(--wt-board,var(--paper));--edge:var(--wt-edge,var(--ink));
--rail:var(--wt-rail,var(--ink))}}
.wt .paper{fill:var(--paper)}
.wt .frame{fill:var(--board);stroke:var(--edge);stroke-width:1.5}
.wt .stroke{fill:none;stroke:var(--ink);stroke-width:1.5;stroke-linejoin:round;stroke-linecap:round}
.wt .dashed{stroke-dasharray:4 3;stroke-width:1.1;stroke:var(--soft)}
.wt .filled{fill:var(--ink);stroke:var(--ink);stroke-width:.8;stroke-linejoin:round}
.wt .hit{fill:transparent;stroke:none}
.wt text{fill:var(--ink)}
.wt .name{font-weight:600}
.wt .value,.wt .terminal,.wt .count{fill:var(--soft)}
.wt .amps{fill:var(--note);visibility:hidden}
.wt.show-amps .amps{visibility:visible}
.wt .hole{fill:var(--paper);stroke:var(--edge);stroke-width:1.3}
.wt .wired .hole{fill:var(--edge)}
.wt .free text{fill:var(--soft)}
.wt .supply .pin-name{fill:var(--rail);font-weight:600}
.wt .dot{fill:var(--ink)}
.wt .halo{fill:none;stroke:var(--paper);stroke-width:7}
.wt .case{fill:none;stroke:var(--edge);stroke-width:4.6;stroke-linecap:round}
.wt .core{fill:none;stroke-width:2.8;stroke-linecap:round}
.wt .no-colour{stroke:var(--paper)}
.wt .dots{stroke:var(--soft);stroke-dasharray:1 7}
.wt .net{fill:var(--soft);font-style:italic}
.wt .mark path,.wt .mark circle{stroke:var(--paper);stroke-width:1}
.wt .mark text{fill:var(--on-mark);font-weight:700}
.wt .mark.error path{fill:var(--error)}.wt .mark.warning path{fill:var(--warning)}
.wt .mark.information circle,.wt .mark.hint circle{fill:var(--note)}
.wt .lit .case{stroke:var(--focus);stroke-width:7}.wt .lit .stroke{stroke:var(--focus)}.wt .lit .hole{stroke:var(--focus);stroke-width:3}
`.trim();
