// What is in hand of a second check: entries, ticks, signatures. Pure; web/second.js shows it, web/log.js keeps it.

import { PARTS } from './log_format.js';

/** A list gone through in the morning says nothing of the afternoon. Ours, no source. */
export const TICKS_HOLD_MS = 2 * 60 * 60 * 1000;

export const freshDraft = (text) => ({ text, typed: {}, ticks: { rigger: {}, second: {} }, people: { rigger: {}, second: {} }, signatures: [] });

/** A kept draft as it may go on: ticks that are too old are gone, and with them whoever had signed. */
export function resumed(found, text, now) {
  const draft = { ...freshDraft(text), ...found };
  const isFresh = (at) => now - at < TICKS_HOLD_MS && at <= now;
  const ticks = Object.fromEntries(PARTS.map((part) => [part, Object.fromEntries(Object.entries(draft.ticks?.[part] ?? {}).filter(([, at]) => isFresh(at)))]));
  const lost = PARTS.some((part) => Object.keys(ticks[part]).length < Object.keys(draft.ticks?.[part] ?? {}).length);
  return { ...draft, ticks, signatures: lost ? [] : draft.signatures };
}

/** Another entry, or another tick: whoever had signed had signed for something else. */
export function withEntry(draft, path, text) {
  return { ...draft, typed: { ...draft.typed, [path]: text }, signatures: [] };
}
export function withTick(draft, part, item, on, now) {
  const { [item]: was, ...others } = draft.ticks[part];
  return { ...draft, ticks: { ...draft.ticks, [part]: on ? { ...others, [item]: now } : others }, signatures: [] };
}
export function withPerson(draft, part, what, text) {
  return { ...draft, people: { ...draft.people, [part]: { ...draft.people[part], [what]: text } } };
}

/** So many items of the list are still to be ticked by one or the other. */
export const unticked = (draft, count) => PARTS.reduce((sum, part) => sum + Array.from({ length: count }, (_, i) => i).filter((i) => !(i in draft.ticks[part])).length, 0);

const asHeard = (name) => name.trim().toLowerCase().replace(/\s+/g, ' ');
const saysSomething = (name) => /[\p{L}\p{N}]/u.test(name);

/** Why `part` cannot sign now, as a key of the words with what to fill in; undefined where they can. */
export function whyNoSignature({ draft, compared, items, part }) {
  if (!compared?.may_be_signed) return { key: compared?.agrees === false ? 'notSignedApart' : 'notSignedVerdict', verdict: compared?.verdict.text };
  const left = unticked(draft, items);
  if (left > 0) return { key: 'notSignedList', n: left };
  const name = draft.people[part].name ?? '';
  if (!saysSomething(name)) return { key: 'notSignedName' };
  const other = draft.signatures.find((signature) => signature.part !== part);
  if (other && asHeard(other.name) === asHeard(name)) return { key: 'notSignedSame', name: other.name };
  return undefined;
}

export function withSignature(draft, part, roles, time) {
  const { name, role } = draft.people[part];
  const signature = { part, name: name.trim(), role: (role ?? roles[part]).trim(), time };
  return { ...draft, signatures: [...draft.signatures.filter((each) => each.part !== part), signature] };
}

export const isSigned = (draft) => PARTS.every((part) => draft.signatures.some((each) => each.part === part));

/** The entry for the log, all but its id. `timeOf(milliseconds)` writes a time. */
export function entryOf({ draft, asked, compared, report, app, timeOf }) {
  const { verdict, of_first: first, of_second: second, rows } = compared;
  const readings = compared.readings.map((reading, i) => ({ label: rows[i].label, ...reading }));
  const tickTimes = (i) => Object.fromEntries(PARTS.map((part) => [part, timeOf(draft.ticks[part][i])]));
  return {
    title: asked.title, check_code: asked.check_code, plan: draft.text, report,
    second: { verdict: verdict.key, of_first: first.key, of_second: second.key, readings },
    preload: asked.preload.items.map((item, i) => ({ item, ...tickTimes(i) })),
    signatures: PARTS.map((part) => draft.signatures.find((each) => each.part === part)),
    app,
  };
}
