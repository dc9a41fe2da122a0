// The plan as a code for another device's camera, and as a file through the system's share sheet.

import { fileName } from './files.js';
import { element } from './element.js';
import { key, largeCheckCode } from './page.js';
import { fill } from './words.js';
import { drawAll } from './qr.js';

const TURN_MS = 2500; // time for a camera to find a code and for a hand to keep still

/** The plan as a file that this browser hands on; undefined where it hands on none. Some take text but no JSON. */
function fileToShare({ title, plan }) {
  const kinds = [[fileName(title), 'application/json'], [fileName(title).replace(/\.json$/, '.txt'), 'text/plain']];
  return kinds.map(([name, type]) => new File([plan], name, { type })).find((file) => navigator.canShare?.({ files: [file] }));
}

/** `shared`: what guywright_share tells. `save(title, text)` hands the person a file. */
export async function show(page, shared, save) {
  const { language, codes } = shared;
  let timer = 0, at = 0;
  const words = page.open({ kind: 'share', language, title: 'shareTitle', leave: () => clearInterval(timer) });
  const frame = element('div', { className: 'code' });
  const place = element('p', { className: 'place' });
  place.setAttribute('role', 'status');
  const message = element('p', { className: 'message', hidden: true });
  message.setAttribute('role', 'alert');
  const beside = element('div', { className: 'beside' }, largeCheckCode(words.checkCodeLabel, shared.check_code),
    element('p', { className: 'plan', textContent: `${shared.title || words.noTitle} \u00B7 ${shared.verdict}` }), place, element('p', { textContent: codes.length > 0 ? words.shareHow : words.noCode }), message);
  page.body.append(element('div', { className: 'shown' }, frame, beside));
  const tell = (text) => {
    message.textContent = text;
    message.hidden = false;
  };
  const drawings = await drawAll(codes, (i) => fill(words.codeFor, { n: i + 1, total: codes.length }));
  if (!drawings) tell(words.noCodes);
  const total = drawings?.length ?? 0;
  const turnTo = (next) => {
    at = next % total;
    frame.replaceChildren(drawings[at]);
    place.textContent = total > 1 ? fill(words.codeOf, { n: at + 1, total }) : '';
  };
  if (total) turnTo(0);
  const turning = key('turn codes', words.hold, () => {
    timer = timer ? clearInterval(timer) : setInterval(() => turnTo(at + 1), TURN_MS);
    turning.textContent = timer ? words.hold : words.turn;
  });
  const file = fileToShare(shared);
  const shareFile = () => navigator.share({ files: [file], title: shared.title }).catch((error) => {
    if (error.name === 'AbortError') return; // the person has thought better of it
    tell(fill(words.notShared, { why: error.message }));
  });
  page.setKeys(language, [
    total > 1 && key('next code', words.nextCode, () => turnTo(at + 1), 'action'),
    total > 1 && turning,
    file && key('share file', words.shareFile, shareFile),
    key('save file', words.saveFile, () => save(shared.title, shared.plan)),
  ]);
  // The one thing of the app that moves by itself.
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  if (still) turning.textContent = words.turn;
  if (total > 1 && page.isOpen && !still) turning.click();
}
