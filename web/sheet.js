// The rig sheet: sets what engine/codec/rig_sheet.hpp says on paper. It computes nothing.

import { element } from './element.js';
import { key } from './page.js';
import { drawAll } from './qr.js';
import { signature } from './second.js';
import { fill } from './words.js';

const SVG = 'http://www.w3.org/2000/svg';
const LOOK_AGAIN_MS = 200;
const DOT_MM = { head: 1.3, foot: 1.1, anchor: 1.1 };

function svg(name, attributes, ...children) {
  const made = document.createElementNS(SVG, name);
  for (const [attribute, value] of Object.entries(attributes)) made.setAttribute(attribute, value);
  made.append(...children);
  return made;
}

/** In millimetres, so that the scale in its title holds on paper. */
function drawing({ title, size_mm: [wide, high], lines, dots, texts, letter_mm: letter }) {
  const up = ([x, y]) => [x, high - y];
  const line = ({ kind, from, to }) => {
    const [[x1, y1], [x2, y2]] = [up(from), up(to)];
    return svg('line', { class: kind, x1, y1, x2, y2, ...(kind === 'dimension' && { 'marker-start': 'url(#tick)', 'marker-end': 'url(#tick)' }) });
  };
  const dot = ({ kind, at }) => {
    const [x, y] = up(at), r = DOT_MM[kind];
    return kind === 'anchor' ? svg('path', { class: kind, d: `M${x} ${y - r}L${x + r} ${y + r}H${x - r}z` }) : svg('circle', { class: kind, cx: x, cy: y, r });
  };
  const text = ({ text: words, at }) => {
    const [x, y] = up(at);
    const made = svg('text', { x, y: y + 0.36 * letter, 'font-size': letter });
    made.textContent = words;
    return made;
  };
  const tick = svg('marker', { id: 'tick', markerWidth: 3, markerHeight: 3, refX: 1.5, refY: 1.5, markerUnits: 'userSpaceOnUse', orient: 'auto' }, svg('path', { class: 'tick', d: 'M0.7 2.3L2.3 0.7' }));
  const made = svg('svg', { viewBox: `0 0 ${wide} ${high}`, width: `${wide}mm`, height: `${high}mm`, role: 'img', 'aria-label': title }, svg('defs', {}, tick),
    svg('rect', { class: 'frame', x: 0.1, y: 0.1, width: wide - 0.2, height: high - 0.2 }), ...lines.map(line), ...dots.map(dot), ...texts.map(text));
  return made;
}

/** The drawing as large as its letters need to be read: moved by the finger or the arrow keys, and put away by its key or Escape. */
function showEnlarged(page, { title, size_mm: [wide, high] }, made, words) {
  const moved = element('figure', { tabIndex: 0 }, made);
  moved.setAttribute('role', 'group');
  moved.setAttribute('aria-label', title);
  const dialog = element('dialog', { id: 'enlarged' }, moved, element('div', { className: 'choices' }, key('close drawing', words.backToSheet, () => dialog.close(), 'action')));
  dialog.setAttribute('aria-label', title);
  dialog.style.setProperty('--wide', wide);
  dialog.style.setProperty('--high', high);
  dialog.addEventListener('keydown', (event) => event.key === 'Escape' && event.stopPropagation()); // it closes the drawing, not the page
  dialog.addEventListener('close', () => dialog.remove());
  page.body.append(dialog);
  dialog.showModal();
  moved.scrollTo((moved.scrollWidth - moved.clientWidth) / 2, (moved.scrollHeight - moved.clientHeight) / 2);
}

function figure(page, told, number, words) {
  const { title, size_mm: [wide, high] } = told;
  const enlarge = element('button', { type: 'button', className: 'enlarge', dataset: { id: `enlarge ${number}` } });
  enlarge.setAttribute('aria-label', fill(words.named, { what: words.enlarge, is: title }));
  enlarge.addEventListener('click', () => showEnlarged(page, told, drawing(told), words));
  const made = element('figure', {}, drawing(told), enlarge, element('figcaption', {}, element('span', { textContent: title }), element('span', { className: 'hint', textContent: words.enlargeHow })));
  made.style.setProperty('--wide', wide);
  made.style.setProperty('--high', high);
  return made;
}

const cell = (text, head) => element(head ? 'th' : 'td', { textContent: text, ...(head && { scope: 'col' }) });

function table(rows) {
  const [head, ...others] = rows;
  const row = (cells, isHead) => {
    const made = element('tr', {}, ...cells.map((text) => cell(text, isHead)));
    if (!isHead && cells.length > 2) [...made.children].forEach((each, i) => { each.dataset.head = head[i]; }); // where the head has no room
    if (cells.length === 1 && head.length > 1) made.firstChild.colSpan = head.length;
    return made;
  };
  const scrolled = element('div', { className: 'wide', tabIndex: 0 }, element('table', {}, element('thead', {}, row(head, true)), element('tbody', {}, ...others.map((cells) => row(cells, false)))));
  scrolled.setAttribute('role', 'region'); // a table too wide for the screen is moved by the arrow keys
  scrolled.setAttribute('aria-label', head.filter(Boolean).join(', '));
  return scrolled;
}

function section({ title, kind, rows, items, note }) {
  const list = () => element(kind === 'steps' ? 'ol' : 'ul', {}, ...items.map((text) => element('li', { textContent: text })));
  const made = element('section', { className: `${kind} ${rows?.[0].length === 2 ? 'two' : ''}` }, element('h2', { textContent: title }), kind === 'table' ? table(rows) : list());
  if (note) made.append(element('p', { className: 'note', textContent: note }));
  return made;
}

const box = (ticked) => element('span', { className: 'box', textContent: ticked ? '\u2713' : '' });

/** `signed`: the entry of the log whose signatures stand for this plan, if there is one. */
function preload({ title, note, items, people, signing }, signed, words) {
  const head = element('tr', {}, ...people.map((name) => cell(name, true)), element('td'));
  const rows = items.map((text) => element('tr', {}, element('td', {}, box(signed)), element('td', {}, box(signed)), element('td', { textContent: text })));
  const signatures = people.map((name, i) => element('div', { className: 'signature' }, element('strong', { textContent: name }), signed ? signature(words, signed.signatures[i]) : element('span', { textContent: signing })));
  return element('section', { className: 'preload' }, element('h2', { textContent: title }), element('p', { className: 'note', textContent: note }),
    element('table', {}, element('thead', {}, head), element('tbody', {}, ...rows)), element('div', { className: 'signatures' }, ...signatures));
}

function heading(sheet, code, { named }) {
  const verdict = element('p', { className: 'verdict', textContent: sheet.verdict, dataset: { verdict: sheet.verdict } });
  const checkCode = element('p', { className: 'check' }, `${sheet.check_code_label} `, element('strong', { textContent: sheet.check_code }));
  const governs = sheet.governs ? [element('p', { className: 'governs' }, element('strong', { textContent: fill(named, { what: sheet.governs_label, is: '' }) }), sheet.governs)] : [];
  const words = element('div', {}, element('p', { className: 'kind', textContent: sheet.heading }), element('h2', { className: 'name', textContent: sheet.title }), verdict, checkCode, ...governs,
    ...(sheet.note ? [element('p', { className: 'about', textContent: sheet.note })] : []));
  return element('header', {}, words, ...(code ? [element('div', { className: 'code' }, code)] : []));
}

/** What stands at the top of every sheet of paper: one that lies about loose must say what it belongs to. */
const running = ({ heading: kind, title, verdict, check_code: code }, { named }) => element('p', { className: 'running' }, element('span', { textContent: fill(named, { what: kind, is: title }) }), element('strong', { textContent: `${verdict} \u00B7 ${code}` }));

/** In a table, for only the head of a table comes again on every page. */
function paper(page, sheet, codes, signed, words) {
  const several = codes.length > 1 ? [element('section', { className: 'codes' }, ...codes)] : [];
  const content = element('td', {}, heading(sheet, codes.length === 1 && codes[0], words), element('div', { className: 'drawings' }, ...sheet.drawings.map((each, i) => figure(page, each, i + 1, words))),
    ...sheet.sections.map((each) => (each.kind === 'preload' ? preload(each, signed, words) : section(each))), ...several,
    element('section', { className: 'notes' }, ...[...sheet.notes, sheet.code_note].map((text) => element('p', { textContent: text }))));
  const made = element('table', { className: 'paper' }, element('thead', {}, element('tr', {}, element('td', {}, running(sheet, words)))), element('tbody', {}, element('tr', {}, content)));
  made.setAttribute('role', 'presentation');
  return made;
}

/**
 * `look()` gives the sheet as guywright_sheet tells it; it is asked again until the verdict is there. `standing()` resolves with the entry of the log
 * whose signatures stand for the plan; `second()` begins the second check.
 */
export async function show(page, look, standing, second) {
  let closed = false;
  let sheet = look();
  const { language } = sheet;
  const words = page.open({ kind: 'sheet', language, title: 'sheetTitle', leave: () => { closed = true; } });
  const status = element('p', { className: 'status', textContent: words.sheetWait });
  status.setAttribute('role', 'status');
  page.body.append(status);
  page.setKeys(language, []);
  for (; sheet.checking && !closed; sheet = look()) await new Promise((again) => { setTimeout(again, LOOK_AGAIN_MS); });
  const codes = await drawAll(sheet.codes, () => sheet.code_note);
  const signed = await standing();
  if (closed) return;
  status.textContent = codes ? words.printHow : words.noCodes;
  page.body.append(paper(page, sheet, codes ?? [], signed, words));
  page.setKeys(language, [key('print', words.print, () => print(), 'action'), !signed && key('second of sheet', words.secondTitle, second)]);
}
