// Frames of the app while a finger moves, for what measures them: frame_times.mjs, budgets.mjs.

/** Runs in the page before anything else: notes of each frame how long it works, how long it was waited for: from the frame that asked for it, or from when it was asked for at rest, and whether the picture was drawn anew in it. */
export function noteFrames() {
  window.frameNotes = [];
  let inFrame, drawn;
  const calls = WebGLRenderingContext.prototype;
  const { clear } = calls; // the renderer begins each picture with it
  calls.clear = function (...bits) {
    drawn = true;
    return clear.apply(this, bits);
  };
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (draw) => {
    const asked = inFrame ?? performance.now();
    return ask((time) => {
      inFrame = performance.now();
      drawn = false;
      draw(time);
      window.frameNotes.push({ waited: inFrame - asked, work: performance.now() - inFrame, drawn });
      inFrame = undefined;
    });
  };
}

const sorted = (numbers) => [...numbers].sort((a, b) => a - b);

/** The number below which `share` of them are. */
export const at = (numbers, share) => sorted(numbers)[Math.min(numbers.length - 1, Math.floor(share * numbers.length))] ?? NaN;

export const over = (numbers, limit) => numbers.filter((each) => each > limit).length;

const MOVE_MS = 1000 / 60; // a screen tells of a finger so often

/** A finger to and fro on the slider for some seconds, told of 60 times a second whether or not the page keeps up; over three fifths of the slider in 2.2 s, or `haste` times as fast. Resolves with its frames, and in what share of looks measuring error was looked at. */
export async function slide(app, id, seconds, haste = 1) {
  const { rect } = await app.widget(id);
  const y = rect.y + 30;
  const x = (ms) => rect.x + rect.width * (0.5 + 0.3 * Math.sin((ms * haste) / 700));
  await app.touch('touchStart', [{ x: x(0), y }]);
  await app.page.evaluate(() => { window.frameNotes = []; });
  const told = [];
  const looks = [];
  const start = performance.now();
  for (let ms = 0; ms < seconds * 1000; ms += MOVE_MS) {
    await app.page.waitForTimeout(Math.max(0, start + ms - performance.now()));
    told.push(app.touch('touchMove', [{ x: x(ms), y }]));
    if (told.length % 30 === 0) looks.push(app.state());
  }
  await Promise.all(told);
  const notes = await app.page.evaluate(() => window.frameNotes);
  await app.touch('touchEnd', []);
  const checking = (await Promise.all(looks)).filter((state) => state.checking).length;
  return { notes, checking: checking / Math.max(1, looks.length) };
}
