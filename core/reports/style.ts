import type { PageOptions, Paper, Print } from './page.ts';

/** Names of CSS Paged Media Level 3, section 7.1, and widths on the screen. */
const PAPER_SIZES: Readonly<Record<Paper, { readonly css: string; readonly width: string }>> = {
  letter: { css: 'letter', width: '8.5in' },
  a4: { css: 'A4', width: '210mm' },
};

/** Large print begins at 16 pt where normal print begins at 12 pt. */
const SCALES: Readonly<Record<Print, number>> = { normal: 1, large: 16 / 12 };

/** The name of the pages of a sheet, by its place. */
export function pageName(index: number): string {
  return `sheet-${index}`;
}

/** The style of what stands on the pages: black on white so that it reads in sunlight and prints in grey. */
export function sheetStyle({ paper = 'letter', print = 'normal' }: PageOptions): string {
  return `${bodyStyle(print, PAPER_SIZES[paper].width)}${mapTextStyle(SCALES[print])}`;
}

/**
 * The style of the pages themselves. It stands apart, since a browser takes rules for pages from the whole document alone.
 *
 * @param foot  stands at the bottom left of every printed page, the page number at the right
 * @param heads stand at the top of every page of the sheet in the same place
 */
export function pagesStyle(
  { paper = 'letter', print = 'normal' }: PageOptions,
  foot: string,
  heads: readonly string[],
): string {
  const small = `font:${pointsOf(print)(12)} ${FACE};color:#333`;
  const pages = heads.map((head, index) => `@page ${pageName(index)}{@top-left{content:${cssString(head)};${small}}}`);
  return `@page{size:${PAPER_SIZES[paper].css};margin:17mm 13mm 16mm;@bottom-left{content:${cssString(foot)};${small}}@bottom-right{content:"Page " counter(page) " of " counter(pages);${small}}}${pages.join('')}`;
}

function pointsOf(print: Print): (points: number) => string {
  return (points) => `${(points * SCALES[print]).toFixed(2).replace(/\.?0+$/, '')}pt`;
}

/** Units of a map: the narrowest paper, A4 less its margins, is 700 of them wide, so that 16.4 are 12 pt. */
const MAP_TEXT = 16.4;

/** Sizes of texts on maps. Numbers in rings keep theirs in large print, for the rings are laid out beforehand. */
function mapTextStyle(scale: number): string {
  return `.map text{font-size:${MAP_TEXT}px}.map text.name,.map text.small{font-size:${(MAP_TEXT * scale).toFixed(1)}px}`;
}

/** A text as a CSS string that can end neither itself nor the style element: all but letters, figures and plain marks is escaped. */
function cssString(text: string): string {
  const escaped = text.replace(
    /[^\p{L}\p{M}\p{N} ,.;:·()/-]/gu,
    (mark) => `\\${(mark.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${escaped}"`;
}

const FACE = '"Atkinson Hyperlegible Next","Liberation Sans",Arial,sans-serif';

function bodyStyle(print: Print, width: string): string {
  const pt = pointsOf(print);
  // Large letters need columns that follow their texts.
  const layout = print === 'large' ? 'auto' : 'fixed';
  const runsOn = print === 'large' ? '.page.runs-on{break-before:auto;margin-top:14pt}' : '';
  return `
*{box-sizing:border-box}
th{overflow-wrap:normal}
body{margin:0;overflow-wrap:anywhere;font:${pt(12)}/1.35 ${FACE};color:#111;background:#fff;font-variant-numeric:tabular-nums}
article+article{break-before:page}
header{border-bottom:2.5pt solid #111;margin-bottom:8pt;padding-bottom:4pt;display:flex;flex-wrap:wrap;align-items:baseline;gap:4pt 14pt}
h1{font-size:${pt(19)};margin:0}
.subtitle{margin:0;font-size:${pt(14)}}
.invented{margin:0 0 0 auto;border:1.5pt solid #111;padding:1pt 6pt;font-weight:700}
h2{font-size:${pt(14.5)};margin:14pt 0 3pt;border-top:1pt solid #111;padding-top:4pt;break-after:avoid;white-space:pre-wrap}
h3{font-size:${pt(12.5)};margin:6pt 0 2pt;break-after:avoid}
.cautions h3{margin-top:0}
dl{margin:4pt 0;display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:1pt 16pt;break-inside:avoid}
dl.wide{grid-template-columns:1fr}
dl.wide div{grid-template-columns:12em minmax(0,1fr)}
dl div{display:grid;grid-template-columns:9em minmax(0,1fr);gap:6pt}
dt{color:#444}
dt::after{content:":"}
dd{margin:0;font-weight:600}
table{width:100%;border-collapse:collapse;margin:5pt 0}
table.fixed{table-layout:${layout}}
table.fixed{line-height:1.25}
.fixed tr.stop td.left{white-space:nowrap}
table.fixed td{padding:2.5pt 4pt}
table.fixed tr.detail td{padding:0 4pt 1pt}
.fixed .pen{min-width:0}
th.right,th.pen{white-space:normal}
thead{display:table-header-group}
th{text-align:left;border-bottom:1.2pt solid #111;padding:2pt 5pt;font-size:${pt(12)}}
td{border-bottom:.5pt solid #888;padding:3pt 5pt;vertical-align:top;overflow-wrap:break-word}
tr{break-inside:avoid}
tbody.together{break-inside:avoid}
tr.stop td{border-top:1.4pt solid #111;border-bottom:0;padding-top:4pt;font-weight:700;font-size:${pt(13)}}
tr.detail td{border-bottom:0;padding-top:0;padding-bottom:1pt}
tr.refill td{background:#ececec;border-left:0}
tr.refill td:nth-child(3){border-left:4pt solid #111}
tr.sum td{border-top:1.2pt solid #111;border-bottom:0;font-weight:700}
.group{break-inside:avoid;margin:0 0 14pt}
td .box{margin-right:2pt}
.right{text-align:right;white-space:nowrap}
.pen{min-width:25mm;white-space:nowrap}
.note{margin:5pt 0;padding:4pt 7pt;border-left:4pt solid #111;background:#f1f1f1;break-inside:avoid}
.own-text{white-space:pre-wrap;overflow-wrap:anywhere;font-size:${pt(13)}}
.own-text.sign{font-size:${pt(34)};line-height:1.25;font-weight:700;text-align:center;padding-top:20mm}
.cautions{border:1pt solid #111;padding:5pt 8pt;margin:8pt 0;break-inside:avoid}
.cautions ul{margin:0;padding-left:16pt}
.checklist{list-style:none;margin:5pt 0;padding:0}
.checklist li{padding-left:20pt;position:relative;margin:2pt 0}
.checklist li::before,.box{content:"";display:inline-block;width:10pt;height:10pt;border:1.2pt solid #111;vertical-align:-1pt}
.checklist li::before{position:absolute;left:2pt;top:3pt}
.blanks{display:flex;flex-wrap:wrap;gap:8pt 14pt;margin:7pt 0 4pt;break-inside:avoid}
.blanks span{border-bottom:.7pt solid #111;flex:1 1 22%;padding-bottom:12pt;font-size:${pt(12)};color:#444}
.page{break-before:page}
.page>.map{break-after:avoid}
${runsOn}
.page>h2:first-child{margin-top:0;border-top:0;padding-top:0}
.map{display:block;width:100%;height:auto;max-height:86mm;border:.7pt solid #111;margin:6pt 0;break-inside:avoid}
.map .turf{fill:none;stroke:#111;stroke-width:1}
.map.large{max-height:178mm}
.map .sample{fill:none;stroke:#111;stroke-width:.8}
.pictures{position:absolute}
.map .edge{fill:none;stroke:#111;stroke-width:1}
.map .fill-point{fill:#111}
.map .fill-point+text{fill:#fff}
.map .ground{fill:#fff}
.map .exclusion{fill:none;stroke:#111;stroke-width:.8}
.map .water{fill:none;stroke:#111;stroke-width:.8}
.map .thread{stroke:#888;stroke-width:.8;fill:none}
.map .dot{fill:none;stroke:#333;stroke-width:1.8;stroke-linecap:round}
.map .route{fill:none;stroke:#111;stroke-width:2}
.map .pass-trim,.map .pass-corner{fill:none;stroke:#111;stroke-width:1.6}
.map .pass-swath{fill:none;stroke:#111;stroke-width:.8;marker-mid:url(#driven)}
.map .pass-transit{fill:none;stroke:#111;stroke-width:.8;stroke-dasharray:3 3}
.map .pass-twice{fill:none;stroke:#333;stroke-width:1.2;stroke-linecap:round}
.map .pass-missed{fill:none;stroke:#111;stroke-width:.8}
.map .driven{fill:none;stroke:#111;stroke-width:1.2}
.map .missed-thread{stroke:#111;stroke-width:.8;fill:none}
.map .parcel{fill:none;stroke:#111;stroke-width:1;stroke-dasharray:7 4}
.map text.name{paint-order:stroke;stroke:#fff;stroke-width:4px}
.map .gate{stroke:#111;stroke-width:2.4;fill:none}
.map .stop{fill:#fff;stroke:#111;stroke-width:1.6}
.map .parking{fill:#111}
.map .parking+text{fill:#fff}
.map text{text-anchor:middle;font-weight:700;fill:#111}
.map .leader{fill:none;stroke:#111;stroke-width:1.1}
.map .place{fill:#111;stroke:#fff;stroke-width:.6}
.map text.start{text-anchor:start}
.map .bar path{stroke:#111;stroke-width:1.4;fill:none}
@media screen{body{background:#e9e4d7;padding:16px}article{background:#fff;max-width:${width};margin:0 auto 18px;padding:14mm 13mm;border:1px solid #c9c2b1}.page{border-top:1px dashed #999;margin-top:14pt;padding-top:8pt}}
`.replaceAll('\n', '');
}
