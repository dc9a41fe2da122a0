// The log of signed verdicts as a file: writing it, and reading what this version or an earlier one has written.
//
//   { format, version, app: { version, build }, written, entries: [entry], set_aside: [whatever could not be read, as it was found] }
//   entry: { id, title, check_code, plan: its canonical text as it was signed, report: of the engine,
//     second: { verdict, of_first, of_second, readings: [{ label, path, first, second, allowed, agrees }] } in the units of the plan,
//     preload: [{ item, rigger, second }], signatures: [{ part: 'rigger' | 'second', name, role, time }], app, fell_away: null | { time } }
// Times are ISO 8601 with the offset of the device's clock. Version 1 is read for ever; a change raises LOG_VERSION and adds a step to UPGRADES.

export const LOG_FORMAT = 'guywright-log';
export const LOG_VERSION = 1;
export const LARGEST_LOG_BYTES = 64 * 1024 * 1024; // a thousand entries
export const MOST_ENTRIES = 5000;
export const PARTS = ['rigger', 'second'];

/** UPGRADES[n](file) makes a file of version n into one of version n + 1. */
const UPGRADES = {};

const VERDICTS = ['GO', 'NO-GO', 'NOT CHECKED'];
const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/;
const CODE = /^[2-9A-HJ-NP-Z]{6}$/;

// Kinds of values: what they are called in messages, and whether a value is one.
const text = ['text', (v) => typeof v === 'string'];
const filledText = ['filledText', (v) => typeof v === 'string' && v.trim() !== ''];
const flag = ['flag', (v) => typeof v === 'boolean'];
const number = ['number', (v) => typeof v === 'number' && Number.isFinite(v)];
const time = ['time', (v) => typeof v === 'string' && TIME.test(v)];
const code = ['code', (v) => typeof v === 'string' && CODE.test(v)];
const verdict = ['verdict', (v) => VERDICTS.includes(v)];
const part = ['part', (v) => PARTS.includes(v)];
const anything = ['object', (v) => typeof v === 'object' && v !== null && !Array.isArray(v)];

const APP = { version: text, build: text };
const ENTRY = {
  id: filledText, title: text, check_code: code, plan: filledText, report: anything,
  second: { verdict, of_first: verdict, of_second: verdict, readings: [{ label: text, path: filledText, first: number, second: number, allowed: number, agrees: flag }] },
  preload: [{ item: filledText, rigger: time, second: time }],
  signatures: [{ part, name: filledText, role: text, time }],
  app: APP,
};
const isKind = (shape) => Array.isArray(shape) && typeof shape[0] === 'string';

const shown = (value) => {
  const words = value === undefined ? '-' : JSON.stringify(value);
  return words.length > 40 ? `${words.slice(0, 39)}\u2026` : words;
};

/** [{ path, value, allowed }]: every place where `value` is not of the shape; `allowed` is a key of the words. */
function faultsOf(value, shape, path) {
  if (isKind(shape)) return shape[1](value) ? [] : [{ path, value: shown(value), allowed: shape[0] }];
  if (Array.isArray(shape)) {
    if (!Array.isArray(value)) return [{ path, value: shown(value), allowed: 'list' }];
    return value.flatMap((each, i) => faultsOf(each, shape[0], `${path}[${i}]`));
  }
  if (!anything[1](value)) return [{ path, value: shown(value), allowed: 'object' }];
  return Object.entries(shape).flatMap(([key, inner]) => faultsOf(value[key], inner, `${path}.${key}`));
}

/** What is wrong with an entry. `codeOf(text)` gives the check code of a plan's text. */
export function entryFaults(entry, codeOf, path = 'entry') {
  const faults = faultsOf(entry, ENTRY, path);
  if (faults.length > 0) return faults;
  if (entry.fell_away != null) faults.push(...faultsOf(entry.fell_away, { time }, `${path}.fell_away`));
  const parts = entry.signatures.map((each) => each.part);
  if (parts.length !== PARTS.length || PARTS.some((each) => !parts.includes(each))) faults.push({ path: `${path}.signatures`, value: shown(parts), allowed: 'bothParts' });
  const own = codeOf(entry.plan);
  if (own !== entry.check_code) faults.push({ path: `${path}.check_code`, value: shown(entry.check_code), allowed: 'ownCode' });
  return faults;
}

/** `entries` and `setAside` as one file. */
export function writeLog({ entries, setAside, app, written }) {
  return `${JSON.stringify({ format: LOG_FORMAT, version: LOG_VERSION, app, written, entries, set_aside: setAside }, null, 1)}\n`;
}

function upgraded(file) {
  let now = file;
  for (let { version } = file; version < LOG_VERSION; ++version) now = { ...UPGRADES[version](now), version: version + 1 };
  return now;
}

/**
 * Reads a file of the log. { entries: [entry], setAside: [as found], faults: [of entries that were set aside] }, or { refused: key of the words, ... }
 * where it is no such file at all. Nothing of what it holds is thrown away.
 */
export function readLog(content, codeOf) {
  let file;
  try {
    file = JSON.parse(content);
  } catch (error) {
    return { refused: 'logNoJson', why: error.message };
  }
  if (file?.format !== LOG_FORMAT) return { refused: 'logForeign', value: shown(file?.format), wanted: LOG_FORMAT };
  if (!Number.isInteger(file.version) || file.version < 1) return { refused: 'logVersion', value: shown(file.version), most: LOG_VERSION };
  if (file.version > LOG_VERSION) return { refused: 'logNewer', value: file.version, most: LOG_VERSION };
  const now = upgraded(file);
  if (!Array.isArray(now.entries)) return { refused: 'logNoEntries', value: shown(now.entries) };
  const count = now.entries.length + (Array.isArray(now.set_aside) ? now.set_aside.length : 0);
  if (count > MOST_ENTRIES) return { refused: 'logTooMany', n: count, most: MOST_ENTRIES };
  const out = { entries: [], setAside: Array.isArray(now.set_aside) ? [...now.set_aside] : [], faults: [] };
  now.entries.forEach((entry, i) => {
    const faults = entryFaults(entry, codeOf, `entries[${i}]`);
    if (faults.length === 0) out.entries.push(entry);
    else out.setAside.push(entry);
    out.faults.push(...faults);
  });
  return out;
}

/** "2026-11-25T19:22:19+01:00": the device's own clock. */
export function timeOf(date) {
  const two = (n) => String(n).padStart(2, '0');
  const east = -date.getTimezoneOffset(), off = Math.abs(east);
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  const clock = `${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
  return `${day}T${clock}${east < 0 ? '-' : '+'}${two(Math.floor(off / 60))}:${two(off % 60)}`;
}

/** "2026-11-25 19:22", as it was on the device that signed. */
export const clockOf = (timeText) => String(timeText).slice(0, 16).replace('T', ' ');
