// Frames of the app while a finger moves, for what measures them: frame_times.mjs, budgets.mjs.

/** Runs in the page before anything else: notes of each frame how long it works, and how long it was waited for: from the frame that asked for it, or from when it was asked for at rest. */
export function noteFrames() {
  window.frameNotes = [];
  let inFrame;
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (draw) => {
    const asked = inFrame ?? performance.now();
    return ask((time) => {
      inFrame = performance.now();
      draw(time);
      window.frameNotes.push({ waited: inFrame - asked, work: performance.now() - inFrame });
      inFrame = undefined;
    });
  };
}

const sorted = (numbers) => [...numbers].sort((a, b) => a - b);

/** The number below which `share` of them are. */
export const at = (numbers, share) => sorted(numbers)[Math.min(numbers.length - 1, Math.floor(share * numbers.length))] ?? NaN;

export const over = (numbers, limit) => numbers.filter((each) => each > limit).length;

/** A finger to and fro on the slider for some seconds, as fast as the page takes it. Resolves with its frames, and in what share of looks measuring error was looked at. */
export async function slide(app, id, seconds) {
  const { rect } = await app.widget(id);
  const y = rect.y + 30;
  const x = (share) => rect.x + rect.width * share;
  await app.touch('touchStart', [{ x: x(0.5), y }]);
  await app.page.evaluate(() => { window.frameNotes = []; });
  let checking = 0;
  let looks = 0;
  for (const start = Date.now(); Date.now() - start < seconds * 1000;) {
    await app.touch('touchMove', [{ x: x(0.5 + 0.3 * Math.sin((Date.now() - start) / 700)), y }]);
    await app.page.waitForTimeout(12);
    if (++looks % 20 === 0) checking += Number((await app.state()).checking);
  }
  const notes = await app.page.evaluate(() => window.frameNotes);
  await app.touch('touchEnd', []);
  return { notes, checking: checking / Math.max(1, Math.floor(looks / 20)) };
}
