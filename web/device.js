// What the device has besides a screen: how it is held, a motor to be felt, and the will to stay awake.

// What each verdict feels like, in ms of on and off.
const FELT = { GO: [220], 'NO-GO': [110, 90, 110, 90, 330], 'NOT CHECKED': [70, 110, 70] };
const SAMPLES_MS = 100;
const PROBE_MS = 3000; // one sensor may be slower to answer than another
// As in wasm/app/device.hpp.
const AWAKE = { impossible: 0, off: 1, asked: 2, on: 3, refused: 4 };

const finite = (x) => (typeof x === 'number' && Number.isFinite(x) ? x : NaN);

/** By how much the picture is turned against the device, and whether it stands taller than wide. */
export function pictureOf(view) {
  const turn = view.screen?.orientation?.angle ?? view.orientation ?? 0;
  const type = view.screen?.orientation?.type;
  return { turn: ((turn % 360) + 360) % 360, tall: type ? type.startsWith('portrait') : view.innerHeight >= view.innerWidth };
}

/**
 * The numbers that the program wants, in its order, from the last event of either kind. An event against north that knows its
 * heading counts before one against anything.
 */
export function heldOf({ north, any }, picture) {
  const event = north && Number.isFinite(north.beta) ? north : any;
  const absolute = event === north || event?.absolute === true;
  return [finite(event?.alpha), finite(event?.beta), finite(event?.gamma), Number(absolute), finite(any?.webkitCompassHeading),
    finite(any?.webkitCompassAccuracy), picture.turn, Number(picture.tall)];
}

/** What the first events tell of the sensors: [tilt, compass]. */
export function sensorsOf({ north, any }) {
  const tilt = [north, any].some((event) => Number.isFinite(event?.beta) && Number.isFinite(event?.gamma));
  const compass = Number.isFinite(north?.alpha) || (any?.absolute === true && Number.isFinite(any?.alpha)) || Number.isFinite(any?.webkitCompassHeading);
  return [Number(tilt), Number(compass)];
}

/** Of the sensors: 'granted', 'denied', 'prompt'; null where the browser does not tell before it is asked in a tap. */
async function stateOfPermission() {
  try {
    return (await navigator.permissions.query({ name: 'accelerometer' })).state;
  } catch {
    return null;
  }
}

/** Ties the sensors to the program. `call(name, types, values)` calls it. */
export class Device {
  #call;
  #seen = {}; // the last event of either kind
  #has = [0, 0]; // tilt, compass
  #timer = 0;
  #probeEnds = 0;
  #lock = null; // the promise of the browser that the screen stays on
  #awakeWanted = false;
  #allowed = false;

  constructor(call) {
    this.#call = call;
  }

  /** Finds out what there is. */
  async start() {
    this.#tellAwake(navigator.wakeLock ? AWAKE.off : AWAKE.impossible);
    document.addEventListener('visibilitychange', () => this.#visibilityChanged());
    if (typeof DeviceOrientationEvent === 'undefined') return;
    this.#listen(true);
    if (!this.#mustAsk()) return;
    const permission = await stateOfPermission();
    if (permission === 'granted') this.#allowed = true; // events come, or there is no sensor
    // Before it is allowed nothing tells whether there are sensors; what is held in a hand and asks has them.
    else if (permission !== 'denied' && navigator.maxTouchPoints > 0) this.#call('guywright_device_has', ['number', 'number'], [1, 1]);
  }

  #mustAsk() {
    return typeof DeviceOrientationEvent.requestPermission === 'function' && !this.#allowed;
  }

  #onNorth = (event) => this.#take('north', event);
  #onAny = (event) => this.#take('any', event);

  #listen(on) {
    const change = on ? addEventListener : removeEventListener;
    change('deviceorientationabsolute', this.#onNorth);
    change('deviceorientation', this.#onAny);
    if (!on) this.#seen = {}; // how it is held now says nothing of later
  }

  #take(kind, event) {
    if (![event.alpha, event.beta, event.gamma].some(Number.isFinite)) return; // a browser without sensors may send one that says nothing
    this.#seen[kind] = event;
    const has = sensorsOf(this.#seen).map((found, i) => found || this.#has[i]); // what was there once does not go
    if (String(has) !== String(this.#has)) this.#call('guywright_device_has', ['number', 'number'], has);
    this.#has = has;
    // The first numbers say what there is; until a reading is wanted, no more is listened to: that costs a battery.
    if (has[0] || has[1]) this.#probeEnds ||= setTimeout(() => this.#timer || this.#listen(false), PROBE_MS);
  }

  /** Must be called while the browser is still handling the tap or key itself. */
  askInGesture() {
    if (typeof DeviceOrientationEvent === 'undefined' || !this.#mustAsk()) return;
    DeviceOrientationEvent.requestPermission().then(
      (answer) => {
        this.#allowed = answer === 'granted';
        if (this.#allowed) this.#listen(true);
        else this.#call('guywright_device_refuses');
      },
      () => this.#call('guywright_device_refuses'),
    );
  }

  /** A reading begins or ends. */
  sense(on) {
    clearInterval(this.#timer);
    this.#timer = 0;
    this.#listen(on);
    if (!on) return;
    // A device that lies still sends nothing new: what it said last counts on.
    this.#timer = setInterval(() => {
      if (document.hidden || !(this.#seen.north || this.#seen.any)) return;
      this.#call('guywright_device_is_held', Array(8).fill('number'), heldOf(this.#seen, pictureOf(window)));
    }, SAMPLES_MS);
  }

  vibrate(verdict) {
    // Before the first touch a browser lets nothing vibrate and complains.
    if (navigator.vibrate && navigator.userActivation?.hasBeenActive !== false) navigator.vibrate(FELT[verdict]);
  }

  #tellAwake(awake) {
    this.#call('guywright_awake_is', ['number'], [awake]);
  }

  async keepAwake(on) {
    this.#awakeWanted = on;
    if (on) return this.#askAwake();
    const lock = this.#lock;
    this.#lock = null; // before it is let go: meanwhile another may be asked for
    await lock?.release();
    return undefined;
  }

  async #askAwake() {
    try {
      const lock = await navigator.wakeLock.request('screen');
      if (!this.#awakeWanted || this.#lock) return await lock.release(); // one is enough
      this.#lock = lock;
      this.#tellAwake(AWAKE.on);
      // Going out of sight ends it; so may a battery that runs low.
      lock.addEventListener('release', () => {
        if (this.#lock !== lock) return; // let go by ourselves
        this.#lock = null;
        if (this.#awakeWanted && !document.hidden) this.#tellAwake(AWAKE.refused);
      });
    } catch {
      if (this.#awakeWanted) this.#tellAwake(AWAKE.refused);
    }
  }

  #visibilityChanged() {
    this.#seen = {}; // how it was held before says nothing now
    if (!document.hidden && this.#awakeWanted && !this.#lock) this.#askAwake();
  }
}
