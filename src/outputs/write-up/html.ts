import { strToU8 } from 'fflate';
import { once } from '../../engine/numerics/lazily.ts';
import { toBase64Url } from '../../engine/set/base64-url.ts';
import { safeLines } from '../../engine/units/safe-text.ts';
import { sceneToSvg } from '../scene/index.ts';
import { writeUpText as texts } from '../words/index.ts';
import { sha256 } from './sha256.ts';
import type { CarriedWave } from './wave.ts';
import type { WriteUp, WriteUpTable } from './write-up.ts';
import { ZOOM_SCRIPT } from './zoom-script.ts';

const STYLE = `:root{color-scheme:light}
body{margin:0;background:#f4eee1;color:#261f18;font:16px/1.5 "Source Sans 3",Arial,sans-serif}
main{max-width:60rem;margin:0 auto;padding:1rem}
h1{font-size:1.75rem;font-weight:400;line-height:1.2}
h2{font-size:1.125rem;margin:2rem 0 .5rem}
p,li{max-width:42rem}
figure{margin:1rem 0;background:#fdfaf3;border:1px solid #d9ccb5;border-radius:8px;padding:1rem}
figure svg,figure img{display:block;max-width:100%;width:100%;height:auto;max-height:36rem}
figcaption{color:#5a4e42;font-size:.875rem;margin-top:.5rem}
.scroll{overflow-x:auto}
table{border-collapse:collapse;background:#fdfaf3;font-size:.875rem}
th,td{border-bottom:1px solid #d9ccb5;padding:.25rem .75rem .25rem 0;text-align:left;vertical-align:top}
th:first-child,td:first-child{padding-left:.75rem}
canvas{display:block;width:100%;height:22rem}
.slider{margin:.5rem 0 0;max-width:none}
input{display:block;width:100%;accent-color:#8a4316}
a{color:#8a4316}
:focus-visible{outline:3px solid #1b5e93;outline-offset:2px}
.care{background:#f7e6b8;border-radius:8px;padding:.5rem 1rem}
@media print{body{background:#fff}audio,.slider{display:none}figure,table{break-inside:avoid}}`;

/** Text between tags or quotation marks. */
const escaped = (text: string): string =>
  safeLines(text).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** As data addresses have it (RFC 4648, section 4); the padding may be left out there (WHATWG, forgiving-base64). */
const base64 = (bytes: Uint8Array): string => toBase64Url(bytes).replaceAll('-', '+').replaceAll('_', '/');
const dataAddress = (type: string, bytes: Uint8Array): string => `data:${type};base64,${base64(bytes)}`;

/** With padding, which a policy asks for. */
const hashOf = (text: string): string => {
  const digest = base64(sha256(strToU8(text)));
  return `'sha256-${digest.padEnd(4 * Math.ceil(digest.length / 4), '=')}'`;
};

const policy = once(() =>
  [
    "default-src 'none'",
    `style-src ${hashOf(STYLE)}`,
    `script-src ${hashOf(ZOOM_SCRIPT)}`,
    'img-src data:',
    'media-src data:',
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
  ].join('; '),
);

/**
 * A write-up as one HTML file that needs nothing else and asks for nothing: pictures and sound are inside, its policy
 * allows no script but its own.
 * @param about from `writeUp`
 * @returns HTML text
 */
export function writeUpHtml(about: WriteUp): string {
  const { wave, sound } = about;
  return `<!doctype html>
<html lang="${texts.lang}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy()}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(about.name)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${escaped(about.name)}</h1>
<p>${escaped(about.summary)}</p>
${section(texts.notes, about.notes.map((line) => `<p>${escaped(line)}</p>`).join('\n'))}
${section(texts.photos, about.photos.map(photoFigure).join('\n'))}
${about.drawings.map(({ title, scene }, i) => section(title, `<figure>${sceneToSvg(scene, { colours: 'day', paper: false, id: `d${i}` })}<figcaption>${escaped(scene.title)}</figcaption></figure>`)).join('\n')}
${about.tables.map((one) => section(one.title, tableHtml(one))).join('\n')}
${wave ? section(texts.wave, waveHtml(wave)) : ''}
${sound ? section(texts.sound, `<p>${escaped(sound.about)}</p>\n<audio controls preload="metadata" aria-label="${texts.sound}" src="${dataAddress('audio/wav', sound.wav)}"></audio>`) : ''}
${section(texts.cautions, about.cautions.length > 0 ? `<ul class="care">${about.cautions.map((one) => `<li>${escaped(one)}</li>`).join('')}</ul>` : '')}
${section(texts.link, descriptionHtml(about))}
<p>${texts.calculated}</p>
</main>
${wave ? `<script type="application/json" id="wave">${waveData(wave)}</script>\n<script>${ZOOM_SCRIPT}</script>` : ''}
</body>
</html>
`;
}

const section = (title: string, body: string): string =>
  body === '' ? '' : `<section><h2>${escaped(title)}</h2>\n${body}\n</section>`;

const photoFigure = ({ type, bytes, caption }: WriteUp['photos'][number]): string =>
  `<figure><img src="${dataAddress(type, bytes)}" alt="${escaped(caption)}"><figcaption>${escaped(caption)}</figcaption></figure>`;

function tableHtml({ title, head, rows }: WriteUpTable): string {
  const cells = rows.map((row) => {
    const [first, ...rest] = row.map(escaped);
    return `<tr><th scope="row">${first}</th>${rest.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
  });
  const titles = head.map((one) => `<th scope="col">${escaped(one)}</th>`).join('');
  // Reached by the keyboard, so that a table wider than the screen can be moved.
  return `<div class="scroll" role="region" tabindex="0" aria-label="${escaped(title)}"><table><thead><tr>${titles}</tr></thead><tbody>${cells.join('\n')}</tbody></table></div>`;
}

function waveHtml({ span, carrier, rows }: CarriedWave): string {
  const words = texts.waveWords(rows);
  return `<p>${escaped(texts.waveAbout(span, carrier))}</p>
<figure><canvas id="wave-drawing" role="img" aria-label="${escaped(words)}"></canvas>
${slider('zoom', 'shown', texts.zoom, 0.005)}
${slider('along', 'from', texts.along, 0.0005)}
<figcaption>${escaped(words)}</figcaption></figure>`;
}

const slider = (id: string, output: string, title: string, step: number): string =>
  `<p class="slider"><label for="wave-${id}">${title}</label> <output id="wave-${output}" for="wave-${id}"></output><input id="wave-${id}" type="range" min="0" max="1" step="${step}" value="0"></p>`;

/** Samples as the bytes of 16-bit whole numbers, the lower one first. */
function waveData({ span, rows }: CarriedWave): string {
  const lines = rows.map(({ title, largest, samples }) => {
    const bytes = new Uint8Array(2 * samples.length);
    const view = new DataView(bytes.buffer);
    for (const [i, x] of samples.entries()) view.setInt16(2 * i, x, true);
    return { title, largest, samples: base64(bytes) };
  });
  return JSON.stringify({ span, rows: lines }).replaceAll('<', '\\u003c');
}

function descriptionHtml({ description, position, name }: WriteUp): string {
  const address = dataAddress('application/json', strToU8(description));
  const file = `${name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'set'}.json`;
  const where = position === 'none' ? '' : ` ${position === 'exact' ? texts.exact : texts.coarse}`;
  return `<p>${texts.linkAbout}${where} <a download="${escaped(file)}" href="${address}">${texts.linkName}</a></p>`;
}
