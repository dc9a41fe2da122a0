// Free text is typed into the page's own input: the canvas brings up no on-screen keyboard.

const dialog = document.getElementById('entry');
const form = dialog.querySelector('form');
const label = dialog.querySelector('label');
const input = dialog.querySelector('input');
const refusal = dialog.querySelector('.refusal');
const [cancel] = dialog.querySelectorAll('button');

let offer; // what to do with the text typed

function say(words) {
  refusal.textContent = words;
  refusal.hidden = words === '';
  input.setAttribute('aria-invalid', String(words !== ''));
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  const words = offer(input.value);
  say(words);
  if (words === '') dialog.close();
  else input.focus();
});
cancel.addEventListener('click', () => dialog.close());
input.addEventListener('input', () => say(''));

/**
 * Lets the person type. `takeText(text)` returns why it is refused, '' where it is taken; what was typed stays until it is
 * taken or given up. `closed` is called in the end.
 */
export function ask(what, value, takeText, closed) {
  if (dialog.open) return;
  offer = takeText;
  label.textContent = what;
  input.value = value;
  say('');
  dialog.addEventListener('close', closed, { once: true });
  dialog.showModal();
  input.focus();
  input.select();
}
