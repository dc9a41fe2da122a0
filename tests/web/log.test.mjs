// The log without a browser: nothing can be kept here, so that all of it stays in memory, as where storage is denied.

import assert from 'node:assert/strict';
import { webcrypto } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

import { Log } from '../../web/log.js';
import { writeLog } from '../../web/log_format.js';

globalThis.crypto ??= webcrypto; // Debian's Node has it there only

const [SIGNED] = JSON.parse(readFileSync(new URL('../logs/signed_by_version_1.json', import.meta.url), 'utf8')).entries;
const APP = { version: '0', build: '' };

const emptyLog = () => new Log({ codeOf: () => SIGNED.check_code, stand: () => {} });
const fileOf = (entries) => writeLog({ entries, setAside: [], app: APP, written: '' });
const titled = (title) => ({ ...SIGNED, title });
const titlesIn = async (log) => (await log.all()).map(({ entry }) => entry.title).sort();

test('two entries of one name in a file are both taken in', async () => {
  const log = emptyLog();
  const taken = await log.take(fileOf([titled('as signed'), titled('as it fell away')]));
  assert.equal(taken.added, 2);
  assert.deepEqual(await titlesIn(log), ['as it fell away', 'as signed']);
});

test('what is in a file twice, or here already, is taken in once', async () => {
  const log = emptyLog();
  assert.equal((await log.take(fileOf([SIGNED, SIGNED]))).known, 1);
  const again = await log.take(fileOf([SIGNED]));
  assert.deepEqual([again.added, again.known], [0, 1]);
  assert.equal((await log.all()).length, 1);
});
