// The will to stay awake, without a browser.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { Device } from '../../web/device.js';

const OFF = 1, ON = 3, REFUSED = 4; // as in wasm/app/device.hpp
const turn = () => new Promise((done) => { setImmediate(done); });

/** A browser whose locks let go a moment after they are asked to, and a device in it. */
async function awakeDevice() {
  const locks = [], told = [];
  class Lock extends EventTarget {
    released = false;
    async release() {
      await turn();
      this.lose();
    }
    lose() {
      if (this.released) return;
      this.released = true;
      this.dispatchEvent(new Event('release'));
    }
  }
  const request = async () => {
    locks.push(new Lock());
    return locks.at(-1);
  };
  Object.defineProperty(globalThis, 'navigator', { value: { wakeLock: { request } }, configurable: true });
  globalThis.document = Object.assign(new EventTarget(), { hidden: false });
  const device = new Device((name, types, values) => name === 'guywright_awake_is' && told.push(values[0]));
  await device.start();
  return { device, locks, told };
}
const settled = async () => { for (let i = 0; i < 5; ++i) await turn(); };

test('off and at once on again: the screen stays on, and goes off when that is wished', async () => {
  const { device, locks, told } = await awakeDevice();
  await device.keepAwake(true);
  device.keepAwake(false);
  device.keepAwake(true);
  await settled();
  assert.equal(locks.filter((lock) => !lock.released).length, 1);
  assert.deepEqual(told, [OFF, ON, ON]);
  await device.keepAwake(false);
  await settled();
  assert.ok(locks.every((lock) => lock.released));
});

test('asked for twice at once, one lock is kept, and the screen goes off when that is wished', async () => {
  const { device, locks } = await awakeDevice();
  device.keepAwake(true);
  document.dispatchEvent(new Event('visibilitychange')); // before the first is there
  await settled();
  assert.equal(locks.filter((lock) => !lock.released).length, 1);
  await device.keepAwake(false);
  await settled();
  assert.ok(locks.every((lock) => lock.released));
});

test('a lock that the device takes away is told as refused', async () => {
  const { device, locks, told } = await awakeDevice();
  await device.keepAwake(true);
  locks[0].lose();
  assert.deepEqual(told, [OFF, ON, REFUSED]);
});
