/** The style sheet of the report's page: sober, for screen and paper, in the colours of the room's two themes. */
import { type Palette, paletteOf, type Theme } from "../theme.ts";

const VARIABLES = ["background", "panel", "edge", "ink", "soft", "good", "bad", "doubt"] as const;

function variables(palette: Palette): string {
  return VARIABLES.map((name) => `--${name}:${palette[name]}`).join(";");
}

/** Pictures are drawn in light colours; in the dark each colour of theirs becomes that of the same role. */
function recoloured(): string {
  const [light, dark] = [paletteOf("light"), paletteOf("dark")];
  const pairs = (Object.keys(light) as (keyof Palette)[]).flatMap((role) => {
    const [from, to] = [light[role], dark[role]];
    return typeof from === "string"
      ? [[from, to as string] as const]
      : from.map((colour, i) => [colour, (to as readonly string[])[i] as string] as const);
  });
  return pairs
    .flatMap(([from, to]) => [`svg [fill="${from}"]{fill:${to}}`, `svg [stroke="${from}"]{stroke:${to}}`])
    .join("\n");
}

const SCREEN = `
*{box-sizing:border-box}
html{color-scheme:light dark;-webkit-text-size-adjust:100%}
body{margin:0;background:var(--background);color:var(--ink);font:16px/1.5 system-ui,sans-serif;overflow-wrap:break-word}
header,main,footer{max-width:58rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:1.75rem}
h1{font-size:1.7rem;line-height:1.25;margin:0 0 .75rem}
h2{font-size:1.3rem;margin:2.5rem 0 .75rem;padding-bottom:.25rem;border-bottom:2px solid var(--ink)}
h3{font-size:1.08rem;margin:2rem 0 .5rem}
p,ul,ol,dl{margin:.5rem 0}
ul,ol{padding-left:1.4rem}
li{margin:.25rem 0}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.1rem 1rem;color:var(--soft)}
dt{font-weight:600}
dd{margin:0}
a{color:inherit}
nav{padding:0}
summary{cursor:pointer;font-weight:600;padding:.3rem 0}
nav ul{display:flex;flex-wrap:wrap;gap:.25rem 1.1rem;list-style:none;padding:0}
.answer{border:2px solid var(--ink);border-radius:6px;padding:.4rem 1.1rem .6rem;margin-top:1.25rem}
.answer h2{border:0;margin:.3rem 0 0;padding:0;font-size:1.15rem}
.answer li{font-size:1.05rem}
.caution{border:1px solid var(--bad);border-left-width:8px;border-radius:4px;background:var(--panel);padding:.35rem 1rem .45rem;margin:.9rem 0}
.caution h2,.caution h3{border:0;margin:.1rem 0;padding:0;font-size:1rem;color:var(--bad)}
.caution p,.caution ul{margin:.2rem 0}
.scroll{overflow-x:auto;margin:.9rem 0}
.scroll:focus-visible,a:focus-visible,summary:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
table{border-collapse:collapse;font-size:.92rem;min-width:100%}
caption{text-align:left;font-weight:600;padding:.2rem 0 .35rem;color:var(--soft)}
th,td{text-align:left;vertical-align:top;padding:.32rem .7rem .32rem .5rem;border-bottom:1px solid var(--edge)}
thead th{border-bottom:2px solid var(--soft);background:var(--panel);vertical-align:bottom}
tbody th{font-weight:600}
.number{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
thead .number{white-space:normal}
.good{color:var(--good)}
.bad{color:var(--bad);font-weight:700}
.doubt{color:var(--doubt);font-weight:600;font-style:italic}
figure{margin:1rem 0}
figure svg{display:block;max-width:100%;height:auto;border:1px solid var(--edge);border-radius:8px}
.narrow{display:none}
footer{color:var(--soft);font-size:.88rem;margin-top:2.5rem;padding-top:.75rem;padding-bottom:2rem;border-top:1px solid var(--edge)}`;

const PHONE = `
header,main,footer{padding-left:.9rem;padding-right:.9rem}
h1{font-size:1.4rem}
dl{grid-template-columns:1fr;gap:0}
dd{margin-bottom:.3rem}
td{min-width:8rem}
td.number{min-width:0}
tbody th{position:sticky;left:0;background:var(--background);max-width:9rem}
.wordy tbody th{min-width:8.5rem}
.wide{display:none}
.narrow{display:block}`;

/** A4 and Letter alike: margins only, no size. Head rows repeat, rows and pictures stay whole, headings stay with what follows. */
const PAPER = `
@page{margin:15mm 14mm 16mm;@bottom-right{content:counter(page) " / " counter(pages);font:9pt system-ui,sans-serif}}
html{color-scheme:light}
body{font-size:10.5pt;line-height:1.4}
header,main,footer{max-width:none;padding-left:0;padding-right:0}
nav{display:none}
h1,h2,h3,caption,dt{break-after:avoid}
p+.scroll,p+ul{break-before:avoid}
h2{margin-top:1.4rem}
h3{margin-top:1.1rem}
.scroll{overflow:visible}
table{width:100%;min-width:0;font-size:9pt}
thead{display:table-header-group}
tr,li,figure,.caution,.answer{break-inside:avoid}
.short{break-inside:avoid}
th,td{padding:.2rem .4rem .2rem .25rem}
.number{white-space:normal}
figure svg{max-height:235mm}
.caution,thead th{-webkit-print-color-adjust:exact;print-color-adjust:exact}`;

/** The sheet: one theme, or by the reader's own setting. Paper is light in either case. */
export function styleSheet(theme: Theme | undefined): string {
  const root = (one: Theme): string => `:root{${variables(paletteOf(one))}}`;
  const dark = `${root("dark")}\n${recoloured()}`;
  const screen =
    theme === "dark"
      ? [`@media screen{\n${dark}\n}`]
      : theme === "light"
        ? [`html{color-scheme:light}`]
        : [`@media screen and (prefers-color-scheme:dark){\n${dark}\n}`];
  return [
    root("light"),
    SCREEN.trim(),
    ...screen,
    `@media screen and (max-width:40rem){${PHONE}\n}`,
    `@media print{${PAPER}\n}`,
  ].join("\n");
}
